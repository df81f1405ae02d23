// What can't be beside the facts that are there already. The tables' own rules hold whoever writes; here the same is asked
// before, so that the sentence can name what stands against it.
import { storedMoment } from '../../../core/ledger/stored-moments';
import { Refused } from '../../refusal';
import type { FactKind, Stored } from './tables';
import type { FactHost } from './fact-host';

type Asked = (host: FactHost, fact: Readonly<Record<string, unknown>>, key: number | null) => void;

const isKey = (value: unknown): value is number => typeof value === 'number';

/** @throws Refused 'portion of another jar' */
function portionOf(host: FactHost, portion: unknown, jar: unknown): void {
  if (!isKey(portion) || !isKey(jar)) return;
  if (host.facts.get('portion', portion).jar !== jar)
    throw new Refused('portion of another jar', { jar: host.labelOf(jar) });
}

interface Interval {
  readonly came: number | null;
  readonly went: number | null;
  readonly hold: number;
}

const secondsOf = (moment: string | null | undefined): number | null =>
  moment === null || moment === undefined ? null : storedMoment(moment).seconds;

/** As the trigger on stays has it: one that has not ended is there at its start, one that nobody timed fills its hold. */
function overlaps(one: Interval, other: Interval): boolean {
  if (one.came === null || other.came === null) return one.hold === other.hold;
  if (one.came === other.came) return true;
  return one.came < (other.went ?? other.came) && other.came < (one.went ?? one.came);
}

const intervalOf = (stay: Stored<'stay'>): Interval => ({
  came: secondsOf(stay.came),
  went: secondsOf(stay.went),
  hold: stay.hold,
});

const stayed: Asked = (host, fact, key) => {
  const stay = fact as unknown as Stored<'stay'>;
  const next = intervalOf(stay);
  const other = host.facts
    .where('stay', 'jar', stay.jar)
    .find((one) => one.key !== key && overlaps(next, intervalOf(one)));
  if (other)
    throw new Refused('stays overlap', { jar: host.labelOf(stay.jar), came: other.came, went: other.went });
};

const probed: Asked = (host, { jar, hold }) => {
  if (!isKey(jar)) return;
  if (!host.facts.where('stay', 'jar', jar).some((stay) => stay.hold === hold))
    throw new Refused('probe elsewhere', { jar: host.labelOf(jar) });
};

const used: Asked = (host, fact) => {
  const { package: box, milk, addition, seeding } = fact as unknown as Stored<'use'>;
  const found = host.facts.get('package', box);
  const fits =
    (milk === null || found.of === 'milk') &&
    (addition === null || found.of === 'addition') &&
    (seeding === null || (found.of === 'source' && sourceFits(host, found.source, seeding)));
  if (!fits) throw new Refused('package of something else', { name: found.name });
};

const sourceFits = (host: FactHost, source: number | null, seeding: number): boolean =>
  source === null || host.facts.get('seeding', seeding).source === source;

const treated: Asked = (host, fact, key) => {
  const { trial, jar } = fact as unknown as Stored<'treatment'>;
  if (host.facts.get('jar', jar).batch !== host.facts.get('trial', trial).batch)
    throw new Refused('jar of another batch', { jar: host.labelOf(jar) });
  if (host.facts.where('treatment', 'trial', trial).some((one) => one.key !== key && one.jar === jar))
    throw new Refused('in the trial already', { jar: host.labelOf(jar) });
};

const served: Asked = (host, fact, key) => {
  const { session, taster, place, code, jar, portion } = fact as unknown as Stored<'serving'>;
  portionOf(host, portion, jar);
  const others = host.facts.where('serving', 'session', session).filter((one) => one.key !== key);
  if (others.some((one) => one.code === code)) throw new Refused('code twice', { code });
  if (others.some((one) => one.taster === taster && one.place === place))
    throw new Refused('place twice', { place });
};

const marked: Asked = (host, fact, key) => {
  const { serving, aspect } = fact as unknown as Stored<'mark'>;
  const there = host.facts
    .where('mark', 'serving', serving)
    .some((one) => one.key !== key && one.aspect === aspect);
  if (there) throw new Refused('marked already', { aspect });
};

const ASKED: Partial<Record<FactKind, Asked>> = {
  stay: stayed,
  series: probed,
  use: used,
  treatment: treated,
  serving: served,
  mark: marked,
  observation: (host, { portion, jar }) => portionOf(host, portion, jar),
  portion: (host, { ofPortion, jar }) => portionOf(host, ofPortion, jar),
  seeding: (host, { portion, fromJar }) => portionOf(host, portion, fromJar),
  photograph: (host, { observation, jar }) => {
    if (isKey(observation) && host.facts.get('observation', observation).jar !== jar)
      throw new Refused('jar of another batch', { jar: isKey(jar) ? host.labelOf(jar) : '' });
  },
};

/** Kinds that tell of what is there: a jar that was never made has none of them. */
const OF_WHAT_IS_THERE: Partial<Record<FactKind, string>> = {
  observation: 'seen', movement: 'moved', portion: 'kept', labResult: 'measured', serving: 'tasted',
}; // prettier-ignore

/** @throws Refused 'is a mistake', 'planned has facts' */
function refuseNotThere(host: FactHost, kind: FactKind, jar: unknown): void {
  if (!isKey(jar)) return;
  const { state } = host.facts.get('jar', jar);
  if (state === 'mistake') throw new Refused('is a mistake', { jar: host.labelOf(jar) });
  const what = OF_WHAT_IS_THERE[kind];
  if (what !== undefined && (state === 'planned' || state === 'not made'))
    throw new Refused('planned has facts', {
      jar: host.labelOf(jar),
      state: state === 'planned' ? 'only planned' : state,
      what,
    });
}

/**
 * Asks about a whole fact, its references as keys.
 * @param key of what is corrected; null for what is new
 * @throws Refused where it can't stand beside what is there
 */
export function refuseBeside(
  host: FactHost,
  kind: FactKind,
  fact: Readonly<Record<string, unknown>>,
  key: number | null,
): void {
  refuseNotThere(host, kind, fact.jar);
  ASKED[kind]?.(host, fact, key);
}
