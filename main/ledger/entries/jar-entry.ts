// A jar with what hangs on it: its stay in a hold, its milk and the carton that came from, a measured density, what became
// of it, and the keeper's note.
import type { Jar } from '../../../core/ledger/records';
import type { OpenAct } from '../facts/open-act';
import type { Rows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import { leftIn } from './left-of-rows';
import { whereabouts, wordOn } from './where-it-stands';
import { type Keyed, over, type Rooted, type Told } from './keyed';
import { mustPut, put, putRemark, remarkOf, removeAll } from './put-fact';

export type JarEntry = Keyed<Jar, 'batch' | 'hold' | 'milkPackage'>;
type New = Pick<JarEntry, 'batch' | 'letter' | 'state'> & Partial<JarEntry>;

const UNTOLD = {
  hold: null, vessel: null, finalVolume: null, finalVolumeKnown: null, milk: null, milkAmount: null, milkPackage: null,
  countPerMl: null, onShelf: null, goneOn: null, note: null,
} as const; // prettier-ignore

/** A jar's facts; in a part of a jar some are missing. */
interface JarFacts {
  readonly row?: FactRow<'jar'> | undefined;
  readonly stay?: FactRow<'stay'> | undefined;
  readonly milk?: FactRow<'milk'> | undefined;
  readonly use?: FactRow<'use'> | undefined;
  readonly count?: FactRow<'labResult'> | undefined;
  readonly moved?: readonly FactRow<'movement'>[] | undefined;
  /** Whether nothing of it is left, by all that was told of amounts. */
  readonly none?: boolean | undefined;
  readonly note?: FactRow<'remark'> | undefined;
}

function factsOf(rows: Rows, row: FactRow<'jar'>): JarFacts {
  const [milk] = rows.where('milk', 'jar', row.key);
  return {
    row,
    stay: rows.where('stay', 'jar', row.key).at(-1),
    milk,
    use: milk && rows.where('use', 'milk', milk.key)[0],
    count: rows.where('labResult', 'jar', row.key).find(({ what }) => what === 'count'),
    moved: rows.where('movement', 'jar', row.key),
    none: leftIn(rows, 'jar', row.key).none,
    note: remarkOf(rows.where('remark', 'jar', row.key)),
  };
}

/** The jar with that key, which is known to be there. */
export function jarEntry(rows: Rows, key: number): Rooted<JarEntry> {
  const row = rows.get('jar', key);
  return { ...jarFrom(factsOf(rows, row)), key, uid: row.uid };
}

/** Where it is by the last word on it; what is eaten up is not on the shelf, whatever was said before. */
function shelfOf({ moved = [], none = false }: JarFacts): Pick<JarEntry, 'onShelf' | 'goneOn'> {
  const said = whereabouts(moved);
  return none ? { ...said, onShelf: false } : said;
}

export function jarFrom(facts: JarFacts): JarEntry {
  const { row, stay, milk, use, count, note } = facts;
  // A call that knows one amount alone writes it as what went in; a plan counts only as long as the jar is one.
  const milkAmount =
    milk?.actual ?? (row?.state === 'planned' || row?.state === 'not made' ? (milk?.planned ?? null) : null);
  return {
    batch: row?.batch as number,
    letter: row?.letter as string,
    hold: stay?.hold ?? null,
    state: row?.state as JarEntry['state'],
    vessel: row?.vessel ?? null,
    finalVolume: row?.finalVolume ?? null,
    finalVolumeKnown: row?.finalVolumeKnown ?? null,
    milk: milk?.name ?? null,
    milkAmount,
    milkPackage: use?.package ?? null,
    countPerMl: count?.value ?? null,
    ...shelfOf(facts),
    note: note?.text ?? null,
  };
}

function putMilk(act: OpenAct, jar: number, held: JarFacts | undefined, wanted: JarEntry): void {
  const { milk: name, milkAmount: amount, milkPackage } = wanted;
  if (milkPackage === null || !held?.milk)
    removeAll(act, ['use', milkPackage === null ? held?.use : undefined]);
  const none = name === null && amount === null && milkPackage === null;
  // An amount that nobody changed stays what it is: a plan does not become what went in when the jar is made.
  const said = !same(held ? jarFrom(held).milkAmount : null, amount);
  const key = put(act, 'milk', held?.milk, none ? null : { name, ...(said ? { actual: amount } : {}) }, {
    jar,
  });
  if (milkPackage !== null && key !== null)
    put(act, 'use', held?.use, { package: milkPackage }, { milk: key });
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What is said of where it is now is one movement: it is corrected where the last word was such a one, else added. */
function putWhereabouts(act: OpenAct, jar: number, held: JarFacts | undefined, wanted: JarEntry): void {
  const { onShelf, goneOn } = wanted;
  const moved = held?.moved ?? [];
  if (same(shelfOf(held ?? {}), { onShelf, goneOn })) return;
  const said = moved.filter(({ kind }) => kind === 'gone' || kind === 'still there').at(-1);
  const { ended, there } = wordOn(moved);
  const last = (ended ?? there)?.row;
  const nothing = onShelf === null && goneOn === null;
  const kind = onShelf === true ? ('still there' as const) : ('gone' as const);
  put(act, 'movement', said === last ? said : undefined, nothing ? null : { kind, day: goneOn }, { jar });
}

/** Adds a jar with what is told of it. @returns its key */
export const addJar = (act: OpenAct, told: New): number => putJar(act, undefined, { ...UNTOLD, ...told });

/** Changes what is told of a jar; where nothing is different nothing is written. */
export function changeJar(act: OpenAct, key: number, told: Told<JarEntry>): void {
  const held = factsOf(act.rows, act.rows.get('jar', key));
  putJar(act, held, over(jarFrom(held), told));
}

function putJar(act: OpenAct, held: JarFacts | undefined, wanted: JarEntry): number {
  const { batch, letter, state, vessel, finalVolume, finalVolumeKnown } = wanted;
  const jar = mustPut(act, 'jar', held?.row, {
    batch, letter, vessel, finalVolume, finalVolumeKnown, state,
  }); // prettier-ignore
  if (wanted.hold !== (held?.stay?.hold ?? null)) {
    const moved = {
      hold: wanted.hold as number,
      came: null,
      went: null,
      plannedCame: null,
      plannedWent: null,
    };
    put(act, 'stay', held?.stay, wanted.hold === null ? null : moved, { jar });
  }
  putMilk(act, jar, held, wanted);
  const count = wanted.countPerMl;
  put(act, 'labResult', held?.count, count === null ? null : { value: count }, {
    jar,
    what: 'count',
    unit: 'CFU/mL',
    bound: '=',
  });
  putWhereabouts(act, jar, held, wanted);
  putRemark(act, held?.note, 'jar', jar, wanted.note);
  return jar;
}
