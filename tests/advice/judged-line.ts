// A line as it is judged, from nothing but how its jars set: a batch a week, each seeded by the first jar of the one before.
import { lineTold, type LineTold } from '../../core/advice/line-told';
import { USUAL_TIME_CONSTANT } from '../../core/growth/time-constant';
import type { SetWord } from '../../core/ledger/records';
import { evidenceOf, MADE_AS_EVER, type JarRecord } from '../../core/vigour/evidence';
import { judgeLine, keepersUsual, type LineJudgement } from '../../core/vigour/line';
import { unseen } from '../ledger/ledger-files';
import { familyOf, type Told } from '../lineage/short-families';

const DAY = 86_400_000;
const dayOf = (n: number): string => new Date(Date.parse('2026-01-04') + n * DAY).toISOString().slice(0, 10);

/** What was written down of a jar: how it set, that it spoiled, or nothing. */
export type Came = SetWord | 'spoiled' | null;

export function judgedLine(batches: readonly (readonly Came[])[]): LineJudgement {
  const told: Told[] = [];
  const records: JarRecord[] = [];
  const keyOf = (batch: number, jar: number): number => 10 * batch + jar + 1;
  batches.forEach((jars, at) =>
    jars.forEach((came, i) => {
      const key = keyOf(at + 1, i);
      const spoiled = came === 'spoiled';
      told.push({
        key, batch: at + 1, madeOn: dayOf(7 * at), hold: at + 1, letter: 'abcdef'[i] ?? 'x', label: `jar ${key}`, spoiled,
        from: at === 0 ? [{ source: 1, pieces: 10 }] : [{ fromJar: keyOf(at, 0), volumeMl: 45 }],
      }); // prettier-ignore
      records.push({
        key, outcome: came === null ? null : { ...unseen, setAtTakeOut: true, setWord: spoiled ? null : came }, additions: [], milk: 'whole milk',
        made: MADE_AS_EVER, hold: null, follows: USUAL_TIME_CONSTANT, portions: new Map(),
      }); // prettier-ignore
    }),
  );
  const evidence = evidenceOf(familyOf(told), records);
  return judgeLine(1, evidence, keepersUsual([1], evidence), 1);
}

export const toldBy = (batches: readonly (readonly Came[])[]): LineTold => lineTold(judgedLine(batches));

/** So many batches of three jars that come out alike up to one of them, and otherwise after it. */
export const wearing = (batches: number, after: number, then: Came = 'runny'): Came[][] =>
  Array.from({ length: batches }, (_, i) => Array.from({ length: 3 }, () => (i < after ? 'firm' : then)));
