// Every kind of record that the calls know, as it is put together from facts and taken apart into them.
import type { RecordKind } from '../../../core/ledger/records';
import type { OpenAct } from '../facts/open-act';
import type { Rows as FactRows } from '../facts/fact-rows';
import type { FactKind, Row as FactRow } from '../facts/tables';
import { heldJar, jarFrom, putJar } from './jar';
import {
  additionFrom, heldAddition, heldPortion, heldSeeding, portionFrom, putAddition, putPortion, putSeeding, seedingFrom,
} from './kept'; // prettier-ignore
import {
  batchFrom, heldSource, noted, packageFrom, photographFrom, putBatch, putPackage, putPhotograph, putSource, sourceFrom,
} from './larder'; // prettier-ignore
import { clearingFrom, heldLift, putLift } from './lifts';
import { heldNoteRow, noteRowFrom, putNoteRow } from './note-rows';
import { askedOf } from './put';
import type { Stored } from './records';
import { heldHold, holdFrom, putHold } from './warmth';

/** A kind of record with a fact of its own at the root. An outcome has none: it is what observations amount to. */
export type RootedKind = Exclude<RecordKind, 'outcome'>;

export interface Form<K extends RootedKind> {
  /** The fact at the root, whose key and id are the record's. */
  readonly root: FactKind;
  readonly read: (facts: FactRows, row: never) => Stored[K];
  /** Adds it, or changes it where its root is given. @returns its key */
  readonly put: (act: OpenAct, facts: FactRows, there: never, wanted: Stored[K]) => number;
  /** Facts that hang on the root and go with it, by kind and column. */
  readonly hanging: readonly (readonly [FactKind, string])[];
}

const form = <K extends RootedKind, R extends FactKind>(
  root: R,
  read: (facts: FactRows, row: FactRow<R>) => Stored[K],
  put: (act: OpenAct, facts: FactRows, there: FactRow<R> | undefined, wanted: Stored[K]) => number,
  hanging: readonly (readonly [FactKind, string])[] = [],
): Form<K> => ({ root, read, put, hanging }) as Form<K>;

const never = (kind: string): never => {
  throw new Error(`a ${kind} is never changed`);
};

export const FORMS: { readonly [K in RootedKind]: Form<K> } = {
  source: form(
    'source',
    (facts, row) => sourceFrom(heldSource(askedOf(facts), row)),
    (act, facts, there, wanted) => putSource(act, there && heldSource(askedOf(facts), there), wanted),
  ),
  package: form(
    'package',
    (facts, row) => packageFrom(noted(askedOf(facts), 'package', row)),
    (act, facts, there, wanted) => putPackage(act, there && noted(askedOf(facts), 'package', there), wanted),
  ),
  batch: form(
    'batch',
    (facts, row) => batchFrom(noted(askedOf(facts), 'batch', row)),
    (act, facts, there, wanted) => putBatch(act, there && noted(askedOf(facts), 'batch', there), wanted),
  ),
  hold: form(
    'hold',
    (facts, row) => holdFrom(facts, heldHold(askedOf(facts), row)),
    (act, facts, there, wanted) => putHold(act, facts, there && heldHold(askedOf(facts), there), wanted),
    [['series', 'hold'], ['interruption', 'hold'], ['remark', 'hold']],
  ),
  jar: form(
    'jar',
    (facts, row) => jarFrom(heldJar(askedOf(facts), row)),
    (act, facts, there, wanted) => putJar(act, there && heldJar(askedOf(facts), there), wanted),
  ),
  addition: form(
    'addition',
    (facts, row) => additionFrom(heldAddition(askedOf(facts), row)),
    (act, facts, there, wanted) => putAddition(act, there && heldAddition(askedOf(facts), there), wanted),
    [['use', 'addition']],
  ),
  portion: form(
    'portion',
    (facts, row) => portionFrom(heldPortion(askedOf(facts), row)),
    (act, facts, there, wanted) => putPortion(act, there && heldPortion(askedOf(facts), there), wanted),
  ),
  seeding: form(
    'seeding',
    (facts, row) => seedingFrom(heldSeeding(askedOf(facts), row)),
    (act, facts, there, wanted) => putSeeding(act, there && heldSeeding(askedOf(facts), there), wanted),
    [['use', 'seeding'], ['remark', 'seeding']],
  ),
  photograph: form(
    'photograph',
    (facts, row) => photographFrom(noted(askedOf(facts), 'photograph', row)),
    (act, facts, there, wanted) => putPhotograph(act, there && noted(askedOf(facts), 'photograph', there), wanted),
    [['remark', 'photograph']],
  ),
  clearing: form(
    'lift',
    (facts, row) => clearingFrom(heldLift(facts, row)),
    (act, facts, there, wanted) => (there ? never('lift') : putLift(act, askedOf(facts), wanted)),
    [['liftKnew', 'lift']],
  ),
  preferences: form(
    'preferences',
    (_facts, { key: _key, uid: _uid, ...row }) => row,
    (act, _facts, there, wanted) => {
      if (!there) return act.insert('preferences', wanted).key;
      act.update('preferences', there.key, wanted);
      return there.key;
    },
  ),
  noteRow: form(
    'noteRow',
    (facts, row) => noteRowFrom(heldNoteRow(facts, row)),
    (act, facts, there, wanted) => (there ? never('row of notes') : putNoteRow(act, facts, wanted)),
    [['noteAnswer', 'note_row']],
  ),
  choice: form(
    'choice',
    (_facts, { key: _key, uid: _uid, ...row }) => row,
    (act, _facts, there, wanted) => (there ? never('choice') : act.insert('choice', wanted).key),
  ),
}; // prettier-ignore
