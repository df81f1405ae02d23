// Trials and tastings as they are replied: a tasting that is not revealed tells codes and no jars.
import type { Reply } from '../../../core/contract';
import {
  agreementSays,
  pourSays,
  reachSays,
  reasonSays,
  toldSays,
  toldWhy,
  wordsSays,
} from '../../../core/says/trial-says';
import { PLAIN } from '../../../core/trials/differences';
import { batchDay, calledDay, dayNamed } from '../../../core/lineage/labels';
import { answerOf, gateAmongMates } from '../../../core/safety/answer';
import type { RefusalCode } from '../../../core/sentences';
import { allergensOf } from '../../../core/trials/allergens';
import { reachOf, tastingsFor, type Task } from '../../../core/trials/least';
import {
  type Block,
  toldByPairs,
  toldByRanks,
  toldByTriangle,
  type Told,
} from '../../../core/trials/tasting';
import { OVERALL } from '../../../core/shapes/trial-calls';
import type { Rows } from '../facts/fact-rows';
import type { Row } from '../facts/tables';
import type { Ledger } from '../ledger'; // prettier-ignore

type Tasting = Reply<'session.get'>;
type ToldReply = NonNullable<Tasting['told']>;

/** Treatments of a trial by jar, doses in order of what was expected, the best first; null where none was. */
export function treatmentsOf(rows: Rows, trial: number | null): { byJar: Map<number, string>; names: string[]; expected: string[] | null } {
  const treatments = trial === null ? [] : rows.where('treatment', 'trial', trial);
  const names = [...new Set(treatments.map(({ name }) => name))];
  const { expected = null } = trial === null ? {} : rows.get('trial', trial);
  const doses = names.map((name) => ({ name, dose: treatments.find((one) => one.name === name)?.dose ?? null }));
  const inOrder = expected !== null && doses.length > 2 && doses.every(({ dose }) => dose !== null);
  const rising = doses.toSorted((a, b) => (a.dose ?? 0) - (b.dose ?? 0)).map(({ name }) => name);
  return {
    byJar: new Map(treatments.map(({ jar, name }) => [jar, name])),
    names,
    expected: !inOrder ? null : expected === 'more is better' ? rising.toReversed() : rising,
  };
} // prettier-ignore

export interface Marked {
  readonly serving: Row<'serving'>;
  readonly marks: readonly Row<'mark'>[];
}
export const markedOf = (rows: Rows, session: number): Marked[] =>
  rows
    .where('serving', 'session', session)
    .toSorted((a, b) => a.taster - b.taster || a.place - b.place)
    .map((serving) => ({ serving, marks: rows.where('mark', 'serving', serving.key) }));

/** One block for each taster: the mean mark of each treatment; of two bowls the picked one is the first, the other the second. */
export function blocksOf(marked: readonly Marked[], byJar: ReadonlyMap<number, string>): Block[] {
  const tasters = new Map<number, Map<string, number[]>>();
  const picking = new Set(pickedOf(marked).map(({ serving }) => serving.taster));
  for (const { serving, marks } of marked) {
    const treatment = byJar.get(serving.jar);
    const mark = marks.find(({ aspect }) => aspect === OVERALL);
    const place = picking.has(serving.taster) ? (mark?.picked === true ? 1 : 2) : null;
    const value = mark?.rank ?? mark?.score ?? place;
    if (treatment === undefined || value === null) continue;
    const own = tasters.get(serving.taster) ?? new Map<string, number[]>();
    tasters.set(serving.taster, own);
    own.set(treatment, [...(own.get(treatment) ?? []), value]);
  }
  return [...tasters].map(([taster, own]) => ({
    taster: String(taster),
    marks: new Map([...own].map(([name, values]) => [name, values.reduce((a, b) => a + b, 0) / values.length])),
  }));
} // prettier-ignore

const pickedOf = (marked: readonly Marked[]): Marked[] =>
  marked.filter(({ marks }) => marks.some(({ aspect, picked }) => aspect === OVERALL && picked === true));

/** How many found the odd one of three. */
function foundOdd(marked: readonly Marked[]): { right: number; of: number } {
  const picks = pickedOf(marked);
  const right = picks.filter(({ serving: { taster, jar } }) => {
    const own = marked.filter(({ serving }) => serving.taster === taster);
    return own.filter(({ serving }) => serving.jar === jar).length === 1;
  }).length;
  return { right, of: picks.length };
}

function toldOf(rows: Rows, session: Row<'session'>, marked: readonly Marked[]): Told {
  const { byJar, names, expected } = treatmentsOf(rows, session.trial);
  if (session.kind === 'triangle') {
    const { right, of } = foundOdd(marked);
    return toldByTriangle(right, of);
  }
  const served = names.filter((name) => marked.some(({ serving }) => byJar.get(serving.jar) === name));
  if (session.kind === 'pair') {
    const chosen = pickedOf(marked).flatMap(({ serving }) => byJar.get(serving.jar) ?? []);
    return toldByPairs(chosen, [served[0] ?? '', served[1] ?? '']);
  }
  const all = expected?.every((name) => served.includes(name)) ? expected : null;
  return toldByRanks(blocksOf(marked, byJar), served, session.kind, all);
}

