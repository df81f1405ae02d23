// A hold with its readings and the keeper's note, and what one jar had of it.
import { stayedHours } from '../../../core/ledger/hold-hours';
import type { OpenAct } from '../facts/open-act';
import type { Rows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import { mustPut, put, putRemark, remarkOf, type Under } from './put';
import { blockOf, readingsIn, withLeftOut } from './readings';
import type { Stored } from './records';

export interface HeldHold {
  readonly row?: FactRow<'hold'> | undefined;
  readonly series?: FactRow<'series'> | undefined;
  readonly note?: FactRow<'remark'> | undefined;
}

export const heldHold = (under: Under, row: FactRow<'hold'>): HeldHold => ({
  row,
  series: under.of('series', 'hold', row.key)[0],
  note: remarkOf(under.of('remark', 'hold', row.key)),
});

export function holdFrom(facts: Rows, { row, series, note }: HeldHold): Stored['hold'] {
  return {
    batch: row?.batch as number,
    startedAt: row?.began ?? null,
    endedAt: row?.ended ?? null,
    hours: row?.hours ?? null,
    planned: row?.planned ?? null,
    probe: series?.place ?? null,
    readings: readingsIn(facts, series?.block ?? null),
    basis: row?.basis ?? 'recorded',
    note: note?.text ?? null,
  };
}

/** Writes a hold and what hangs on it. @returns its key */
export function putHold(
  act: OpenAct,
  facts: Rows,
  held: HeldHold | undefined,
  wanted: Stored['hold'],
): number {
  const { batch, startedAt: began, endedAt: ended, hours, planned, basis, probe, readings, note } = wanted;
  const hold = mustPut(act, 'hold', held?.row, { batch, began, ended, hours, planned, basis }, { purpose: 'jars' }); // prettier-ignore
  const before = held?.series?.block ?? null;
  const all = withLeftOut(facts, readings, before);
  const none = probe === null && all.length === 0;
  const block = none ? null : blockOf(facts, all, before);
  put(act, 'series', held?.series, none ? null : { place: probe, block }, { hold });
  putRemark(act, held?.note, 'hold', hold, note);
  return hold;
}

type Warmth = Stored['hold'];

/** What one jar had of its holds: those it stood in, from when to when it did. */
function warmthOf(stays: readonly Stay[], holdOf: (hold: number) => Warmth): Warmth | null {
  const [first, ...others] = stays;
  if (!first) return null;
  const own = ({ hold, came, went }: Stay): Warmth => {
    const its = holdOf(hold);
    return came === null && went === null
      ? its
      : { ...its, startedAt: came ?? its.startedAt, endedAt: went ?? its.endedAt };
  };
  if (others.length === 0) return own(first);
  const all = stays.map(own);
  const last = all.at(-1) as Warmth;
  return {
    ...last,
    startedAt: all[0]?.startedAt ?? null,
    // Between two holds it was not warm, so its hours are theirs together.
    endedAt: null,
    hours: stayedHours(
      all.map(({ startedAt, endedAt, hours }) => ({ from: at(startedAt), to: at(endedAt), hours })),
    ),
    readings: all.flatMap(({ readings }) => readings),
  };
}

type Stay = Pick<FactRow<'stay'>, 'hold' | 'came' | 'went'>;
const at = (moment: string | null): number | null => (moment === null ? null : Date.parse(moment));

/** What one jar had of its holds; null where it stood in none. */
export const warmthOfJar = (facts: Rows, jar: number): Warmth | null =>
  warmthOf(facts.where('stay', 'jar', jar), (hold) =>
    holdFrom(facts, {
      row: facts.get('hold', hold),
      series: facts.where('series', 'hold', hold)[0],
      note: undefined,
    }),
  );

/** The same for every jar, each hold read once: jars that stood in one share its record. */
export function warmths(facts: Rows): (jar: number) => Warmth | null {
  const holds = new Map<number, Warmth>();
  const series = new Map<number, FactRow<'series'>>();
  for (const one of facts.all('series')) if (!series.has(one.hold)) series.set(one.hold, one);
  for (const row of facts.all('hold'))
    holds.set(row.key, holdFrom(facts, { row, series: series.get(row.key), note: undefined }));
  const stays = new Map<number, Stay[]>();
  for (const stay of facts.all('stay')) {
    const others = stays.get(stay.jar);
    if (others) others.push(stay);
    else stays.set(stay.jar, [stay]);
  }
  return (jar) => warmthOf(stays.get(jar) ?? [], (hold) => holds.get(hold) as Warmth);
}
