// Trials, tastings, marks. Codes and orders are drawn afresh for each tasting; nothing that has not passed the gate is served.
import type { Parsed, Reply } from '../../../core/contract';
import { seededRandom } from '../../../core/advice/random';
import { servingCodes, servingOrders, triangleOrders } from '../../../core/trials/serving-order';
import { hostOf } from '../host-of-facts';
import type { OpenAct } from '../facts/open-act';
import type { Ledger } from '../ledger';
import { jarAllergens, tastingReply, whyNotTasted } from '../reads/read-trials';
import { Refused } from '../../refusal';
import { tidy } from '../tidy-typed';

/** @throws Refused 'not found', 'jar of another batch', 'invalid' where a jar stands there twice */
export function saveTrial(ledger: Ledger, input: Parsed<'trial.save'>): Reply<'trial.save'> {
  const { rows } = ledger;
  const { differsIn, expected, treatments } = tidy(input);
  const batch = rows.keyOf('batch', input.batch);
  const jars = treatments.map(({ jar }) => rows.keyOf('jar', jar));
  if (new Set(jars).size < jars.length)
    throw new Refused('invalid', { path: 'treatments', problem: 'names a jar twice' });
  if (jars.length < 2)
    throw new Refused('invalid', { path: 'treatments', problem: 'needs two jars at least' });
  for (const jar of jars)
    if (rows.get('jar', jar).batch !== batch)
      throw new Refused('jar of another batch', { jar: ledger.index.jar(jar).label });
  const done = hostOf(ledger).mustRun('trial.save', differsIn ?? '', tidy(input.why), (act) => {
    const trial = act.insert('trial', { batch, differsIn: differsIn ?? '', expected });
    treatments.forEach(({ name, dose }, i) => act.insert('treatment', { trial: trial.key, jar: jars[i] ?? 0, name: name ?? '', dose }));
    return trial.uid;
  }, input.draft); // prettier-ignore
  return { act: done.act.uid, trial: done.value };
}

/** @throws Refused 'taster avoids' */
function refuseAvoided(ledger: Ledger, jars: readonly number[], tasters: readonly { name: string; avoids: readonly string[] }[]): void {
  for (const jar of jars) {
    const carried = new Set(jarAllergens(ledger, jar).map(({ allergen }) => allergen));
    for (const { name, avoids } of tasters) {
      const avoided = avoids.find((allergen) => carried.has(allergen.trim().toLowerCase()));
      if (avoided) throw new Refused('taster avoids', { taster: name, allergen: avoided, jar: ledger.index.jar(jar).label });
    }
  }
} // prettier-ignore

/**
 * Begins a tasting: who gets what in which order, under which code.
 * @throws Refused 'not found', 'only planned', 'not to be tasted', 'gate not passed', 'taster avoids', 'invalid'
 */
export function startTasting(ledger: Ledger, input: Parsed<'session.start'>): Reply<'session.start'> {
  const { rows } = ledger;
  const trial = rows.keyOf('trial', input.trial);
  const of = rows.where('treatment', 'trial', trial).map(({ jar }) => jar);
  const jars = input.jars === null ? of : input.jars.map((jar) => rows.keyOf('jar', jar));
  const wrong = (path: string, problem: string): never => {
    throw new Refused('invalid', { path, problem });
  };
  if (jars.some((jar) => !of.includes(jar))) wrong('jars', 'names a jar that is not in this trial');
  if (new Set(jars).size < jars.length) wrong('jars', 'names a jar twice');
  if (jars.length < 2 || jars.length > 12) wrong('jars', 'needs two jars at least, and twelve at most');
  if ((input.task === 'pair' || input.task === 'triangle') && jars.length !== 2) wrong('jars', 'needs two jars for this task'); // prettier-ignore
  for (const jar of jars) {
    const not = whyNotTasted(ledger, jar);
    if (not) throw new Refused(not.code, not.params);
  }
  const known = input.tasters.map((taster) => {
    if (!('id' in taster))
      return { name: tidy(taster.name) ?? '', avoids: taster.avoids, news: taster.avoids, key: null };
    const key = rows.keyOf('taster', taster.id);
    const noted = rows.where('tasterAvoids', 'taster', key).map(({ allergen }) => allergen);
    const news = taster.avoids.filter((one) => !noted.some((other) => sameWord(one, other)));
    return { key, name: rows.get('taster', key).name, avoids: [...noted, ...news], news };
  });
  const keys = known.flatMap(({ key }) => key ?? []);
  if (new Set(keys).size < keys.length) wrong('tasters', 'names a taster twice');
  if (input.pouredBy !== null && input.pouredBy >= known.length) wrong('pouredBy', 'is the place of no taster in the list'); // prettier-ignore
  refuseAvoided(ledger, jars, known);
  const seed = Number.parseInt(ledger.newId().slice(-8), 16);
  const done = hostOf(ledger).mustRun('session.start', rows.get('trial', trial).differsIn, tidy(input.why), (act) => {
    const tasters = known.map(({ key, name, news }) => {
      const taster = key ?? act.insert('taster', { name, private: true }).key;
      for (const allergen of news) act.insert('tasterAvoids', { taster, allergen });
      return taster;
    });
    const session = act.insert('session', {
      trial, day: input.day, kind: input.task, draw: `seed ${seed}`, revealedAt: null,
      pouredBy: input.pouredBy === null ? null : (tasters[input.pouredBy] ?? null),
    });
    serve(act, session.key, input.task, tasters, jars, seed);
    return session.key;
  }, input.draft); // prettier-ignore
  return { act: done.act.uid, ...tastingReply(ledger, done.value) };
}

