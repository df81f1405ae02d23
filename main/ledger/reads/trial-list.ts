// Trials as the screen lists them, and what the jars of a batch would be compared for.
import type { Parsed, Reply } from '../../../core/contract';
import { dayInOrder } from '../../../core/lineage/lineage-shapes';
import { printAmount } from '../../../core/quantities/printing';
import {
  alsoSays,
  begunSays,
  differenceSays,
  differsIn,
  NOT_TASTED,
  togetherSays,
} from '../../../core/says/trial-says';
import { refusalSentence } from '../../../core/sentences';
import { type Compared, differenceOf, PLAIN } from '../../../core/trials/differences';
import { combined, type Session } from '../../../core/trials/tasting';
import { emptyJars } from '../entries/left-of-rows';
import type { Row } from '../facts/tables';
import type { Ledger } from '../ledger';
import {
  batchCalled,
  blocksOf,
  cautionsOf,
  hasMarked,
  markedOf,
  seedOf,
  tastingReply,
  toldReply,
  treatmentsOf,
  whyNotTasted,
} from './read-trials';
import { seedLabel } from './read-views'; // prettier-ignore

type Listed = Reply<'trial.list'>['trials'][number];
type TrialJar = Listed['treatments'][number];

/** A jar of a trial, drawn; why nobody tastes it. */
function trialJar(ledger: Ledger, jar: number, name: string, dose: number | null, plain: boolean): TrialJar {
  const { rows, index } = ledger;
  const known = index.jars.get(jar);
  const drawn = known !== undefined && index.family.has(jar);
  const not = known === undefined ? null : whyNotTasted(ledger, jar);
  const generation = drawn ? index.family.generationOf(jar) : null;
  return {
    jar: rows.uidOf('jar', jar),
    label: known?.label ?? '',
    name,
    dose,
    plain,
    not: not && refusalSentence(not),
    gone: known?.onShelf === false || emptyJars(rows, [jar]).has(jar),
    drawn: drawn && generation ? {
      generation: generation.deepest, atLeast: generation.atLeast, setWord: known.setWord, spoiled: known.spoiled,
      caution: index.family.cautionLevelOf(jar),
    } : null,
  };
} // prettier-ignore

/** Revealed tastings, of trials that compare the same treatments, that tell which was liked better. */
function sessionsLike(ledger: Ledger, names: readonly string[]): Session[] {
  const { rows } = ledger;
  const wanted = names.toSorted().join('\n');
  // All are read before the first is looked at: while rows are being read, nothing else can be asked.
  return Array.from(rows.all('session')).flatMap((session) => {
    if (session.trial === null || session.revealedAt === null) return [];
    if (session.kind === 'triangle') return [];
    const own = treatmentsOf(rows, session.trial);
    if (own.names.toSorted().join('\n') !== wanted) return [];
    const seeds = new Set([...own.byJar.keys()].map((jar) => seedOf(ledger, jar)));
    const [seed = null] = seeds;
    const blocks = blocksOf(markedOf(rows, session.key), own.byJar).map(({ taster, marks }) => ({
      taster,
      // Scores of a taster count by their order only, so that they stand beside ranks.
      marks: session.kind === 'score' ? new Map([...marks].map(([name, score]) => [name, -score])) : marks,
    }));
    return [{ batch: String(rows.get('trial', session.trial).batch), seed: seeds.size === 1 ? seed : null, blocks }];
  });
} // prettier-ignore

function sessionOf(ledger: Ledger, session: Row<'session'>): Listed['sessions'][number] {
  const marked = markedOf(ledger.rows, session.key);
  const tasters = [...new Set(marked.map(({ serving }) => serving.taster))];
  const done = tasters.filter((one) => hasMarked(marked, session.kind, one)).length;
  const tasting = session.revealedAt === null ? null : tastingReply(ledger, session.key);
  return {
    id: session.uid,
    day: session.day,
    task: session.kind,
    revealed: tasting !== null,
    tasters: tasters.length,
    done,
    says: tasting?.told?.says ?? null,
  };
}

/** What stands on a trial's row: the last tasting that told, or else where the last one is. */
function saysOf(sessions: Listed['sessions']): string {
  const open = sessions.findLast(({ revealed }) => !revealed);
  if (open) return begunSays(open.done, open.tasters);
  return (sessions.findLast(({ says }) => says !== null) ?? sessions.at(-1))?.says ?? NOT_TASTED;
}

function trialReply(ledger: Ledger, trial: Row<'trial'>): Listed {
  const { rows } = ledger;
  const { names, expected } = treatmentsOf(rows, trial.key);
  const like = sessionsLike(ledger, names);
  const together = like.length === 0 ? null : combined(like, names, 'rank', expected);
  const own = rows.where('treatment', 'trial', trial.key);
  const treatments = own.map(({ jar, name, dose }) =>
    trialJar(ledger, jar, name, dose, name.trim().toLowerCase() === PLAIN),
  );
  const sessions = rows
    .where('session', 'trial', trial.key)
    .toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.key - b.key))
    .map((session) => sessionOf(ledger, session));
  return {
    id: trial.uid,
    batch: rows.uidOf('batch', trial.batch),
    batchLabel: batchCalled(ledger, trial.batch),
    label: treatments.map(({ label }) => label).join(', '),
    differsIn: trial.differsIn,
    expected: trial.expected,
    says: saysOf(sessions),
    cautions: cautionsOf(ledger, own.map(({ jar }) => jar)),
    treatments,
    sessions,
    together: together && {
      batches: together.batches, sameSeed: together.sameSeed, enough: together.enough,
      told: together.told && toldReply(together.told, false, null), says: togetherSays(together),
    },
  };
} // prettier-ignore

