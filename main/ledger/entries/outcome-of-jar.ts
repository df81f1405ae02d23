// An outcome is what a jar's observations amount to: all that was observed is put together, so that what was entered comes
// back as entered (entries/outcome-entry.ts) and what was seen besides counts too.
import { DISCARD_SIGNS, type DiscardSign, type Outcome } from '../../../core/ledger/records';
import { meterOf } from './checked-meter';
import type { Rows } from '../facts/fact-rows';
import { type Columns, fromColumns, type Row, type Stored as Fact } from '../facts/tables';

export type Seen = Omit<Outcome, 'jar'>;
type RemarkField = Fact<'remark'>['field'];

/** An observation with all that hangs on it. */
export interface Observed {
  readonly row: Row<'observation'>;
  readonly acidity: readonly Row<'acidity'>[];
  readonly signs: readonly Row<'sign'>[];
  readonly remarks: readonly Row<'remark'>[];
  /** Only what the keeper has read in words: no form fills it. */
  readonly read?: true;
}

/** What was observed of a jar, in the order in which it was entered, and what the keeper has read in remarks on it. */
export function observedOf(rows: Rows, jar: number): Observed[] {
  const checked = meterOf(rows);
  const observed = rows.where('observation', 'jar', jar).map((row) => ({
    row,
    acidity: rows.where('acidity', 'observation', row.key).map((reading) => checked(row, reading)),
    signs: rows.where('sign', 'observation', row.key),
    remarks: rows.where('remark', 'observation', row.key),
  }));
  const loose = [
    ...rows.where('remark', 'jar', jar),
    ...rows.where('portion', 'jar', jar).flatMap(({ key }) => rows.where('remark', 'portion', key)),
    ...rows.where('photograph', 'jar', jar).flatMap(({ key }) => rows.where('remark', 'photograph', key)),
    ...rows.where('jar', 'key', jar).flatMap(({ batch }) => rows.where('remark', 'batch', batch)),
    ...[...new Set(rows.where('stay', 'jar', jar).map(({ hold }) => hold))].flatMap((hold) =>
      rows.where('remark', 'hold', hold),
    ),
  ];
  const readIn = (row: Row<'observation'>, remarks: readonly Row<'remark'>[]): Observed[] => {
    const signs = remarks.flatMap((remark) => [
      ...rows.where('sign', 'remark', remark.key),
      ...discarded(remark),
    ]);
    return signs.length === 0 ? [] : [read(row, signs)];
  };
  return [
    ...observed,
    ...observed.flatMap(({ row, remarks }) => readIn(row, remarks)),
    ...readIn(unsaid(jar), loose),
  ];
}

/** An observation of which nothing is said, not even when: what a remark on the jar itself is taken for. */
const unsaid = (jar: number): Row<'observation'> =>
  fromColumns('observation', { key: 0, jar, stage: 'not said' });
const read = (row: Row<'observation'>, signs: readonly Row<'sign'>[]): Observed => ({
  row: { ...unsaid(row.jar), stage: row.stage, daysOpen: row.daysOpen },
  acidity: [],
  signs,
  remarks: [],
  read: true,
});

/** A remark that the keeper has read as *discard* calls its jar spoiled. */
const discarded = ({ key, uid, readAs }: Row<'remark'>): Row<'sign'>[] =>
  readAs === 'discard'
    ? [{ key, uid, observation: null, remark: key, kind: 'said spoiled', answer: 'seen' }]
    : [];

/** The observations that a form fills: the early check, the look at take-out (or at a time not said), the one after opening. */
export interface FormParts {
  readonly early: Observed | undefined;
  readonly main: Observed | undefined;
  readonly opened: Observed | undefined;
}

export function formParts(observed: readonly Observed[]): FormParts {
  const first = (stage: Fact<'observation'>['stage']): Observed | undefined =>
    observed.find(({ row, read: words }) => row.stage === stage && words !== true);
  return {
    early: first('early'),
    main: first('take-out') ?? first('not said'),
    opened: first('opened'),
  };
}

const first = <T, V>(list: readonly T[], of: (one: T) => V | null | undefined): V | null => {
  for (const one of list) {
    const value = of(one);
    if (value !== null && value !== undefined) return value;
  }
  return null;
};

const DISCARD: ReadonlySet<string> = new Set(DISCARD_SIGNS);
export const standing = ({ signs }: Observed): readonly Row<'sign'>[] =>
  signs.filter(({ answer }) => answer !== 'not so');
const spoils = (kind: string): boolean => DISCARD.has(kind) || kind === 'said spoiled';
const tellsOfSpoiling = (one: Observed): boolean => standing(one).some(({ kind }) => spoils(kind));
const afterOpening = ({ row }: Observed): boolean =>
  row.stage === 'opened' || (row.stage === 'later' && row.daysOpen !== null);

