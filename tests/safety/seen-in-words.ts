// Looks at a jar in a few words.
import type { Look, SeenOfJar } from '../../core/safety/seen';

/** What a form's outcome says of safety where nothing was seen. */
export const NOTHING_SEEN = {
  signs: [], spoiledSaid: false, setAtTakeOut: null, setWord: null, sour: null, ph: null, phHow: null, earlyCheckHours: null, earlySet: null,
  earlyPh: null, earlySour: null, seenAt: null, openedDays: null, texture: null, bubbles: null, powerCut: null, powerCutHours: null,
} as const; // prettier-ignore

export const look = (stage: Look['stage'], more: Partial<Look> = {}): Look => ({
  stage, day: null, hoursIn: null, daysOpen: null, looked: null, setState: null, setWord: null, sour: null, acidity: [], signs: [], ...more,
}); // prettier-ignore

export const seen = (looks: readonly Look[], additions: readonly string[] = [], openedOn: string | null = null): SeenOfJar => ({
  looks, additions, openedOn,
}); // prettier-ignore
