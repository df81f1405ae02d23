// What an act made new, and what stood before it, read from the journal.
import type { Fresh } from '../../../core/rules/consents';
import type { JarFact } from '../../../core/rules/asked-facts';
import { actsOf, type Change, changesOf } from '../facts/act-changes';
import type { Columns, FactKind } from '../facts/tables';
import type { Rows } from '../facts/fact-rows';
import { middleDay } from '../../../core/quantities/day-ranges';
import { rangeOf } from '../derived/family-of-rows';
import { whereabouts } from '../entries/where-it-stands';

const NOTHING: Omit<Fresh, 'labels'> = {
  seedings: new Set(), kept: new Set(), moved: new Set(), seen: new Set(), looked: new Set(), reserves: new Set(), ends: new Set(),
  stays: new Set(), mistakes: new Set(),
}; // prettier-ignore

/** Whether a fact is new, or one of these columns is another than before. */
const isNewly = ({ before, after }: Change, ...columns: string[]): boolean =>
  after !== null &&
  (before === null || columns.some((column) => (before[column] ?? null) !== (after[column] ?? null)));

/**
 * Seedings by a jar that did not seed the same jar before: one exchanged for another, of a pot, say, is no new seed. What a
 * planned jar was to be seeded from is told anew when it is made.
 */
function newSeedings(rows: Rows, changes: readonly Change[]): Set<number> {
  const edge = (form: Columns | null): string | null =>
    form && typeof form.from_jar === 'number' ? `${form.jar} ${form.from_jar}` : null;
  const seedings = changes.filter(({ kind }) => kind === 'seeding');
  const there = new Set(seedings.map(({ before }) => edge(before)));
  const made = seedings.filter(({ before, after }) => edge(after) !== null && edge(after) !== edge(before));
  const keys = new Set(made.map(({ key }) => key));
  const stoodBeside = (form: Columns): boolean =>
    rows
      .where('seeding', 'jar', Number(form.jar))
      .some(({ key, fromJar }) => fromJar === form.from_jar && !keys.has(key));
  const fresh = new Set(
    made.filter(({ after }) => after && !there.has(edge(after)) && !stoodBeside(after)).map(({ key }) => key),
  );
  for (const { kind, key: jar, before, after } of changes) {
    if (kind !== 'jar' || before === null || before.state === 'made' || after?.state !== 'made') continue;
    for (const { key, fromJar } of rows.where('seeding', 'jar', jar)) if (fromJar !== null) fresh.add(key);
  }
  return fresh;
}

/** Jars that are new, came back, or have another letter, state, day or word than before an act: in one statement. */
const RELABELLED = `
  SELECT j.key FROM record r JOIN jar j ON j.key = r.key WHERE r.made_in = @act
  UNION SELECT j.key FROM journal w JOIN jar j ON j.key = w.record WHERE w.act = @act AND (w.op = 'back'
    OR json_extract(w.before, '$.letter') IS NOT j.letter OR json_extract(w.before, '$.state') IS NOT j.state)
  UNION SELECT j.key FROM journal w JOIN batch b ON b.key = w.record JOIN jar j ON j.batch = b.key
    WHERE w.act = @act AND (json_extract(w.before, '$.made_on') IS NOT b.made_on OR json_extract(w.before, '$.made_from') IS NOT b.made_from
      OR json_extract(w.before, '$.made_to') IS NOT b.made_to OR json_extract(w.before, '$.word') IS NOT b.word)`;

/**
 * What an act made new.
 * @param undone it is an undo or a redo: all it brings was said before, and only labels and days can meet what is new
 */
