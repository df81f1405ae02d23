// What judgement makes of a ledger, kept until the next act: evidence read in a few statements, each line judged when it is
// first asked for. All reasoning is core/vigour and core/advice.
import { evidenceOf, type HoldRecord, type JarRecord, type PortionRecord } from '../../core/vigour/evidence';
import { judgeLine, keepersUsual, type LineJudgement } from '../../core/vigour/line';
import { shown } from '../../core/vigour/score';
import type { JarEvidence } from '../../core/vigour/types';
import type { Ledger } from './ledger';

export class Judged {
  readonly evidence: readonly JarEvidence[];
  readonly byKey: ReadonlyMap<number, JarEvidence>;
  readonly lines: readonly number[];
  readonly #scores = new Map<number, ReadonlyMap<number, number>>();
  readonly #judgements = new Map<number, LineJudgement>();
  #keeper: readonly (readonly JarEvidence[])[] | null = null;

  constructor(ledger: Ledger) {
    this.evidence = evidenceOf(ledger.index.family, recordsOf(ledger));
    this.byKey = new Map(this.evidence.map((jar) => [jar.key, jar]));
    this.lines = ledger.index.family.lines.map(({ batch }) => batch);
  }

  line(batch: number): LineJudgement {
    let judgement = this.#judgements.get(batch);
    if (!judgement) {
      this.#keeper ??= keepersUsual(this.lines, this.evidence);
      judgement = judgeLine(batch, this.evidence, this.#keeper, this.lines.length);
      this.#judgements.set(batch, judgement);
    }
    return judgement;
  }

  /** A jar's score, 0 to 100, by the first line it belongs to; null where it has none or is spoiled. */
  scoreOf(key: number): number | null {
    const jar = this.byKey.get(key);
    const line = jar?.lines[0];
    if (!jar || line === undefined || jar.spoiled) return null;
    let scores = this.#scores.get(line);
    if (!scores) {
      const scored = this.line(line).batches.flatMap((batch) => batch.scores);
      scores = new Map(scored.map((one) => [one.jar.key, shown(one.points)]));
      this.#scores.set(line, scores);
    }
    return scores.get(key) ?? null;
  }
}

function recordsOf({ rows, index }: Ledger): JarRecord[] {
  const outcomes = new Map([...rows.all('outcome')].map((outcome) => [outcome.jar, outcome]));
  const holds = new Map<number, HoldRecord>([...rows.all('hold')].map((hold) => [hold.key, hold]));
  const portions = new Map<number, PortionRecord>(
    [...rows.all('portion')].map((portion) => [portion.key, portion]),
  );
  const taken = new Map<number, Map<number, PortionRecord>>();
  for (const seeding of rows.all('seeding')) {
    const portion = seeding.portion === null ? undefined : portions.get(seeding.portion);
    if (!portion) continue;
    const ofJar = taken.get(seeding.jar) ?? new Map<number, PortionRecord>();
    taken.set(seeding.jar, ofJar.set(seeding.key, portion));
  }
  const milks = new Map([...rows.all('jar')].map(({ key, milk }) => [key, milk]));
  return index.family.keys.map((key) => {
    const jar = index.jar(key);
    return {
      key,
      outcome: outcomes.get(key) ?? null,
      additions: jar.additions.map((name) => ({ name })),
      milk: milks.get(key) ?? null,
      hold: jar.hold === null ? null : (holds.get(jar.hold) ?? null),
      portions: taken.get(key) ?? new Map<number, PortionRecord>(),
    };
  });
}

const kept = new WeakMap<Ledger, { readonly act: number; readonly judged: Judged }>();

/** The judgement of a ledger as it now stands. */
export function judgedOf(ledger: Ledger): Judged {
  const act = ledger.rows.count('SELECT max(key) FROM act');
  const known = kept.get(ledger);
  if (known?.act === act) return known.judged;
  const judged = new Judged(ledger);
  kept.set(ledger, { act, judged });
  return judged;
}
