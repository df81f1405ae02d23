// What a line's report tells, gathered from the same reads as the screens.
import { plainNumber } from '../../core/lineage/figures-with-why';
import { dayLabel } from '../../core/lineage/labels';
import { latestDay } from '../../core/lineage/lineage-shapes';
import { printAmount, printTemperature } from '../../core/quantities/quantities';
import type { LineTold } from '../../core/reports/line-report';
import { discardWords, lineFacts, startedFrom, verdictForOthers } from '../../core/says/report-says';
import { cautionWords } from '../../core/says/safety-says';
import { stands } from '../../core/shapes/caution-codes';
import type { Ledger } from '../ledger/ledger';
import { sourceEntries } from '../ledger/entries/larder-entries';
import { judgeOneLine, lineAdvice } from '../ledger/reads/read-judgement';
import { getBatch } from '../ledger/reads/read-lists';
import { lineNames } from '../ledger/reads/read-views';
import { drawnFamily, keysOfPart, lineBatch } from './drawn-family';

/** The founding day, what it was started from, how many jars and generations. */
export function factsOfLine(ledger: Ledger, batch: number, keys: readonly number[]): string {
  const { family } = ledger.index;
  const deepest = keys
    .map((key) => family.generationOf(key))
    .toSorted((a, b) => b.deepest - a.deepest || Number(a.atLeast) - Number(b.atLeast))[0];
  const sources = sourcesOf(ledger, batch).map(({ name, strains, form }) => ({
    name, strains, culture: form === 'culture',
  })); // prettier-ignore
  return lineFacts({
    founded: family.lines.find((line) => line.batch === batch)?.founded ?? null,
    from: startedFrom(sources),
    jars: keys.length,
    generation: deepest?.deepest ?? 1,
    atLeast: deepest?.atLeast ?? false,
  });
}

/** What the founding jars of a line were seeded with. */
function sourcesOf({ index, rows }: Ledger, batch: number) {
  const { family } = index;
  const founders = family.lines.find((line) => line.batch === batch)?.founders ?? [];
  const keys = new Set(founders.flatMap((key) => family.seedsOf(key).flatMap(({ source }) => source ?? [])));
  return sourceEntries(rows).filter(({ key }) => keys.has(key));
}

function strainsOf(ledger: Ledger, batch: number): LineTold['strains'] {
  return sourcesOf(ledger, batch).flatMap(({ name, strains }) =>
    strains.length === 0
      ? [[name, 'not noted', ''] as const]
      : strains.map(({ genus, species, designation, countPerPiece }) => {
          const called = [genus, species, designation].filter(Boolean).join(' ');
          const count = countPerPiece === null ? 'not noted' : `${plainNumber(countPerPiece)} CFU a piece`;
          return [name, called, count] as const;
        }),
  );
}

/** How the newest batch of a line was made, jar by jar where they differ. */
function madeOf(ledger: Ledger, keys: readonly number[]): LineTold['made'] {
  const { index, rows, preferences } = ledger;
  const newest = keys
    .map((key) => index.jar(key))
    .toSorted((a, b) => (latestDay(b) ?? '').localeCompare(latestDay(a) ?? '') || b.key - a.key)[0];
  if (!newest || latestDay(newest) === null) return [];
  const { jars, holds } = getBatch(ledger, { id: rows.uidOf('batch', newest.batch) });
  const own = new Set(keys.map((key) => index.jar(key).uid));
  const held = holds.map(({ planned, hours }) =>
    [planned && `at ${printTemperature(planned, preferences)}`, hours === null ? '' : `${hours} h`].filter(Boolean).join(', '),
  ); // prettier-ignore
  return [
    ...(held.some(Boolean) ? [['Held in warmth', held.filter(Boolean).join('; ')] as const] : []),
    ...jars
      .filter(({ jar }) => own.has(jar.id))
      .map(({ label, jar, additions, seedings }) => {
        const milk = [jar.milkAmount && printAmount(jar.milkAmount, preferences), jar.milk ?? 'milk']
          .filter(Boolean)
          .join(' ');
        const seeds = seedings.map(
          ({ seeding, label: from }) => `${seeding.amount === null ? 'some' : printAmount(seeding.amount, preferences)} of ${from}`, // prettier-ignore
        );
        const added = additions.map(({ name, actual }) =>
          actual === null ? name : `${printAmount(actual, preferences)} ${name}`,
        );
        return [label, [milk, ...seeds, ...added].join('; ')] as const;
      }),
  ];
}

/** Jars of a line on which something stands. */
function cautionsOf(ledger: Ledger, keys: readonly number[]): LineTold['cautions'] {
  const { index } = ledger;
  return keys.toReversed().flatMap((key) => {
    const { label, safety } = index.jar(key);
    const because = index.family
      .cautionsOf(key)
      .filter((caution) => stands(caution) && caution.of !== key)
      .map((caution) => `${cautionWords(caution)} (${index.jar(caution.of).label})`);
    const own = safety.discard === null ? [] : [discardWords(safety.discard)];
    const all = [...own, ...because];
    return all.length === 0 ? [] : [[label, all.join('; ')] as const];
  });
}

/** @throws Refused 'not found', 'picture too large' */
export function lineTold(ledger: Ledger, line: string): LineTold {
  const batch = lineBatch(ledger, line);
  const keys = keysOfPart(ledger, { part: 'line', line });
  return {
    name: lineNames(ledger)(batch),
    facts: factsOfLine(ledger, batch, keys),
    verdict: verdictForOthers(lineAdvice(ledger, { line })),
    judgement: judgeOneLine(ledger, { line }),
    strains: strainsOf(ledger, batch),
    made: madeOf(ledger, keys),
    cautions: cautionsOf(ledger, keys),
    picture: drawnFamily(ledger, keys),
  };
}

/** Today in words. */
export const todayWords = ({ clock }: Ledger): string => dayLabel(clock.today(), true);