/** @param asked whether so many tasters and jars could have told anything; null of several tastings together */
export const toldReply = (told: Told, oneOfEach: boolean, asked: { task: Task; jars: number; ordered: boolean } | null): ToldReply => ({
  says: toldSays(told, oneOfEach),
  reason: reasonSays(told, asked),
  why: toldWhy(told),
  statistic: told.statistic,
  tells: told.tells,
  p: told.p,
  test: told.test,
  method: told.method,
  order: [...told.order],
  agreement: agreementSays(told),
  tasters: told.tasters,
}); // prettier-ignore

/** Words of everything but overall, counted by treatment. */
function wordsOf(marked: readonly Marked[], byJar: ReadonlyMap<number, string>): Tasting['words'] {
  const counts = new Map<string, Tasting['words'][number]>();
  for (const { serving, marks } of marked)
    for (const { aspect, word } of marks) {
      const treatment = byJar.get(serving.jar);
      if (word === null || treatment === undefined) continue;
      const key = JSON.stringify([aspect, treatment, word]);
      const before = counts.get(key);
      counts.set(key, { aspect, treatment, word, count: (before?.count ?? 0) + 1 });
    }
  return [...counts.values()];
}

/**
 * Allergens of the jars of a tasting, and whether they share a seed: what is said before anybody tastes.
 * @param bySeed it is the seed that is compared
 */
export function cautionsOf(ledger: Ledger, jars: readonly number[], bySeed = false): string[] {
  const near = new Set<string>();
  const traces = new Set<string>();
  for (const jar of jars) for (const one of jarAllergens(ledger, jar)) (one.near ? near : traces).add(one.allergen);
  const only = [...traces].filter((allergen) => !near.has(allergen));
  const seeds = new Set(jars.map((jar) => seedOf(ledger, jar)));
  return [
    `Ask each taster about allergies. As far as is noted, these jars hold ${[...near].join(', ')}${only.length > 0 ? `, and traces of ${only.join(', ')} from earlier generations` : ''}.`,
    ...(!bySeed && (seeds.size > 1 || seeds.has(null)) ? ['These jars do not all come from one seed: a difference may be the seed’s.'] : []),
  ];
} // prettier-ignore

/** What seeded a jar, as text, alike for jars of the same seeds; null where nothing is noted. */
export function seedOf({ index: { family } }: Ledger, jar: number): string | null {
  const seeds = family.has(jar) ? family.seedsOf(jar) : [];
  const names = seeds.map(({ fromJar, source }) => `${fromJar ?? ''} ${source ?? ''}`);
  return names.length === 0 ? null : names.toSorted().join(', ');
}

/** Allergens that a jar carries, as far as is noted. */
export function jarAllergens({ rows, index }: Ledger, jar: number): ReturnType<typeof allergensOf> {
  const { family } = index;
  const carries = new Map<string, string[]>();
  for (const { name, allergen } of rows.all('carries')) {
    const key = name.trim().toLowerCase();
    carries.set(key, [...(carries.get(key) ?? []), allergen]);
  }
  const seedsOf = (one: number): number[] => family.seedsOf(one).flatMap(({ fromJar }) => fromJar ?? []);
  return allergensOf(
    jar,
    (one) => (family.has(one) ? { additions: index.jar(one).additions, seeds: seedsOf(one) } : null),
    carries,
  );
}

/** What a batch is called, with its year where that is not this one. */
export function batchCalled({ rows, clock }: Ledger, key: number): string {
  const batch = rows.get('batch', key);
  const called = calledDay(batch);
  const withYear = dayNamed(called)?.slice(0, 4) !== clock.today().slice(0, 4);
  return [batchDay(called, withYear), batch.word].filter(Boolean).join(' ') || 'a day not known';
}

/** Whether a taster has given all that is tested: a mark of every bowl, or the one that was picked. */
export function hasMarked(marked: readonly Marked[], task: Task, taster: number): boolean {
  const own = marked.filter(({ serving }) => serving.taster === taster);
  const overall = own.map(({ marks }) => marks.find(({ aspect }) => aspect === OVERALL));
  return task === 'rank' || task === 'score'
    ? own.length > 0 && overall.every((mark) => (mark?.rank ?? mark?.score ?? null) !== null)
    : overall.some((mark) => mark?.picked === true);
}

/** Nobody tastes before the gate. @returns null where a jar may be tasted */
export function whyNotTasted({ index }: Ledger, jar: number): { code: RefusalCode; params: { jar: string } } | null {
  const { family } = index;
  const { label } = index.jar(jar);
  if (!family.has(jar)) return { code: 'only planned', params: { jar: label } };
  if (!answerOf(family, jar).eat) return { code: 'not to be tasted', params: { jar: label } };
  return gateAmongMates(family, jar) === 'passed' ? null : { code: 'gate not passed', params: { jar: label } };
} // prettier-ignore

