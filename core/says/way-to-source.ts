// The way back to the sources as one sentence, the way a person would say it: along the seed a jar hangs from, with what
// was mixed in on the way, and how the line began.
import { FROM_UNKNOWN } from '../lineage/counting';
import type { Family } from '../lineage/family-version';
import { seedJars } from '../lineage/primary-seed';
import type { FamilySeeding } from '../lineage/lineage-shapes';

/** Longer middles are abbreviated: the first two, how many more, the last. */
const SAID_IN_FULL = 5;

/** "a", "a and b", "a, b and c"; of a long list the first three and how many more. */
export function inWords(names: readonly string[]): string {
  const said = names.length > 4 ? [...names.slice(0, 3), `${names.length - 3} more`] : names;
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
}

/** "Blue Tin", or "Lantern, received with its past unknown". */
function sourceInWords(family: Family, key: number): string {
  const source = family.source(key);
  if (!source) return 'a source';
  if (!source.culture) return source.name;
  return source.knownGenerations === null
    ? `${source.name} (received, its past unknown)`
    : `${source.name} (received at generation ${source.knownGenerations})`;
}

const sourcesOf = (family: Family, seedings: readonly FamilySeeding[]): string[] =>
  [...new Set(seedings.flatMap((seeding) => seeding.source ?? []))].map((key) => sourceInWords(family, key));

const hasMissing = (family: Family, slot: number): boolean =>
  (family.columns.seedSlots[slot] as readonly number[]).includes(FROM_UNKNOWN);

const GONE = 'a jar that is no longer in the ledger';

/** How a jar that hangs from no other began: "was started from …". */
function began(family: Family, slot: number): string {
  const { columns } = family;
  const seedings = columns.seedings[slot] as readonly FamilySeeding[];
  if (seedings.length === 0) {
    return columns.jars[slot]?.lost
      ? 'stands for a jar that nobody can name'
      : 'has no recorded seed, so its past is unknown';
  }
  const gone = hasMissing(family, slot);
  const from = [...(gone ? [GONE] : []), ...sourcesOf(family, seedings)];
  return gone
    ? `was seeded from ${inWords(from)}, so its past is unknown`
    : `was started from ${inWords(from)}`;
}

/** One jar on the way with what was mixed with it. */
interface Stop {
  readonly label: string;
  readonly mixedWith: readonly string[];
}

/** The seeding of a jar on the way: the seed it hangs from, with what was mixed with that. */
function stopAt(family: Family, slot: number): Stop & { readonly slot: number } {
  const { columns } = family;
  const label = (of: number): string => columns.jars[of]?.label ?? '?';
  const [hangsFrom, ...others] = seedJars(columns, slot);
  if (!hangsFrom) throw new Error('the way back ends at this jar');
  return {
    slot: hangsFrom.slot,
    label: label(hangsFrom.slot),
    mixedWith: [
      ...others.map((seed) => label(seed.slot)),
      ...(hasMissing(family, slot) ? [GONE] : []),
      ...sourcesOf(family, columns.seedings[slot] as readonly FamilySeeding[]).map((name) => `fresh ${name}`),
    ],
  };
}

/** The first so many seedings on the way back. */
function firstStops(family: Family, slot: number, many: number): ReturnType<typeof stopAt>[] {
  const stops: ReturnType<typeof stopAt>[] = [];
  for (let at = slot; stops.length < many; at = stops.at(-1)?.slot ?? at) stops.push(stopAt(family, at));
  return stops;
}

/** A stop with what was mixed in. */
const told = ({ label, mixedWith }: Stop): string =>
  mixedWith.length > 0 ? `${label} (mixed with ${inWords(mixedWith)})` : label;

/** The sentence for one jar. It costs the same however long the way is: only what is named is looked at. */
export function wayBack(family: Family, key: number): string {
  const { columns } = family;
  const slot = columns.slot(key);
  if (slot < 0) throw new RangeError(`the family holds no jar ${key}`);
  const first = columns.jars[slot]?.label ?? '?';
  const length = columns.wayLength[slot] as number;
  const [nearest, ...before] = firstStops(family, slot, length - 1 > SAID_IN_FULL ? 3 : length);
  if (!nearest) return `${first} ${began(family, slot)}.`;
  const seeded = `${first} was seeded from ${inWords([nearest.label, ...nearest.mixedWith])}`;
  if (length === 1) return `${seeded}, and ${nearest.label} ${began(family, nearest.slot)}.`;
  if (length - 1 > SAID_IN_FULL) return `${seeded}; ${longWay(family, slot, nearest, before)}.`;
  const last = before.at(-1) as ReturnType<typeof stopAt>;
  const through = before.slice(0, -1).map(told);
  const via =
    through.length > 0
      ? ` through ${through.length > 1 ? `${through.slice(0, -1).join(', ')} and ${through.at(-1)}` : through[0]}`
      : '';
  return `${seeded}; ${nearest.label} goes back${via} to ${told(last)}, which ${began(family, last.slot)}.`;
}

/** A way too long to be told in full: its first three jars, its last, and how many lie between. */
function longWay(
  family: Family,
  slot: number,
  nearest: Stop,
  before: readonly ReturnType<typeof stopAt>[],
): string {
  const { wayLength, wayMixed, wayFirst } = family.columns;
  const end = wayFirst[slot] as number;
  const last = stopAt(family, end);
  const skipped = (wayLength[slot] as number) - 4;
  const mixed = (wayMixed[before.at(-1)?.slot ?? end] as number) - (wayMixed[end] as number);
  const aside = mixed > 0 ? `, ${mixed} of them mixed from several seeds` : '';
  const [second, third] = before.map(told);
  return `${nearest.label} goes back through ${second}, ${third} and ${skipped} more jars${aside}, to ${told(last)}, which ${began(family, last.slot)}`;
}
