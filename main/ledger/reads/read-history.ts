// The history: acts in words, newest first, with what each changed field by field.
import { batchDay, calledDay } from '../../../core/lineage/labels';
import { isDeepStrictEqual } from 'node:util';
import type { JarView, Parsed, Reply } from '../../../core/contract';
import { fieldWords, saysNothing } from '../../../core/ledger/field-words';
import { momentText } from '../../../core/ledger/stored-moments';
import type { RecordKind } from '../../../core/ledger/records';
import { dayLabel } from '../../../core/lineage/labels';
import { actSentence, type ActDone } from '../../../core/says/history-says';
import { changesOf, countOfChanges } from '../facts/act-changes';
import { KIND_WORDS as FACT_WORDS } from '../facts/fact-rows';
import { columnFields, fieldFrom } from '../facts/tables';
import type { Ledger } from '../ledger';
import { type Belongs, factsOfRecord, rootOf } from '../entries/belongs';
import { type ChangedFact, type ChangedRecord, changedRecords } from '../entries/changed-records';
import { Refused } from '../../refusal';
import { type ActRow, undoneActs, undoneTogether, wordsOf } from '../undo';
import { FIELD_TYPES, type FieldType } from './field-types';
import { valueWords } from './read-values';
import { jarViews } from './read-views';

/** What each kind of record is called in a sentence. */
const wordOf = (kind: RecordKind): string => (kind === 'outcome' ? 'outcome' : FACT_WORDS[rootOf(kind)]);

const CHANGES_SHOWN = 40;
const JARS_SHOWN = 4;
/** Facts looked at for as many records: an act of an import makes some hundred thousand. */
const FACTS_LOOKED_AT = 600;

type Shown = Reply<'history.list'>['acts'][number]['changes'][number];
type Fields = Readonly<Record<string, unknown>>;

export function listHistory(ledger: Ledger, input: Parsed<'history.list'>): Reply<'history.list'> {
  const { rows } = ledger;
  const before = input.before === null ? Number.MAX_SAFE_INTEGER : actKey(ledger, input.before);
  const about = input.record === null ? null : recordAsked(ledger, input.record.kind, input.record.id);
  const said = saying(input.text);
  const acts = (
    said
      ? heard(ledger, said, before, input.limit + 1, about)
      : about
        ? rows
            .prepare(
              `WITH fact (key) AS (SELECT value FROM json_each(?))
             SELECT * FROM act WHERE key < ? AND key IN (
               SELECT r.made_in FROM fact JOIN record r ON r.key = fact.key
               UNION SELECT j.act FROM fact JOIN journal j ON j.record = fact.key)
             ORDER BY key DESC LIMIT ?`,
            )
            .all(JSON.stringify(factsOfRecord(rows, about)), before, input.limit + 1)
        : rows
            .prepare('SELECT * FROM act WHERE key < ? ORDER BY key DESC LIMIT ?')
            .all(before, input.limit + 1)
  ) as ActRow[];
  const undone = undoneActs(rows);
  return {
    acts: acts.slice(0, input.limit).map((act) => ({
      act: act.uid,
      kind: act.kind,
      says: wordsOf(act),
      at: momentText(act.at, act.at_off),
      why: act.why,
      undone: undone.has(act.key),
      undoes:
        act.undoes === null
          ? null
          : String(rows.prepare('SELECT uid FROM act WHERE key = ?').pluck().get(act.undoes)),
      ...changesShown(ledger, act, about),
    })),
    more: acts.length > input.limit,
  };
}

/** Whether an act's sentence, its day in words or its reason holds each word that was typed; null where none was. */
function saying(text: string): ((act: ActRow) => boolean) | null {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return null;
  return (act) => {
    const day = momentText(act.at, act.at_off).slice(0, 10);
    const told = `${wordsOf(act)} ${act.why ?? ''} ${dayLabel(day, true)} ${day}`.toLowerCase();
    return words.every((word) => told.includes(word));
  };
}

/** Acts that say so, newest first, at most so many. */
function heard(
  { rows }: Ledger,
  says: (act: ActRow) => boolean,
  before: number,
  limit: number,
  about: Belongs | null,
): ActRow[] {
  const found: ActRow[] = [];
  const of = about === null ? null : new Set(factsOfRecord(rows, about));
  const touches = (act: ActRow): boolean =>
    of === null || [...changesOf(rows, act.key)].some(({ key }) => of.has(key));
  const all = rows.prepare('SELECT * FROM act WHERE key < ? ORDER BY key DESC').all(before) as ActRow[];
  for (const act of all) {
    if (!says(act) || !touches(act)) continue;
    found.push(act);
    if (found.length === limit) break;
  }
  return found;
}

