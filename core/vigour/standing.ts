// The word for a line, batch after batch: called where the posterior (level/) makes it likely enough that the line stands below
// its early batches for good, and called until it is seen back. The limits keep one budget of false alarms over all looks; they
// were set by simulation (npm run bench:judgement prints what they achieve).
import type { LevelLook } from './level/line-level';
import type { Trend } from './trend';
import type { Standing } from '../shapes/vigour-codes';

export interface StandingRules {
  /** Fewest comparable batches before anything is said. */
  readonly fewest: number;
  /** Log odds of a lasting fall from which an even line of few batches is called: luck has had few looks yet … */
  readonly calledEarly: number;
  readonly earlyUntil: number;
  /** … and, reached over so many batches more, those of a longer one. */
  readonly ripensOver: number;
  readonly called: number;
  /** For each point by which batches differ beyond those of an even line, so much more. */
  readonly evenSpread: number;
  readonly unevenCost: number;
  /** For each e-fold of batches beyond so many, so much more, and the cost of unevenness too. */
  readonly longFrom: number;
  readonly perLongerLine: number;
  readonly unevenLonger: number;
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
  calledEarly: 0.25,
  earlyUntil: 8,
  ripensOver: 10,
  called: 0.9,
  evenSpread: 4.9,
  unevenCost: 0.5,
  longFrom: 10,
  perLongerLine: 1.5,
  unevenLonger: 0.9,
  asked: -2.5,
  back: -1,
  backBatches: 3,
  within: -1.5,
  wornOutDrop: 30,
};

/** Log odds from which a line is called. @param spread by how much its batches differ, @param batches comparable ones so far */
function calledFrom(spread: number, batches: number, rules: StandingRules): number {
  const { calledEarly, earlyUntil, ripensOver, called, longFrom } = rules;
  const ripe = Math.min(1, Math.max(0, (batches - earlyUntil) / ripensOver));
  const longer = Math.max(0, Math.log(batches / longFrom));
  const even = calledEarly + ripe * (called - calledEarly) + rules.perLongerLine * longer;
  return even + (rules.unevenCost + rules.unevenLonger * longer) * Math.max(0, spread - rules.evenSpread);
}

/** Follows one line from its first comparable batch on. */
export class StandingWalk {
  #called = false;
  #back = 0;
  #seen = 0;
  #before = Number.NEGATIVE_INFINITY;
  #evenAt = Number.POSITIVE_INFINITY;
  #limit = Number.POSITIVE_INFINITY;

  constructor(readonly rules: StandingRules = STANDING_RULES) {}

  /** Log odds from which the newest batch would have had the line called. */
  get limit(): number {
    return this.#limit;
  }

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
    // A fall makes a line look uneven: it is held against how uneven it was before the question was raised.
    if (look.fallen <= rules.asked || this.#seen === 1) this.#evenAt = look.spread;
    this.#limit = calledFrom(Math.min(look.spread, this.#evenAt), this.#seen, rules);
    if (this.#seen < rules.fewest || !trend) return 'too few batches to say';
    this.#back = look.fallen <= rules.back ? this.#back + 1 : 0;
    if (asked && look.fallen > this.#limit) this.#called = true;
    else if (this.#back >= rules.backBatches) this.#called = false;
    if (this.#called) return look.early - look.level >= rules.wornOutDrop ? 'worn out' : 'slipping';
    return trend.lossRuledOut && look.fallen <= rules.within ? 'steady' : 'no slip seen';
  }
}
