// How the invented scenario is written down before it becomes writes. Shapes and small builders only; every value in
// core/demo is invented.
import type { Addition, DISCARD_SIGNS, Outcome, Portion, SetWord } from '../ledger/records';

/** A jar of the scenario, by its day and letter: '2025-11-02 b'. */
export type JarName = `${number}-${number}-${number} ${string}`;
export type SourceName = 'Blue Tin' | 'Meadow Pot' | 'Hillside pot';
export type PortionName = 'Heron cubes' | 'Lantern cubes' | 'Heron lidded pot';

export type DemoSeed =
  | { readonly jar: JarName; readonly ml: number; readonly portion?: PortionName }
  | { readonly source: SourceName; readonly pieces: number }
  | { readonly source: SourceName; readonly ml: number };

export type AdditionName = 'potato starch' | 'acacia fibre' | 'oat bran' | 'chicory inulin';

export interface DemoJar {
  readonly letter: string;
  readonly seeds: readonly DemoSeed[];
  readonly additions: readonly Omit<Addition, 'id' | 'jar' | 'package'>[];
  readonly outcome: DemoOutcome | null;
  /** Index in the batch's holds. */
  readonly hold: number;
  readonly volumeMl: number;
  readonly milk: string;
  /** Filled from a carton that no other jar of its batch was filled from. */
  readonly ownCarton: boolean;
  /** Day it was eaten up or thrown out; null: some is still there. */
  readonly goneOn: string | null;
  readonly note: string | null;
}

export interface DemoHold {
  readonly hours: number;
  readonly planned: number;
  /** Hours after the start and °C in the bath. */
  readonly readings: readonly (readonly [hours: number, celsius: number])[];
  readonly note: string | null;
}

export interface DemoBatch {
  readonly day: string;
  readonly word: string | null;
  readonly note: string | null;
  readonly holds: readonly DemoHold[];
  /** Why it was recorded as it is: of a seed that was set aside by then. */
  readonly why?: string;
  readonly jars: readonly DemoJar[];
}

export interface DemoPortion extends Omit<Portion, 'id' | 'jar'> {
  readonly name: PortionName;
  readonly jar: JarName;
}

/** What is seen later than the first look and replaces it. */
export interface DemoLaterLook {
  readonly jar: JarName;
  readonly on: string;
  readonly signs: readonly (typeof DISCARD_SIGNS)[number][];
  readonly openedDays: number;
  readonly note: string;
}

export type DemoOutcome = Omit<Outcome, 'jar'>;

const unseen: DemoOutcome = {
  earlyCheckHours: null,
  earlySet: null,
  earlyPh: null,
  earlySour: null,
  setAfterHours: null,
  setByHours: null,
  setAtTakeOut: null,
  setWord: null,
  texture: null,
  whey: null,
  tang: null,
  smell: null,
  colour: null,
  ph: null,
  phHow: null,
  signs: [],
  bubbles: null,
  powerCut: null,
  powerCutHours: null,
  spoiledSaid: false,
  seenAt: null,
  openedDays: null,
  fibreDidThis: false,
  note: null,
};

/**
 * What was seen after the chill. A pH is by a meter that was checked that day; runny means that it had not set at take-out.
 * @param setWord how it set
 * @param ph end pH by meter, or null where nobody measured
 * @param more whatever else was written down
 */
export const saw = (setWord: SetWord, ph: number | null, more: Partial<DemoOutcome> = {}): DemoOutcome => ({
  ...unseen,
  setWord,
  setAtTakeOut: setWord !== 'runny',
  ph,
  phHow: ph === null ? null : 'meter',
  ...(ph === null ? {} : { phChecked: true }),
  whey: 'none',
  tang: 'clear',
  ...more,
});

/** The early check at eight hours and the two times between which it set. */
export const timed = (
  earlySet: NonNullable<DemoOutcome['earlySet']>,
  earlyPh: number,
  setAfterHours: number,
  setByHours: number,
): Partial<DemoOutcome> => ({
  earlyCheckHours: 8,
  earlySet,
  earlyPh,
  earlySour: true,
  setAfterHours,
  setByHours,
});

/** Spoonfuls of an addition: a metric tablespoon is 15 mL. A powder stays mL; nobody weighed it. */
export const spoons = (
  name: AdditionName,
  planned: number,
  actual = planned,
): DemoJar['additions'][number] => ({
  name,
  planned: { value: planned * 15, unit: 'mL', typed: `${planned} tbsp` },
  actual: { value: actual * 15, unit: 'mL', typed: `${actual} tbsp` },
});

/** One jar: 900 mL of whole milk in the first hold of its batch unless told otherwise. */
export const jar = (
  letter: string,
  seeds: DemoSeed | readonly DemoSeed[],
  outcome: DemoOutcome | null,
  goneOn: string | null,
  more: Partial<DemoJar> = {},
): DemoJar => ({
  letter,
  seeds: Array.isArray(seeds) ? (seeds as readonly DemoSeed[]) : [seeds as DemoSeed],
  outcome,
  goneOn,
  additions: [],
  hold: 0,
  volumeMl: 900,
  milk: 'whole milk',
  ownCarton: false,
  note: null,
  ...more,
});

/** Three metric tablespoons of an earlier jar. */
export const from = (name: JarName, ml = 45): DemoSeed => ({ jar: name, ml });

/** A usual hold: 32 h in the bath, which reaches 37 °C after some hours and stays there. */
export const usual = (planned = 37, hours = 32): DemoHold => ({
  hours,
  planned,
  readings: [
    [0, planned - 4],
    [4, planned - 0.5],
    [12, planned],
    [24, planned + 0.2],
    [hours, planned],
  ],
  note: null,
});
