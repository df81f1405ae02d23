// What is left of a jar or a portion, and where it stands. Both follow from what became of it – movements, seedings, parts
// kept apart – and are never kept as a flag. Pure.
import type { Amount } from './basics';
import type { MovementKind } from './facts/kept-facts';
import { storedMoment } from './stored-moments';

/** Something that became of it. A seeding and a part kept apart are movements of their own. */
export interface Event {
  readonly what: MovementKind | 'seed' | 'kept apart';
  /** A day, or a moment with its offset; null where nobody said when. */
  readonly when: string | null;
  readonly amount: Amount | null;
  readonly pieces: number | null;
}

/** What it held at first. */
export interface Held {
  readonly amount: Amount | null;
  /** Cubes, flakes …; null where it is not in pieces. */
  readonly pieces: number | null;
  readonly place: 'fridge' | 'freezer' | 'dried' | null;
}

export type UnknownBecause =
  'volume' | 'seed' | 'kept apart' | 'eaten' | 'pieces' | 'unit' | 'said to be there';

export interface Left {
  /** mL or g, in the unit of what it held; null is unknown. */
  readonly amount: { readonly value: number; readonly unit: 'mL' | 'g' } | null;
  /** Null is unknown, or not in pieces. */
  readonly pieces: number | null;
  /** Nothing is left. */
  readonly none: boolean;
  /** The day or moment since when nothing is left; null where some is, or nobody said when. */
  readonly endedOn: string | null;
  /** What first made the amount unknown. */
  readonly unknown: UnknownBecause | null;
  /** 1 g was taken as 1 mL somewhere: to be said beside the figure. */
  readonly gramsAsMl: boolean;
  readonly place: 'fridge' | 'freezer' | 'dried' | 'not said';
  /** When it was opened: a day, a moment, or 'not said'; null where it never was, as far as is known. */
  readonly opened: string | null;
  /** It was frozen once and thawed. */
  readonly thawed: boolean;
  /** The day or moment at which it was last put where it stands; null where nobody said. */
  readonly placedOn: string | null;
  /** The last day or moment at which something is known of it that did not end it. */
  readonly lastNoted: string | null;
}

/** Sorts by day, then by moment; within a day what has no moment comes last, and what nobody dated comes after all. */
export function inOrder(events: readonly Event[]): Event[] {
  const keyed = events.map((event, entered) => ({
    event,
    entered,
    day: event.when?.slice(0, 10) ?? '9999',
    seconds: event.when !== null && event.when.length > 10 ? storedMoment(event.when).seconds : Infinity,
  }));
  keyed.sort((a, b) => {
    if (a.day !== b.day) return a.day < b.day ? -1 : 1;
    return a.seconds === b.seconds ? a.entered - b.entered : a.seconds - b.seconds;
  });
  return keyed.map(({ event }) => event);
}

class Tally {
  value: number | null = null;
  pieces: number | null;
  unknown: UnknownBecause | null = null;
  none = false;
  gramsAsMl = false;
  readonly unit: 'mL' | 'g';
  readonly #perPiece: number | null;

  constructor({ amount, pieces }: Held) {
    this.pieces = pieces ?? (amount?.unit === 'pieces' ? amount.value : null);
    this.unit = amount?.unit === 'g' ? 'g' : 'mL';
    if (amount?.unit === 'mL' || amount?.unit === 'g') this.value = amount.value;
    else this.unknown = 'volume';
    this.#perPiece = this.value !== null && pieces !== null ? this.value / pieces : null;
  }

  /** All of it is gone. */
  end(): void {
    this.value = 0;
    if (this.pieces !== null) this.pieces = 0;
    this.none = true;
    this.unknown = null;
  }

  /** How much is not known from here on. */
  lose(because: UnknownBecause): void {
    this.value = null;
    this.pieces = null;
    this.unknown ??= because;
  }

  /** Pieces that an amount is, where one piece's is known. */
  #piecesIn(value: number): number | null {
    return this.#perPiece === null || this.#perPiece === 0 ? null : value / this.#perPiece;
  }

  take({ amount, pieces, what }: Event): void {
    const count = pieces ?? (amount?.unit === 'pieces' ? amount.value : null);
    const bulk = amount?.unit === 'mL' || amount?.unit === 'g' ? amount : null;
    if (count === null && !bulk) {
      this.lose(amount === null ? becauseOf(what) : 'unit');
      return;
    }
    if (bulk && bulk.unit !== this.unit) this.gramsAsMl = true;
    const taken = bulk?.value ?? (this.#perPiece === null ? null : (count ?? 0) * this.#perPiece);
    const fewer = count ?? this.#piecesIn(bulk?.value ?? 0);
    if (this.value !== null && taken === null) this.unknown ??= 'pieces';
    this.value = this.value === null || taken === null ? null : Math.max(0, this.value - taken);
    // Nearly whole pieces are whole: amounts are rounded when they are typed.
    const left = this.pieces === null || fewer === null ? null : Math.max(0, this.pieces - fewer);
    this.pieces = left !== null && Math.abs(left - Math.round(left)) < 0.05 ? Math.round(left) : left;
    if (this.value === 0 || this.pieces === 0) this.end();
  }
}

const becauseOf = (what: Event['what']): UnknownBecause =>
  what === 'seed' || what === 'kept apart' ? what : 'eaten';

/** Whether nothing is left after it where nobody said how much: of *given* and *discarded* that means all, of *eaten* some. */
const endsAll = ({ what, amount, pieces }: Event): boolean =>
  what === 'gone' || ((what === 'given' || what === 'discarded') && amount === null && pieces === null);

const LEAVES: ReadonlySet<Event['what']> = new Set(['seed', 'kept apart', 'eaten', 'given', 'discarded']);

/**
 * What is left, and where it stands: what it held less all that left it. One unknown amount makes the rest unknown, until
 * all of it is gone. 1 g of curd or whey is taken as 1 mL.
 * @param events in the order in which they were entered
 */
export function whatIsLeft(held: Held, events: readonly Event[]): Left {
  const tally = new Tally(held);
  let place: Left['place'] = held.place ?? 'not said';
  let opened: string | null = null;
  let thawed = false;
  let placedOn: string | null = null;
  let lastNoted: string | null = null;
  let endedOn: string | null = null;
  for (const event of inOrder(events)) {
    const { what, when } = event;
    const before = tally.none;
    if (endsAll(event)) {
      tally.end();
      if (!before) endedOn = when;
      continue;
    }
    if (LEAVES.has(what)) tally.take(event);
    else if (what === 'still there' && tally.none) {
      tally.none = false;
      tally.lose('said to be there');
    } else if (what === 'fridge' || what === 'freezer' || what === 'thawed') {
      thawed ||= what === 'thawed' || (what === 'fridge' && place === 'freezer');
      place = what === 'freezer' ? 'freezer' : 'fridge';
      placedOn = when;
    } else if (what === 'opened') opened ??= when ?? 'not said';
    if (!tally.none) lastNoted = when ?? lastNoted;
    else if (!before) endedOn = when;
  }
  const { value, unit, pieces, none, unknown, gramsAsMl } = tally;
  return {
    amount: value === null ? null : { value, unit },
    pieces, none, endedOn: none ? endedOn : null, unknown: value === null ? unknown : null, gramsAsMl,
    place, opened, thawed, placedOn, lastNoted,
  }; // prettier-ignore
}
