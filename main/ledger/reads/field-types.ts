// How the fields of records are printed in the history.
import type { RecordKind } from '../../../core/ledger/records';

/** How a field is printed. A kind: the key of such a record. */
export type FieldType =
  | 'plain'
  | 'document'
  | 'flag'
  | 'list'
  | 'amount'
  | 'temperature'
  | 'price'
  | 'batch'
  | 'jar'
  | 'hold'
  | 'portion'
  | 'source'
  | 'package';

/** The fields of each kind of record, in the order in which they are told. */
export const FIELD_TYPES: { readonly [K in RecordKind]: Readonly<Record<string, FieldType>> } = {
  source: {
    name: 'plain', form: 'plain', strains: 'list', blendTotalPerPiece: 'plain', guaranteed: 'plain', receivedFrom: 'plain',
    knownGenerations: 'plain', note: 'plain',
  },
  package: {
    of: 'plain', source: 'source', name: 'plain', size: 'amount', price: 'price', boughtOn: 'plain', openedOn: 'plain',
    bestBefore: 'plain', note: 'plain',
  },
  batch: { madeOn: 'plain', madeFrom: 'plain', madeTo: 'plain', word: 'plain', note: 'plain' },
  hold: {
    batch: 'batch', startedAt: 'plain', endedAt: 'plain', hours: 'plain', planned: 'temperature', probe: 'plain',
    readings: 'list', basis: 'plain', note: 'plain',
  },
  jar: {
    batch: 'batch', letter: 'plain', hold: 'hold', state: 'plain', vessel: 'plain', finalVolume: 'amount',
    finalVolumeKnown: 'plain', milk: 'plain', milkAmount: 'amount', milkPackage: 'package', countPerMl: 'plain',
    onShelf: 'flag', goneOn: 'plain', note: 'plain',
  },
  addition: { jar: 'jar', name: 'plain', planned: 'amount', actual: 'amount', package: 'package' },
  portion: {
    jar: 'jar', part: 'plain', place: 'plain', pieces: 'plain', amount: 'amount', keptOn: 'plain', goneOn: 'plain',
    reserve: 'flag', note: 'plain',
  },
  seeding: {
    jar: 'jar', fromJar: 'jar', portion: 'portion', part: 'plain', source: 'source', package: 'package', amount: 'amount',
  },
  outcome: {
    jar: 'jar', earlyCheckHours: 'plain', earlySet: 'plain', earlyPh: 'plain', earlySour: 'flag', setAfterHours: 'plain',
    setByHours: 'plain', setAtTakeOut: 'flag', sour: 'flag', setWord: 'plain', texture: 'plain', whey: 'plain', tang: 'plain',
    smell: 'plain', colour: 'plain', ph: 'plain', phHow: 'plain', phChecked: 'flag', signs: 'list', bubbles: 'plain', powerCut: 'flag',
    powerCutHours: 'plain', spoiledSaid: 'flag', seenAt: 'plain', openedDays: 'plain', fibreDidThis: 'flag', note: 'plain',
  },
  photograph: { jar: 'jar', sha256: 'plain', width: 'plain', height: 'plain', caption: 'plain' },
  clearing: { jar: 'jar', of: 'jar', reason: 'plain' },
  preferences: {
    theme: 'plain', temperatures: 'plain', volumes: 'plain', spoons: 'plain', dates: 'plain', currency: 'plain',
    seedFridgeDays: 'plain', seedFreezerDays: 'plain', mostGenerations: 'plain', jarFollowsHours: 'plain',
  },
  noteRow: {
    file: 'plain', headings: 'list', cells: 'document', cellsSha: 'plain', readSha: 'plain', occurrence: 'plain', line: 'plain',
    jar: 'jar',
  },
  choice: {
    line: 'batch', jar: 'jar', portion: 'portion', label: 'plain', place: 'plain', modelVersion: 'plain', advice: 'document',
  },
}; // prettier-ignore
