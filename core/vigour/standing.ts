// The word for a line, batch after batch: called where the posterior (level/) makes it likely enough that the line stands below
// its early batches for good, and called until it is seen back. The limits keep one budget of false alarms over all looks; they
// were set by simulation (npm run bench:judgement prints what they achieve).
import type { LevelLook } from './level/line-level';
import type { Trend } from './trend';
import type { Standing } from '../shapes/vigour-codes';

export interface StandingRules {
  /** Fewest comparable batches before anything is said. */
  readonly fewest: number;
  /** Log odds of a lasting fall from which a line of few batches is called: luck has had few looks yet … */
  readonly calledEarly: number;
  readonly earlyUntil: number;
  /** … and, reached over so many batches more, those of a longer one. */
  readonly ripensOver: number;
  readonly called: number;
  /** Where batches differ by more than an even line's, so much more for each point, up to `unevenMost`. */
  readonly evenSpread: number;
  readonly unevenCost: number;
  readonly unevenMost: number;
  /** For each e-fold of batches beyond so many, log odds more, and the cost of unevenness too. */
  readonly perLongerLine: number;
  readonly unevenLonger: number;
  readonly longFrom: number;
  /** The batch before must have had these log odds: one poor batch is no slip. */
  readonly asked: number;
  /** Below these log odds a batch counts as seen back; so many in a row end the call. */
  readonly back: number;
  readonly backBatches: number;
  /** Below these log odds a line stands within its early level. */
  readonly within: number;
  /** Points below the early level from which a called line is worn out. */
  readonly wornOutDrop: number;
}

export const STANDING_RULES: StandingRules = {
  fewest: 5,
  calledEarly: 0.8,
  earlyUntil: 7,
  ripensOver: 6,
  called: 1.2,
  evenSpread: 4.5,
  unevenCost: 0.35,
  unevenMost: 5,
  perLongerLine: 1.5,
  unevenLonger: 1.2,
  longFrom: 12,
  asked: -1.5,
  back: -1,
  backBatches: 3,
  within: -1.5,
  wornOutDrop: 30,
};

/** Log odds from which a line is called. @param spread by how much its batches differ, @param batches comparable ones so far */
export function calledFrom(spread: number, batches: number, rules: StandingRules = STANDING_RULES): number {
  const { calledEarly, earlyUntil, ripensOver, called, longFrom } = rules;
  const ripe = Math.min(1, Math.max(0, (batches - earlyUntil) / ripensOver));
  const longer = Math.max(0, Math.log(batches / longFrom));
  const uneven = (rules.unevenCost + rules.unevenLonger * longer) * Math.max(0, spread - rules.evenSpread);
  const full = called + rules.perLongerLine * longer + Math.min(rules.unevenMost, uneven);
  return calledEarly + ripe * (full - calledEarly);
}

/** Follows one line from its first comparable batch on. */
export class StandingWalk {
  #called = false;
  #back = 0;
  #seen = 0;
  #before = Number.NEGATIVE_INFINITY;

  constructor(readonly rules: StandingRules = STANDING_RULES) {}

  /** Whether it is called now. */
  get called(): boolean {
    return this.#called;
  }

  /** Takes in the next comparable batch. @param trend null with too few batches, or all of one generation */
  next(trend: Trend | null, look: LevelLook): Standing {
    const { rules } = this;
    this.#seen++;
    // One batch is no slip, however poor: the one before must have raised the question.
    const asked = this.#before > rules.asked;
    this.#before = look.fallen;
    if (this.#seen < rules.fewest || !trend) return 'too few batches to say';
    this.#back = look.fallen <= rules.back ? this.#back + 1 : 0;
    if (asked && look.fallen > calledFrom(look.spread, this.#seen, rules)) this.#called = true;
    else if (this.#back >= rules.backBatches) this.#called = false;
    if (this.#called) return look.early - look.level >= rules.wornOutDrop ? 'worn out' : 'slipping';
    return trend.lossRuledOut && look.fallen <= rules.within ? 'steady' : 'no slip seen';
  }
}
