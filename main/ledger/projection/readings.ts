// Readings of a probe lie once, in blocks that are never changed. A block may go on from an earlier one and hold only what
// is new, so that correcting a note, or adding a reading, copies nothing.
import { createHash } from 'node:crypto';
import type { Hold } from '../../../core/ledger/records';
import { momentText, storedMoment } from '../../../core/ledger/moments';
import type { Rows } from '../facts/rows';

type Readings = Hold['readings'];

/** A reading as it lies: seconds since 1970, offset in minutes, °C. */
type Point = readonly [at: number, off: number, c: number];

const pointOf = ({ at, temperature }: Readings[number]): Point => {
  const { seconds, offset } = storedMoment(at);
  return [seconds, offset, temperature.value];
};

const shaOf = (points: readonly Point[]): string =>
  createHash('sha256').update(JSON.stringify(points)).digest('hex');

/** Blocks from the first to the one with that key. */
function chainOf(facts: Rows, block: number): number[] {
  const chain: number[] = [];
  const before = facts.prepare('SELECT follows FROM reading_block WHERE key = ?').pluck();
  for (let key: number | null = block; key !== null; key = before.get(key) as number | null)
    chain.unshift(key);
  return chain;
}

function pointsOf(facts: Rows, block: number): Point[] {
  const points = facts.prepare('SELECT at, at_off, c FROM reading WHERE block = ? ORDER BY no').raw();
  return chainOf(facts, block).flatMap((key) => points.all(key) as Point[]);
}

/** Readings up to a block, in the order in which they were entered. */
export const readingsIn = (facts: Rows, block: number | null): Readings =>
  block === null
    ? []
    : pointsOf(facts, block).map(([at, off, c]) => ({
        at: momentText(at, off),
        temperature: { value: c, unit: '°C', typed: null },
      }));

/**
 * The block that holds exactly these readings, written where there is none yet.
 * @param before the block that its series has had so far: where the readings go on from it, only new ones are written
 */
export function blockOf(facts: Rows, readings: Readings, before: number | null): number | null {
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
  const insert = facts.prepare('INSERT INTO reading (block, no, at, at_off, c) VALUES (?, ?, ?, ?, ?)');
  for (const [at, point] of points.entries()) {
    if (!goesOn || at >= known.length) insert.run(lastInsertRowid, at + 1, ...point);
  }
  return Number(lastInsertRowid);
}
