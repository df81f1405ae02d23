// What several reads show of a jar: its generation, its seeds, its cautions, what is drawn of it.
import { dayInOrder } from '../../../core/lineage/lineage-shapes';
import type {
  FamilyJarReply,
  JarCautionReply,
  JarView,
  Parsed,
  Reply,
  SafetyReply,
} from '../../../core/contract';
import { portionName } from '../../../core/ledger/portions';
import { cautionWords } from '../../../core/says/safety-says';
import { calledDay, lineName } from '../../../core/lineage/labels';
import { printAmount } from '../../../core/quantities/quantities';
import type { KnownJar } from '../family-index';
import type { Ledger } from '../ledger';
import { seedingAmounts } from '../derived/columns-of-jars';
import { emptyJars } from '../entries/left-of-rows';
import { Refused } from '../../refusal';
import { stands, type Caution } from '../../../core/shapes/caution-codes';
import type { Answer } from '../../../core/shapes/safety-codes';

/** Sums of shares may miss 1 by a rounding; a reply never leaves 0 to 1. */
export const within = (share: number): number => Math.min(1, Math.max(0, share));

/**
 * The jar with that id, if it is of the family.
 * @throws Refused 'not found', 'is a mistake', 'only planned'
 */
export function familyMember(ledger: Ledger, uid: string): KnownJar {
  const jar = ledger.index.jar(ledger.rows.keyOf('jar', uid));
  if (jar.state === 'mistake') throw new Refused('is a mistake', { jar: jar.label });
  if (jar.state === 'planned' || jar.state === 'not made')
    throw new Refused('only planned', { jar: jar.label, made: jar.state });
  return jar;
}

/** Printed names of lines, by founding batch. */
export function lineNames(ledger: Ledger): (batch: number) => string {
  const known = new Map<number, string>();
  return (batch) => {
    let name = known.get(batch);
    if (name === undefined) {
      const row = ledger.rows.get('batch', batch);
      name = lineName({ ...calledDay(row), word: row.word }, row.lineName);
      known.set(batch, name);
    }
    return name;
  };
}

export function cautionReplies(ledger: Ledger, key: number): FamilyJarReply['cautions'] {
  const { family, jars } = ledger.index;
  return family.cautionsOf(key).map((caution) => ({
    of: jars.get(caution.of)?.uid ?? '',
    ...told(caution),
  }));
}

/** What is told of every caution. */
const told = (caution: Caution): Pick<JarCautionReply, 'how' | 'level' | 'cleared' | 'ended'> => ({
  how: cautionWords(caution),
  level: caution.level,
  cleared: !stands(caution),
  ended: caution.ended,
});

/** Names of the portions that seedings of some jars were taken from, by seeding key. */
function seedingPortions(ledger: Ledger, jars: readonly number[]): ReadonlyMap<number, string> {
  const rows = ledger.rows
    .prepare(
      `SELECT key, portion FROM seeding
        WHERE portion IS NOT NULL AND jar IN (SELECT value FROM json_each(?))`,
    )
    .all(JSON.stringify(jars)) as { key: number; portion: number }[];
  return new Map(rows.map(({ key, portion }) => [key, keptName(ledger, portion) ?? '']));
}

/** The one answer on safety as replies have it. */
export const safetyReply = ({ eat, seed, stops, looks, noAcid }: Answer): SafetyReply => ({
  eat, seed, stops: [...stops], looks: [...looks], noAcid,
}); // prettier-ignore

/** Cautions as shown beside the jar itself; none on a jar that is not of the family. */
export function jarCautions({ index }: Ledger, key: number): JarCautionReply[] {
  if (!index.family.has(key)) return [];
  return index.family.cautionsOf(key).map((caution) => ({
    of: index.jar(caution.of).uid,
    ...told(caution),
    label: index.jar(caution.of).label,
    relation: caution.relation,
    steps: caution.steps,
    reason: caution.cleared,
    mayEnd: caution.mayEnd,
    liftedBefore: caution.liftedBefore,
    via:
      caution.via === null ? null : { id: index.jar(caution.via).uid, label: index.jar(caution.via).label },
  }));
}

/** Jars with a caution that stands because of one, the newest first. */
export function cautionsBecauseOf(
  { index, rows }: Ledger,
  { of }: Parsed<'caution.list'>,
): Reply<'caution.list'> {
  const { family } = index;
  const root = rows.keyOf('jar', of);
  const jars = family.keys.flatMap((key) => {
    if (key === root || family.cautionLevelOf(key) === null) return [];
    const caution = family.cautionsOf(key).find((one) => one.of === root && stands(one));
    if (!caution) return [];
    const jar = index.jar(key);
    const { uid: id, label } = jar;
    const day = dayInOrder(jar) ?? '';
    return [{ id, label, level: caution.level, how: cautionWords(caution), madeOn: day }];
  });
  return {
    jars: jars
      .toSorted((a, b) => b.madeOn.localeCompare(a.madeOn) || a.label.localeCompare(b.label))
      .map(({ madeOn: _day, ...jar }) => jar),
  };
}

/** What is drawn of the jars with those keys; a key the family does not hold is passed over. */
export function jarViews(ledger: Ledger, keys: readonly number[]): JarView[] {
  const { index, preferences } = ledger;
  const { family } = index;
  const held = keys.filter((key) => family.has(key));
  const amounts = seedingAmounts(ledger.rows, held);
  const kept = seedingPortions(ledger, held);
  const empty = emptyJars(ledger.rows, held);
  const nameOf = lineNames(ledger);
  return held.map((key) => {
    const jar = index.jar(key);
    const shares = family.sharesOf(key);
    return {
      key,
      id: jar.uid,
      label: jar.label,
      madeOn: jar.madeOn,
      madeBetween: jar.madeBetween,
      generation: family.generationOf(key),
      setWord: jar.setWord,
      caution: family.cautionLevelOf(key),
      spoiled: jar.spoiled,
      discard: jar.safety.discard,
      lost: jar.state === 'lost',
      onShelf: empty.has(key) ? false : jar.onShelf,
      outcomeKnown: jar.outcomeKnown,
      additions: [...jar.additions],
      seeds: family.seedsOf(key).map((seeding) => {
        const amount = amounts.get(seeding.key);
        const known = seeding.fromJar !== null && family.has(seeding.fromJar) ? seeding.fromJar : null;
        return {
          key: known,
          label: seedLabel(ledger, seeding),
          share: within(shares.get(seeding.key) ?? 0),
          amount:
            [amount ? printAmount(amount, preferences) : null, kept.get(seeding.key)]
              .filter(Boolean)
              .join(' of ') || null,
        };
      }),
      lines: family.linesOf(key).map(nameOf),
    };
  });
}

/** The portion a seeding was taken from, in words: "freezer cubes"; null where it was the jar itself. */
export function keptName({ rows }: Ledger, portion: number | null): string | null {
  return portion === null ? null : portionName(rows.get('portion', portion));
}

/** What a seed is called beside the jar it seeded. */
export function seedLabel(
  ledger: Ledger,
  seeding: { readonly fromJar: number | null; readonly source: number | null },
): string {
  if (seeding.source !== null) return ledger.rows.get('source', seeding.source).name;
  const jar = seeding.fromJar === null ? undefined : ledger.index.jars.get(seeding.fromJar);
  if (!jar) return 'unknown';
  return jar.state === 'mistake' ? `${jar.label} (entered by mistake)` : jar.label;
}
