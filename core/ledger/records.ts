// Every record of the ledger, each defined once. Tables (main/ledger/migrations) and calls (core/contract.ts) follow
// these. `null` is unknown, never 0 and never "none".
import { z } from 'zod';
import { Amount, Day, Line, Moment, Price, Prose, Temperature, Uid } from './basics';
import { EARLY_SETS, PH_HOWS, SET_WORDS, TANGS, VOLUMES_KNOWN, WHEYS } from './jar-fields';

/** A strain as declared on a label: never a claim that it is alive in a jar. */
export const Strain = z.strictObject({
  genus: Line,
  species: Line,
  designation: Line,
  /** Declared count of this strain in one piece (CFU); null where only a blend total is declared. */
  countPerPiece: z.number().positive().max(1e15).nullable(),
});
export type Strain = z.infer<typeof Strain>;

export const SOURCE_FORMS = ['capsules', 'tablets', 'sachets', 'powder', 'culture'] as const;

/** Something a line can be started from: a product with declared strains, or a culture received from someone. */
export const Source = z.strictObject({
  id: Uid,
  name: Line.min(1),
  form: z.enum(SOURCE_FORMS).nullable(),
  strains: z.array(Strain).max(100),
  /** Declared count of all strains together in one piece (CFU), where the label gives only a total. */
  blendTotalPerPiece: z.number().positive().max(1e15).nullable(),
  /** Whether the counts are guaranteed to the end of shelf life or only at manufacture. */
  guaranteed: z.enum(['manufacture', 'expiry']).nullable(),
  /** For a received culture: from whom, and how many generations it is known to have run (null: past unknown). */
  receivedFrom: Line.nullable(),
  knownGenerations: z.int().min(1).max(100_000).nullable(),
  note: Prose.nullable(),
});
export type Source = z.infer<typeof Source>;

/** One bought box, bottle or carton of a source, milk or addition. Exposure and cost follow it. */
export const Package = z.strictObject({
  id: Uid,
  of: z.enum(['source', 'milk', 'addition']),
  /** The source it is of; null for milk and additions, which are named. */
  source: Uid.nullable(),
  name: Line.min(1),
  size: Amount.nullable(),
  price: Price.nullable(),
  boughtOn: Day.nullable(),
  openedOn: Day.nullable(),
  bestBefore: Day.nullable(),
  note: Prose.nullable(),
});
export type Package = z.infer<typeof Package>;

/** Jars made on one day from one heating of milk. */
export const Batch = z.strictObject({
  id: Uid,
  /** Null where the day is not known; then it may be known to lie between two days ("about mid January"). */
  madeOn: Day.nullable(),
  madeFrom: Day.nullable(),
  madeTo: Day.nullable(),
  /** A short word of the keeper's, if wanted: the label is then "14 Mar plain b". */
  word: Line.nullable(),
  note: Prose.nullable(),
});
export type Batch = z.infer<typeof Batch>;

const Reading = z.strictObject({ at: Moment, temperature: Temperature });

/** A time in warmth. A batch may have several; each jar points at one. */
export const Hold = z.strictObject({
  id: Uid,
  batch: Uid,
  startedAt: Moment.nullable(),
  endedAt: Moment.nullable(),
  /** How long it was held, where only the length is known (h). This is never a set time. */
  hours: z.number().positive().max(1000).nullable(),
  planned: Temperature.nullable(),
  probe: z.enum(['air', 'bath', 'jar']).nullable(),
  readings: z.array(Reading).max(20_000),
  /** 'notes': told apart only by figures in a keeper's notes, so jars of the batch are taken to have shared a bath. */
  basis: z.enum(['recorded', 'notes']),
  note: Prose.nullable(),
});
export type Hold = z.infer<typeof Hold>;