/** When a sign was seen. Seen at take-out, or nobody said when, outranks a day after opening. */
function whenSeen(
  observed: readonly Observed[],
  { main }: FormParts,
): Pick<Outcome, 'seenAt' | 'openedDays'> {
  const said = main?.row.looked === true ? ('take-out' as const) : null;
  const [opened, telling] = [observed.filter(afterOpening), observed.filter(tellsOfSpoiling)];
  const early = telling.some((one) => !afterOpening(one));
  if (opened.length === 0 || early) return { seenAt: said, openedDays: null };
  // Nothing was seen: what failed at take-out was not first seen after opening.
  if (telling.length === 0 && (main?.row.setState === 'not set' || said !== null))
    return { seenAt: said, openedDays: null };
  const days = (telling.length > 0 ? telling : opened).map(({ row }) => row.daysOpen);
  const known = days.filter((day) => day !== null);
  return { seenAt: 'after opening', openedDays: known.length < days.length ? null : Math.min(...known) };
}

/** Words of a field from every observation, those of the look at take-out first. */
function wordsOf(observed: readonly Observed[], field: RemarkField): string | null {
  const words = observed.flatMap(({ remarks }) => remarks.filter((remark) => remark.field === field));
  return words.length === 0 ? null : words.map(({ text }) => text).join('; ');
}

export const isSetAtTakeOut = (main: Observed | undefined): boolean | null =>
  main?.row.stage !== 'take-out' || main.row.setState === null ? null : main.row.setState === 'set';

/** The outcome that observations amount to; null where nothing was observed. */
export function outcomeFrom(observed: readonly Observed[]): Seen | null {
  if (observed.length === 0) return null;
  const parts = formParts(observed);
  const { early, main } = parts;
  // At the end of the hold and after: the look at take-out first, then the others as they were entered.
  const late = [
    ...(main ? [main] : []),
    ...observed.filter((one) => one !== main && one.row.stage !== 'early'),
  ];
  const measured = first(late, ({ acidity }) => acidity[0]);
  const signs = observed.flatMap(standing);
  const cut = first(observed, ({ row }) => (row.powerCut === null ? null : row));
  return {
    earlyCheckHours: early?.row.hoursIn ?? null,
    earlySet: early?.row.setState === 'not set' ? 'loose' : (early?.row.setState ?? null),
    earlyPh: early?.acidity[0]?.ph ?? null,
    earlySour: early?.row.sour ?? null,
    setAfterHours: main?.row.setAfterHours ?? null,
    setByHours: main?.row.setByHours ?? null,
    setAtTakeOut: isSetAtTakeOut(main),
    sour: main?.row.sour ?? null,
    setWord: first(late, ({ row }) => row.setWord),
    texture: wordsOf(late, 'texture'),
    whey: first(late, ({ row }) => row.whey),
    tang: first(late, ({ row }) => row.tang),
    smell: wordsOf(late, 'smell'),
    colour: wordsOf(late, 'colour'),
    ph: measured?.ph ?? null,
    phHow: measured && measured.how !== 'not said' ? measured.how : null,
    ...(measured?.how === 'meter' ? { phChecked: measured.checked } : {}),
    signs: signs.map(({ kind }) => kind).filter((kind): kind is DiscardSign => DISCARD.has(kind)),
    bubbles: first(late, ({ row }) => row.bubbles),
    powerCut: cut?.powerCut ?? null,
    powerCutHours: cut?.powerCutHours ?? null,
    spoiledSaid: signs.some(({ kind }) => kind === 'said spoiled'),
    ...whenSeen(observed, parts),
    fibreDidThis: signs.some(({ answer }) => answer === 'the fibre'),
    note: wordsOf(observed, 'note'),
  };
}

/** What is known of how a jar came out; null where nothing was observed. */
export const outcomeOf = (rows: Rows, jar: number): Seen | null => outcomeFrom(observedOf(rows, jar));

type Group = Map<number, Observed>;

/** Outcomes of all jars, or of those with the given keys, by jar. */
export const outcomes = (rows: Rows, jars: readonly number[] | null): Map<number, Seen> =>
  new Map(Array.from(observations(rows, jars), ([jar, of]) => [jar, outcomeFrom(of) as Seen]));

