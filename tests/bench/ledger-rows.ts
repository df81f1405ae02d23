// Rows for the benchmarks of the ledger: invented jars, five to a batch, each batch seeded from the one before.
import { addHold } from '../../main/ledger/entries/hold-entry';
import { addJar } from '../../main/ledger/entries/jar-entry';
import { addSeeding } from '../../main/ledger/entries/kept-entries';
import { addBatch, addSource } from '../../main/ledger/entries/larder-entries';
import { addNoteRow } from '../../main/ledger/entries/note-row-entry';
import { addOutcome } from '../../main/ledger/entries/outcome-entry';
import type { OpenAct } from '../../main/ledger/facts/open-act';
import type { Seen } from '../../main/ledger/entries/outcome-of-jar';

const DAY_MS = 86_400_000;
const FIRST = Date.parse('2000-01-01');
const HEADINGS = ['Date', 'Jar', 'Seed', 'Amount', 'Hours', 'Set', 'pH'];
const cellsOf = (day: string, letter: string): Record<string, string> => ({
  Date: day, Jar: letter, Seed: 'the one before', Amount: '3 tbsp', Hours: '36 h', Set: 'firm', pH: '4.3',
}); // prettier-ignore
/** Jars of one batch. */
export const TOGETHER = 5;

const dayOf = (batch: number): string => new Date(FIRST + batch * DAY_MS).toISOString().slice(0, 10);

const addOne = (act: OpenAct, batch: number, hold: number, letter: string): number =>
  addJar(act, {
    batch, letter, hold, state: 'made', vessel: 'quart jar', finalVolume: { value: 946, unit: 'mL', typed: '1 qt' },
    milk: 'whole milk',
  }); // prettier-ignore

const unseen: Seen = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
  setAtTakeOut: null, setWord: 'firm', texture: null, whey: 'a little', tang: null, smell: null, colour: null, ph: 4.3,
  phHow: 'meter', phChecked: true, signs: [], spoiledSaid: false, seenAt: null, openedDays: null, fibreDidThis: false, bubbles: null, powerCut: null,
  powerCutHours: null, note: null,
}; // prettier-ignore

/**
 * The entries of that many jars with batch, hold, seeding, outcome and row of notes: 3.6 a jar, under an open act.
 * @returns how many
 */
export function writeJars(act: OpenAct, jars: number): number {
  act.together();
  let rows = 1;
  const source = addSource(act, { name: 'Blue Tin', form: 'capsules', blendTotalPerPiece: 1e9 });
  let seed: number | null = null;
  for (let written = 0, batchNumber = 0; written < jars; batchNumber++) {
    const batch = addBatch(act, { madeOn: dayOf(batchNumber), word: null, note: null });
    const planned = { value: 38, unit: '°C', typed: '38' } as const;
    const hold = addHold(act, { batch, hours: 36, planned, basis: 'notes' });
    rows += 2;
    let next: number | null = null;
    for (let letter = 0; letter < TOGETHER && written < jars; letter++, written++) {
      const jar = addOne(act, batch, hold, String.fromCharCode(97 + letter));
      addSeeding(act, {
        jar, fromJar: seed, portion: null, part: null, source: seed === null ? source : null, package: null,
        amount: { value: 45, unit: 'mL', typed: '3 tbsp' },
      }); // prettier-ignore
      if (letter % 2 === 0) addOutcome(act, jar, unseen);
      addNoteRow(act, {
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