/** One vessel and its contents. */
export const Jar = z.strictObject({
  id: Uid,
  batch: Uid,
  /** Lower case; labels match without regard to case. */
  letter: z.string().min(1).max(20),
  hold: Uid.nullable(),
  /** Planned jars are never counted. 'mistake' is a stub left by "entered by mistake"; 'lost' stands for a jar nobody can name. */
  state: z.enum(['planned', 'made', 'not made', 'mistake', 'lost']),
  vessel: Line.nullable(),
  finalVolume: Amount.nullable(),
  finalVolumeKnown: z.enum(VOLUMES_KNOWN).nullable(),
  milk: Line.nullable(),
  milkAmount: Amount.nullable(),
  milkPackage: Uid.nullable(),
  /** Measured density of the finished culture (CFU per mL), where someone had it counted. */
  countPerMl: z.number().positive().max(1e12).nullable(),
  /** Whether some is still kept; null is unknown. */
  onShelf: z.boolean().nullable(),
  goneOn: Day.nullable(),
  note: Prose.nullable(),
});
export type Jar = z.infer<typeof Jar>;

/** A fibre, starch, sugar or other thing stirred in. */
export const Addition = z.strictObject({
  id: Uid,
  jar: Uid,
  name: Line.min(1),
  planned: Amount.nullable(),
  actual: Amount.nullable(),
  package: Uid.nullable(),
});
export type Addition = z.infer<typeof Addition>;

export const PARTS = ['whey', 'curd', 'mixed'] as const;
export const PLACES = ['fridge', 'freezer', 'dried'] as const;

/** Some of a jar kept apart: a lidded pot, freezer cubes, dried flakes. `reserve` when kept back on purpose as seed. */
export const Portion = z.strictObject({
  id: Uid,
  jar: Uid,
  part: z.enum(PARTS).nullable(),
  place: z.enum(PLACES),
  pieces: z.int().positive().max(10_000).nullable(),
  amount: Amount.nullable(),
  keptOn: Day,
  goneOn: Day.nullable(),
  reserve: z.boolean(),
  note: Prose.nullable(),
});
export type Portion = z.infer<typeof Portion>;

/** One edge: this much of that jar (or portion of it), or so many pieces of that source, into this jar. */
export const Seeding = z.strictObject({
  id: Uid,
  jar: Uid,
  /** Exactly one of fromJar and source is set. */
  fromJar: Uid.nullable(),
  portion: Uid.nullable(),
  part: z.enum(PARTS).nullable(),
  source: Uid.nullable(),
  package: Uid.nullable(),
  amount: Amount.nullable(),
});
export type Seeding = z.infer<typeof Seeding>;

export const SetWord = z.enum(SET_WORDS);
export type SetWord = z.infer<typeof SetWord>;

/** Signs that mean: discard the whole jar, do not taste, do not use it as seed. */
export const DISCARD_SIGNS = [
  'pink', 'red', 'orange', 'black', 'fuzz', 'foul smell', 'foam', 'lifted lid', 'torn curd',
  'bath water got in', 'not set and no pH at or below 4.6',
] as const; // prettier-ignore
export type DiscardSign = (typeof DISCARD_SIGNS)[number];

