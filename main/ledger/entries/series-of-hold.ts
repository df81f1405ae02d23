// Readings of a probe lie once, in blocks that are never changed. A block may go on from an earlier one and hold only what
// is new, so that correcting a note, or adding a reading, copies nothing.
import { createHash } from 'node:crypto';
import type { Hold } from '../../../core/ledger/records';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import type { Rows } from '../facts/fact-rows';

type Readings = Hold['readings'];

/** A reading, and whether the keeper left it out: it is kept, and counts no more. */
export type Read = Readings[number] & { readonly leftOut?: boolean };

/** A reading as it lies: seconds since 1970, offset in minutes, °C, 1 where it is left out. */
type Point = readonly [at: number, off: number, c: number, leftOut: number];

const pointOf = ({ at, temperature, leftOut }: Read): Point => {
  const { seconds, offset } = storedMoment(at);
  return [seconds, offset, temperature.value, leftOut ? 1 : 0];
};

/** The same as before any could be left out, where none is. */
const shaOf = (points: readonly Point[]): string =>
  createHash('sha256')
    .update(
      JSON.stringify(points.map(([at, off, c, leftOut]) => (leftOut ? [at, off, c, leftOut] : [at, off, c]))),
    )
    .digest('hex');

/** Blocks from the first to the one with that key. */
function chainOf(facts: Rows, block: number): number[] {
  const chain: number[] = [];
  const before = facts.prepare('SELECT follows FROM reading_block WHERE key = ?').pluck();
  for (let key: number | null = block; key !== null; key = before.get(key) as number | null)
    chain.unshift(key);
  return chain;
}

function pointsOf(facts: Rows, block: number): Point[] {
  const points = facts
    .prepare('SELECT at, at_off, c, left_out FROM reading WHERE block = ? ORDER BY no')
    .raw();
  return chainOf(facts, block).flatMap((key) => points.all(key) as Point[]);
}

/** All readings up to a block, in the order in which they were entered. */
export const allReadingsIn = (
  facts: Rows,
  block: number | null,
): (Readings[number] & { leftOut: boolean })[] =>
  block === null
    ? []
    : pointsOf(facts, block).map(([at, off, c, leftOut]) => ({
        at: momentText(at, off),
        temperature: { value: c, unit: '°C', typed: null },
        leftOut: leftOut === 1,
      }));

/** Readings that count, up to a block. */
export const readingsIn = (facts: Rows, block: number | null): Readings =>
  allReadingsIn(facts, block).flatMap(({ leftOut, ...reading }) => (leftOut ? [] : [reading]));

/**
 * What a series holds once the readings that count are these: those that were left out stay beside them.
 * @param before the block that it has had so far
 */
export function withLeftOut(facts: Rows, counted: Readings, before: number | null): Read[] {
  const all = allReadingsIn(facts, before);
  const told = JSON.stringify(counted.map(pointOf));
  if (JSON.stringify(all.flatMap((one) => (one.leftOut ? [] : [pointOf(one)]))) === told) return all;
  const given = new Set(counted.map(({ at }) => storedMoment(at).seconds));
  return [...counted, ...all.filter(({ at, leftOut }) => leftOut && !given.has(storedMoment(at).seconds))];
}

/**
 * The block that holds exactly these readings, written where there is none yet.
 * @param before the block that its series has had so far: where the readings go on from it, only new ones are written
 */
export function blockOf(facts: Rows, readings: readonly Read[], before: number | null): number | null {
  if (readings.length === 0) return null;
  const points = readings.map(pointOf);
  const sha = shaOf(points);
  const same = facts.prepare('SELECT key FROM reading_block WHERE sha = ?').pluck().get(sha);
  if (typeof same === 'number') return same;
  const known = before === null ? [] : pointsOf(facts, before);
  const goesOn =
    known.length > 0 &&
    known.length < points.length &&
    known.every((point, at) => JSON.stringify(point) === JSON.stringify(points[at]));
  const { lastInsertRowid } = facts
    .prepare('INSERT INTO reading_block (sha, n, follows) VALUES (?, ?, ?)')
    .run(sha, points.length, goesOn ? before : null);
  const insert = facts.prepare(
    'INSERT INTO reading (block, no, at, at_off, c, left_out) VALUES (?, ?, ?, ?, ?, ?)',
  );
  for (const [at, point] of points.entries()) {
    if (!goesOn || at >= known.length) insert.run(lastInsertRowid, at + 1, ...point);
  }
  return Number(lastInsertRowid);
}
