// What is done with a hold while it runs: jars come in, are moved, come out; warmth fails; a look, a reading by hand.
import type { Parsed, Reply } from '../../../core/contract';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { beganOrPlanned, endsAt } from '../../../core/ledger/running';
import { isLookAt } from '../../../core/plan/hold-looks';
import { LOOK_HOURS } from '../../../core/plan/waking-hours';
import { put } from '../entries/put-fact';
import { allReadingsIn, blockOf } from '../entries/series-of-hold';
import { refuseBeside } from '../facts/beside';
import type { OpenAct } from '../facts/open-act';
import type { Row } from '../facts/tables';
import { hostOf } from '../host-of-facts';
import type { KnownJar } from '../family-index';
import type { Ledger } from '../ledger';
import { jarsInside, labelOfHold } from '../reads/running-holds';
import { Refused } from '../../refusal';
import { tidy } from '../tidy-typed';
import { labelsInShort, standingJar } from './write-parts';

const holdOf = ({ rows }: Ledger, uid: string): Row<'hold'> => rows.get('hold', rows.keyOf('hold', uid));
/** The ledger's clock to the second, as moments lie. */
const nowOf = ({ clock }: Ledger): string => {
  const { seconds, offset } = storedMoment(clock.now());
  return momentText(seconds, offset);
};

/** The stay of a jar in a hold that nobody ended. @throws Refused 'not in this hold' */
function openStay({ rows }: Ledger, hold: number, jar: KnownJar): Row<'stay'> {
  const stay = rows.where('stay', 'jar', jar.key).find((one) => one.hold === hold && one.went === null);
  if (!stay) throw new Refused('not in this hold', { jar: jar.label });
  return stay;
}

/** Ends a stay. What began with its hold is said to have, so that the jar may come back to it later. */
function endStay(act: OpenAct, stay: Row<'stay'>, began: string | null, at: string): void {
  act.update('stay', stay.key, { came: stay.came ?? began, went: at });
}

/**
 * When a hold began, for one that is left at a moment. Left before the planned end, the planned hours are none that
 * anybody had: where no start was noted it is the one that was taken and shown.
 */
function beganBefore(hold: Row<'hold'>, at: string): string | null {
  const { began, plannedFrom, plannedTo, hours } = hold;
  if (began !== null || plannedFrom === null) return began;
  const ends = endsAt({ began: plannedFrom, plannedTo, hours });
  const seconds = (moment: string): number => storedMoment(moment).seconds;
  const early = ends !== null && seconds(at) < seconds(ends) && seconds(at) > seconds(plannedFrom);
  return early ? plannedFrom : null;
}

/** @throws Refused 'hold ended' */
function refuseEnded(ledger: Ledger, hold: Row<'hold'>): void {
  if (hold.ended !== null) throw new Refused('hold ended', { label: labelOfHold(ledger, hold) });
}

/**
 * Takes jars out. With the last of them the hold ends, and its jars with it.
 * @throws Refused 'not found', 'not in this hold', 'hold ended', and what the rule book refuses
 */
export function takeOut(ledger: Ledger, input: Parsed<'hold.takeOut'>): Reply<'hold.takeOut'> {
  const hold = holdOf(ledger, input.hold);
  refuseEnded(ledger, hold);
  const inside = jarsInside(ledger, hold.key);
  const jars = input.jars?.map((uid) => standingJar(ledger, uid)) ?? inside;
  const stays = jars.map((jar) => openStay(ledger, hold.key, jar));
  const at = input.at ?? nowOf(ledger);
  const out = new Set(jars.map(({ key }) => key));
  const ends = inside.every(({ key }) => out.has(key));
  const subject = jars.length === 0 ? labelOfHold(ledger, hold) : labelsInShort(jars);
  const done = ledger.acts.mustRun(
    'hold.takeOut',
    subject,
    tidy(input.why),
    (act) => {
      const began = beganBefore(hold, at);
      if (ends) act.update('hold', hold.key, { began, ended: at });
      else for (const stay of stays) endStay(act, stay, began, at);
    },
    input.draft,
  );
  return { act: done.act.uid, ended: ends };
}

