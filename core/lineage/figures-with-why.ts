// Every lineage figure of a jar with its why: the formula in words, what went in, what was assumed, where it is from.
import type { Figure } from '../contract';
import { UNKNOWN_PAST_NAME } from './labels';
import type { Family } from './family-version';
import { seedCount } from './seed-shares';
import { DEFAULT_COUNT_PER_ML, type FamilyJar, type FamilySeeding, type ShareBasis } from './lineage-shapes';

type Input = Figure['why']['inputs'][number];

const UNKNOWN = 'unknown';
const DENSITY_SOURCE = 'Hekmat & Reid 2007, doi 10.1111/j.1365-2621.2006.01292.x (2 × 10⁸ per mL in milk)';
const TRANSFER_SOURCE = 'serial transfer arithmetic: 1 in 100 regrown is log2(100) = 6.64 doublings';
const GREW_BACK = 'at least this many, if each jar grew back to the same density';

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** A number for reading: three significant digits, large counts as "8.87 × 10⁹". */
export function plainNumber(value: number): string {
  if (value !== 0 && (Math.abs(value) >= 1e6 || Math.abs(value) < 1e-3)) {
    const [digits, power] = value.toExponential(2).split('e') as [string, string];
    const raised = [...String(Number(power))]
      .map((c) => (c === '-' ? '⁻' : SUPERSCRIPTS[Number(c)]))
      .join('');
    return `${Number(digits)} × 10${raised}`;
  }
  return String(Math.abs(value) >= 1000 ? Math.round(value) : Number(value.toPrecision(3)));
}

/** A part as a percentage that never rounds something to nothing or to everything. */
export function percent(part: number): string {
  const shown = part * 100;
  if (part > 0 && shown < 0.1) return 'under 0.1 %';
  if (part < 1 && shown > 99.9) return 'over 99.9 %';
  return `${Number(shown.toFixed(1))} %`;
}

const seedName = (family: Family, seeding: FamilySeeding): string => {
  if (seeding.source !== null) return family.source(seeding.source)?.name ?? UNKNOWN;
  const key = seeding.fromJar as number;
  return family.has(key) ? family.jar(key).label : 'a jar that is no longer in the ledger';
};

/** What was brought, as recorded. */
function amountOf(seeding: FamilySeeding): string {
  if (seeding.countDirect !== null) return `${plainNumber(seeding.countDirect)} CFU`;
  if (seeding.pieces !== null) {
    const each = seeding.countPerPiece === null ? '' : `, ${plainNumber(seeding.countPerPiece)} CFU each`;
    return `${plainNumber(seeding.pieces)} ${seeding.pieces === 1 ? 'piece' : 'pieces'}${each}`;
  }
  return seeding.volumeMl === null ? UNKNOWN : `${plainNumber(seeding.volumeMl)} mL`;
}

const atLeast = (family: Family, key: number, shown: string): string =>
  family.generationOf(key).atLeast ? `at least ${shown}` : shown;

/** For each seed its generation, read by `pick`; a product counts as 0. */
function seedGenerations(family: Family, key: number, pick: 'deepest' | 'shallowest' | 'mean'): Input[] {
  return family.seedsOf(key).map((seeding) => {
    const name = seedName(family, seeding);
    if (seeding.source !== null) {
      const source = family.source(seeding.source);
      if (!source?.culture) return { name, value: 'source (0)' };
      return { name, value: source.knownGenerations === null ? 'received, at least 1' : `received at ${source.knownGenerations}` }; // prettier-ignore
    }
    const from = seeding.fromJar as number;
    if (!family.has(from)) return { name, value: 'at least 1' };
    return { name, value: atLeast(family, from, plainNumber(family.generationOf(from)[pick])) };
  });
}

function generationFigures(family: Family, key: number): Figure[] {
  const generation = family.generationOf(key);
  const assumptions = generation.atLeast
    ? [
        'at least: somewhere on the way back the past is unknown (a received culture, a lost jar, or no recorded seed)',
      ]
    : [];
  const figure = (
    name: string,
    shown: number,
    formula: string,
    inputs: Input[],
    extra: string[] = [],
  ): Figure => ({
    name,
    shown: atLeast(family, key, String(Number(shown.toFixed(2)))),
    why: { formula, inputs, assumptions: [...assumptions, ...extra], source: null },
  });
  const basis = family.basisOf(key);
  return [
    figure('Generation', generation.deepest, '1 for a jar seeded from sources alone, else 1 + the deepest jar that seeded it', seedGenerations(family, key, 'deepest')),
    figure('Generation, shortest way', generation.shallowest, '1 + the least removed of all its seeds', seedGenerations(family, key, 'shallowest')),
    figure('Generation, mean', generation.mean, 'sum over its seeds of seed share × (1 + the seed’s mean); a source counts as 0', seedGenerations(family, key, 'mean'), basis === null ? [] : [`seed shares by ${basis}`]),
  ]; // prettier-ignore
}

const doublingsShown = (value: number | null): string => (value === null ? UNKNOWN : value.toFixed(1));

