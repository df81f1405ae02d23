// What becomes of one thing on the shelf: each verb is one call and one act. What is no food, what is kept for seed and the last
// that carries a line are asked about first; once the keeper meant it, it is kept as it was.
import type { Parsed, Reply } from '../../../core/contract';
import type { ActKind } from '../../../core/ledger/act-words';
import { actWords } from '../../../core/ledger/act-words';
import type { Amount } from '../../../core/ledger/basics';
import type { MovementKind } from '../../../core/ledger/facts/kept-facts';
import { printAmount } from '../../../core/quantities/quantities';
import { eatSentence } from '../../../core/says/safety-says';
import {
  eatenSays,
  GIVING,
  givenSays,
  keptForSeedSays,
  openedAlreadySays,
  thawedAgainSays,
} from '../../../core/says/shelf-says';
import type { OpenAct } from '../facts/open-act';
import type { Ledger } from '../ledger';
import { answerFor, cautionFor } from '../reads/read-shelf';
import { seedsNow } from '../reads/read-judgement';
import { thingWith, type Thing } from '../reads/shelf-things';
import { Refused } from '../../refusal';
import { daysBetween } from '../../../core/quantities/typed-days';
import { tidy } from '../tidy-typed';

type Done = Reply<'shelf.eat'>;
type HowMuch = Pick<Parsed<'shelf.eat'>, 'amount' | 'pieces' | 'all'>;

interface Asked {
  readonly code: 'not food' | 'kept for seed' | 'last of a line' | 'thawed before' | 'opened before';
  readonly says: string;
}

/** The thing, unless it is still in warmth. @throws Refused as thingWith, and 'in its warmth' */
function outOfWarmth(ledger: Ledger, id: string): Thing {
  const thing = thingWith(ledger, id);
  if (thing.standing.place === 'warmth') throw new Refused('in its warmth', { name: thing.name });
  return thing;
}

/** @throws Refused the first of what is asked, all of it said, unless the keeper meant it */
function refuseUnmeant(asked: readonly Asked[], meant: boolean): void {
  const [first] = asked;
  if (first && !meant) throw new Refused(first.code, { says: asked.map(({ says }) => says).join(' ') });
}

/** Why it is no food, as a sentence; null where nothing forbids eating it. */
function whyNoFood(ledger: Ledger, thing: Thing): string | null {
  const answer = answerFor(ledger, thing);
  return answer.eat ? null : (cautionFor(ledger, answer) ?? eatSentence(answer));
}

const forSeed = ({ reserve, name }: Thing): Asked[] =>
  reserve ? [{ code: 'kept for seed', says: keptForSeedSays(name) }] : [];

/** What it alone carries, asked before it is all gone. */
function lastOf(ledger: Ledger, { jar, portion }: Thing): Asked[] {
  return seedsNow(ledger)
    .lastOf.filter((one) => one.jar === jar.uid && one.portion === (portion?.uid ?? null))
    .map(({ says }) => ({ code: 'last of a line', says }));
}

const named = ({ kind, key }: Thing): { jar?: number; portion?: number } =>
  kind === 'jar' ? { jar: key } : { portion: key };

function move(
  act: OpenAct,
  thing: Thing,
  kind: MovementKind,
  day: string,
  how: { amount?: Amount | null; pieces?: number | null } = {},
): void {
  act.insert('movement', { ...named(thing), kind, day, ...how });
}

/** What is left of it, as an amount; null where that is not known. */
const allOf = ({ left }: Thing): Amount | null => left.amount && { ...left.amount, typed: null };

/** "3 cubes of 30 Nov a", of what is called "12 cubes of 30 Nov a". */
const someCubes = (name: string, pieces: number): string =>
  `${pieces} ${name.replace(/^\d+ /, '').replace(/^(thawed )?cubes\b/, pieces === 1 ? '$1cube' : '$1cubes')}`;

