// The batch that kills.test.ts records again and again. Apart from the other helpers: those need vitest.
import type { BatchEntry } from '../../core/contract';

/** One jar on its own day, seeded from the jar before. */
export function recordingEntry(number: number, seed: string | null): BatchEntry {
  const madeOn = new Date(Date.UTC(1990, 0, 1) + number * 86_400_000).toISOString().slice(0, 10);
  return {
    madeOn, madeFrom: null, madeTo: null, word: null, note: `number ${number}`, holds: [], sameLabelMeant: false, draft: null,
    jars: [{
      letter: 'a', state: 'made', vessel: null, finalVolume: { value: 946, unit: 'mL', typed: null },
      finalVolumeKnown: null, milk: null, milkAmount: null, milkPackage: null, countPerMl: null, onShelf: null,
      goneOn: null, note: null, hold: null, additions: [], outcome: null,
      seedings: seed === null ? [] : [{
        fromJar: seed, portion: null, part: null, source: null, package: null,
        amount: { value: 45, unit: 'mL', typed: null },
      }],
    }],
  }; // prettier-ignore
}
