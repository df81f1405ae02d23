// What is stirred in or done otherwise, by name: what it does to a batch as far as its batches have told, and what the next batch
// is likely to have. A keeper goes on with a fibre for some batches, then changes.

/** By how much a batch comes out otherwise (points), and how sure that is. */
export interface Shift {
  readonly mean: number;
  readonly variance: number;
}

/** One thing that the next batch may have, and how likely. */
export interface LikelyShift extends Shift {
  readonly weight: number;
}

const NONE: Shift = { mean: 0, variance: 0 };
/** Belief before anything was seen: one change in four batches, worth so many batches (an assumption, no source). */
const CHANGES = { in: 0.5, of: 2 } as const;

export class Treatments {
  readonly #effects = new Map<string, { mean: number; variance: number }>();
  readonly #sd: number;
  #newest: string | null = null;
  #batches = 0;
  #changes = 0;

  /** @param sd spread of what a treatment may do before it was seen (points) */
  constructor(sd: number) {
    this.#sd = sd;
  }

  /** What is known of a treatment; null is as usual. */
  of(name: string | null): Shift {
    return name === null ? NONE : (this.#effects.get(name) ?? { mean: 0, variance: this.#sd ** 2 });
  }

  /** Takes in that the next batch in time had it. */
  made(name: string | null): void {
    if (this.#batches > 0 && name !== this.#newest) this.#changes++;
    this.#batches++;
    this.#newest = name;
  }

  /**
   * Moves what is believed of a treatment. @param off how the batch came out against what was expected of it without,
   * @param noise variance of that
   */
  learn(name: string, off: number, noise: number): void {
    const { mean, variance } = this.of(name);
    const gain = variance / (variance + noise);
    this.#effects.set(name, { mean: mean + gain * (off - mean), variance: variance * (1 - gain) });
  }

  /** What the next batch may have: what the newest had, or another. Weights sum to 1. */
  next(): readonly LikelyShift[] {
    if (this.#effects.size === 0) return [{ ...NONE, weight: 1 }];
    const changes = (this.#changes + CHANGES.in) / (this.#batches + CHANGES.of);
    const now = { ...this.of(this.#newest), weight: 1 - changes };
    if (this.#newest !== null) return [now, { ...NONE, weight: changes }];
    // Any of those it had before, or one that it never had.
    const others = [...this.#effects.values(), { mean: 0, variance: this.#sd ** 2 }];
    return [now, ...others.map((one) => ({ ...one, weight: changes / others.length }))];
  }
}