/** Which jar was which, the best liked first. */
function revealedJars(
  { rows, index }: Ledger,
  jars: readonly number[],
  byJar: ReadonlyMap<number, string>,
  told: Told,
  words: Tasting['words'],
): NonNullable<Tasting['jars']> {
  const place = (jar: number): number => told.order.findIndex(({ treatment }) => treatment === byJar.get(jar));
  return jars
    .toSorted((a, b) => place(a) - place(b) || a - b)
    .map((jar) => {
      const treatment = byJar.get(jar) ?? '';
      return {
        jar: rows.uidOf('jar', jar),
        label: index.jars.has(jar) ? index.jar(jar).label : '',
        treatment,
        plain: treatment.trim().toLowerCase() === PLAIN,
        words: wordsSays(words.filter((one) => one.treatment === treatment)),
      };
    });
} // prettier-ignore

/** One tasting. */
export function tastingReply(ledger: Ledger, key: number): Tasting {
  const { rows } = ledger;
  const session = rows.get('session', key);
  const marked = markedOf(rows, key);
  const { byJar, expected } = treatmentsOf(rows, session.trial);
  const revealed = session.revealedAt !== null;
  const tasters = [...new Set(marked.map(({ serving }) => serving.taster))];
  const jars = [...new Set(marked.map(({ serving }) => serving.jar))];
  const blind = session.pouredBy === null || !tasters.includes(session.pouredBy);
  const told = revealed ? toldOf(rows, session, marked) : null;
  const oneOfEach = new Set(jars.map((jar) => byJar.get(jar))).size === jars.length;
  const words = revealed ? wordsOf(marked, byJar) : [];
  const ordered = expected !== null;
  const trial = session.trial === null ? null : rows.get('trial', session.trial);
  return {
    session: session.uid,
    label: trial && batchCalled(ledger, trial.batch),
    trial: trial && trial.uid,
    day: session.day,
    task: session.kind,
    blind,
    notBlind: blind ? null : `Not blind: ${rows.get('taster', session.pouredBy ?? 0).name} poured and tasted.`,
    reach: reachReply(session.kind, tasters.length, jars.length, ordered),
    cautions: cautionsOf(ledger, jars),
    tasters: tasters.map((taster) => ({
      taster: rows.uidOf('taster', taster),
      name: rows.get('taster', taster).name,
      done: hasMarked(marked, session.kind, taster),
      servings: marked
        .filter(({ serving }) => serving.taster === taster)
        .map(({ serving, marks }) => ({
          serving: serving.uid,
          code: serving.code,
          jar: revealed ? rows.uidOf('jar', serving.jar) : null,
          treatment: revealed ? (byJar.get(serving.jar) ?? null) : null,
          marks: marks.map(({ aspect, rank, score, word, picked }) => ({ aspect, rank, score, word, picked })),
        })),
    })),
    revealedAt: session.revealedAt,
    told: told && toldReply(told, oneOfEach, { task: session.kind, jars: jars.length, ordered }),
    jars: told && revealedJars(ledger, jars, byJar, told, words),
    words,
  };
} // prettier-ignore

const reachReply = (task: Task, tasters: number, jars: number, ordered: boolean): Tasting['reach'] => {
  const { canTell, tasters: needed } = reachOf(task, Math.max(1, tasters), jars, ordered);
  return { canTell, says: reachSays(task, Math.max(1, tasters), jars, ordered), tasters: needed };
};

/** Whether so many tasters and jars can tell at all: asked before anybody tastes. */
export const askReach = (input: { task: Task; tasters: number; jars: number; ordered: boolean }): Reply<'trial.reach'> => ({
  ...reachReply(input.task, input.tasters, input.task === 'pair' || input.task === 'triangle' ? 2 : input.jars, input.ordered),
  needed: tastingsFor(input.task === 'triangle' ? 'triangle' : 'pair'),
}); // prettier-ignore

/** @throws Refused 'not found' */
export const getTasting = (ledger: Ledger, { session }: { session: string }): Tasting =>
  tastingReply(ledger, ledger.rows.keyOf('session', session));

/** Which jar goes into which bowl. @throws Refused 'not found' */
export function getPouring(ledger: Ledger, { session }: { session: string }): Reply<'session.pour'> {
  const { rows, index } = ledger;
  const key = rows.keyOf('session', session);
  const { byJar } = treatmentsOf(rows, rows.get('session', key).trial);
  const marked = markedOf(rows, key);
  const jars = [...new Set(marked.map(({ serving }) => serving.jar))].toSorted((a, b) => a - b);
  return {
    session,
    says: pourSays(marked.length),
    bowls: jars.map((jar) => ({
      jar: rows.uidOf('jar', jar),
      label: index.jars.has(jar) ? index.jar(jar).label : '',
      treatment: byJar.get(jar) ?? '',
      codes: marked
        .filter(({ serving }) => serving.jar === jar)
        .map(({ serving: { code, taster, place } }) => ({ code, taster: rows.get('taster', taster).name, place })),
    })),
  };
} // prettier-ignore
