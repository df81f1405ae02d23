// A fact that the tables have not taken, as the rule book looks at it: their own rules hold whoever writes, and know no sentence.
import type { RefusedRow } from '../facts/open-act';
import type { Rows } from '../facts/fact-rows';
import { fromColumns } from '../facts/tables';
import type { Pending } from './load';

const NOTHING_SEEN = {
  portion: null, day: null, at: null, toldOn: null, daysOpen: null, acidity: [], setAfterHours: null, setByHours: null, setAtTakeOut: null,
  out: false, powerCutHours: null,
} as const; // prettier-ignore

/** @returns null where the book asks nothing of such a fact */
export function pendingOf(facts: Rows, { kind, key, columns }: RefusedRow): Pending | null {
  const own = key ?? Number.MAX_SAFE_INTEGER;
  if (kind === 'batch' && key !== null) {
    const { madeOn: day, madeFrom, madeTo } = fromColumns('batch', columns);
    return { day: { batch: key, day, first: day ?? madeFrom, last: day ?? madeTo } };
  }
  if (kind === 'hold') {
    const { began, ended, hours } = fromColumns('hold', columns);
    return { hold: { key: own, began, ended, hours } };
  }
  if (kind === 'stay') {
    const { jar, hold, came, went } = fromColumns('stay', columns);
    return { stay: { key: own, jar, hold, came, went } };
  }
  if (kind === 'acidity') {
    const { observation, ph } = fromColumns('acidity', columns);
    const { jar } = facts.get('observation', observation);
    return { observation: { ...NOTHING_SEEN, jar, acidity: [ph] } };
  }
  if (kind === 'observation') {
    const { jar, stage, setState, setAfterHours, setByHours, powerCutHours } = fromColumns(
      'observation',
      columns,
    );
    const setAtTakeOut = stage !== 'take-out' || setState === null ? null : setState === 'set';
    return { observation: { ...NOTHING_SEEN, jar, setAfterHours, setByHours, setAtTakeOut, powerCutHours } };
  }
  if (kind !== 'seeding') return null;
  const { jar, fromJar, portion, actual: amount } = fromColumns('seeding', columns);
  return { seeding: { jar, fromJar, portion, amount } };
}
