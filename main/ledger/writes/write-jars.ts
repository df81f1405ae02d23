// Correcting one jar: its own fields, what seeded it, what was stirred in, what was seen, and what it stands for.
import type { Parsed, Reply } from '../../../core/contract';
import { addJar, changeJar, type JarEntry } from '../entries/jar-entry';
import { type AdditionEntry, additionEntries, seedingEntries } from '../entries/kept-entries';
import { addBatch, refuseHalfRange } from '../entries/larder-entries';
import { earliestDay } from '../../../core/lineage/lineage-shapes';
import { addOutcome, changeOutcome, removeOutcome } from '../entries/outcome-entry';
import { refuseLift } from '../host-of-facts';
import { remarksAbout } from '../derived/unread';
import type { ActKind } from '../../../core/ledger/act-words';
import type { KnownJar } from '../family-index';
import type { OpenAct } from '../facts/open-act';
import type { Stored } from '../facts/tables';
import type { Ledger } from '../ledger';
import { addLift } from '../derived/lifts';
import { refuseJarName } from '../jar-names';
import { Refused } from '../../refusal';
import { outcomeOf } from '../entries/outcome-of-jar';
import {
  jarOf,
  packageKey,
  refuseLoose,
  replaceAdditions,
  replaceSeedings,
  seedingRow,
  shelfOrGone,
  standingJar,
} from './write-parts';
import { mustSay, tidy } from '../tidy-typed';

/** One thing that an act writes; what makes no sense as a call was refused before. */
interface Told {
  readonly jar: KnownJar;
  readonly write: (act: OpenAct) => void;
}

/** @throws Refused 'not found', 'is a mistake', 'hold of another batch', 'package of something else', 'day not known' */
export function toldOfJar(ledger: Ledger, uid: string, given: Parsed<'jar.correct'>['changes']): Told {
  const { hold, milkPackage, letter, ...fields } = tidy(given);
  const jar = standingJar(ledger, uid);
  const said = fields as Partial<JarEntry>;
  const changes: Partial<JarEntry> = { ...said, ...shelfOrGone(jar.label, said) };
  if (letter !== undefined) {
    mustSay({ letter }, 'letter');
    changes.letter = letter.toLowerCase();
  }
  if (hold !== undefined) {
    changes.hold = ledger.rows.keyOrNull('hold', hold);
    if (changes.hold !== null && ledger.rows.get('hold', changes.hold).batch !== jar.batch) {
      throw new Refused('hold of another batch');
    }
  }
  if (milkPackage !== undefined) changes.milkPackage = packageKey(ledger, milkPackage, 'milk');
  if (changes.state === 'made' && jar.state !== 'made' && earliestDay(jar) === null) {
    throw new Refused('day not known', { jar: jar.label });
  }
  return { jar, write: (act) => changeJar(act, jar.key, changes) };
}

/** @throws Refused 'not found', 'is a mistake', 'package of something else' */
export function toldOfAdditions(
  ledger: Ledger,
  uid: string,
  given: Parsed<'addition.set'>['additions'],
): Told {
  const jar = standingJar(ledger, uid);
  const next = tidy(given).map((entry): AdditionEntry => {
    mustSay(entry, 'name');
    return { ...entry, jar: jar.key, package: packageKey(ledger, entry.package, 'addition') };
  });
  const old = additionEntries(ledger.rows, jar.key);
  return { jar, write: (act) => replaceAdditions(act, old, next) };
}

type TypedOutcome = Extract<Parsed<'outcome.save'>, { outcomes: unknown }>['outcomes'][number];

/** @throws Refused 'not found', 'is a mistake', and as figures out of range are refused */
function toldOfOutcome(
  ledger: Ledger,
  given: Omit<TypedOutcome, 'onShelf'> & { onShelf?: boolean | null },
): Told {
  const jar = standingJar(ledger, given.jar);
  const outcome = given.outcome === null ? null : refuseLoose(tidy(given.outcome));
  const { readAs, onShelf = null } = given;
  return {
    jar,
    write(act) {
      const old = outcomeOf(act.rows, jar.key);
      if (outcome && old) changeOutcome(act, jar.key, outcome);
      else if (outcome) addOutcome(act, jar.key, outcome);
      else if (old) removeOutcome(act, jar.key);
      if (readAs !== null) readOwnWords(act, jar.key, readAs);
      if (onShelf !== null) changeJar(act, jar.key, shelfOrGone(jar.label, { onShelf }));
    },
  };
}

/** One act that writes all of it. */
function record(
  ledger: Ledger,
  kind: ActKind,
  told: readonly Told[],
  { why, draft }: { readonly why: string | null; readonly draft: string | null },
): { readonly act: string } {
  const subject = [...new Set(told.map(({ jar }) => jar.label))].join(', ');
  const done = ledger.acts.mustRun(
    kind,
    subject,
    tidy(why),
    (act) => {
      for (const { write } of told) write(act);
    },
    draft,
  );
  return { act: done.act.uid };
}

export const correctJar = (ledger: Ledger, input: Parsed<'jar.correct'>): Reply<'jar.correct'> =>
  record(ledger, 'jar.correct', [toldOfJar(ledger, input.id, input.changes)], input);

/** Fields, additions and what was seen, of several jars in one act: refused whole, undone whole. */
export function correctJars(ledger: Ledger, input: Parsed<'jars.correct'>): Reply<'jars.correct'> {
  const onlySeen = input.jars.every(({ changes, additions }) => changes === null && additions === null);
  const told = input.jars.flatMap(({ jar, changes, additions, outcome, readAs }) => [
    ...(changes === null ? [] : [toldOfJar(ledger, jar, changes)]),
    ...(additions === null ? [] : [toldOfAdditions(ledger, jar, additions)]),
    ...(outcome === null ? [] : [toldOfOutcome(ledger, { jar, outcome, readAs })]),
  ]);
  return record(ledger, onlySeen ? 'outcome.save' : 'jar.correct', told, input);
}