/** What the doublings in one jar were reckoned from. */
function ownInputs(family: Family, jar: FamilyJar): { inputs: Input[]; assumptions: string[] } {
  const inputs: Input[] = [
    { name: 'final volume', value: jar.finalVolumeMl === null ? UNKNOWN : `${plainNumber(jar.finalVolumeMl)} mL` },
    { name: 'final density', value: `${plainNumber(jar.countPerMl ?? DEFAULT_COUNT_PER_ML)} CFU per mL, ${jar.countPerMl === null ? 'assumed' : 'measured'}` },
  ]; // prettier-ignore
  let assumed = jar.countPerMl === null;
  for (const seeding of family.seedsOf(jar.key)) {
    const from = seeding.fromJar !== null && family.has(seeding.fromJar) ? family.jar(seeding.fromJar) : null;
    const culture = seeding.source !== null && (family.source(seeding.source)?.culture ?? false);
    const { count, stated } = seedCount(seeding, { density: from?.countPerMl ?? null, culture });
    assumed ||= count !== null && !stated;
    const reckoned =
      count === null ? 'count unknown' : `${plainNumber(count)} CFU${stated ? '' : ', density assumed'}`;
    inputs.push({ name: seedName(family, seeding), value: `${amountOf(seeding)} (${reckoned})` });
  }
  const density = `a density of ${plainNumber(DEFAULT_COUNT_PER_ML)} CFU per mL where none was measured`;
  return { inputs, assumptions: [GREW_BACK, ...(assumed ? [density] : [])] };
}

/** Why a sum down the line could not be had. */
const missing = (value: number | null): string[] =>
  value === null ? ['unknown: an amount or a count it needs was not recorded somewhere on the way back'] : [];

function doublingFigures(family: Family, key: number): Figure[] {
  const jar = family.jar(key);
  const doublings = family.doublingsOf(key);
  const own = family.ownDoublingsOf(key);
  const { inputs, assumptions } = ownInputs(family, jar);
  const down = (pick: 'transfers' | 'start'): Input[] => [
    { name: 'in this jar', value: doublingsShown(own) },
    ...family.seedsOf(key).flatMap((seeding) =>
      seeding.fromJar === null || !family.has(seeding.fromJar)
        ? []
        : [
            {
              name: seedName(family, seeding),
              value: doublingsShown(family.doublingsOf(seeding.fromJar)[pick]),
            },
          ],
    ),
  ];
  const assumesDensity = assumptions.length > 1;
  return [
    {
      name: 'Doublings in this jar',
      shown: doublingsShown(own),
      why: { formula: 'log2(final count / count brought in), which is log2(1 / seed fraction) where densities are equal', inputs, assumptions, source: assumesDensity ? `${TRANSFER_SOURCE}; ${DENSITY_SOURCE}` : TRANSFER_SOURCE },
    },
    {
      name: 'Doublings from jar to jar',
      shown: doublingsShown(doublings.transfers),
      why: {
        formula: 'sum over the jars that seeded it of seed share × (the seed’s doublings + those in this jar); 0 for a jar from sources alone',
        inputs: down('transfers'), assumptions: [GREW_BACK, ...missing(doublings.transfers)], source: TRANSFER_SOURCE,
      },
    },
    {
      name: 'Doublings since the start from sources',
      shown: doublingsShown(doublings.start),
      why: {
        formula: 'in the first jar: log2(final count / count put in); carried down by seed share',
        inputs: down('start'), source: DENSITY_SOURCE,
        assumptions: [
          `the start assumes a final density of ${plainNumber(DEFAULT_COUNT_PER_ML)} CFU per mL where none was measured`,
          ...missing(doublings.start),
        ],
      },
    },
  ]; // prettier-ignore
}

const BASIS_WORDS: Record<ShareBasis, string> = {
  count: 'by count: cells brought by each seed over all cells brought',
  volume: 'by volume: mL of each seed over all mL',
  pieces: 'by pieces: pieces of each seed over all pieces',
  'equal, assumed': 'equal parts, because amounts that can be compared were not recorded',
};

/** Parts by size: "Blue Tin 60 %, Meadow Pot 40 %". */
const list = (parts: readonly { name: string; share: number }[]): string =>
  parts
    .toSorted((a, b) => b.share - a.share)
    .map(({ name, share }) => `${name} ${percent(share)}`)
    .join(', ');

function shareFigures(family: Family, key: number): Figure[] {
  const basis = family.basisOf(key);
  const shares = family.sharesOf(key);
  const seedings = family.seedsOf(key);
  const traced = family.tracedSharesOf(key);
  const nameOf = (source: number | null): string =>
    source === null ? UNKNOWN_PAST_NAME : (family.source(source)?.name ?? UNKNOWN);
  const seeds = seedings.map((seeding) => ({
    name: seedName(family, seeding),
    share: shares.get(seeding.key) ?? 0,
  }));
  return [
    {
      name: 'Seed shares',
      shown: basis === null ? UNKNOWN : `${list(seeds)} (${basis})`,
      why: {
        formula: basis === null ? 'no seed is recorded' : BASIS_WORDS[basis],
        inputs: seedings.map((seeding) => ({ name: seedName(family, seeding), value: amountOf(seeding) })),
        assumptions: basis === 'equal, assumed' && seedings.length > 1 ? ['every seed brought as much as the others'] : basis === 'count' ? [`a density of ${plainNumber(DEFAULT_COUNT_PER_ML)} CFU per mL where none was measured`] : [],
        source: basis === 'count' ? DENSITY_SOURCE : null,
      },
    },
    {
      name: 'Traced back to sources',
      shown: list(traced.map(({ source, share }) => ({ name: nameOf(source), share }))),
      why: {
        formula: 'for each source the sum over all paths of the seed shares along it',
        inputs: seeds.map(({ name, share }) => ({ name, value: percent(share) })),
        assumptions: ['if all had grown equally: this is bookkeeping, not what is alive in the jar'],
        source: null,
      },
    },
  ]; // prettier-ignore
}

/** All lineage figures of a jar, in the order of the pane. */
export function lineageFigures(family: Family, key: number): Figure[] {
  return [...generationFigures(family, key), ...doublingFigures(family, key), ...shareFigures(family, key)];
}
