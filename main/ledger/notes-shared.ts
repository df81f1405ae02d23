// Batches, holds and sources that rows of notes share.
import type { NotesPlan } from '../../core/notes';
import type { OpenAct } from './acts';
import type { Ledger } from './ledger';

/** Batches, holds and sources by what names them, found once and made once. */
export class Shared {
  readonly #sources: Map<string, number>;
  readonly #batches = new Map<string, number>();
  readonly #holds = new Map<string, number>();

  constructor(
    readonly ledger: Ledger,
    readonly act: OpenAct,
  ) {
    const known = ledger.rows.prepare('SELECT key, name FROM source ORDER BY key').all() as {
      key: number;
      name: string;
    }[];
    this.#sources = new Map(known.toReversed().map(({ key, name }) => [name.toLowerCase(), key]));
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
    const name = `${madeOn}|${word?.toLowerCase() ?? ''}`;
    const there =
      this.#batches.get(name) ??
      this.ledger.rows
        .where('batch', 'made_on', madeOn)
        .find((batch) => (batch.word?.toLowerCase() ?? '') === (word?.toLowerCase() ?? ''))?.key ??
      this.act.insert('batch', { madeOn, word, note: null }).key;
    this.#batches.set(name, there);
    return there;
  }

  /** Jars of a batch held as long and as warm shared a hold, as far as notes can tell. */
  hold(batch: number, planned: NonNullable<NotesPlan['jars'][number]['hold']>): number {
    const same = (hours: number | null, celsius: number | null): string =>
      `${batch}|${hours}|${celsius?.toFixed(2) ?? ''}`;
    const name = same(planned.hours, planned.planned?.value ?? null);
    const there =
      this.#holds.get(name) ??
      this.ledger.rows
        .where('hold', 'batch', batch)
        .find((hold) => hold.basis === 'notes' && same(hold.hours, hold.planned?.value ?? null) === name)?.key ??
      this.act.insert('hold', {
        batch, startedAt: null, endedAt: null, hours: planned.hours, planned: planned.planned, probe: null, readings: [], basis: 'notes', note: null,
      }).key; // prettier-ignore
    this.#holds.set(name, there);
    return there;
  }
}