/**
 * "Entered by mistake". The row stays, for the history and for the jars that were said to be seeded from it: those have
 * an unknown past from then on, until the keeper says what seeded them. Of a spoiled jar a reason is asked for: the
 * cautions because of it fall away with it.
 * @throws Refused 'not found', 'is a mistake', and as the rule book says
 */
export function markMistake(ledger: Ledger, input: Parsed<'jar.mistake'>): Reply<'jar.mistake'> {
  const jar = standingJar(ledger, input.id);
  const done = ledger.acts.mustRun('jar.mistake', jar.label, tidy(input.why), (act) => {
    act.update('jar', jar.key, { state: 'mistake' });
  });
  return { act: done.act.uid };
}

const LETTERS = [...'abcdefghijklmnopqrstuvwxyz'];

/** The letter of a jar that nobody can name: the first that no jar of that day and word has. */
function letterOfLost(ledger: Ledger, madeOn: string | null, word: string | null): string {
  const taken = new Set(
    [...ledger.index.jars.values()]
      .filter(
        (jar) => jar.madeOn === madeOn && (jar.word?.toLowerCase() ?? null) === (word?.toLowerCase() ?? null),
      )
      .map((jar) => jar.letter),
  );
  return LETTERS.find((one) => !taken.has(one)) ?? `z${taken.size}`;
}

/** A jar that nobody can name, of no day. @returns its key */
export function putLost(ledger: Ledger, act: OpenAct): number {
  const none = { madeOn: null, madeFrom: null, madeTo: null, word: null, note: null };
  const letter = letterOfLost(ledger, null, null);
  return addJar(act, { batch: addBatch(act, none), letter, state: 'lost', note: null });
}

/** @throws Refused 'name of a jar' */
export function addLostJar(ledger: Ledger, given: Parsed<'jar.lost'>): Reply<'jar.lost'> {
  const { madeOn, label, note } = tidy(given);
  const { madeFrom, madeTo } = given;
  refuseHalfRange({ madeOn, madeFrom, madeTo });
  if (label !== null) refuseJarName(ledger, label);
  const word = label ?? (madeOn === null ? null : 'lost');
  const letter = letterOfLost(ledger, madeOn, word);
  const subject = ledger.labelFor({ madeOn, word, letter });
  const done = ledger.acts.mustRun(
    'jar.lost',
    subject,
    null,
    (act) => {
      const batch = addBatch(act, { madeOn, madeFrom, madeTo, word, note: null });
      return ledger.rows.uidOf('jar', addJar(act, { batch, letter, state: 'lost', note }));
    },
    given.draft,
  );
  return { act: done.act.uid, jar: done.value };
}

export function setSeedings(ledger: Ledger, input: Parsed<'seeding.set'>): Reply<'seeding.set'> {
  const jar = standingJar(ledger, input.jar);
  const given = tidy(input.seedings);
  const old = seedingEntries(ledger.rows, jar.key);
  const done = ledger.acts.mustRun(
    'seeding.set',
    jar.label,
    tidy(input.why),
    (act) => {
      const next = given.map((entry) => seedingRow(ledger, act, jar.key, entry));
      replaceSeedings(
        act,
        old,
        next,
        (row, told) =>
          row.fromJar === told.fromJar && row.source === told.source && row.portion === told.portion,
      );
    },
    input.draft,
  );
  return { act: done.act.uid };
}

export const setAdditions = (ledger: Ledger, input: Parsed<'addition.set'>): Reply<'addition.set'> =>
  record(ledger, 'addition.set', [toldOfAdditions(ledger, input.jar, input.additions)], input);

/** Notes what was seen, of one jar or of several in one act; `outcome` null takes it away, `onShelf` null leaves that as it is. */
export function saveOutcome(ledger: Ledger, input: Parsed<'outcome.save'>): Reply<'outcome.save'> {
  const given = 'outcomes' in input ? input.outcomes : [input];
  const told = given.map((one) => toldOfOutcome(ledger, one));
  return record(ledger, 'outcome.save', told, input);
}

/** The keeper's reading of what the form's words say, where they may tell of spoilage and nobody has answered. */
function readOwnWords(act: OpenAct, jar: number, readAs: Stored<'remark'>['readAs']): void {
  for (const { of, key, stops } of remarksAbout(act.rows, [jar], false).get(jar) ?? [])
    if (of === 'jar' && stops) act.update('remark', key, { readAs });
}

/** Lifts cautions because of one jar, on one jar or on many, with one reason in one act. */
export function clearCaution(ledger: Ledger, input: Parsed<'caution.clear'>): Reply<'caution.clear'> {
  const given = [...new Set('jars' in input ? input.jars : [input.jar])];
  const jars = given.map((jar) => standingJar(ledger, jar));
  const of = jarOf(ledger, input.of);
  for (const jar of jars) refuseLift(ledger, jar.key, of.key);
  const reason = tidy(input.reason, 'reason') as string | null;
  if (reason === null || reason.length < 3)
    throw new Refused('invalid', { path: 'reason', problem: 'says too little' });
  const [first] = jars;
  const subject = jars.length === 1 && first ? first.label : `${jars.length} jars, because of ${of.label}`;
  const done = ledger.acts.mustRun('caution.clear', subject, reason, (act) => {
    for (const jar of jars) addLift(act, jar.key, of.key, reason);
  });
  return { act: done.act.uid };
}