/** @throws Refused 'not found', 'hold ended', 'stays overlap' */
export function putIn(ledger: Ledger, input: Parsed<'hold.putIn'>): Reply<'hold.putIn'> {
  const host = hostOf(ledger);
  const hold = holdOf(ledger, input.hold);
  refuseEnded(ledger, hold);
  const jars = input.jars.map((uid) => standingJar(ledger, uid));
  const came = input.at ?? nowOf(ledger);
  const stay = { hold: hold.key, came, went: null, plannedCame: null, plannedWent: null };
  for (const { key } of jars) refuseBeside(host, 'stay', { jar: key, ...stay }, null);
  const done = ledger.acts.mustRun(
    'hold.putIn',
    labelsInShort(jars),
    tidy(input.why),
    (act) => {
      for (const { key } of jars) act.insert('stay', { jar: key, ...stay });
    },
    input.draft,
  );
  return { act: done.act.uid };
}

/** Moves jars to another hold, or to a new one with the same plan. @throws as takeOut */
export function moveJars(ledger: Ledger, input: Parsed<'hold.move'>): Reply<'hold.move'> {
  const { rows } = ledger;
  const hold = holdOf(ledger, input.hold);
  refuseEnded(ledger, hold);
  const to = input.to === null ? null : holdOf(ledger, input.to);
  if (to !== null) refuseEnded(ledger, to);
  if (to?.key === hold.key) throw new Refused('nothing changed');
  const jars = input.jars.map((uid) => standingJar(ledger, uid));
  const stays = jars.map((jar) => openStay(ledger, hold.key, jar));
  const at = input.at ?? nowOf(ledger);
  const { batch, planned, plannedTo, hours } = hold;
  const from = beganOrPlanned(hold);
  const ends = from === null ? plannedTo : endsAt({ began: from, plannedTo, hours });
  const out = new Set(jars.map(({ key }) => key));
  const last = jarsInside(ledger, hold.key).every(({ key }) => out.has(key));
  const done = ledger.acts.mustRun(
    'hold.move',
    labelsInShort(jars),
    tidy(input.why),
    (act) => {
      // Two that follow each other at the same moment do not overlap: the one ends before the other begins.
      const began = beganBefore(hold, at);
      for (const stay of stays) endStay(act, stay, began, at);
      if (last) act.update('hold', hold.key, { began, ended: at });
      const target =
        to?.key ??
        act.insert('hold', {
          appliance: null,
          batch,
          planned,
          began: at,
          ended: null,
          hours: null,
          plannedFrom: null,
          plannedTo: ends !== null && ends > at ? ends : null,
          purpose: hold.purpose,
          basis: 'recorded',
          filled: null,
        }).key;
      for (const { key } of jars)
        act.insert('stay', {
          jar: key,
          hold: target,
          came: at,
          went: null,
          plannedCame: null,
          plannedWent: null,
        });
      return rows.uidOf('hold', target);
    },
    input.draft,
  );
  return { act: done.act.uid, hold: done.value };
}

/** @throws Refused 'not found', 'invalid', 'nothing changed', and what the rule book refuses */
export function interrupt(ledger: Ledger, input: Parsed<'hold.interrupt'>): Reply<'hold.interrupt'> {
  const hold = holdOf(ledger, input.hold);
  const { id, what, began, ended, hours } = input;
  const key = id === null ? null : ledger.rows.keyOf('interruption', id);
  if (key !== null && ledger.rows.get('interruption', key).hold !== hold.key)
    throw new Refused('not found', { kind: 'interruption' });
  if (began !== null && ended !== null && storedMoment(ended).seconds < storedMoment(began).seconds)
    throw new Refused('invalid', { path: 'ended', problem: 'is before it began' });
  const done = ledger.acts.mustRun(
    'hold.interrupt',
    labelOfHold(ledger, hold),
    tidy(input.why),
    (act) => {
      if (key === null)
        return act.insert('interruption', { hold: hold.key, what, began, ended, hours, wasSet: null }).uid;
      act.update('interruption', key, { what, began, ended, hours });
      return id ?? '';
    },
    input.draft,
  );
  return { act: done.act.uid, id: done.value };
}

/** Hours in warmth of a jar at a moment: since it came, else since its hold began; null where neither is known. */
function hoursIn(stay: Row<'stay'>, began: string | null, at: string): number | null {
  const from = stay.came ?? began;
  if (from === null) return null;
  const hours = (storedMoment(at).seconds - storedMoment(from).seconds) / 3600;
  return hours < 0 ? null : Number(hours.toFixed(2));
}

