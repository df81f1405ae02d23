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
  for (let i = 0; i < n; i++) {
    const high = i - from;
    const low = i - to;
    if (high < 0) out[i] = lowest;
    else {
      const clipped = Math.max(0, -low);
      out[i] = ((sums[high + 1] as number) - (sums[Math.max(0, low)] as number) + clipped * lowest) / count;
    }
  }
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
  for (let j = 1; j < n; j++)
    out[j] = ((sums[Math.min(n, j + to + 1)] as number) - (sums[Math.min(n, j + from)] as number)) / count;
  let lowest = 0;
  for (let i = 0; i < Math.min(n, to + 1); i++)
    lowest += ((values[i] as number) * (i <= from ? count : to - i + 1)) / count;
  out[0] = lowest;
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
        row.fill(0);
        for (let i = 0; i < n; i++) {
          const near = Math.max(0, i - whole);
          row[near] = (row[near] as number) + (1 - part) * (from[i] as number);
          if (part > 0) {
            const far = Math.max(0, i - whole - 1);
            row[far] = (row[far] as number) + part * (from[i] as number);
          }
        }
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
        for (let i = 0; i < n; i++)
          to[i] =
            (1 - part) * (row[Math.max(0, i - whole)] as number) +
            part * (row[Math.max(0, i - whole - 1)] as number);
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
