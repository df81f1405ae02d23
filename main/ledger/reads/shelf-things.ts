// Everything that still exists, as rows tell it: jars and what was kept apart of them, each with what is left of it, where it
// stands and since when. What it means is core's to say.
import { earliestDay } from '../../../core/lineage/lineage-shapes';
import { inOrder, whatIsLeft, type Held, type Left } from '../../../core/ledger/jar-left';
import { firstOpened, type Standing } from '../../../core/shelf/by-when';
import { longUnsaid, seededOn } from '../../../core/safety/still-there';
import { keptCalled } from '../../../core/says/shelf-says';
import type { Row } from '../facts/tables';
import type { KnownJar } from '../family-index';
import { judgedOf, type Judged } from '../judged';
import type { Ledger } from '../ledger';
import { emptyJars, emptyPortions, storyOf } from '../entries/left-of-rows';
import { whereabouts } from '../entries/where-it-stands';
import { outOfWarmth } from './read-judgement';
import { Refused } from '../../refusal';

/** One thing that is kept: a jar, or what was kept apart of it. */
export interface Thing {
  readonly id: string;
  readonly kind: 'jar' | 'portion';
  readonly key: number;
  readonly jar: KnownJar;
  readonly portion: Row<'portion'> | null;
  readonly name: string;
  readonly held: Held;
  readonly left: Left;
  readonly standing: Standing;
  readonly reserve: boolean;
  /** Some of it was eaten. */
  readonly eaten: boolean;
  /** Nobody said that it is there. */
  readonly unsaid: boolean;
}

const dayOf = (when: string | null): string | null => when?.slice(0, 10) ?? null;

function thingOf(ledger: Ledger, judged: Judged, jar: KnownJar, portion: Row<'portion'> | null): Thing {
  const { rows } = ledger;
  const [kind, key] = portion ? (['portion', portion.key] as const) : (['jar', jar.key] as const);
  const { held, events } = storyOf(rows, kind, key);
  const left = whatIsLeft(held, events);
  const { inHold, outOn: out } = outOfWarmth(ledger, judged, jar.key);
  // Of a range of days the first: it may have stood for so long.
  const outOn = out?.from ?? ledger.clock.today();
  const place = left.place === 'not said' ? (inHold ? 'warmth' : 'fridge') : left.place;
  // A whole jar that was kept for seed is as old as the jar.
  const seedSince = portion === null || portion.form === 'jar' ? outOn : portion.keptOn;
  const moved = rows.where('movement', kind, key);
  return {
    id: portion?.uid ?? jar.uid,
    kind,
    key,
    jar,
    portion,
    name:
      portion === null
        ? jar.label
        : keptCalled(jar.label, {
            ...portion,
            place: left.place === 'not said' ? portion.place : left.place,
            pieces: left.pieces,
          }),
    held,
    left,
    standing: {
      place,
      coldSince: outOn,
      seedSince,
      opened: firstOpened(inOrder(events), portion?.keptOn ?? earliestDay(jar)),
      movedOn: dayOf(left.placedOn) ?? (portion?.place === 'freezer' ? portion.keptOn : null),
      thawed: left.thawed,
    },
    reserve: portion?.reserve ?? false,
    eaten: events.some(({ what }) => what === 'eaten'),
    unsaid:
      portion === null &&
      whereabouts(moved).onShelf === null &&
      moved.length === 0 &&
      !seededOn(ledger.index.family, jar.key, ledger.clock.today()),
  };
}

/** Jars of the family that were made, and of which nothing says that they are gone. */
function* jarsThatMayBe(ledger: Ledger): Generator<KnownJar> {
  const { index, rows } = ledger;
  const empty = emptyJars(rows, null);
  const today = ledger.clock.today();
  for (const key of index.family.keys) {
    const jar = index.jar(key);
    const first = earliestDay(jar);
    const made = jar.state === 'made' && first !== null && first <= today;
    if (made && jar.onShelf !== false && !empty.has(key)) yield jar;
  }
}

export interface Kept {
  readonly things: readonly Thing[];
  /** Of which nobody said for so long that they are taken for gone. */
  readonly longUnsaid: readonly KnownJar[];
}

/** All that is kept. */
export function keptThings(ledger: Ledger): Kept {
  const { index, rows } = ledger;
  const judged = judgedOf(ledger);
  const today = ledger.clock.today();
  const [things, unsaid]: [Thing[], KnownJar[]] = [[], []];
  for (const jar of jarsThatMayBe(ledger)) {
    const seeded = seededOn(index.family, jar.key, today);
    if (!seeded && longUnsaid(jar.onShelf, earliestDay(jar), today)) unsaid.push(jar);
    else things.push(thingOf(ledger, judged, jar, null));
  }
  const empty = emptyPortions(rows);
  // All are read before the first is looked at: while rows are being read, nothing else can be asked.
  const portions = Array.from(rows.all('portion'));
  for (const portion of portions) {
    if (empty.has(portion.key) || portion.keptOn > today || !index.family.has(portion.jar)) continue;
    if (whereabouts(rows.where('movement', 'portion', portion.key)).onShelf === false) continue;
    const thing = thingOf(ledger, judged, index.jar(portion.jar), portion);
    if (!thing.left.none) things.push(thing);
  }
  return { things, longUnsaid: unsaid };
}

/**
 * The jar, or what was kept apart of one, with that id.
 * @throws Refused 'not found', 'is a mistake', 'only planned', 'nothing left'
 */
export function thingWith(ledger: Ledger, id: string): Thing {
  const { rows, index } = ledger;
  const found = rows.recordOf(id);
  if (!found || found.gone || (found.kind !== 'jar' && found.kind !== 'portion'))
    throw new Refused('not found', { kind: 'jar' });
  const portion = found.kind === 'portion' ? rows.get('portion', found.key) : null;
  const jar = index.jar(portion?.jar ?? found.key);
  if (jar.state === 'mistake') throw new Refused('is a mistake', { jar: jar.label });
  if (jar.state !== 'made') throw new Refused('only planned', { jar: jar.label, made: jar.state });
  const thing = thingOf(ledger, judgedOf(ledger), jar, portion);
  if (thing.left.none) throw new Refused('nothing left', { name: thing.name });
  return thing;
}
