// Batches, holds and sources that rows of notes share.
import type { NotesPlan } from '../../core/notes/notes-door';
import { addHold } from './entries/hold-entry';
import { addBatch, addSource } from './entries/larder-entries';
import type { OpenAct } from './facts/open-act';

type Made = Pick<NotesPlan['jars'][number], 'madeOn' | 'madeFrom' | 'madeTo' | 'word'>;

const batchName = ({ madeOn, madeFrom, madeTo, word }: Made): string =>
  `${madeOn ?? `${madeFrom} ${madeTo}`}|${word?.toLowerCase() ?? ''}`;

/** Batches, holds and sources by what names them, found once and made once. */
export class Shared {
  readonly #sources: Map<string, number>;
  readonly #batches: Map<string, number>;
  readonly #holds = new Map<string, number>();
  /** Batches made here: no hold of theirs is there already. */
  readonly #made = new Set<number>();

  constructor(readonly act: OpenAct) {
    const known = act.rows.prepare('SELECT key, name FROM source ORDER BY key').all() as {
      key: number;
      name: string;
    }[];
    this.#sources = new Map(known.toReversed().map(({ key, name }) => [name.toLowerCase(), key]));
    // All at once: a question for each batch would have the rows before it written one by one.
    const batches = act.rows
      .prepare(
        `SELECT key, made_on AS madeOn, made_from AS madeFrom, made_to AS madeTo, word FROM batch
           WHERE made_on IS NOT NULL OR made_from IS NOT NULL ORDER BY key DESC`,
      )
      .all() as (Made & { key: number })[];
    this.#batches = new Map(batches.map(({ key, ...made }) => [batchName(made), key]));
  }

  addSource(source: NotesPlan['sources'][number]): void {
    this.#sources.set(source.name.toLowerCase(), addSource(this.act, source));
  }

  source(name: string): number {
    const key = this.#sources.get(name.toLowerCase());
    if (key === undefined) throw new Error(`the plan names a source ${name} that nothing makes`);
    return key;
  }

  /** Jars of one day, or of the same range of days, with the same word are one batch: also with those that are there already. */
  batch(made: Made): number {
    const name = batchName(made);
    const there = this.#batches.get(name);
    if (there !== undefined) return there;
    const { madeOn, madeFrom, madeTo, word } = made;
    const key = addBatch(this.act, { madeOn, madeFrom, madeTo, word, note: null });
    this.#batches.set(name, key);
    this.#made.add(key);
    return key;
  }

  /** Jars of a batch held as long and as warm shared a hold, as far as notes can tell. */
  hold(batch: number, planned: NonNullable<NotesPlan['jars'][number]['hold']>): number {
    const same = (hours: number | null, celsius: number | null): string =>
      `${batch}|${hours}|${celsius?.toFixed(2) ?? ''}`;
    const name = same(planned.hours, planned.planned?.value ?? null);
    const before = this.#made.has(batch) ? [] : this.act.rows.where('hold', 'batch', batch);
    const there =
      this.#holds.get(name) ??
      before.find((hold) => hold.basis === 'notes' && same(hold.hours, hold.planned?.value ?? null) === name)
        ?.key ??
      addHold(this.act, { batch, hours: planned.hours, planned: planned.planned, basis: 'notes' });
    this.#holds.set(name, there);
    return there;
  }
}
