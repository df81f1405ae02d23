// What was planned is made: as planned, or with what differed told beside it. A jar that was swapped is not made.
import type { Parsed, Reply } from '../../../core/contract';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { calledDay } from '../../../core/lineage/labels';
import { Refused } from '../../refusal';
import type { OpenAct } from '../facts/open-act';
import type { Rows } from '../facts/fact-rows';
import type { Row } from '../facts/tables';
import type { Ledger } from '../ledger';
import { tidy } from '../tidy-typed';
import { toldOfAdditions, toldOfJar } from './write-jars';
import { labelsInShort } from './write-parts';

/** What nobody said went in is what was planned: that is what "as planned" says. */
function asPlanned(act: OpenAct, jar: number): void {
  for (const kind of ['milk', 'addition', 'seeding'] as const)
    for (const { key, planned, actual } of act.rows.where(kind, 'jar', jar))
      if (actual === null && planned !== null) act.update(kind, key, { actual: planned });
}

/** Holds of the jars that nobody noted the start of. */
function unbegun(rows: Rows, jars: readonly number[]): Row<'hold'>[] {
  const keys = new Set(jars.flatMap((jar) => rows.where('stay', 'jar', jar).map(({ hold }) => hold)));
  return [...keys]
    .map((key) => rows.get('hold', key))
    .filter(({ began, ended }) => began === null && ended === null);
}

/** Their warmth begins when that is told, or as planned; made today without either, it begins now. */
function begin(
  act: OpenAct,
  ledger: Ledger,
  jars: readonly number[],
  startedAt: string | null,
  day: string,
): void {
  const { seconds, offset } = storedMoment(ledger.clock.now());
  for (const { key, hours, plannedFrom } of unbegun(act.rows, jars)) {
    if (startedAt !== null) act.update('hold', key, { began: startedAt });
    else if (day === ledger.clock.today() && hours !== null && plannedFrom?.slice(0, 10) !== day)
      act.update('hold', key, { plannedFrom: momentText(seconds, offset) });
  }
}

interface Making {
  readonly batch: Row<'batch'>;
  readonly made: readonly Row<'jar'>[];
  readonly notMade: readonly Row<'jar'>[];
  /** On which day it is made. */
  readonly day: string;
}

/** @throws Refused 'not found', 'nothing planned', 'jar of another batch', 'invalid' */
function makingOf({ rows, clock, index }: Ledger, input: Parsed<'batch.made'>): Making {
  const batch = rows.get('batch', rows.keyOf('batch', input.id));
  const jars = rows.where('jar', 'batch', batch.key);
  const planned = jars.filter(({ state }) => state === 'planned');
  if (planned.length === 0 || batch.madeOn === null) throw new Refused('nothing planned');
  for (const uid of [...input.notMade, ...input.jars.map(({ jar }) => jar)]) {
    const { key, label } = index.jar(rows.keyOf('jar', uid));
    if (!planned.some((one) => one.key === key)) throw new Refused('not planned', { jar: label });
  }
  const swapped = new Set(input.notMade);
  const made = planned.filter(({ uid }) => !swapped.has(uid));
  if (made.length === 0)
    throw new Refused('invalid', { path: 'notMade', problem: 'names every planned jar of the batch' });
  const today = clock.today();
  const others = jars.some(({ state }) => state === 'made');
  const day = others ? batch.madeOn : (input.madeOn ?? (batch.madeOn > today ? today : batch.madeOn));
  return { batch, made, notMade: planned.filter(({ uid }) => swapped.has(uid)), day };
}

/**
 * Makes what a batch planned. Amounts of which nothing else is told went in as planned.
 * @throws Refused 'not found', 'nothing planned', 'not planned', 'same label', and as the rule book says
 */
export function makePlanned(ledger: Ledger, input: Parsed<'batch.made'>): Reply<'batch.made'> {
  const { batch, made, notMade, day } = makingOf(ledger, input);
  const uids = new Map(made.map(({ uid }) => [uid, input.jars.find(({ jar }) => jar === uid)]));
  const told = [...uids].flatMap(([uid, otherwise]) => [
    ...(otherwise?.additions ? [toldOfAdditions(ledger, uid, otherwise.additions)] : []),
    toldOfJar(ledger, uid, { ...otherwise?.changes, state: 'made', onShelf: true }),
  ]);
  const labelled = made.map(({ letter }) => ({
    letter,
    label: ledger.labelFor({ ...calledDay({ ...batch, madeOn: day }), word: batch.word, letter }),
  }));
  const keys = made.map(({ key }) => key);
  const done = ledger.acts.mustRun(
    'batch.made',
    labelsInShort(labelled),
    tidy(input.why),
    (act) => {
      for (const { key } of notMade) act.update('jar', key, { state: 'not made' });
      if (day !== batch.madeOn) act.update('batch', batch.key, { madeOn: day });
      for (const { write } of told) write(act);
      for (const key of keys) asPlanned(act, key);
      begin(act, ledger, keys, input.startedAt, day);
    },
    input.draft,
    input.sameLabelMeant,
  );
  return { act: done.act.uid };
}
