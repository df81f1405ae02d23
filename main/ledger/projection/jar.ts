// A jar with what hangs on it: its stay in a hold, its milk and the carton that came from, a measured density, what became
// of it, and the keeper's note.
import { lastWord } from '../../../core/ledger/whereabouts';
import { dayOf } from './days';
import type { OpenAct } from '../facts/open-act';
import type { Row as FactRow } from '../facts/tables';
import { mustPut, put, putRemark, remarkOf, removeAll, type Under } from './put';
import type { Stored } from './records';

/** A jar's facts; those that a record of the older calls is made of. In a part of a jar some are missing. */
export interface HeldJar {
  readonly row?: FactRow<'jar'> | undefined;
  readonly stay?: FactRow<'stay'> | undefined;
  readonly milk?: FactRow<'milk'> | undefined;
  readonly use?: FactRow<'use'> | undefined;
  readonly count?: FactRow<'labResult'> | undefined;
  readonly moved?: readonly FactRow<'movement'>[] | undefined;
  readonly note?: FactRow<'remark'> | undefined;
}

export function heldJar(under: Under, row: FactRow<'jar'>): HeldJar {
  const [milk] = under.of('milk', 'jar', row.key);
  return {
    row,
    stay: under.of('stay', 'jar', row.key).at(-1),
    milk,
    use: milk && under.of('use', 'milk', milk.key)[0],
    count: under.of('labResult', 'jar', row.key).find(({ what }) => what === 'count'),
    moved: under.of('movement', 'jar', row.key),
    note: remarkOf(under.of('remark', 'jar', row.key)),
  };
}

type Moved = Pick<FactRow<'movement'>, 'kind' | 'day' | 'at' | 'amount' | 'pieces'>;

const wordOn = <T extends Moved>(moved: readonly T[]) =>
  lastWord(moved.map((row) => ({ ...row, row, day: dayOf(row) })));

/** Whether some is still kept, by the last word on it; null where nobody said. */
export function whereabouts(moved: readonly Moved[]): Pick<Stored['jar'], 'onShelf' | 'goneOn'> {
  const { ended, there } = wordOn(moved);
  if (ended) return { onShelf: false, goneOn: ended.day };
  return { onShelf: there ? true : null, goneOn: null };
}

export function jarFrom({ row, stay, milk, use, count, moved, note }: HeldJar): Stored['jar'] {
  // A call that knows one amount alone writes it as what went in; a plan counts only as long as the jar is one.
  const milkAmount =
    milk?.actual ?? (row?.state === 'planned' || row?.state === 'not made' ? (milk?.planned ?? null) : null);
  return {
    batch: row?.batch as number,
    letter: row?.letter as string,
    hold: stay?.hold ?? null,
    state: row?.state as Stored['jar']['state'],
    vessel: row?.vessel ?? null,
    finalVolume: row?.finalVolume ?? null,
    finalVolumeKnown: row?.finalVolumeKnown ?? null,
    milk: milk?.name ?? null,
    milkAmount,
    milkPackage: use?.package ?? null,
    countPerMl: count?.value ?? null,
    ...whereabouts(moved ?? []),
    note: note?.text ?? null,
  };
}

function putMilk(act: OpenAct, jar: number, held: HeldJar | undefined, wanted: Stored['jar']): void {
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
function putWhereabouts(act: OpenAct, jar: number, held: HeldJar | undefined, wanted: Stored['jar']): void {
  const { onShelf, goneOn } = wanted;
  const moved = held?.moved ?? [];
  if (same(whereabouts(moved), { onShelf, goneOn })) return;
  const said = moved.filter(({ kind }) => kind === 'gone' || kind === 'still there').at(-1);
  const { ended, there } = wordOn(moved);
  const last = (ended ?? there)?.row;
  const nothing = onShelf === null && goneOn === null;
  const kind = onShelf === true ? ('still there' as const) : ('gone' as const);
  put(act, 'movement', said === last ? said : undefined, nothing ? null : { kind, day: goneOn }, { jar });
}

/** Writes a jar and what hangs on it. @returns its key */
export function putJar(act: OpenAct, held: HeldJar | undefined, wanted: Stored['jar']): number {
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
  put(act, 'labResult', held?.count, count === null ? null : { value: count }, { jar, what: 'count', unit: 'CFU/mL', bound: '=' }); // prettier-ignore
  putWhereabouts(act, jar, held, wanted);
  putRemark(act, held?.note, 'jar', jar, wanted.note);
  return jar;
}
