// Ledger files of any size for tests of the window: an invented family written in one act by the ledger itself (recording a
// hundred thousand jars call by call would take minutes).
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SET_WORDS } from '../core/ledger/jar-fields';
import { addHold } from '../main/ledger/entries/hold-entry';
import { addJar } from '../main/ledger/entries/jar-entry';
import { addSeeding } from '../main/ledger/entries/kept-entries';
import { addBatch, addSource } from '../main/ledger/entries/larder-entries';
import { addOutcome } from '../main/ledger/entries/outcome-entry';
import type { OpenAct } from '../main/ledger/facts/open-act';
import type { Seen } from '../main/ledger/entries/outcome-of-jar';
import { Session } from '../main/session';
import { dayAfter, seededNumbers, syntheticFamily } from '../tests/families';

export interface Wanted {
  readonly jars: number;
  readonly shape: 'bushy' | 'line' | 'lines';
  readonly spoiledOneIn?: number;
  /** Days from one batch to the next. */
  readonly daysApart: number;
}

/** When it was written. */
const NOW = '2026-01-01T09:00:00+01:00';
/** The newest jars are still there. */
const ON_SHELF = 6;

const seen = (setWord: Seen['setWord'], spoiledSaid: boolean): Seen => ({
  setWord, spoiledSaid, earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null,
  setByHours: null, setAtTakeOut: null, texture: null, whey: null, tang: null, smell: null, colour: null, ph: null,
  phHow: null, signs: [], seenAt: null, openedDays: null, fibreDidThis: false, bubbles: null, powerCut: null,
  powerCutHours: null, note: null,
}); // prettier-ignore

/** Writes the family under an open act. */
function writeFamily(act: OpenAct, wanted: Wanted): void {
  const records = syntheticFamily({ ...wanted, seed: 7 });
  const random = seededNumbers(11);
  const sources = new Map(
    records.sources.map(({ key, name, culture }) => {
      // One invented strain, declared on a source of that name.
      const strains = [{ genus: 'Genus', species: 'species', designation: name, countPerPiece: null }];
      return [
        key,
        addSource(act, { name, form: culture ? 'culture' : 'capsules', strains, blendTotalPerPiece: 1e9 }),
      ];
    }),
  );
  const batches = new Map<number, { batch: number; hold: number }>();
  const jars = new Map<number, number>();
  for (const jar of records.jars) {
    let made = batches.get(jar.batch);
    if (!made) {
      const madeOn = dayAfter(Math.floor(jar.batch * wanted.daysApart));
      const batch = addBatch(act, { madeOn, word: null, note: null });
      made = { batch, hold: addHold(act, { batch, hours: 36, basis: 'recorded' }) };
      batches.set(jar.batch, made);
    }
    const onShelf = jar.key > wanted.jars - ON_SHELF ? true : null;
    const key = addJar(act, { ...made, letter: jar.letter, state: 'made', onShelf });
    jars.set(jar.key, key);
    const word = random() < 0.12 ? null : (SET_WORDS[Math.floor(random() * SET_WORDS.length)] ?? null);
    if (word !== null || jar.spoiled) addOutcome(act, key, seen(word, jar.spoiled));
  }
  for (const { jar, fromJar, source, volumeMl, pieces } of records.seedings) {
    addSeeding(act, {
      jar: jars.get(jar) ?? 0,
      fromJar: fromJar === null ? null : (jars.get(fromJar) ?? null),
      source: source === null ? null : (sources.get(source) ?? null),
      portion: null,
      part: null,
      package: null,
      amount: volumeMl === null ? { value: pieces ?? 1, unit: 'pieces', typed: null } : { value: volumeMl, unit: 'mL', typed: null },
    }); // prettier-ignore
  }
}

/** @returns the path of a new ledger file in a folder of its own, to be removed by the caller */
export function syntheticLedger(wanted: Wanted): { file: string; folder: string } {
  const folder = mkdtempSync(join(tmpdir(), 'jarline-synthetic-'));
  const file = join(folder, 'jarline.sqlite');
  const session = new Session({
    file,
    mode: 'create',
    now: NOW,
    timeZone: 'Europe/Berlin',
    version: '0.0.0',
  });
  session.ledger.acts.run('notes.bringIn', 'invented', null, (act) => writeFamily(act, wanted));
  session.close();
  return { file, folder };
}
