// The way back to the sources as one sentence, the way a person would say it: along the seed a jar hangs from, with what
// was mixed in on the way, and how the line began.
import { FROM_UNKNOWN } from './counting';
import type { Family } from './family-version';
import { seedJars } from './primary-seed';
import type { FamilySeeding } from './lineage-shapes';

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

/** The sentence for one jar. */
export function wayBack(family: Family, key: number): string {
  const { columns } = family;
  const label = (slot: number): string => columns.jars[slot]?.label ?? '?';
  let slot = columns.slot(key);
  if (slot < 0) throw new RangeError(`the family holds no jar ${key}`);
  const first = label(slot);
  const stops: Stop[] = [];
  for (;;) {
    const seeds = seedJars(columns, slot);
    const hangsFrom = seeds[0];
    if (!hangsFrom) break;
    stops.push({
      label: label(hangsFrom.slot),
      mixedWith: [
        ...seeds.slice(1).map((seed) => label(seed.slot)),
        ...(hasMissing(family, slot) ? [GONE] : []),
        ...sourcesOf(family, columns.seedings[slot] as readonly FamilySeeding[]).map(
          (name) => `fresh ${name}`,
        ),
      ],
    });
    slot = hangsFrom.slot;
  }
  const start = began(family, slot);
  const [nearest, ...before] = stops;
  if (!nearest) return `${first} ${start}.`;
  const seeded = `${first} was seeded from ${inWords([nearest.label, ...nearest.mixedWith])}`;
  if (before.length === 0) return `${seeded}, and ${nearest.label} ${start}.`;
  const last = before.at(-1) as Stop;
  const middle = [nearest, ...before].slice(0, -1);
  const told = before.map(({ label, mixedWith }) =>
    mixedWith.length > 0 ? `${label} (mixed with ${inWords(mixedWith)})` : label,
  );
  if (before.length <= SAID_IN_FULL) {
    const through = told.slice(0, -1);
    const end = told.at(-1) as string;
    const via =
      through.length > 0
        ? ` through ${through.length > 1 ? `${through.slice(0, -1).join(', ')} and ${through.at(-1)}` : through[0]}`
        : '';
    return `${seeded}; ${nearest.label} goes back${via} to ${end}, which ${start}.`;
  }
  const skipped = before.length - 3;
  const mixed = middle.slice(3).filter((stop) => stop.mixedWith.length > 0).length;
  const aside = mixed > 0 ? `, ${mixed} of them mixed from several seeds` : '';
  return `${seeded}; ${nearest.label} goes back through ${told[0]}, ${told[1]} and ${skipped} more jars${aside}, to ${last.mixedWith.length > 0 ? told.at(-1) : last.label}, which ${start}.`;
}