/**
 * One look at jars that stand in a hold. What was noted at that look before is corrected; another look is another.
 * @throws Refused 'not found', 'not in this hold', 'nothing changed'
 */
export function noteLook(ledger: Ledger, input: Parsed<'hold.look'>): Reply<'hold.look'> {
  const { rows } = ledger;
  const hold = holdOf(ledger, input.hold);
  const at = input.at ?? nowOf(ledger);
  const told = input.jars.map(({ jar: uid, ...seen }) => {
    const jar = standingJar(ledger, uid);
    const stay = rows.where('stay', 'jar', jar.key).find((one) => one.hold === hold.key);
    if (!stay) throw new Refused('not in this hold', { jar: jar.label });
    return { jar, seen, hours: hoursIn(stay, hold.began, at) };
  });
  const done = ledger.acts.mustRun(
    'hold.look',
    labelsInShort(told.map(({ jar }) => jar)),
    tidy(input.why),
    (act) => {
      for (const { jar, seen, hours } of told) putLook(act, jar.key, seen, at, hours);
    },
    input.draft,
  );
  return { act: done.act.uid };
}

type Seen = Omit<Parsed<'hold.look'>['jars'][number], 'jar'>;

function putLook(act: OpenAct, jar: number, seen: Seen, at: string, hours: number | null): void {
  const { set: setState, sour, ph } = seen;
  const mark = hours === null ? undefined : LOOK_HOURS.find((one) => isLookAt(hours, one));
  const there = act.rows
    .where('observation', 'jar', jar)
    .find(
      (one) =>
        one.stage === 'early' &&
        (mark === undefined ? one.at === at : one.hoursIn !== null && isLookAt(one.hoursIn, mark)),
    );
  const none = setState === null && sour === null && ph === null;
  const acidity = there ? act.rows.where('acidity', 'observation', there.key)[0] : undefined;
  if (none) {
    put(act, 'acidity', acidity, null, {});
    put(act, 'observation', there, null, {});
    return;
  }
  const key = put(
    act,
    'observation',
    there,
    { setState, sour, at, hoursIn: hours },
    { jar, stage: 'early', day: null },
  ) as number;
  put(act, 'acidity', acidity, ph === null ? null : { ph }, { observation: key, how: 'not said' });
}

/** Adds one reading to the series of its place, or begins one. @throws Refused 'not found', 'reading differs', 'probe elsewhere' */
export function noteReading(ledger: Ledger, input: Parsed<'readings.note'>): Reply<'readings.note'> {
  const host = hostOf(ledger);
  const { facts } = host;
  const hold = holdOf(ledger, input.hold);
  const jar = input.jar === null ? null : facts.keyOf('jar', input.jar);
  if (jar !== null && input.where !== 'jar')
    throw new Refused('invalid', { path: 'jar', problem: 'only goes with where jar' });
  const at = input.at ?? nowOf(ledger);
  const own = facts
    .where('series', 'hold', hold.key)
    .find(
      ({ place, jar: other, heading }) =>
        (place ?? input.where) === input.where && other === jar && heading === null,
    );
  const there = own ? allReadingsIn(facts, own.block) : [];
  const { seconds } = storedMoment(at);
  const before = there.find((one) => storedMoment(one.at).seconds === seconds);
  if (before && before.temperature.value !== input.c)
    throw new Refused('reading differs', { at, there: before.temperature.value, c: input.c });
  if (!own) refuseBeside(host, 'series', { hold: hold.key, jar }, null);
  const done = host.mustRun(
    'readings.note',
    labelOfHold(ledger, hold),
    tidy(input.why),
    (act) => {
      if (own && before) return own.uid;
      const block = blockOf(
        facts,
        [...there, { at, temperature: { value: input.c, unit: '°C', typed: null } }],
        own?.block ?? null,
      );
      if (!own)
        return act.insert('series', {
          hold: hold.key,
          place: input.where,
          jar,
          block,
          heading: null,
          clock: null,
          scale: null,
          spot: null,
        }).uid;
      act.update('series', own.key, { place: input.where, block });
      return own.uid;
    },
    input.draft,
  );
  return { act: done.act.uid, series: done.value };
}
