// Rows for the benchmarks of the ledger: invented jars, five to a batch, each batch seeded from the one before.
import type { OpenAct } from '../../main/ledger/acts';
import type { RecordKind } from '../../core/ledger/records';
import type { Stored } from '../../main/ledger/projection/records';

const DAY_MS = 86_400_000;
const FIRST = Date.parse('2000-01-01');
const HEADINGS = ['Date', 'Jar', 'Seed', 'Amount', 'Hours', 'Set', 'pH'];
const cellsOf = (day: string, letter: string): Record<string, string> => ({
  Date: day, Jar: letter, Seed: 'the one before', Amount: '3 tbsp', Hours: '36 h', Set: 'firm', pH: '4.3',
}); // prettier-ignore
/** Jars of one batch. */
export const TOGETHER = 5;

const dayOf = (batch: number): string => new Date(FIRST + batch * DAY_MS).toISOString().slice(0, 10);

const jarRow = (batch: number, hold: number, letter: string): Stored['jar'] => ({
  batch, letter, hold, state: 'made', vessel: 'quart jar', finalVolume: { value: 946, unit: 'mL', typed: '1 qt' },
  finalVolumeKnown: null, milk: 'whole milk', milkAmount: null, milkPackage: null, countPerMl: null, onShelf: null,
  goneOn: null, note: null,
}); // prettier-ignore

const unseen: Omit<Stored['outcome'], 'jar'> = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
  setAtTakeOut: null, setWord: 'firm', texture: null, whey: 'a little', tang: null, smell: null, colour: null, ph: 4.3,
  phHow: 'meter', signs: [], spoiledSaid: false, seenAt: null, openedDays: null, fibreDidThis: false, bubbles: null, powerCut: null,
  powerCutHours: null, note: null,
}; // prettier-ignore

/** The rows of that many jars with batch, hold, seeding, outcome and row of notes: 3.6 a jar. @returns how many */
function makeRows(
  insert: <K extends RecordKind>(kind: K, record: Stored[K]) => number,
  jars: number,
): number {
  let rows = 1;
  const source = insert('source', {
    name: 'Blue Tin', form: 'capsules', strains: [], blendTotalPerPiece: 1e9, guaranteed: null, receivedFrom: null,
    knownGenerations: null, note: null,
  }); // prettier-ignore
  let seed: number | null = null;
  for (let written = 0, batchNumber = 0; written < jars; batchNumber++) {
    const batch = insert('batch', { madeOn: dayOf(batchNumber), word: null, note: null });
    const hold = insert('hold', {
      batch, startedAt: null, endedAt: null, hours: 36, planned: { value: 38, unit: '°C', typed: '38' }, probe: null,
      readings: [], basis: 'notes', note: null,
    }); // prettier-ignore
    rows += 2;
    let next: number | null = null;
    for (let letter = 0; letter < TOGETHER && written < jars; letter++, written++) {
      const jar = insert('jar', jarRow(batch, hold, String.fromCharCode(97 + letter)));
      insert('seeding', {
        jar, fromJar: seed, portion: null, part: null, source: seed === null ? source : null, package: null,
        amount: { value: 45, unit: 'mL', typed: '3 tbsp' },
      }); // prettier-ignore
      if (letter % 2 === 0) insert('outcome', { jar, ...unseen });
      insert('noteRow', {
        file: 'notes.csv',
        headings: HEADINGS,
        cells: JSON.stringify(cellsOf(dayOf(batchNumber), String.fromCharCode(97 + letter))),
        cellsSha: `${batch}:${jar}`,
        readSha: null,
        occurrence: 1,
        line: written + 2,
        jar,
      });
      rows += letter % 2 === 0 ? 4 : 3;
      next ??= jar;
    }
    seed = next;
  }
  return rows;
}

/** Under an open act. @returns how many rows */
export function writeJars(act: OpenAct, jars: number): number {
  act.facts.together();
  return makeRows((kind, record) => act.insert(kind, record).key, jars);
}