/** The first few of the jars that were touched, as they are now. */
function jarsShown(
  ledger: Ledger,
  touched: readonly (ChangedRecord | ChangedFact)[],
): { jars: JarView[]; moreJars: number } {
  const keys = new Set<number>();
  for (const one of touched) {
    if (!('of' in one)) continue;
    if (one.of.kind === 'jar' || one.of.kind === 'outcome') keys.add(one.of.key);
    else {
      const jar = (one.after ?? one.before)?.jar;
      if (typeof jar === 'number') keys.add(jar);
    }
  }
  const held = [...keys].filter((key) => ledger.index.family.has(key));
  return {
    jars: jarViews(ledger, held.slice(0, JARS_SHOWN)),
    moreJars: Math.max(0, held.length - JARS_SHOWN),
  };
}

/** What undoing some acts would undo. */
export function standingOn({ rows }: Ledger, { acts }: Parsed<'act.standing'>): Reply<'act.standing'> {
  const asked = new Set(acts);
  const told = undoneTogether(rows, acts).map((act) => ({ act: act.uid, says: wordsOf(act) }));
  return {
    acts: told.filter(({ act }) => asked.has(act)),
    later: told.filter(({ act }) => !asked.has(act)),
  };
}

function actKey(ledger: Ledger, uid: string): number {
  const key = ledger.rows.prepare('SELECT key FROM act WHERE uid = ?').pluck().get(uid);
  // An act this ledger does not have is before nothing: the list begins anew.
  return typeof key === 'number' ? key : Number.MAX_SAFE_INTEGER;
}

/** The record behind an id, also one that is gone. An outcome goes by its jar. @throws Refused 'not found' */
function recordAsked({ rows }: Ledger, kind: RecordKind, uid: string): Belongs {
  const found = rows.recordOf(uid);
  if (!found || found.kind !== rootOf(kind)) throw new Refused('not found', { kind: wordOf(kind) });
  return { kind, key: found.key };
}

function changesShown(
  ledger: Ledger,
  act: ActRow,
  about: Belongs | null,
): { told: string; changes: Shown[]; moreChanges: number; jars: JarView[]; moreJars: number } {
  const { rows } = ledger;
  const touched = changedRecords(rows, act.key, changesOf(rows, act.key, { limit: FACTS_LOOKED_AT }));
  const asked = touched.filter((one) => !about || ('of' in one && isDeepStrictEqual(one.of, about)));
  const changes = asked.flatMap((one) => ('of' in one ? recordShown(ledger, one) : factShown(ledger, one)));
  const unseen = about ? 0 : Math.max(0, countOfChanges(rows, act.key) - FACTS_LOOKED_AT);
  const shown = jarsShown(ledger, asked);
  return {
    told: actSentence({
      kind: act.kind,
      says: wordsOf(act),
      about: shown.jars.map(({ label }) => label),
      jars: jarsMade(ledger, act),
      ...doneBy(ledger, touched),
    }),
    changes: changes.slice(0, CHANGES_SHOWN),
    moreChanges: unseen + Math.max(0, changes.length - CHANGES_SHOWN),
    ...shown,
  };
}

/** How many jars it made: of an import more than are looked at. */
const jarsMade = ({ rows }: Ledger, { key }: ActRow): number =>
  Number(rows.prepare(`SELECT count(*) FROM record WHERE made_in = ? AND kind = 'jar'`).pluck().get(key));

/** What an act did, for its sentence. */
function doneBy(
  ledger: Ledger,
  touched: readonly (ChangedRecord | ChangedFact)[],
): Omit<ActDone, 'kind' | 'says' | 'jars' | 'about'> {
  const records = touched.filter((one) => 'of' in one);
  const made = (kind: RecordKind): Fields[] =>
    records.flatMap(({ of, before, after }) => (of.kind === kind && !before && after ? [after] : []));
  const words = (type: FieldType, values: readonly unknown[]): string[] => [
    ...new Set(values.flatMap((value) => valueWords(ledger, type, value) ?? [])),
  ];
  const additions = made('addition');
  const stirred = new Set(additions.map(({ jar }) => jar));
  const jars = records.filter(({ of, before, after }) => of.kind === 'jar' && !before && after);
  const plain = jars.some(({ of }) => !stirred.has(of.key));
  return {
    seeds: [
      ...words('jar', made('seeding').map(({ fromJar }) => fromJar)),
      ...words('source', made('seeding').map(({ source }) => source)),
    ],
    stirredIn: jars.length === 0 ? [] : [...(plain ? ['plain'] : []), ...words('plain', additions.map(({ name }) => name))],
    setWords: words('plain', made('outcome').map(({ setWord }) => setWord)),
    corrected: records.flatMap((one) => {
      const of = one.of.kind === 'outcome' ? labelOfJar(ledger, one.of.key) : null;
      return shownOf(ledger, one).flatMap(({ field, label, before, after }) =>
        field === null ? [] : [{ of: of ?? label, field, before, after }],
      );
    }),
  };
} // prettier-ignore

