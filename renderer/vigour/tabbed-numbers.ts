// The numbers of a plot as tab-separated text, for any spreadsheet. Pure.
import type { Reply } from '../../core/contract';
import type { LineReply } from './plot-scale';

type Cell = string | number | null;

/** Unknown is an empty cell, never 0. Tabs and line breaks inside a cell become spaces. */
export const tabbed = (rows: readonly (readonly Cell[])[]): string =>
  rows
    .map((row) =>
      row.map((cell) => (cell === null ? '' : String(cell).replaceAll(/[\t\r\n]+/g, ' '))).join('\t'),
    )
    .join('\n');

/** A line over its batches, one row for each jar. */
export function lineNumbers(line: LineReply): string {
  const head = [
    'batch', 'made on', 'generation', 'batch median (of set words over their ranges)', 'batch median as it came', 'jar', 'jar score', 'jar low',
    'jar high', 'jar as it came', 'compared', 'left out because', 'hold',
  ]; // prettier-ignore
  const rows = line.batches.flatMap((batch): Cell[][] => {
    const own: Cell[] = [batch.label, batch.madeOn, batch.generation, batch.points, batch.uncorrected];
    const reasons = new Map(batch.leftOut.map(({ jar, reason }) => [jar, reason]));
    const scored = batch.jars.map((jar): Cell[] => [
      ...own, jar.label, jar.score, jar.low, jar.high, jar.asItCame, jar.compared ? 'yes' : 'no', reasons.get(jar.jar) ?? null, jar.held,
    ]); // prettier-ignore
    const seen = new Set(batch.jars.map(({ jar }) => jar));
    const unseen = batch.leftOut
      .filter(({ jar }) => !seen.has(jar))
      .map((jar): Cell[] => [...own, jar.label, null, null, null, null, 'no', jar.reason, null]);
    return [...scored, ...unseen];
  });
  return tabbed([
    [`${line.name}: ${line.standing}`],
    ['early batches', line.baseline],
    ['spread of a batch', line.spread],
    ['a smoothed level of an even line stays above', line.lowerLimit],
    ['gain (less than 0: loss) with each generation, points', line.slope],
    ['the same, lower end of 90 %', line.slopeLow],
    ['the same, upper end of 90 %', line.slopeHigh],
    [line.safety],
    [],
    head,
    ...rows,
  ]);
}

/** The curve of when to start afresh, one row for each generation. */
export function restartNumbers(reply: Reply<'advice.restart'>): string {
  return tabbed([
    [
      'generation',
      reply.unit === 'jars' ? 'cost of a good jar, counted in jars' : `cost of a good jar (${reply.unit})`,
      'low',
      'high',
      'seen or reckoned on',
    ],
    ...reply.curve.map((point): Cell[] => [
      point.generation,
      point.cost,
      point.low,
      point.high,
      point.reckonedOn ? 'reckoned on' : 'seen',
    ]),
  ]);
}