const sameWord = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

function serve(act: OpenAct, session: number, task: string, tasters: readonly number[], jars: readonly number[], seed: number): void {
  const draw = seededRandom(seed);
  const orders = task === 'triangle' ? triangleOrders(tasters.length, draw) : servingOrders(tasters.length, jars.length, draw);
  const codes = servingCodes(orders.reduce((sum, order) => sum + order.length, 0), draw);
  let next = 0;
  tasters.forEach((taster, i) =>
    (orders[i] ?? []).forEach((jar, place) =>
      act.insert('serving', { session, taster, place: place + 1, jar: jars[jar] ?? 0, portion: null, code: codes[next++] ?? 0 }),
    ),
  );
} // prettier-ignore

/**
 * Picks that another pick of the same taster takes the place of: each picks one bowl.
 * @throws Refused 'invalid' where two bowls of one taster are picked at once
 */
function unpicked({ rows }: Ledger, session: number, picked: readonly { serving: number; aspect: string }[]): number[] {
  return picked.flatMap(({ serving, aspect }) => {
    const { taster, code } = rows.get('serving', serving);
    const others = rows.where('serving', 'session', session).filter((one) => one.taster === taster && one.key !== serving);
    if (others.some(({ key }) => picked.some((one) => one.serving === key && one.aspect === aspect)))
      throw new Refused('invalid', { path: `marks.${code}`, problem: 'picks two bowls of one taster' });
    return others.flatMap(({ key }) =>
      rows.where('mark', 'serving', key).filter((mark) => mark.aspect === aspect && mark.picked === true).map((mark) => mark.key),
    );
  });
} // prettier-ignore

/**
 * What tasters noted of codes. A mark that is there already is corrected.
 * @throws Refused 'not found', 'revealed already', 'no such code', 'invalid'
 */
export function recordMarks(ledger: Ledger, input: Parsed<'mark.record'>): Reply<'mark.record'> {
  const { rows } = ledger;
  const session = rows.get('session', rows.keyOf('session', input.session));
  if (session.revealedAt !== null) throw new Refused('revealed already', {});
  const servings = new Map(rows.where('serving', 'session', session.key).map((one) => [one.code, one.key]));
  const marks = input.marks.map((given) => {
    const { code, aspect, rank, score, word, picked } = { ...given, ...tidy({ aspect: given.aspect, word: given.word }) };
    const serving = servings.get(code);
    if (serving === undefined) throw new Refused('no such code', { code });
    if ([rank, score, word, picked].filter((one) => one !== null).length !== 1)
      throw new Refused('invalid', { path: `marks.${code}`, problem: 'needs exactly one of rank, score, word and picked' });
    return { serving, aspect: aspect ?? 'overall', rank, score, word, picked };
  }); // prettier-ignore
  const before = unpicked(
    ledger,
    session.key,
    marks.filter(({ picked }) => picked === true),
  );
  const done = hostOf(ledger).mustRun('mark.record', session.day, tidy(input.why), (act) => {
    for (const mark of before) act.update('mark', mark, { picked: false });
    for (const mark of marks) {
      const own = rows.where('mark', 'serving', mark.serving).find(({ aspect }) => aspect === mark.aspect);
      if (own) act.update('mark', own.key, mark);
      else act.insert('mark', mark);
    }
  }, input.draft); // prettier-ignore
  return { act: done.act.uid, marks: marks.length };
}

/** Tells which code was which jar, and what the tasting tells. @throws Refused 'not found', 'revealed already' */
export function reveal(ledger: Ledger, input: Parsed<'session.reveal'>): Reply<'session.reveal'> {
  const { rows, clock } = ledger;
  const session = rows.get('session', rows.keyOf('session', input.session));
  if (session.revealedAt !== null) throw new Refused('revealed already', {});
  const done = hostOf(ledger).mustRun('session.reveal', session.day, tidy(input.why), (act) =>
    act.update('session', session.key, { revealedAt: clock.now() }),
  );
  return { act: done.act.uid, ...tastingReply(ledger, session.key) };
}