/** What changed of a record; where none of its fields tells of it, the facts by themselves. */
function recordShown(ledger: Ledger, changed: ChangedRecord): Shown[] {
  const shown = shownOf(ledger, changed);
  return shown.length > 0 ? shown : changed.facts.flatMap((one) => factShown(ledger, one));
}

function shownOf(ledger: Ledger, { of: { kind, key }, before, after }: ChangedRecord): Shown[] {
  const base = {
    kind,
    id: ledger.rows.uidOf(rootOf(kind), key),
    label: labelOf(ledger, kind, key, after ?? before ?? {}),
  };
  if (!before || !after) {
    const says = summary(ledger, kind, after ?? before ?? {});
    return [{ ...base, field: null, before: before ? says : null, after: after ? says : null }];
  }
  return typesOf(kind)
    .filter(([field]) => !isDeepStrictEqual(before[field] ?? null, after[field] ?? null))
    .map(([field, type]) => ({
      ...base,
      field: fieldWords(kind, field),
      before: valueWords(ledger, type, before[field]),
      after: valueWords(ledger, type, after[field]),
    }));
}

const typesOf = (kind: RecordKind): [string, FieldType][] => Object.entries(FIELD_TYPES[kind]);

/** A fact that is told by itself. */
function factShown(ledger: Ledger, { fact, key, before, after }: ChangedFact): Shown[] {
  const words = columnFields(fact).flatMap((field) => {
    const said = (form: typeof before): string | null =>
      form === null || (typeof form[field.columns[0] ?? ''] === 'number' && field.as in FACT_WORDS)
        ? null
        : valueWords(ledger, plainly(field.as), fieldFrom(form, field));
    return [{ field: fieldWords(fact, field.field), before: said(before), after: said(after) }];
  });
  const base = { kind: fact, id: ledger.rows.uidOf(fact, key), label: FACT_WORDS[fact] };
  if (before && after) {
    return words.filter((one) => one.before !== one.after).map((one) => ({ ...base, ...one }));
  }
  const says = (side: 'before' | 'after'): string =>
    words
      .flatMap((one) => (one[side] === null ? [] : [`${one.field}: ${one[side]}`]))
      .join('; ')
      .slice(0, 500);
  return [
    { ...base, field: null, before: before ? says('before') : null, after: after ? says('after') : null },
  ];
}

const PRINTED: ReadonlySet<string> = new Set([
  'flag',
  'list',
  'amount',
  'temperature',
  'price',
  'document',
  'jar',
  'hold',
  'portion',
  'source',
  'package',
]);
/** How a fact's field is printed: what the records print in a way of its own, else as it is. */
const plainly = (as: string): FieldType => (PRINTED.has(as) ? (as as FieldType) : 'plain');

const labelOfJar = (ledger: Ledger, key: unknown): string =>
  ledger.index.jars.get(Number(key))?.label ?? 'a jar';

/** What a record is called in the list. */
function labelOf(ledger: Ledger, kind: RecordKind, key: number, fields: Fields): string {
  if (kind === 'jar') return labelOfJar(ledger, key);
  if (kind === 'outcome') return `${wordOf(kind)} of ${labelOfJar(ledger, key)}`;
  if (kind === 'batch') {
    const row = ledger.rows.find('batch', key);
    const { madeOn, word } = fields.madeOn === undefined ? fields : (row ?? fields);
    const day =
      valueWords(ledger, 'plain', fields.madeOn ?? madeOn) ?? (row ? batchDay(calledDay(row), true) : null);
    return ['batch of', day ?? 'a day not known', fields.word ?? word].filter(Boolean).join(' ');
  }
  if (kind === 'preferences') return 'preferences';
  const told =
    fields.jar === undefined && fields.name === undefined
      ? (ledger.rows.find(rootOf(kind), key) ?? fields)
      : fields;
  const { name, jar } = told as { name?: unknown; jar?: unknown };
  if (typeof name === 'string') return name;
  if (kind === 'seeding') return `seed of ${labelOfJar(ledger, jar)}`;
  if (kind === 'hold') return 'time in warmth';
  if (jar !== undefined && jar !== null) return `${wordOf(kind)} of ${labelOfJar(ledger, jar)}`;
  return wordOf(kind);
}

/** The fields of a record that came or went, in one line; empty where nothing was said of it. */
function summary(ledger: Ledger, kind: RecordKind, fields: Fields): string {
  const parts = typesOf(kind).flatMap(([field, type]) => {
    const value = valueWords(ledger, type, fields[field]);
    const named = ['jar', 'batch', 'letter', 'name'].includes(field);
    return value === null || named || saysNothing(field, value)
      ? []
      : [`${fieldWords(kind, field)}: ${value}`];
  });
  return parts.join('; ').slice(0, 500);
}
