// Batches, holds and sources that rows of notes share.
import type { NotesPlan } from '../../core/notes';
import type { OpenAct } from './acts';
import type { Ledger } from './ledger';

const batchName = (madeOn: string, word: string | null): string => `${madeOn}|${word?.toLowerCase() ?? ''}`;

/** Batches, holds and sources by what names them, found once and made once. */
export class Shared {
  readonly #sources: Map<string, number>;
  readonly #batches: Map<string, number>;
  readonly #holds = new Map<string, number>();
  /** Batches made here: no hold of theirs is there already. */
  readonly #made = new Set<number>();

  constructor(
    readonly ledger: Ledger,
    readonly act: OpenAct,
  ) {
    const known = ledger.rows.prepare('SELECT key, name FROM source ORDER BY key').all() as {
      key: number;
      name: string;
    }[];
    this.#sources = new Map(known.toReversed().map(({ key, name }) => [name.toLowerCase(), key]));
    // All at once: a question for each batch would have the rows before it written one by one.
    const batches = ledger.rows
      .prepare('SELECT key, made_on, word FROM batch WHERE made_on IS NOT NULL ORDER BY key DESC')
      .all() as { key: number; made_on: string; word: string | null }[];
    this.#batches = new Map(batches.map(({ key, made_on, word }) => [batchName(made_on, word), key]));
  }

  addSource(source: NotesPlan['sources'][number]): void {
    const { key } = this.act.insert('source', {
      ...source,
      strains: [],
      blendTotalPerPiece: null,
      guaranteed: null,
      knownGenerations: null,
      note: null,
    });
    this.#sources.set(source.name.toLowerCase(), key);
  }

  source(name: string): number {
    const key = this.#sources.get(name.toLowerCase());
    if (key === undefined) throw new Error(`the plan names a source ${name} that nothing makes`);
    return key;
  }

  /** Jars of one day, with the same word, are one batch: also with those that are there already. */
  batch(madeOn: string, word: string | null): number {
    const name = batchName(madeOn, word);
    const there = this.#batches.get(name);
    if (there !== undefined) return there;
    const { key } = this.act.insert('batch', { madeOn, word, note: null });
    this.#batches.set(name, key);
    this.#made.add(key);
    return key;
  }

  /** Jars of a batch held as long and as warm shared a hold, as far as notes can tell. */
  hold(batch: number, planned: NonNullable<NotesPlan['jars'][number]['hold']>): number {
    const same = (hours: number | null, celsius: number | null): string =>
      `${batch}|${hours}|${celsius?.toFixed(2) ?? ''}`;
    const name = same(planned.hours, planned.planned?.value ?? null);
    const before = this.#made.has(batch) ? [] : this.ledger.rows.where('hold', 'batch', batch);
    const there =
      this.#holds.get(name) ??
      before.find((hold) => hold.basis === 'notes' && same(hold.hours, hold.planned?.value ?? null) === name)?.key ??
      this.act.insert('hold', {
        batch, startedAt: null, endedAt: null, hours: planned.hours, planned: planned.planned, probe: null, readings: [], basis: 'notes', note: null,
      }).key; // prettier-ignore
    this.#holds.set(name, there);
    return there;
  }
}
