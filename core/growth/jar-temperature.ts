// A probe in the bath is not the jar: the jar follows the bath as dT/dt = (T_bath − T_jar)/τ (Newton's law of cooling).
import type { WarmPoint } from './warm-hours';

/** Time constant (h) of a quart jar in still water, where none was measured: a guess as wide as it is unsure. */
export const DEFAULT_TIME_CONSTANT = { low: 0.5, middle: 1, high: 2 } as const;

/**
 * Temperature of the jar at the bath's points, exact for a bath that changes in straight lines.
 * @param timeConstant τ in hours, above 0.
 * @param startsAt the jar's own temperature when it goes in.
 */
export function jarFollows(
  bath: readonly WarmPoint[],
  timeConstant: number,
  startsAt: number,
): readonly WarmPoint[] {
  if (!(timeConstant > 0)) throw new RangeError('the time constant must be above 0');
  let jar = startsAt;
  return bath.map((point, i) => {
    const before = bath[i - 1];
    if (before && point.hour > before.hour) {
      const hours = point.hour - before.hour;
      const slope = (point.celsius - before.celsius) / hours;
      // The jar runs behind a rising bath by slope × τ once what it began with has died away.
      const decay = Math.exp(-hours / timeConstant);
      jar = point.celsius - slope * timeConstant + (jar - before.celsius + slope * timeConstant) * decay;
    }
    return { hour: point.hour, celsius: jar };
  });
}