/** What was observed of all jars, or of those with the given keys, by jar: one statement for each kind of fact. */
export function observations(facts: Rows, jars: readonly number[] | null): Map<number, Observed[]> {
  const { db } = facts;
  const checked = meterOf(facts);
  const [among, given] = jars
    ? ['WHERE jar IN (SELECT value FROM json_each(?))', [JSON.stringify(jars)]]
    : ['', []];
  const observed: Group = new Map();
  const byJar = new Map<number, Observed[]>();
  const rows = db.prepare(`SELECT * FROM observation ${among} ORDER BY key`).iterate(...given);
  for (const columns of rows as IterableIterator<Columns>) {
    const row = fromColumns('observation', columns);
    const one = { row, acidity: [], signs: [], remarks: [] };
    observed.set(row.key, one);
    const others = byJar.get(row.jar);
    if (others) others.push(one);
    else byJar.set(row.jar, [one]);
  }
  const hang = <K extends 'acidity' | 'sign' | 'remark'>(
    kind: K,
    add: (to: Observed, row: Row<K>) => void,
  ): void => {
    const of = jars
      ? 'WHERE observation IN (SELECT value FROM json_each(?))'
      : 'WHERE observation IS NOT NULL';
    const keys = jars ? [JSON.stringify([...observed.keys()])] : [];
    const found = db.prepare(`SELECT * FROM ${kind} ${of} ORDER BY key`).iterate(...keys);
    for (const columns of found as IterableIterator<Columns>) {
      const to = observed.get(Number(columns.observation));
      if (to) add(to, fromColumns(kind, columns));
    }
  };
  hang('acidity', (to, row) => void (to.acidity as Row<'acidity'>[]).push(checked(to.row, row)));
  hang('sign', (to, row) => void (to.signs as Row<'sign'>[]).push(row));
  hang('remark', (to, row) => void (to.remarks as Row<'remark'>[]).push(row));
  for (const [jar, one] of readInRemarks(db, observed, jars)) {
    const others = byJar.get(jar);
    if (others) others.push(one);
    else byJar.set(jar, [one]);
  }
  return byJar;
}

// Remarks with the jar that each is about, or with each jar: one on a batch or a hold is about all that was in it.
export const REMARKS_OF = `SELECT key AS remark, jar FROM remark WHERE jar IN (SELECT value FROM json_each(@jars))
  UNION SELECT r.key, o.jar FROM observation o CROSS JOIN remark r ON r.observation = o.key
   WHERE o.jar IN (SELECT value FROM json_each(@jars))
  UNION SELECT r.key, p.jar FROM portion p CROSS JOIN remark r ON r.portion = p.key
   WHERE p.jar IN (SELECT value FROM json_each(@jars))
  UNION SELECT r.key, f.jar FROM photograph f CROSS JOIN remark r ON r.photograph = f.key
   WHERE f.jar IN (SELECT value FROM json_each(@jars))
  UNION SELECT r.key, j.key FROM jar j CROSS JOIN remark r ON r.batch = j.batch
   WHERE j.key IN (SELECT value FROM json_each(@jars))
  UNION SELECT r.key, s.jar FROM stay s CROSS JOIN remark r ON r.hold = s.hold
   WHERE s.jar IN (SELECT value FROM json_each(@jars))`;
const ALL = `SELECT DISTINCT r.key AS remark, coalesce(r.jar, o.jar, p.jar, f.jar, j.key, s.jar) AS jar
    FROM (SELECT remark AS key FROM sign WHERE remark IS NOT NULL
          UNION SELECT key FROM remark WHERE read_as = 'discard') k
   CROSS JOIN remark r ON r.key = k.key
    LEFT JOIN observation o ON o.key = r.observation LEFT JOIN portion p ON p.key = r.portion
    LEFT JOIN photograph f ON f.key = r.photograph
    LEFT JOIN jar j ON j.batch = r.batch LEFT JOIN stay s ON s.hold = r.hold`;

/** What was read in remarks on some jars, or on all, with each jar that it is about. */
function* readInRemarks(
  db: Rows['db'],
  observed: Group,
  jars: readonly number[] | null,
): Generator<[number, Observed]> {
  const told = db
    .prepare(
      `SELECT m.key, m.observation AS seen_in, m.read_as, about.jar, s.key AS sign, s.kind, s.answer
         FROM (${jars ? REMARKS_OF : ALL}) about CROSS JOIN remark m ON m.key = about.remark
         LEFT JOIN sign s ON s.remark = m.key
        WHERE s.key IS NOT NULL OR m.read_as = 'discard' ORDER BY m.key, about.jar, s.key`,
    )
    .all(...(jars ? [{ jars: JSON.stringify(jars) }] : [])) as Columns[];
  for (const columns of told) {
    if (columns.jar === null) continue;
    const { key: remark, seen_in: seenIn, kind = null, answer = null } = columns;
    const row = seenIn === null ? undefined : observed.get(Number(seenIn))?.row;
    const sign = (form: Columns): Row<'sign'> => fromColumns('sign', { ...form, remark: Number(remark) });
    const signs = [
      ...(columns.sign === null ? [] : [sign({ key: Number(columns.sign), kind, answer })]),
      ...(columns.read_as === 'discard'
        ? [sign({ key: Number(remark), kind: 'said spoiled', answer: 'seen' })]
        : []),
    ];
    yield [Number(columns.jar), read(row ?? unsaid(Number(columns.jar)), signs)];
  }
}
