// The records that the calls take and give, as they are put together from facts: a jar with its milk, its stay and what
// became of it, an outcome from what was observed. Inside, a record points at another by key; ids are for the outside.
import type {
  Addition,
  Batch,
  Choice,
  Clearing,
  Hold,
  Jar,
  Outcome,
  Package,
  Photograph,
  Portion,
  Preferences,
  RecordKind,
  Seeding,
  Source,
} from '../../../core/ledger/records';

/** A record without its uid and with keys in place of the uids of `R`. */
type Keyed<T, R extends keyof T = never> = {
  [F in Exclude<keyof T, 'id'>]: F extends R ? (null extends T[F] ? number | null : number) : T[F];
};

/** A row of a keeper's notes that came in: found again when the same file, or a longer one, is brought in later. */
export interface NoteRow {
  /** What makes it the same file, in whatever form the reader of notes chooses; at most 500 characters. */
  readonly file: string;
  /** The headings that it came in under, in order. */
  readonly headings: readonly string[];
  /** Cell by heading, as JSON; null where it came without them. */
  readonly cells: string | null;
  /** Its cells, hashed. */
  readonly cellsSha: string;
  /** What was read of it, hashed. */
  readonly readSha: string | null;
  /** 1 for the first row with these cells in the file, 2 for the second, … */
  readonly occurrence: number;
  /** Line in the file when it came in, header 1. */
  readonly line: number;
  /** Key of the jar it became; null for a row that became no jar. */
  readonly jar: number | null;
}

/** What is put together of each kind. */
export interface Stored {
  source: Keyed<Source>;
  package: Keyed<Package, 'source'>;
  /** madeOn is null only for the batch that stands for a lost jar of unknown day. */
  batch: Omit<Keyed<Batch>, 'madeOn'> & { madeOn: string | null };
  hold: Keyed<Hold, 'batch'>;
  jar: Keyed<Jar, 'batch' | 'hold' | 'milkPackage'>;
  addition: Keyed<Addition, 'jar' | 'package'>;
  portion: Keyed<Portion, 'jar'>;
  seeding: Keyed<Seeding, 'jar' | 'fromJar' | 'portion' | 'source' | 'package'>;
  /** `sour` may be left out by those who don't know of it: what was noted stays. */
  outcome: Omit<Keyed<Outcome, 'jar'>, 'sour'> & Pick<Outcome, 'sour'>;
  photograph: Keyed<Photograph, 'jar'>;
  clearing: Keyed<Clearing, 'jar' | 'of'>;
  preferences: Keyed<Preferences>;
  noteRow: NoteRow;
  choice: Keyed<Choice, 'line' | 'jar' | 'portion'>;
}

/** A record with the key and the id of the fact at its root. An outcome has those of its jar: it is no fact of its own. */
export type Row<K extends RecordKind> = Stored[K] & { readonly key: number; readonly uid: string };

/** How a field is printed. A kind: the key of such a record. */
export type FieldType =
  'plain' | 'document' | 'flag' | 'list' | 'amount' | 'temperature' | 'price' | RecordKind;

export const FIELD_TYPES: {
  readonly [K in RecordKind]: { readonly [F in keyof Stored[K]]: FieldType };
} = {
  source: {
    name: 'plain', form: 'plain', strains: 'list', blendTotalPerPiece: 'plain', guaranteed: 'plain', receivedFrom: 'plain',
    knownGenerations: 'plain', note: 'plain',
  },
  package: {
    of: 'plain', source: 'source', name: 'plain', size: 'amount', price: 'price', boughtOn: 'plain', openedOn: 'plain',
    bestBefore: 'plain', note: 'plain',
  },
  batch: { madeOn: 'plain', word: 'plain', note: 'plain' },
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
    smell: 'plain', colour: 'plain', ph: 'plain', phHow: 'plain', signs: 'list', bubbles: 'plain', powerCut: 'flag',
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