export function freshIn(rows: Rows, act: number, undone: boolean): Fresh {
  const labels = new Set(rows.prepare(RELABELLED).pluck().all({ act }) as number[]);
  if (undone) return { ...NOTHING, labels };
  const changes = [...changesOf(rows, act)];
  const keys = (is: (change: Change) => boolean, column?: string): Set<number> =>
    new Set(
      changes.flatMap((change) => {
        const key = column === undefined ? change.key : change.after?.[column];
        return typeof key === 'number' && is(change) ? [key] : [];
      }),
    );
  const of =
    (kind: FactKind, ...columns: string[]): ((change: Change) => boolean) =>
    (change) =>
      change.kind === kind && isNewly(change, ...columns);
  return {
    labels,
    seedings: newSeedings(rows, changes),
    kept: keys(of('portion', 'kept_on')),
    moved: keys(of('movement', 'kind', 'day', 'at')),
    seen: keys(of('observation', 'day', 'at')),
    looked: keys(of('observation', 'stage', 'set_state', 'set_word', 'whey', 'tang')),
    reserves: newReserves(rows, changes),
    ends: keys(of('hold', 'ended')),
    stays: keys(of('stay', 'hold'), 'jar'),
    mistakes: keys(
      (change) => change.before !== null && change.after?.state === 'mistake' && of('jar', 'state')(change),
    ),
  };
}

/** Portions that are seed kept back now and were not before. */
function newReserves(rows: Rows, changes: readonly Change[]): Set<number> {
  const keys = new Set<number>();
  for (const change of changes) {
    if (change.kind === 'portion' && isNewly(change, 'reserve')) keys.add(change.key);
    const moved = change.kind === 'movement' ? (change.before?.portion ?? change.after?.portion) : null;
    if (typeof moved === 'number') keys.add(moved);
  }
  const isKept = (key: number): boolean => {
    const portion = rows.find('portion', key);
    return portion?.reserve === true && whereabouts(rows.where('movement', 'portion', key)).onShelf !== false;
  };
  return new Set([...keys].filter(isKept));
}

interface Standing {
  readonly jar: Columns | null;
  readonly batch: Columns | null;
}

/**
 * Whether something was so of jars and their batches at some time before an act.
 * @param last only how it was right before the act counts
 */
export function stoodBefore(
  rows: Rows,
  act: number,
  jars: readonly JarFact[],
  last: boolean,
  isSo: (standing: readonly Standing[]) => boolean,
): boolean {
  const records = new Set(jars.flatMap(({ key, batch }) => [key, batch]));
  const acts = [...new Set([...records].flatMap((record) => actsOf(rows, record, act, -1)))].toSorted(
    (a, b) => a - b,
  );
  const forms = new Map<number, Columns | null>();
  const standing = (): Standing[] =>
    jars.map(({ key, batch }) => ({ jar: forms.get(key) ?? null, batch: forms.get(batch) ?? null }));
  // An act counts as a whole: in between nothing stood.
  for (const earlier of acts) {
    for (const record of records)
      for (const { after } of changesOf(rows, earlier, { record })) forms.set(record, after);
    if (!last && isSo(standing())) return true;
  }
  return last && isSo(standing());
}

const lower = (value: unknown): string => (typeof value === 'string' ? value.trim().toLowerCase() : '');
const counted = ({ jar }: Standing): boolean => jar?.state === 'made' || jar?.state === 'planned';

const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);

/** The day that a batch is called by. */
function dayCalled(batch: Columns | null): string {
  const range = rangeOf(text(batch?.made_from), text(batch?.made_to));
  return text(batch?.made_on) ?? (range === null ? '' : `about ${middleDay(range)}`);
}

/** Whether all of them are there and go by one label. */
export const sameLabels = (standing: readonly Standing[]): boolean =>
  standing.every(counted) &&
  new Set(standing.map(({ jar, batch }) => `${dayCalled(batch)}|${lower(batch?.word)}|${lower(jar?.letter)}`))
    .size === 1;

/** Whether a jar is made on that day, or no earlier. */
export const madeFrom =
  (day: string) =>
  ([standing]: readonly Standing[]): boolean =>
    (standing?.jar?.state === 'made' || standing?.jar?.state === 'lost') &&
    (standing.batch?.made_on ?? standing.batch?.made_from) === day;