/** What was seen at the end of the hold and after the chill. Missing is neither weak nor fine: it is unknown. */
export const Outcome = z.strictObject({
  jar: Uid,
  earlyCheckHours: z.number().min(0).max(1000).nullable(),
  earlySet: z.enum(EARLY_SETS).nullable(),
  /** No bounds here: a pH that no jar has is refused by the writer, with a sentence that says what to check. */
  earlyPh: z.number().nullable(),
  earlySour: z.boolean().nullable(),
  /** Set between these two times after the start of the hold (h); either may be unknown. */
  setAfterHours: z.number().min(0).max(1000).nullable(),
  setByHours: z.number().min(0).max(1000).nullable(),
  /** The take-out gate: was it set at the end of the hold? */
  setAtTakeOut: z.boolean().nullable(),
  /** Did it smell sour and clean then, before anything was tasted? Left out: as it was recorded before. */
  sour: z.boolean().nullable().optional(),
  setWord: SetWord.nullable(),
  texture: Line.nullable(),
  /** How much whey stands on it, after the chill. */
  whey: z.enum(WHEYS).nullable(),
  tang: z.enum(TANGS).nullable(),
  smell: Line.nullable(),
  colour: Line.nullable(),
  /** As earlyPh. */
  ph: z.number().nullable(),
  phHow: z.enum(PH_HOWS).nullable(),
  /**
   * Whether the meter was checked in buffer of pH 4.01 that day: one that was not proves nothing. Left out: as it was recorded
   * before, else as the checks of the meter tell.
   */
  phChecked: z.boolean().nullable().optional(),
  /** Discard signs seen; any one of them means spoiled. */
  signs: z.array(z.enum(DISCARD_SIGNS)).max(20),
  /** Fine bubbles, which are normal for this kind of culture and still uncertain; foam is a sign, never a word here. */
  bubbles: z.enum(['none', 'fine']).nullable(),
  /** Whether the power failed during the hold, and for how long (h): spoilage organisms then had time. */
  powerCut: z.boolean().nullable(),
  powerCutHours: z.number().min(0).max(1000).nullable(),
  /** A keeper's plain "spoiled", with no sign named (thrown out as bad). */
  spoiledSaid: z.boolean(),
  seenAt: z.enum(['take-out', 'after opening']).nullable(),
  /** Days after opening at which a sign was seen; only with 'after opening'. */
  openedDays: z.int().min(0).max(365).nullable(),
  /** A purple or brown tint or a jelly, put down to the fibre by the keeper. Never explains a discard sign. */
  fibreDidThis: z.boolean(),
  note: Prose.nullable(),
});
export type Outcome = z.infer<typeof Outcome>;

/** A photograph, stored by hash beside the ledger, re-encoded so that the place it was taken is gone. */
export const Photograph = z.strictObject({
  id: Uid,
  jar: Uid,
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  width: z.int().positive(),
  height: z.int().positive(),
  caption: Line.nullable(),
});
export type Photograph = z.infer<typeof Photograph>;

/** A caution lifted by the keeper, with the reason in writing. */
export const Clearing = z.strictObject({ id: Uid, jar: Uid, of: Uid, reason: Prose.min(3) });
export type Clearing = z.infer<typeof Clearing>;

/** What the keeper chose to seed from, with the advice as it stood then. No jar: a fresh start. */
export const Choice = z.strictObject({
  id: Uid,
  /** Id of the line that was asked about (its founding batch); null: all that is kept. */
  line: Uid.nullable(),
  jar: Uid.nullable(),
  portion: Uid.nullable(),
  label: Line.min(1),
  /** Place in the ranking, 1 the first. */
  place: z.int().min(1),
  modelVersion: z.int().min(1),
  /** The whole reply of advice.next as JSON: ranking, reasons, stops, model parameters. */
  advice: z.string().max(1_000_000),
});
export type Choice = z.infer<typeof Choice>;

/** What a keeper prefers to read and write. */
export const Preferences = z.strictObject({
  theme: z.enum(['system', 'light', 'dark']),
  temperatures: z.enum(['°C', '°F']),
  volumes: z.enum(['metric', 'spoons']),
  /** Which spoon and cup a bare "tbsp" or "cup" means. */
  spoons: z.enum(['US', 'metric', 'Australia', 'UK imperial']),
  dates: z.enum(['day first', 'month first']),
  currency: z.string().regex(/^[A-Z]{3}$/),
  /** How long seed may be kept, and up to which generation a line is carried on; null is no limit. */
  seedFridgeDays: z.int().min(1).max(3650).nullable().default(21),
  seedFreezerDays: z.int().min(1).max(3650).nullable().default(365),
  mostGenerations: z.int().min(1).max(1000).nullable().default(null),
  /** How fast a jar follows its bath (time constant, h), where the keeper knows it. */
  jarFollowsHours: z.number().min(0.05).max(24).nullable().default(null),
});
export type Preferences = z.infer<typeof Preferences>;

/** Kinds of record that acts change, in the words of the screens. */
export const RECORD_KINDS = [
  'source', 'package', 'batch', 'hold', 'jar', 'addition', 'portion', 'seeding', 'outcome', 'photograph',
  'clearing', 'preferences', 'noteRow', 'choice',
] as const; // prettier-ignore
export type RecordKind = (typeof RECORD_KINDS)[number];
