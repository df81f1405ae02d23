// What a jar's way back says of it as a seed: a jar in doubt that it descends from, and a caution that was lifted. Neither is a
// stop; both are to be looked at first, and to be read before it is used.
import type { Family } from '../lineage/family';
import { safetyOf } from '../lineage/touch';
import type { InShort, SeedLook } from '../shapes/seed-codes';
import { nearestMarks } from './marked-line';

/** A jar that is in doubt, and why (doubts.ts). */
export interface InDoubt {
  readonly jar: number;
  readonly label: string;
  readonly because: readonly InShort[];
}

/** A jar whose caution was lifted with a written reason. */
interface Lifted {
  readonly label: string;
  readonly of: number;
  /** The label of that spoiled jar. */
  readonly because: string;
  readonly reason: string;
}

/** Cautions of a jar that were lifted, a mark for each. */
function liftedOf(family: Family, jar: number): Lifted[] {
  const { label } = family.jar(jar);
  return family
    .cautionsOf(jar)
    .flatMap(({ level, cleared, of }) =>
      level === 'set aside' && cleared !== null
        ? [{ label, of, because: family.jar(of).label, reason: cleared.trim() }]
        : [],
    );
}

/**
 * Generations after which a mark is no longer told. A doubt ends as a mate's caution does, where two in a row passed the gate and
 * were seen clean again; a slow start never does. A caution that was lifted is told for two (common practice, no source).
 */
const GENERATIONS = 2;

/** What the way back of each jar says of it. */
export interface WayBack {
  /** What has to be looked at first because of it. */
  readonly looks: (jar: number) => readonly SeedLook[];
  /** The nearest jar in doubt on it. */
  readonly doubtful: (jar: number) => number | null;
}

/**
 * For each jar, what has to be looked at first because of its way back.
 * @param inDoubt jars in doubt themselves; a child is told of the nearest on its way back
 */
export function wayBackOf(family: Family, inDoubt: ReadonlyMap<number, InDoubt>): WayBack {
  const doubts = nearestMarks(family, inDoubt, (doubt, jar, run) => {
    if (doubt.because.some(({ code }) => code === 'slow start')) return 0;
    const clean = safetyOf(family.jar(jar)).clean ? run + 1 : 0;
    return clean < GENERATIONS ? clean : null;
  });
  const own = new Map<number, Lifted[]>();
  for (const jar of new Set(family.clearings.map((clearing) => clearing.jar))) {
    const lifted = family.has(jar) ? liftedOf(family, jar) : [];
    if (lifted.length > 0) own.set(jar, lifted);
  }
  const lifts = nearestMarks(family, own, (_, __, run) => (run < GENERATIONS ? run + 1 : null));
  const looks = (jar: number): readonly SeedLook[] => {
    const doubt = doubts.get(jar);
    const mine = own.get(jar) ?? [];
    // A caution of its own about the same spoiled jar is said of itself.
    const said = new Set(
      family.cautionsOf(jar).flatMap(({ level, of }) => (level === 'set aside' ? [of] : [])),
    );
    const above = (lifts.get(jar) ?? []).filter(({ of }) => !said.has(of));
    const lifted = ({ label, because, reason }: Lifted, own: boolean): SeedLook => ({
      code: 'lifted',
      label: own ? null : label,
      because,
      reason,
    });
    return [
      ...mine.map((one) => lifted(one, true)),
      ...(doubt
        ? [{ code: 'descends from doubt' as const, label: doubt.label, because: doubt.because }]
        : []),
      ...above.map((one) => lifted(one, false)),
    ];
  };
  return { looks, doubtful: (jar) => doubts.get(jar)?.jar ?? null };
}