/** Jars of a batch that were made. */
const madeIn = ({ rows, index }: Ledger, batch: number): number[] =>
  rows
    .where('jar', 'batch', batch)
    .filter(({ key, state }) => state === 'made' && index.family.has(key))
    .map(({ key }) => key);

function comparedOf(ledger: Ledger, jar: number): Compared {
  const { rows, index, preferences } = ledger;
  const seeds = index.family.has(jar) ? index.family.seedsOf(jar) : [];
  return {
    jar,
    milk: rows.where('milk', 'jar', jar)[0]?.name ?? null,
    seed: seeds.map((seeding) => seedLabel(ledger, seeding)).toSorted().join(' and '),
    additions: rows.where('addition', 'jar', jar).map(({ name, planned, actual }) => {
      const amount = actual ?? planned;
      return { name, value: amount?.value ?? null, unit: amount?.unit ?? null, printed: amount && printAmount(amount, preferences) };
    }),
  };
} // prettier-ignore

/** What the jars of a batch differ in. @throws Refused 'not found' */
export function proposeTrial(ledger: Ledger, input: Parsed<'trial.propose'>): Reply<'trial.propose'> {
  const { rows } = ledger;
  const batch = rows.keyOf('batch', input.batch);
  const jars = madeIn(ledger, batch);
  const difference = differenceOf(jars.map((jar) => comparedOf(ledger, jar)));
  const also = difference && alsoSays(difference);
  return {
    batch: input.batch,
    label: batchCalled(ledger, batch),
    differsIn: difference && differsIn(difference),
    says: differenceSays(difference),
    cautions: [...(also ? [also] : []), ...cautionsOf(ledger, jars, difference?.what === 'seed')],
    treatments: (difference?.treatments ?? []).map(({ jar, name, dose, plain }) =>
      trialJar(ledger, jar, name, dose, plain),
    ),
    trials: rows.where('trial', 'batch', batch).map(({ uid }) => uid),
  };
}

const MOST_OFFERED = 4;

/** The newest batches of which two jars at least may be tasted, are still there and differ in something. */
function offersOf(ledger: Ledger): Reply<'trial.list'>['offers'] {
  const { rows, index } = ledger;
  const tried = new Set(Array.from(rows.all('trial')).map(({ batch }) => batch));
  const byBatch = new Map<number, number[]>();
  for (const key of index.family.keys) {
    const { state, onShelf, batch } = index.jar(key);
    if (state === 'made' && onShelf !== false && !tried.has(batch))
      byBatch.set(batch, [...(byBatch.get(batch) ?? []), key]);
  }
  const dayOf = ([, [jar]]: readonly [number, readonly number[]]): string =>
    jar === undefined ? '' : (dayInOrder(index.jar(jar)) ?? '');
  const newest = [...byBatch]
    .filter(([, own]) => own.length > 1)
    .toSorted((a, b) => dayOf(b).localeCompare(dayOf(a)));
  const offers: Reply<'trial.list'>['offers'] = [];
  // Of an old ledger not every batch is asked about: what is long past is eaten.
  for (const [batch, own] of newest.slice(0, 4 * MOST_OFFERED)) {
    if (offers.length === MOST_OFFERED) break;
    const empty = emptyJars(rows, own);
    const there = own.filter((jar) => !empty.has(jar) && whyNotTasted(ledger, jar) === null);
    const difference = differenceOf(there.map((jar) => comparedOf(ledger, jar)));
    // Whose seeds differ are compared by how they set.
    if (!difference || difference.what === 'seed') continue;
    const label = batchCalled(ledger, batch);
    offers.push({ batch: rows.uidOf('batch', batch), label, says: differenceSays(difference) });
  }
  return offers;
}

/** The newest batches first. */
export function listTrials(ledger: Ledger): Reply<'trial.list'> {
  const { rows } = ledger;
  const trials = Array.from(rows.all('trial'));
  const dayOf = ({ batch }: Row<'trial'>): string => {
    const { madeOn, madeTo } = rows.get('batch', batch);
    return madeOn ?? madeTo ?? '';
  };
  return {
    trials: trials
      .toSorted((a, b) => dayOf(b).localeCompare(dayOf(a)) || b.key - a.key)
      .map((trial) => trialReply(ledger, trial)),
    offers: offersOf(ledger),
    tasters: Array.from(rows.all('taster')).map(({ key, uid, name }) => ({
      id: uid,
      name,
      avoids: rows.where('tasterAvoids', 'taster', key).map(({ allergen }) => allergen),
    })),
  };
}