/** "200 mL of 22 Apr b", "3 cubes of …", "some of …", "22 Apr b". */
function subjectOf({ preferences }: Ledger, { name }: Thing, { amount, pieces, all }: HowMuch): string {
  if (all) return name;
  if (pieces !== null) return someCubes(name, pieces);
  return `${amount === null ? 'some' : printAmount(amount, preferences)} of ${name}`;
}

/** @throws Refused 'not kept so' where pieces are told of what is not in pieces, or more than there are */
function refusePieces({ name, left }: Thing, pieces: number | null): void {
  if (pieces === null) return;
  if (left.pieces === null) throw new Refused('not kept so', { name, problem: 'is not kept in pieces' });
  if (pieces > left.pieces)
    throw new Refused('not kept so', { name, problem: `has only ${Math.round(left.pieces)} left` });
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

interface Act {
  readonly kind: ActKind;
  readonly subject: string;
  readonly why: string | null;
  readonly caution?: string | null;
}

/** @param work gives back the key of the portion that it made, if any */
function done(
  ledger: Ledger,
  { kind, subject, why, caution = null }: Act,
  work: (act: OpenAct) => number | null,
): Done {
  const { act, value } = ledger.acts.mustRun(kind, subject, tidy(why), (open) => {
    const made = work(open);
    return made === null ? null : ledger.rows.uidOf('portion', made);
  });
  return { act: act.uid, says: capital(actWords(kind, subject)), caution, made: value };
}

/** A jar or pot of which some is taken is open from then on. */
function openWith(act: OpenAct, thing: Thing, day: string): void {
  const { opened, place } = thing.standing;
  if (opened === null && place === 'fridge' && thing.left.pieces === null) move(act, thing, 'opened', day);
}

/** Days that it has been open on a day; null where nobody knows since when. */
function daysOpen({ standing: { opened } }: Thing, day: string): number | null {
  if (opened === null) return 0;
  return opened.on === null ? null : Math.max(0, daysBetween(opened.on, day));
}

/** @throws Refused as thingWith, 'in its warmth', 'opened before', 'kept for seed' */
export function openKept(ledger: Ledger, { id, on, meant, why, looked }: Parsed<'shelf.open'>): Done {
  const thing = outOfWarmth(ledger, id);
  const before = thing.standing.opened !== null;
  if (before && !looked) throw new Refused('opened before', { says: openedAlreadySays(thing.name) });
  if (!before) refuseUnmeant(forSeed(thing), meant);
  const day = on ?? ledger.clock.today();
  return done(ledger, { kind: 'shelf.open', subject: thing.name, why }, (act) => {
    if (!before) move(act, thing, 'opened', day);
    if (looked)
      act.insert('observation', {
        jar: thing.jar.key,
        portion: thing.portion?.key ?? null,
        stage: before ? 'later' : 'opened',
        at: null,
        day,
        daysOpen: daysOpen(thing, day),
        looked: true,
      });
    return null;
  });
}

/**
 * Some of it, or all. What is no food is kept too where it was eaten already: its reply then says what to do and whom to ask.
 * @throws Refused as thingWith, 'in its warmth', 'not kept so', 'not food', 'kept for seed', 'last of a line'
 */
export function eatKept(ledger: Ledger, input: Parsed<'shelf.eat'>): Done {
  const { amount, pieces, all, meant, why } = input;
  const thing = outOfWarmth(ledger, input.id);
  refusePieces(thing, pieces);
  const noFood = whyNoFood(ledger, thing);
  refuseUnmeant(
    [
      ...(noFood === null ? [] : [{ code: 'not food' as const, says: noFood }]),
      ...forSeed(thing),
      ...(all ? lastOf(ledger, thing) : []),
    ],
    meant,
  );
  const day = input.on ?? ledger.clock.today();
  const caution = noFood === null ? null : eatenSays(thing.name, noFood);
  const subject = subjectOf(ledger, thing, input);
  return done(ledger, { kind: 'shelf.eat', subject, why, caution }, (act) => {
    if (!all) openWith(act, thing, day);
    const left = thing.left.pieces;
    const count = all ? (left !== null && left >= 1 ? Math.round(left) : null) : pieces;
    move(act, thing, 'eaten', day, { amount: all && count === null ? allOf(thing) : amount, pieces: count });
    if (all) move(act, thing, 'gone', day);
    return null;
  });
}

/** @throws Refused as eatKept */
export function giveKept(ledger: Ledger, input: Parsed<'shelf.give'>): Done {
  const { amount, pieces, all, meant } = input;
  const thing = outOfWarmth(ledger, input.id);
  refusePieces(thing, pieces);
  const answer = answerFor(ledger, thing);
  const noFood = whyNoFood(ledger, thing);
  const notGiven =
    noFood ??
    (answer.looks.includes('slow start') || answer.level !== null
      ? (cautionFor(ledger, answer) ?? eatSentence(answer))
      : null);
  refuseUnmeant(
    [
      ...(notGiven === null ? [] : [{ code: 'not food' as const, says: `Not to be given away. ${notGiven}` }]),
      ...forSeed(thing),
      ...(all ? lastOf(ledger, thing) : []),
    ],
    meant,
  );
  const day = input.on ?? ledger.clock.today();
  const to = tidy(input.to) ?? input.why;
  const caution = noFood === null ? GIVING : givenSays(thing.name, to, noFood);
  return done(ledger, { kind: 'shelf.give', subject: subjectOf(ledger, thing, input), why: to, caution }, (act) => {
    if (!all) openWith(act, thing, day);
    const some = amount === null && pieces === null && !all;
    // Of *given* an amount of null means all: where only some went and nobody said how much, the rest is not known.
    move(act, thing, some ? 'eaten' : 'given', day, all ? {} : { amount, pieces });
    return null;
  });
} // prettier-ignore

/**
 * As it is, or some or all of it into so many cubes.
 * @throws Refused as thingWith, 'in its warmth', 'not kept so', 'thawed before', 'kept for seed', and as the rule book says
 */
export function freezeKept(ledger: Ledger, input: Parsed<'shelf.freeze'>): Done {
  const { into, amount, meant, why } = input;
  const thing = outOfWarmth(ledger, input.id);
  const { name, left, standing, portion, jar } = thing;
  if (standing.place === 'freezer')
    throw new Refused('not kept so', { name, problem: 'is in the freezer already' });
  if (into === null && amount !== null)
    throw new Refused('not kept so', { name, problem: 'is frozen as a whole, unless it is said into how many cubes' });
  refuseUnmeant(
    [
      ...(left.thawed ? [{ code: 'thawed before' as const, says: thawedAgainSays(name) }] : []),
      ...(into === null ? [] : forSeed(thing)),
    ],
    meant,
  );
  const day = input.on ?? ledger.clock.today();
  const subject = into === null ? name : `${name} into ${into} ${into === 1 ? 'cube' : 'cubes'}`;
  return done(ledger, { kind: 'shelf.freeze', subject, why }, (act) => {
    if (into === null) {
      move(act, thing, 'freezer', day);
      return null;
    }
    const { key } = act.insert('portion', {
      jar: jar.key,
      ofPortion: portion?.key ?? null,
      part: portion?.part ?? null,
      form: 'cubes',
      place: 'freezer',
      reserve: input.forSeed,
      pieces: into,
      amount: amount ?? allOf(thing),
      keptOn: day,
    });
    if (amount === null) move(act, thing, 'gone', day);
    else openWith(act, thing, day);
    return key;
  });
} // prettier-ignore

/** All of it, or so many of its cubes. @throws Refused as thingWith, 'not kept so', 'kept for seed' */
export function thawKept(ledger: Ledger, input: Parsed<'shelf.thaw'>): Done {
  const { pieces, meant, why } = input;
  const thing = outOfWarmth(ledger, input.id);
  const { name, left, held, standing, portion, jar } = thing;
  if (standing.place !== 'freezer')
    throw new Refused('not kept so', { name, problem: 'is not in the freezer' });
  refusePieces(thing, pieces);
  refuseUnmeant(forSeed(thing), meant);
  const day = input.on ?? ledger.clock.today();
  const part = pieces !== null && portion !== null && left.pieces !== null && pieces < left.pieces;
  const subject = part ? someCubes(name, pieces) : name;
  return done(ledger, { kind: 'shelf.thaw', subject, why }, (act) => {
    if (!part) {
      move(act, thing, 'thawed', day);
      return null;
    }
    const each = held.pieces && held.amount ? held.amount.value / held.pieces : null;
    const made = act.insert('portion', {
      jar: jar.key,
      ofPortion: portion.key,
      part: portion.part,
      form: 'cubes',
      place: 'freezer',
      reserve: false,
      pieces,
      amount: each === null || !held.amount ? null : { value: each * pieces, unit: held.amount.unit, typed: null },
      keptOn: portion.keptOn,
    });
    act.insert('movement', { portion: made.key, kind: 'thawed', day });
    return made.key;
  });
} // prettier-ignore

/** @throws Refused as thingWith, 'last of a line' */
export function discardKept(ledger: Ledger, { id, on, meant, why }: Parsed<'shelf.discard'>): Done {
  const thing = thingWith(ledger, id);
  refuseUnmeant(answerFor(ledger, thing).seed ? lastOf(ledger, thing) : [], meant);
  return done(ledger, { kind: 'shelf.discard', subject: thing.name, why }, (act) => {
    move(act, thing, 'discarded', on ?? ledger.clock.today());
    return null;
  });
}

/** The jar as a whole, or what was kept apart of one, as a reserve. @throws Refused as thingWith, 'in its warmth', 'opened before' */
export function keepForSeed(ledger: Ledger, { id, on, meant, why }: Parsed<'shelf.keep'>): Done {
  const thing = outOfWarmth(ledger, id);
  const { name, standing, portion, jar } = thing;
  refuseUnmeant(
    standing.opened === null ? [] : [{ code: 'opened before', says: openedAlreadySays(name) }],
    meant,
  );
  const day = on ?? ledger.clock.today();
  return done(ledger, { kind: 'shelf.keep', subject: name, why }, (act) => {
    if (portion !== null) {
      act.update('portion', portion.key, { reserve: true });
      return portion.key;
    }
    const { key } = act.insert('portion', {
      jar: jar.key,
      form: 'jar',
      place: standing.place === 'freezer' ? 'freezer' : 'fridge',
      reserve: true,
      amount: allOf(thing),
      keptOn: standing.place === 'freezer' ? (standing.movedOn ?? day) : day,
    });
    move(act, thing, 'gone', day);
    return key;
  });
}

const ANSWERS = {
  'still there': 'still there',
  'eaten up': 'gone',
  discarded: 'discarded',
  gone: 'gone',
} as const;

/** What became of each, in one act. Of the same thing the last answer counts. @throws Refused 'not found', 'nothing left' */
export function answerShelf(ledger: Ledger, { answers, why }: Parsed<'shelf.answer'>): Reply<'shelf.answer'> {
  const told = new Map(answers.map(({ id, what }) => [id, what]));
  const things = [...told].map(([id, what]) => ({ thing: thingWith(ledger, id), what }));
  const day = ledger.clock.today();
  const names = things.map(({ thing }) => thing.name);
  const subject = names.length <= 4 ? names.join(', ') : `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;
  const { act } = ledger.acts.mustRun('shelf.answer', subject, tidy(why), (open) => {
    for (const { thing, what } of things) {
      if (what === 'eaten up') move(open, thing, 'eaten', day, { amount: allOf(thing) });
      move(open, thing, ANSWERS[what], day);
    }
  });
  return { act: act.uid };
} // prettier-ignore
