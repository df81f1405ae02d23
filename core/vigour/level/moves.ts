// How a belief of a culture's level moves from a seed to the batch made from it, and back: what the batch tells of its seed.
// A belief is a row of weights, for each rate of loss all levels. Both directions are one linear map and its transpose.
import { LOSING_FROM, type Drift, type LevelRules } from './rules';

export interface Moves {
  /** Belief of the next batch from that of its seed; the total stays the same. */
  forward(belief: Float64Array, offset: number, out: Float64Array): void;
  /** Evidence about a seed from the evidence about its batch. */
  back(evidence: Float64Array, offset: number, out: Float64Array): void;
}

/** Mean over k from..to of values[i − k], the lowest standing for all below it. */
function meanBelow(
  values: Float64Array,
  [from, to]: readonly [number, number],
  sums: Float64Array,
  out: Float64Array,
): void {
  const n = values.length;
  sums[0] = 0;
  for (let i = 0; i < n; i++) sums[i + 1] = (sums[i] as number) + (values[i] as number);
  const count = to - from + 1;
  const lowest = values[0] as number;
  for (let i = 0; i < Math.min(n, from); i++) out[i] = lowest;
  for (let i = from; i < Math.min(n, to); i++)
    out[i] = ((sums[i - from + 1] as number) - (sums[0] as number) + (to - i) * lowest) / count;
  for (let i = to; i < n; i++) out[i] = ((sums[i - from + 1] as number) - (sums[i - to] as number)) / count;
}

/** The transpose: weight at i is spread over i − k, what would fall below the lowest stays there. */
function spreadBelow(
  values: Float64Array,
  [from, to]: readonly [number, number],
  sums: Float64Array,
  out: Float64Array,
): void {
  const n = values.length;
  sums[0] = 0;
  for (let i = 0; i < n; i++) sums[i + 1] = (sums[i] as number) + (values[i] as number);
  const count = to - from + 1;
  const inside = Math.max(1, n - to);
  for (let j = 1; j < inside; j++)
    out[j] = ((sums[j + to + 1] as number) - (sums[j + from] as number)) / count;
  for (let j = inside; j < n; j++)
    out[j] = ((sums[n] as number) - (sums[Math.min(n, j + from)] as number)) / count;
  let lowest = 0;
  for (let i = 0; i < Math.min(n, to + 1); i++)
    lowest += ((values[i] as number) * (i <= from ? count : to - i + 1)) / count;
  out[0] = lowest;
}

/** Moves weight down by so many cells and a part of the next; what would fall below the lowest stays there. */
function lower(from: Float64Array, whole: number, part: number, out: Float64Array): void {
  const n = from.length;
  if (whole === 0 && part === 0) {
    out.set(from);
    return;
  }
  out.fill(0);
  const stay = Math.min(n, whole + 1);
  for (let i = 0; i < stay; i++) {
    out[0] = (out[0] as number) + (1 - part) * (from[i] as number);
    out[0] = (out[0] as number) + part * (from[i] as number);
  }
  for (let i = stay; i < n; i++) {
    const near = i - whole;
    out[near] = (out[near] as number) + (1 - part) * (from[i] as number);
    out[near - 1] = (out[near - 1] as number) + part * (from[i] as number);
  }
}

/** The transpose: what stands below by so many cells and a part of the next, the lowest for all below it. */
function raise(from: Float64Array, whole: number, part: number, out: Float64Array): void {
  const n = from.length;
  if (whole === 0 && part === 0) {
    out.set(from);
    return;
  }
  const stay = Math.min(n, whole + 1);
  const lowest = from[0] as number;
  for (let i = 0; i < stay; i++) out[i] = (1 - part) * lowest + part * lowest;
  for (let i = stay; i < n; i++)
    out[i] = (1 - part) * (from[i - whole] as number) + part * (from[i - whole - 1] as number);
}

const reverse = (values: Float64Array, out: Float64Array): Float64Array => {
  for (let i = 0, j = values.length - 1; j >= 0; i++, j--) out[i] = values[j] as number;
  return out;
};

/** @param rules what is looked at, @param drift how often what happens */
export function movesOf(rules: LevelRules, drift: Drift): Moves {
  const { levels: n, rates, step } = rules;
  const cells = rates.map((rate) => rate / step);
  const begins = drift.begins / Math.max(1, rates.length - LOSING_FROM);
  const same = 1 - drift.falls - drift.rises;
  const [row, fallen, risen, turned, sums] = [n, n, n, n, n + 1].map((length) => new Float64Array(length)) as [
    Float64Array, Float64Array, Float64Array, Float64Array, Float64Array,
  ]; // prettier-ignore
  const mixed = rates.map(() => new Float64Array(n));

  /** Adds the falls and rises of one row; with `back` by the transposed map. */
  const jump = (values: Float64Array, out: Float64Array, offset: number, back: boolean): void => {
    const move = back ? meanBelow : spreadBelow;
    move(values, rules.fall, sums, fallen);
    // A rise is a fall seen upside down.
    move(reverse(values, turned), rules.rise, sums, risen);
    for (let i = 0; i < n; i++)
      out[offset + i] =
        same * (values[i] as number) +
        drift.falls * (fallen[i] as number) +
        drift.rises * (risen[n - 1 - i] as number);
  };

  return {
    forward(belief, offset, out) {
      for (let i = 0; i < n; i++) {
        let losing = 0;
        const prone = belief[offset + n + i] as number;
        for (let r = LOSING_FROM; r < rates.length; r++) {
          const here = belief[offset + r * n + i] as number;
          losing += here;
          (mixed[r] as Float64Array)[i] = (1 - drift.ends) * here + begins * prone;
        }
        (mixed[0] as Float64Array)[i] = (belief[offset + i] as number) + drift.ends * losing;
        (mixed[1] as Float64Array)[i] = (1 - drift.begins) * prone;
      }
      for (let r = 0; r < rates.length; r++) {
        const from = mixed[r] as Float64Array;
        const whole = Math.floor(cells[r] as number);
        const part = (cells[r] as number) - whole;
        lower(from, whole, part, row);
        jump(row, out, offset + r * n, false);
      }
    },
    back(evidence, offset, out) {
      for (let r = 0; r < rates.length; r++) {
        const start = offset + r * n;
        jump(evidence.subarray(start, start + n), row, 0, true);
        const to = mixed[r] as Float64Array;
        const whole = Math.floor(cells[r] as number);
        const part = (cells[r] as number) - whole;
        raise(row, whole, part, to);
      }
      for (let i = 0; i < n; i++) {
        const sound = (mixed[0] as Float64Array)[i] as number;
        let losing = 0;
        for (let r = LOSING_FROM; r < rates.length; r++) {
          const here = (mixed[r] as Float64Array)[i] as number;
          losing += here;
          out[offset + r * n + i] = (1 - drift.ends) * here + drift.ends * sound;
        }
        out[offset + i] = sound;
        out[offset + n + i] =
          (1 - drift.begins) * ((mixed[1] as Float64Array)[i] as number) + begins * losing;
      }
    },
  };
}
