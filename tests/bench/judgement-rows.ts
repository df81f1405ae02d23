// Rows for the benchmark of judgement: invented lines of five jars a batch, each batch seeded from the one before.
import { seededRandom } from '../../core/advice/random';
import { SET_WORDS } from '../../core/ledger/jar-fields';
import { addHold } from '../../main/ledger/entries/hold-entry';
import { addJar } from '../../main/ledger/entries/jar-entry';
import { addSeeding } from '../../main/ledger/entries/kept-entries';
import { addBatch, addSource } from '../../main/ledger/entries/larder-entries';
import { addOutcome } from '../../main/ledger/entries/outcome-entry';
import type { OpenAct } from '../../main/ledger/facts/open-act';
import type { Seen } from '../../main/ledger/entries/outcome-of-jar';

const DAY_MS = 86_400_000;
const LAST = Date.parse('2031-07-30');
const TOGETHER = 5;

const unseen: Seen = {
  earlyCheckHours: 8, earlySet: null, earlyPh: 5.2, earlySour: null, setAfterHours: 11, setByHours: 13,
  setAtTakeOut: null, setWord: 'firm', texture: null, whey: 'a little', tang: null, smell: null, colour: null, ph: 4.3,
  phHow: 'meter', phChecked: true, signs: [], bubbles: null, powerCut: null, powerCutHours: null, spoiledSaid: false, seenAt: null,
  openedDays: null, fibreDidThis: false, note: null,
}; // prettier-ignore

/** Writes the lines. Batches of a line are two days apart; only the newest two are said to be on the shelf. */
export function writeLines(
  act: OpenAct,
  lines: number,
  batches: number,
): { readonly founding: number; readonly newest: number } {
  const random = seededRandom(lines);
  const source = addSource(act, { name: 'Blue Tin', form: 'capsules', blendTotalPerPiece: 1e9 });
  let [founding, newest] = [0, 0];
  for (let line = 0; line < lines; line++) {
    let seed: number | null = null;
    for (let index = 0; index < batches; index++) {
      const day = LAST - (batches - 1 - index) * 2 * DAY_MS;
      const madeOn = new Date(day).toISOString().slice(0, 10);
      const batch = addBatch(act, { madeOn, word: `line ${line}`, note: null });
      if (index === 0) founding = batch;
      const planned = { value: 38, unit: '°C', typed: '38' } as const;
      const hold = addHold(act, { batch, hours: 36, planned, basis: 'recorded' });
      const level = Math.round(3 + random() - 0.5);
      for (let letter = 0; letter < TOGETHER; letter++) {
        const jar = addJar(act, {
          batch, letter: String.fromCharCode(97 + letter), hold, state: 'made', vessel: 'quart jar',
          finalVolume: { value: 946, unit: 'mL', typed: '1 qt' }, milk: 'whole milk', onShelf: index >= batches - 2,
        }); // prettier-ignore
        addSeeding(act, {
          jar, fromJar: seed, portion: null, part: null, source: seed === null ? source : null, package: null,
          amount: { value: 45, unit: 'mL', typed: '3 tbsp' },
        }); // prettier-ignore
        const setWord = SET_WORDS[Math.min(4, level + (random() < 0.2 ? 1 : 0))] ?? 'firm';
        addOutcome(act, jar, { ...unseen, setWord, ph: 4.3 + random() / 10 });
        newest = jar;
      }
      seed = newest;
    }
  }
  return { founding, newest };
}
