// The one table of calls between window (or headless caller) and ledger: what each takes and what it replies.
// Every request and every reply is parsed against this table, always. Owns shapes only, no behaviour.
import { z } from 'zod';
import { ChoiceReply, CostsReply, NextReply, RestartReply, VerdictReply } from './shapes/advice-replies';
import type { CallName, JobName, ReadName, WriteName } from './call-names';
import { Amount, Day, FilePath, Line, Moment, Name, Price, Prose, Temperature, Uid } from './ledger/basics';
import { FACT_KINDS } from './ledger/facts/all-facts';
import {
  AddReadings,
  CorrectFact,
  DecideReceived,
  FactsReply,
  LeaveOutReadings,
  LeftReply,
  ListFacts,
  ReadingsReply,
  ReceivedReply,
  RecordFacts,
  RemoveFact,
} from './ledger/facts/recorded-facts'; // prettier-ignore
import {
  ApplianceList,
  CheckedTool,
  CheckTool,
  ProofReply,
  ProofRun,
  ProveAppliance,
  ProvedAppliance,
  SaveAppliance,
  SavedAppliance,
  ToolList,
} from './shapes/appliance-calls';
import {
  HoldList,
  HoldReply,
  Interrupt,
  MoveJars,
  NoteLook,
  NoteReading,
  PutIn,
  TakeOut,
  TodayReply,
} from './shapes/hold-calls';
import { CalendarReply, HoldsReply, PlanBatch, PlanReply, SaveAwake } from './shapes/plan-calls';
import { CostSheetReply, SavePrices } from './shapes/cost-calls';
import {
  AnswerShelf,
  DiscardKept,
  EatKept,
  FreezeKept,
  GiveKept,
  KeepForSeed,
  OpenKept,
  ShelfDone,
  ShelfLimitsChange,
  ShelfReply,
  ThawKept,
} from './shapes/shelf-calls';
import { BringInReadings, BroughtInReply } from './shapes/reading-calls';
import {
  AskReach,
  PourReply,
  ProposedTrial,
  ProposeTrial,
  ReachReply,
  RecordedMarks,
  RecordMarks,
  Reveal,
  SavedTrial,
  SaveTrial,
  StartedTasting,
  StartTasting,
  TastingReply,
  TrialList,
} from './shapes/trial-calls';
import {
  Addition,
  Batch,
  Hold,
  Jar,
  Outcome,
  Package,
  Photograph,
  Portion,
  Preferences,
  RECORD_KINDS,
  Seeding,
  SetWord,
  Source,
} from './ledger/records';
import { JarJudgementReply, LineJudgementReply } from './shapes/vigour-replies';
import { Figure, Why } from './shapes/why';
import { CAUTION_LEVELS, CAUTION_RELATIONS } from './shapes/caution-codes';
import { SAFETY_STOPS, DISCARDS, SAFETY_LOOKS } from './shapes/safety-codes';
import { AskLabels, LabelSheets } from './shapes/label-calls';
import { AboutJar } from './shapes/hand-over-calls';
import { MakingCard } from './shapes/card-calls';
import { AskReport, ReportReply } from './shapes/report-calls';
import { AnswerRemarks, ListRemarks, NoteRemark, RemarkReply, RemarksReply } from './shapes/remark-calls';
import { READ_AS } from './ledger/facts/seen-facts';

const empty = z.strictObject({});
const count = z.int().nonnegative();
/** An integer key of the open ledger: for drawing only, never kept by a caller. */
const Key = z.int().positive();

/** Numbers in bulk cross as typed arrays; zod checks kind and length is checked by the handler. */
const column = <T extends Int32Array | Float64Array | Uint8Array>(make: new (n: number) => T) =>
  z.instanceof(make as unknown as new () => T);

export { Figure, RemarkReply, Why };

const GenerationReply = z.strictObject({
  deepest: z.int().positive(),
  shallowest: z.int().positive(),
  mean: z.number().positive(),
  atLeast: z.boolean(),
});

/** Why a jar is neither food nor seed; null where it isn't so. 'remark': words of spoilage that nobody has answered. */
const DiscardReply = z.enum(DISCARDS).nullable();

/** The one answer on safety: whether anything forbids it, as far as is known; that nothing does is no proof. */
const SafetyReply = z.strictObject({
  eat: z.boolean(),
  seed: z.boolean(),
  /** Gravest first. */
  stops: z.array(z.enum(SAFETY_STOPS)),
  looks: z.array(z.enum(SAFETY_LOOKS)),
  /** The value that "no acid" rests on. */
  noAcid: z.strictObject({ ph: z.number(), how: z.enum(['meter', 'strip', 'not said']) }).nullable(),
});
export type SafetyReply = z.infer<typeof SafetyReply>;

const CautionReply = z.strictObject({
  /** The spoiled jar's id. */
  of: Uid,
  /** Level and touch in words: "set aside: seeded by it, 2 steps down". */
  how: z.string(),
  level: z.enum(CAUTION_LEVELS),
  /** Lifted with a reason, or ended by itself. */
  cleared: z.boolean(),
  /** It ended by itself: on each path two generations in a row passed the gate and were seen clean again. */
  ended: z.boolean(),
});

/** A caution as shown beside the jar itself. */
export const JarCautionReply = CautionReply.extend({
  /** The spoiled jar's label. */
  label: z.string(),
  relation: z.enum(CAUTION_RELATIONS),
  /** Seedings between the two. */
  steps: z.int().nonnegative(),
  /** The written reason that lifted it. */
  reason: z.string().nullable(),
  /** It is of those that end by themselves, by what is seen of two generations in a row. */
  mayEnd: z.boolean(),
  /** Where it stands: the reason that lifted it before, for what was known of the spoiled jar then. */
  liftedBefore: z.string().nullable(),
  /** The set-aside mate that it descends from: lifted there, it is lifted on all that descends from that mate. */
  via: z.strictObject({ id: Uid, label: z.string() }).nullable(),
});
export type JarCautionReply = z.infer<typeof JarCautionReply>;

/** The days between which something was made, where only these are known. */
const DaysBetween = z.strictObject({ from: Day, to: Day }).nullable();

export const FamilyJarReply = z.strictObject({
  id: Uid,
  label: z.string(),
  /** null where the day is not known. */
  madeOn: Day.nullable(),
  madeBetween: DaysBetween,
  letter: z.string(),
  generation: GenerationReply,
  doublings: z.strictObject({ transfers: z.number().nullable(), start: z.number().nullable() }),
  shareBasis: z.enum(['count', 'volume', 'pieces', 'equal, assumed']).nullable(),
  seeds: z.array(
    z.strictObject({
      jar: Uid.nullable(),
      source: z.string().nullable(),
      amount: z.strictObject({ value: z.number(), unit: z.string() }).nullable(),
      share: z.number().min(0).max(1),
    }),
  ),
  tracedShares: z.array(z.strictObject({ source: z.string(), share: z.number().min(0).max(1) })),
  holdHours: z.number().nullable(),
  setWord: SetWord.nullable(),
  ph: z.number().nullable(),
  /** Neither food nor seed, for whatever reason. */
  spoiled: z.boolean(),
  discard: DiscardReply,
  cautions: z.array(CautionReply),
});
export type FamilyJarReply = z.infer<typeof FamilyJarReply>;

const LineReply = z.strictObject({
  id: Uid,
  name: z.string(),
  founded: Day.nullable(),
  jarCount: count,
});

/** What is drawn of one mounted jar. */
export const JarView = z.strictObject({
  key: Key,
  id: Uid,
  label: z.string(),
  madeOn: Day.nullable(),
  madeBetween: DaysBetween,
  generation: GenerationReply,
  setWord: SetWord.nullable(),
  /** Worst caution that stands, not lifted. */
  caution: z.enum(CAUTION_LEVELS).nullable(),
  spoiled: z.boolean(),
  discard: DiscardReply,
  lost: z.boolean(),
  onShelf: z.boolean().nullable(),
  outcomeKnown: z.boolean(),
  /** Names of the additions, shortest useful form. */
  additions: z.array(z.string()),
  seeds: z.array(
    z.strictObject({
      key: Key.nullable(),
      label: z.string(),
      share: z.number(),
      amount: z.string().nullable(),
    }),
  ),
  lines: z.array(z.string()),
});
export type JarView = z.infer<typeof JarView>;

/** Columns for a whole drawing: index i is one jar. Positions are in grid steps, not pixels. */
export const Drawing = z.strictObject({
  spacing: z.enum(['generation', 'calendar']),
  keys: column(Int32Array),
  /** Along: generation (or days since the first jar, scaled), from left. */
  x: column(Float64Array),
  /** Across: row, from the top; a whole number. */
  y: column(Float64Array),
  /** Index in `lanes`. */
  lane: column(Int32Array),
  /** Index of the seed it hangs from, or -1. */
  parent: column(Int32Array),
  parentShare: column(Float64Array),
  generation: column(Int32Array),
  /** Days since 1970-01-01, of a range of days its middle; NaN where nothing is known. Not `x`: along the calendar jars make room for each other. */
  days: column(Float64Array),
  /** Index in SET_WORDS, or 255 when unknown. */
  setWord: column(Uint8Array),
  /** Bits: 1 spoiled, 2 set aside, 4 look, 8 on the shelf, 16 outcome known, 32 lost, 64 weak, 128 at least. */
  flags: column(Uint8Array),
  /** The other seedings: child index, seed index, share. */
  otherChild: column(Int32Array),
  otherSeed: column(Int32Array),
  otherShare: column(Float64Array),
  /** Founding batches, for the label strips: which jars, which sources, which strains. */
  founders: z.array(
    z.strictObject({
      line: z.string(),
      jars: z.array(z.int()),
      sources: z.array(
        z.strictObject({ name: z.string(), strains: z.array(z.string()), culture: z.boolean() }),
      ),
    }),
  ),
  /** Bands of rows in the order of founding, one for each line, and one for each batch of unknown past. */
  lanes: z.array(
    z.strictObject({
      /** The line's permanent id, as in family.get; null where the past is unknown. */
      line: Uid.nullable(),
      name: z.string(),
      founded: z.string().nullable(),
      /** First and last row, and the row of the path that goes on; where its first jar stands. */
      top: z.int(),
      bottom: z.int(),
      level: z.int(),
      x: z.number(),
    }),
  ),
  width: z.number(),
  height: z.number(),
  /** Calendar spacing: [x, label] ticks; generation spacing: empty. */
  ticks: z.array(z.strictObject({ x: z.number(), label: z.string() })),
});
export type Drawing = z.infer<typeof Drawing>;

const jarFields = Jar.omit({ id: true, batch: true, hold: true });
const OutcomeFields = Outcome.omit({ jar: true });
const JarOutcome = z.strictObject({
  jar: Uid,
  outcome: OutcomeFields.nullable(),
  onShelf: z.boolean().nullable(),
  readAs: z.enum(READ_AS).nullable().default(null),
});
const JarChanges = jarFields
  .omit({ state: true })
  .extend({ state: z.enum(['planned', 'made', 'not made']), hold: Uid.nullable() })
  .partial();
const SeedingFields = Seeding.omit({ id: true, jar: true }).extend({
  /** In place of a source: a product by name, made in the same act where the ledger has none of that name. */
  newSource: Line.optional(),
});
const AdditionFields = Addition.omit({ id: true, jar: true });
/** What of one jar is corrected or noted: null wherever it stays as it is. */
const JarSheet = z.strictObject({
  jar: Uid,
  changes: JarChanges.nullable(),
  additions: z.array(AdditionFields).max(20).nullable(),
  outcome: OutcomeFields.nullable(),
  readAs: z.enum(READ_AS).nullable(),
});

/** What of one planned jar is otherwise than planned, once it is made. */
const MadeOtherwise = z.strictObject({
  jar: Uid,
  changes: JarChanges.omit({ state: true }).nullable().default(null),
  /** All of them, in place of those that were planned. An actual amount that is null is as planned. */
  additions: z.array(AdditionFields).max(20).nullable().default(null),
});

const HoldFields = Hold.omit({ id: true, batch: true, basis: true });

/** A jar as recorded by hand, with all that went into it. */
const JarEntry = jarFields.extend({
  state: z.enum(['planned', 'made']),
  additions: z.array(AdditionFields).max(20),
  seedings: z.array(SeedingFields).max(50),
  outcome: OutcomeFields.nullable(),
});

/** A whole batch as recorded by hand in one act. */
export const BatchEntry = z.strictObject({
  /** Null only where all that is known is between which days it was made. */
  madeOn: Day.nullable(),
  madeFrom: Day.nullable().default(null),
  madeTo: Day.nullable().default(null),
  word: Line.nullable(),
  note: Prose.nullable(),
  holds: z.array(HoldFields).max(20),
  jars: z
    .array(
      JarEntry.extend({
        /** Index in holds. */
        hold: z.int().nonnegative().nullable(),
      }),
    )
    .min(1)
    .max(60),
  /** Set after the keeper was asked about two equal labels and meant it. */
  sameLabelMeant: z.boolean(),
  /** The draft this came from: removed in the same act. */
  draft: z.string().max(100).nullable(),
});
/** As it is given: a range of days may be left out. */
export type BatchEntry = z.input<typeof BatchEntry>;

/** A seeding as it is remembered: nobody may be sure of which jar it was. */
const RememberedSeeding = SeedingFields.extend({
  /** In place of a jar of the ledger: one of this call, by its place in `jars`. */
  fromHere: z.int().nonnegative().optional(),
  /** Seedings of a jar with the same number: one of these, and nobody is sure which. */
  either: z.int().min(1).max(1000).nullable().default(null),
});

/** Jars of several days from memory, in one act. A jar without a seeding was seeded from one that nobody can name. */
export const RememberedJars = z.strictObject({
  batches: z
    .array(
      BatchEntry.pick({ madeOn: true, madeFrom: true, madeTo: true, word: true, note: true, holds: true }),
    )
    .max(60),
  jars: z
    .array(
      JarEntry.omit({ state: true }).extend({
        /** Its batch, by the place in `batches`, and its hold, by the place among those of its batch. */
        batch: z.int().nonnegative(),
        hold: z.int().nonnegative().nullable(),
        seedings: z.array(RememberedSeeding).max(50),
      }),
    )
    .min(1)
    .max(60),
  sameLabelMeant: z.boolean().default(false),
  draft: z.string().max(100).nullable().default(null),
});
export type RememberedJars = z.input<typeof RememberedJars>;

const Interruption = z.strictObject({
  id: Uid,
  hold: Uid,
  what: z.enum(['power', 'heater', 'lid', 'other']),
  began: Moment.nullable(),
  ended: Moment.nullable(),
  /** How long, where only that is known. */
  hours: z.number().nullable(),
  wasSet: z.boolean().nullable(),
});

export const BatchReply = z.strictObject({
  batch: Batch,
  holds: z.array(Hold),
  /** When holds are planned to begin, or are taken to have begun, of which nobody noted it. */
  plannedStarts: z.array(z.strictObject({ hold: Uid, at: Moment })),
  /** When warmth was missing in these holds. */
  interruptions: z.array(Interruption),
  jars: z.array(
    z.strictObject({
      label: z.string(),
      jar: Jar,
      additions: z.array(Addition),
      seedings: z.array(
        z.strictObject({
          seeding: Seeding,
          label: z.string(),
          /** The portion it was taken from, in words: "freezer cubes". */
          kept: z.string().nullable(),
          share: z.number().nullable(),
          /** It was this or another one that is unsure too, and nobody knows which. */
          unsure: z.literal(true).optional(),
        }),
      ),
      /** Why it is neither food nor seed, and the gravest caution that stands. */
      discard: DiscardReply,
      caution: z.enum(CAUTION_LEVELS).nullable(),
      /** Of a jar that is only planned: null. */
      safety: SafetyReply.nullable(),
      /** On it, its batch, its hold, what was kept apart of it, its seed, its photographs, its packages; in the order of writing. */
      remarks: z.array(RemarkReply),
      /** Because of spoiled jars, the gravest first; lifted ones are among them. */
      cautions: z.array(JarCautionReply),
      outcome: Outcome.nullable(),
      portions: z.array(Portion),
      photographs: z.array(Photograph),
    }),
  ),
});
export type BatchReply = z.infer<typeof BatchReply>;

const acted = z.strictObject({ act: Uid });

const FileInput = z.union([
  /** Headless only: from the page it is forbidden. */
  z.strictObject({ path: FilePath.min(1) }),
  z.strictObject({ name: z.string().max(500), bytes: z.instanceof(Uint8Array) }),
]);

/**
 * Where a file is to be written. A name, as it might be called: the window asks with the system's dialog. A path is for headless
 * callers; from the page it is forbidden.
 */
const FileOutput = z.union([
  z.strictObject({ path: FilePath.min(1) }),
  z.strictObject({ name: z.string().max(200) }),
]);

export const NOTE_COLUMNS = [
  'date', 'jar', 'label', 'seed', 'amount', 'milk', 'milk amount', 'addition', 'addition amount', 'hours',
  'start', 'end', 'temperature', 'set', 'ph', 'whey', 'smell', 'colour', 'texture', 'tang', 'volume', 'vessel', 'spoiled',
  'price', 'note', 'ignore',
] as const; // prettier-ignore
export type NoteColumn = (typeof NOTE_COLUMNS)[number];

/** Heading in the file → what it means, where the keeper rematched it. */
const Mapping = z.record(z.string().max(500), z.enum(NOTE_COLUMNS));
/** Question id → the answer chosen (or, for a mended cell, what the keeper typed instead). */
const Answers = z.record(z.string().max(500), z.string().max(500));

const NoteProblem = z.strictObject({
  /** Line in the file, header 1. */
  row: z.int().positive(),
  /** Why in a few words: the same for all rows that wait for the same. */
  reason: z.string(),
  sentence: z.string(),
  /** For mending in place: which column, what stands there; null when the row as a whole is aside. */
  column: z.string().nullable(),
  cell: z.string().nullable(),
});
const NoteQuestion = z.strictObject({
  /** Goes into `answers`. */
  id: z.string(),
  row: z.int().positive().nullable(),
  sentence: z.string(),
  choices: z.array(z.strictObject({ value: z.string(), label: z.string() })),
  /** Whether the file can't come in before it is answered. */
  blocks: z.boolean(),
  /** Newly told spoilage of a jar that is there already: it comes first. */
  urgent: z.literal(true).optional(),
  /** How many rows that stay aside its answer alone would bring in. */
  brings: z.int().positive().optional(),
});
const NoteChoice = z.strictObject({ value: z.string(), label: z.string() });
/** What was assumed, and where it can be said to be otherwise: `id` goes into `answers` with one of the choices. */
const Otherwise = {
  id: z.string().exactOptional(),
  choices: z.array(NoteChoice).readonly().exactOptional(),
  chosen: z.string().exactOptional(),
};
const NoteAssumption = z.strictObject({
  row: z.int().positive().nullable(),
  sentence: z.string(),
  ...Otherwise,
});

/** What becomes of a row of notes. */
export const NOTE_ROW_STATES = ['new', 'changes', 'aside', 'already here', 'empty'] as const;
export type NoteRowState = (typeof NOTE_ROW_STATES)[number];

const Slice = z.strictObject({ from: count, most: z.int().min(1).max(1000) });
/** What a window draws of a preview. Problems and questions come from the first on. */
export const NotesView = z.strictObject({
  /** Rows of this state only. */
  state: z.enum(NOTE_ROW_STATES).nullable(),
  rows: Slice,
  assumptions: Slice,
  problems: z.strictObject({ most: z.int().min(1).max(1000) }),
  questions: z.strictObject({ most: z.int().min(1).max(1000) }),
  remarks: Slice.default({ from: 0, most: 20 }),
});
export type NotesView = z.infer<typeof NotesView>;

/** How much there is beyond what a view shows. */
const NotesPages = z.strictObject({
  rows: z.strictObject({ new: count, changes: count, aside: count, 'already here': count, empty: count }),
  problems: count,
  /** Why rows stay aside, and how many for each reason: a row counts for the first that it has. */
  reasons: z.array(z.strictObject({ reason: z.string(), rows: count })),
  questions: count,
  assumptions: count,
  remarks: count,
  /** Of the remarks those that tell of spoilage, those of rows in doubt for another reason, and what nobody has answered of these and of the others. */
  telling: count,
  doubted: count,
  unread: z.strictObject({ telling: count, doubted: count, others: count }),
  /** Each assumption once, with the first rows it holds for and how many they are. */
  shared: z.array(
    z.strictObject({ sentence: z.string(), rows: z.array(z.int().positive()), of: count, ...Otherwise }),
  ),
});

export const NotesPreview = z.strictObject({
  columns: z.array(
    z.strictObject({
      heading: z.string(),
      meaning: z.enum(NOTE_COLUMNS).nullable(),
      examples: z.array(z.string()),
      /** How one of them was read, or what becomes of the column, in a sentence. */
      says: z.string(),
      /** What stands in it, and not its heading, told what it means. */
      doubtful: z.literal(true).optional(),
    }),
  ),
  rows: z.array(
    z.strictObject({
      row: z.int().positive(),
      state: z.enum(NOTE_ROW_STATES),
      label: z.string().nullable(),
      seeds: z.array(z.string()),
      says: z.string(),
    }),
  ),
  problems: z.array(NoteProblem),
  questions: z.array(NoteQuestion),
  assumptions: z.array(NoteAssumption),
  /** What rows say in words, what may tell of spoilage first. `id` goes into `answers`, with 'fine', 'look' or 'discard'. */
  remarks: z.array(NoteRemark).optional(),
  /** Where a view was asked for: the lists above are then what it draws, `assumptions` empty for `shared`. */
  pages: NotesPages.optional(),
});
export type NotesPreview = z.infer<typeof NotesPreview>;

const LedgerState = z.strictObject({
  uid: Uid,
  name: z.string(),
  file: z.string(),
  demo: z.boolean(),
  jars: count,
  batches: count,
  sources: count,
});

export const AppState = z.strictObject({
  version: z.string(),
  today: Day,
  /** null until a door is chosen, or while `trouble` stands. */
  ledger: LedgerState.nullable(),
  trouble: z
    .strictObject({
      kind: z.enum(['damaged', 'foreign', 'newer', 'older', 'unreadable']),
      sentence: z.string(),
      file: z.string(),
      backups: z.array(z.strictObject({ file: z.string(), madeAt: Moment, jars: count })),
    })
    .nullable(),
  undo: z.string().nullable(),
  redo: z.string().nullable(),
  preferences: Preferences,
});
export type AppState = z.infer<typeof AppState>;

const HistoryEntry = z.strictObject({
  act: Uid,
  kind: z.string(),
  /** In words: "recorded 14 Mar a, b, c". */
  says: z.string(),
  /** The same with what was made of what, or what changed: "14 Mar b: set word soft → spoonable". */
  told: z.string(),
  at: Moment,
  why: z.string().nullable(),
  undone: z.boolean(),
  undoes: Uid.nullable(),
  /** Jars that it touched, as they are now: the first few, and how many more. */
  jars: z.array(JarView),
  moreJars: count,
  changes: z.array(
    z.strictObject({
      /** A record, or a fact that belongs to none. */
      kind: z.enum([...new Set([...RECORD_KINDS, ...FACT_KINDS])]),
      id: z.string(),
      label: z.string(),
      field: z.string().nullable(),
      before: z.string().nullable(),
      after: z.string().nullable(),
    }),
  ),
  moreChanges: count,
});

interface Entry {
  readonly kind: 'read' | 'write' | 'job';
  readonly input: z.ZodType;
  readonly reply: z.ZodType;
}
const entry = <K extends Entry['kind'], I extends z.ZodType, R extends z.ZodType>(
  kind: K,
  input: I,
  reply: R,
) => ({ kind, input, reply }) as const;

const why = Prose.nullable().default(null);
/** Key of the draft a write was typed in: removed in the same act. */
const draft = z.string().min(1).max(100).nullable().default(null);

export const contract = {
  'app.state': entry('read', empty, AppState),
  'family.get': entry('read', empty, z.strictObject({ jars: z.array(FamilyJarReply), lines: z.array(LineReply) })),
  'family.drawing': entry('read', z.strictObject({ spacing: z.enum(['generation', 'calendar']).nullable() }), Drawing),
  'family.jars': entry('read', z.strictObject({ keys: z.array(Key).max(600) }), z.strictObject({ jars: z.array(JarView) })),
  'jar.get': entry(
    'read',
    z.strictObject({ id: Uid }),
    z.strictObject({
      view: JarView,
      batch: Uid,
      cautions: z.array(JarCautionReply),
      /** The way back to the sources, as one sentence. */
      wayBack: z.string(),
      /** Keys of all it descends from and all that descends from it (to be lit), capped. */
      ancestors: z.array(Key),
      descendants: z.array(Key),
      children: z.array(z.strictObject({ key: Key, id: Uid, label: z.string() })),
      siblings: z.array(z.strictObject({ key: Key, id: Uid, label: z.string() })),
      madeBetween: DaysBetween,
      figures: z.array(Figure),
      record: BatchReply.shape.jars.element,
      hold: Hold.nullable(),
    }),
  ),
  'jar.find': entry(
    'read',
    z.strictObject({ text: Line, limit: z.int().min(1).max(50), notAfter: Day.nullable() }),
    z.strictObject({
      jars: z.array(
        z.strictObject({
          key: Key, id: Uid, label: z.string(), madeOn: Day.nullable(), madeBetween: DaysBetween, generation: z.int(),
          says: z.string(), caution: z.enum(CAUTION_LEVELS).nullable(), safety: SafetyReply,
          /** What nobody has answered. */
          quotes: z.array(RemarkReply.pick({ of: true, text: true })),
          /** What is kept apart of it and still exists: "freezer cubes, 6 left". */
          portions: z.array(z.strictObject({ id: Uid, name: z.string(), says: z.string(), part: Portion.shape.part, pieces: z.boolean(), caution: z.enum(CAUTION_LEVELS).nullable(), safety: SafetyReply })),
        }),
      ),
      /** The jar that the text is the name of, whether or not it may be picked, and why it is not where it isn't among these. */
      named: z.strictObject({ id: Uid, label: z.string(), says: z.string() }).nullable(),
    }),
  ),
  'batch.get': entry('read', z.strictObject({ id: Uid }), BatchReply),
  /** What to do for a batch, in order. On paper: report.print of 'making card'. */
  'batch.card': entry('read', z.strictObject({ id: Uid }), MakingCard),
  'batch.list': entry(
    'read',
    z.strictObject({ before: z.strictObject({ /** Null: the day of that batch itself. */ madeOn: Day.nullable(), id: Uid }).nullable(), limit: z.int().min(1).max(200), /** Words that its day, word, seeds, what was stirred in or its note hold. */ text: Line.default('') }),
    z.strictObject({
      batches: z.array(
        z.strictObject({ id: Uid, madeOn: Day.nullable(), madeBetween: DaysBetween, word: Line.nullable(), label: z.string(), /** What seeded its jars, and what was stirred in, each once. */ seeds: z.array(z.string()), additions: z.array(z.string()), /** Into some of its jars nothing was stirred, into others something. */ plain: z.boolean(), jars: z.array(z.strictObject({ id: Uid, label: z.string(), setWord: SetWord.nullable(), outcomeKnown: z.boolean(), /** Deepest; null for a planned jar. */ generation: z.int().positive().nullable(), atLeast: z.boolean(), spoiled: z.boolean(), caution: z.enum(['condemned', 'set aside', 'look']).nullable() })) }),
      ),
      more: z.boolean(),
    }),
  ),
  'source.list': entry('read', empty, z.strictObject({
      /** `lines`: those that began from it, the oldest first. */
      sources: z.array(Source.extend({ startedJars: count, lines: z.array(z.strictObject({ id: Uid, name: z.string() })) })),
    })),
  'package.list': entry('read', empty, z.strictObject({
      /** `left`: its size less all that made jars took, in its own unit; null where a part of that is not known. `uses`: how often. */
      packages: z.array(Package.extend({ left: z.number().nullable(), uses: count })),
    })),
  /** How much of each thing went in last, where that is known: each keeps its own. */
  'addition.usual': entry('read', empty, z.strictObject({ additions: z.array(z.strictObject({ name: Line, amount: Amount })) })),
  /** What a jar's milk, each thing stirred in and a start usually cost, and what of them has no price. */
  'cost.list': entry('read', empty, CostsReply),
  /** What a jar, a cup, a good jar and a fresh start cost, each with where it comes from, beside what the shop asks. */
  'cost.sheet': entry('read', empty, CostSheetReply),
  /** Everything that exists, in the order in which it should be eaten: where, how old, how much, by when, what it alone carries. */
  'shelf.get': entry('read', empty, ShelfReply),
  'history.list': entry(
    'read',
    z.strictObject({ record: z.strictObject({ kind: z.enum(RECORD_KINDS), id: Uid }).nullable(), before: Uid.nullable(), limit: z.int().min(1).max(200), /** Words that its sentence, its day or its reason holds. */ text: Line.default('') }),
    z.strictObject({ acts: z.array(HistoryEntry), more: z.boolean() }),
  ),
  'draft.list': entry('read', empty, z.strictObject({ drafts: z.array(z.strictObject({ key: z.string(), json: z.string(), savedAt: Moment })) })),
  /** Two weak batches in a row on a jar's path suggest a fresh start. No score is involved. */
  'advice.freshStart': entry(
    'read',
    empty,
    z.strictObject({
      suggestions: z.array(
        z.strictObject({
          line: z.string(),
          /** The newest jar of the path, and the weak jars that led here, oldest first. */
          jar: Uid,
          weak: z.array(z.strictObject({ jar: Uid, label: z.string(), madeOn: Day.nullable(), setWord: SetWord })),
          sentence: z.string(),
          reasons: z.array(z.string()),
        }),
      ),
    }),
  ),
  /** A line over its batches and what it is called for it; ids of lines are those of family.get. */
  'judgement.line': entry('read', z.strictObject({ line: Uid }), LineJudgementReply),
  /** Scores of drawn jars: null where there is nothing to go by, or the jar is spoiled. */
  'judgement.scores': entry(
    'read',
    z.strictObject({ keys: z.array(Key).max(600) }),
    z.strictObject({ scores: z.array(z.strictObject({ key: Key, score: z.number().min(0).max(100).nullable() })) }),
  ),
  'judgement.jar': entry('read', z.strictObject({ jar: Uid }), JarJudgementReply),
  /** What to seed from next, and when to start afresh: of one line, or of all that is kept. */
  /** The one verdict on a line: every screen says it, and nothing else. */
  'advice.line': entry('read', z.strictObject({ line: Uid }), VerdictReply),
  'advice.next': entry('read', z.strictObject({ line: Uid.nullable().default(null) }), NextReply),
  'advice.restart': entry('read', z.strictObject({ line: Uid.nullable().default(null) }), RestartReply),
  /** What was chosen to seed from, newest first, with the advice as it stood. */
  'advice.choices': entry(
    'read',
    z.strictObject({ line: Uid.nullable().default(null), limit: z.int().min(1).max(100).default(20) }),
    z.strictObject({ choices: z.array(ChoiceReply) }),
  ),
  /** What undoing some acts would undo: those that are asked for, and what stands on them; each newest first. */
  'act.standing': entry(
    'read',
    z.strictObject({ acts: z.array(Uid).min(1).max(200) }),
    z.strictObject({ acts: z.array(z.strictObject({ act: Uid, says: z.string() })), later: z.array(z.strictObject({ act: Uid, says: z.string() })) }),
  ),
  /** Facts of one kind in the order of entry: all, or those that point at one record. */
  'facts.list': entry('read', ListFacts, FactsReply),
  'readings.list': entry('read', z.strictObject({ series: Uid }), ReadingsReply),
  /** Contradictions that came in with a hand-over, those that wait before those that are decided. */
  'received.list': entry('read', empty, ReceivedReply),
  /** Jars that went with a hand-over, the newest first: whom to tell, and what stands on them now. */
  'handOver.list': entry(
    'read',
    empty,
    z.strictObject({
      handOvers: z.array(
        z.strictObject({ id: z.string(), jar: Uid, label: z.string(), on: Day.nullable(), to: z.string().nullable(), discard: DiscardReply, caution: z.enum(CAUTION_LEVELS).nullable() }),
      ),
    }),
  ),
  /** Remarks of the ledger, or of one jar: those that stop a jar first, then what nobody has answered, each the newest first. */
  'remarks.list': entry('read', ListRemarks, RemarksReply),
  /** Jars with a caution that stands because of one, itself left out: with one reason as many are lifted as the keeper marks. */
  'caution.list': entry(
    'read',
    z.strictObject({ of: Uid }),
    z.strictObject({ jars: z.array(z.strictObject({ id: Uid, label: z.string(), level: z.enum(CAUTION_LEVELS), how: z.string() })) }),
  ),
  /** What is left of a jar or a portion, and where it stands: it follows from all that became of it. */
  'jar.left': entry('read', z.strictObject({ id: Uid }), LeftReply),
  /** What stands in the kitchen now: holds that run, what each asks for next, and what is kept back. */
  'family.now': entry(
    'read',
    empty,
    z.strictObject({
      now: Moment,
      holds: z.array(
        z.strictObject({
          hold: Uid, batch: Uid, label: z.string(), began: Moment, ends: Moment.nullable(),
          look: z.strictObject({ what: z.enum(['early look', 'take-out']), from: Moment.nullable(), by: Moment.nullable(), due: z.boolean() }),
          /** That nobody noted when it began, and what it is taken for; null where somebody did. */
          assumed: z.string().nullable(),
          title: z.string(), rest: z.string(),
          jars: z.array(z.strictObject({ key: Key, id: Uid, label: z.string() })),
        }),
      ),
      kept: z.array(
        z.strictObject({ id: Uid, jar: Uid, key: Key, label: z.string(), name: z.string(), place: Portion.shape.place, pieces: count.nullable(), keptOn: Day, reserve: z.boolean() }),
      ),
    }),
  ),
  /** Lines in the order of founding, all or those of one jar, each with its newest batch of which a jar was made. */
  'line.list': entry(
    'read',
    z.strictObject({ jar: Uid.nullable().default(null) }),
    z.strictObject({ lines: z.array(z.strictObject({ id: Uid, name: z.string(), founded: Day.nullable(), newestBatch: Uid.nullable() })) }),
  ),
  /** One photograph a generation along a jar's way back, the earliest first: of the jar on the way, else of one made beside it. */
  'photograph.line': entry(
    'read',
    z.strictObject({ jar: Uid }),
    z.strictObject({
      photographs: z.array(
        z.strictObject({ jar: Uid, label: z.string(), generation: z.int().positive(), atLeast: z.boolean(), /** It is of a jar made beside the one on the way. */ mate: z.boolean(), photograph: Photograph }),
      ),
    }),
  ),
  'photograph.list': entry('read', z.strictObject({ jar: Uid }), z.strictObject({ photographs: z.array(Photograph) })),

  /**
   * A jar that is set aside seeds nothing new without a reason in `why`, here and in the calls below: it is kept, and
   * the caution stays.
   */
  'batch.record': entry('write', BatchEntry.extend({ why }), acted.extend({ batch: Uid, jars: z.array(Uid) })),
  /** A day in the place of a range, or a range in the place of a day: the one that is given takes the other away. */
  /**
   * What was planned is made: every amount as planned where nothing else is told of it. `madeOn` null: on the day it was planned
   * for, or today where that is still to come. `startedAt`: when its warmth began; null: as planned, or now where it is made today.
   */
  'batch.made': entry(
    'write',
    z.strictObject({ id: Uid, madeOn: Day.nullable().default(null), startedAt: Moment.nullable().default(null), /** Swapped, or left out. */ notMade: z.array(Uid).max(60).default([]), /** What differs from the plan. */ jars: z.array(MadeOtherwise).max(60).default([]), sameLabelMeant: z.boolean().default(false), why, draft }),
    acted,
  ),
  'batch.correct': entry('write', z.strictObject({ id: Uid, changes: Batch.omit({ id: true }).partial(), why, draft }), acted),
  /** "About mid January": the days between which a batch was made; of jars that nobody can name both may be null: nobody knows. */
  'batch.about': entry('write', z.strictObject({ id: Uid, madeFrom: Day.nullable(), madeTo: Day.nullable(), why, draft }), acted),
  /** One more jar of a recorded batch. `hold` is one of the batch's. */
  'batch.addJar': entry(
    'write',
    z.strictObject({ batch: Uid, jar: JarEntry.extend({ hold: Uid.nullable() }), sameLabelMeant: z.boolean(), why, draft }),
    acted.extend({ jar: Uid }),
  ),
  /** One more time in warmth of a recorded batch, and which of its jars stood in it. */
  'batch.addHold': entry('write', z.strictObject({ batch: Uid, hold: HoldFields, jars: z.array(Uid).max(60), why, draft }), acted.extend({ hold: Uid })),
  'hold.correct': entry('write', z.strictObject({ id: Uid, changes: HoldFields.partial(), why, draft }), acted),
  'jar.correct': entry('write', z.strictObject({ id: Uid, changes: JarChanges, why, draft }), acted),
  /** What was typed along the rows of a batch's sheet, of as many of its jars as it was typed for: one act. */
  'jars.correct': entry('write', z.strictObject({ jars: z.array(JarSheet).min(1).max(60), why, draft }), acted),
  /** "Entered by mistake": leaves a stub where others descend from it. */
  'jar.mistake': entry('write', z.strictObject({ id: Uid, why }), acted),
  /** Stands for a jar that nobody can name. */
  /** Earlier jars from memory, a handful at a time. `jars` in the order of the call. */
  'jars.remember': entry('write', RememberedJars.extend({ why }), acted.extend({ batches: z.array(Uid), jars: z.array(Uid) })),
  'jar.lost': entry('write', z.strictObject({ madeOn: Day.nullable(), madeFrom: Day.nullable().default(null), madeTo: Day.nullable().default(null), label: Line.nullable(), note: Prose.nullable(), draft }), acted.extend({ jar: Uid })),
  /** Replaces what seeded a jar. */
  'seeding.set': entry('write', z.strictObject({ jar: Uid, seedings: z.array(SeedingFields).max(50), why, draft }), acted),
  'addition.set': entry('write', z.strictObject({ jar: Uid, additions: z.array(AdditionFields).max(20), why, draft }), acted),
  'portion.save': entry('write', z.strictObject({ portion: Portion.extend({ id: Uid.nullable() }), why, draft }), acted.extend({ id: Uid })),
  /**
   * What becomes of one thing on the shelf, a jar or what was kept apart of it. What is no food, what is kept for seed and the
   * last that carries a line are asked about first: refused with the sentence until `meant` says so.
   */
  'shelf.open': entry('write', OpenKept, ShelfDone),
  'shelf.eat': entry('write', EatKept, ShelfDone),
  'shelf.give': entry('write', GiveKept, ShelfDone),
  'shelf.freeze': entry('write', FreezeKept, ShelfDone),
  'shelf.thaw': entry('write', ThawKept, ShelfDone),
  'shelf.discard': entry('write', DiscardKept, ShelfDone),
  'shelf.keep': entry('write', KeepForSeed, ShelfDone),
  /** "Still there?", answered for as many as the keeper marks. */
  'shelf.answer': entry('write', AnswerShelf, acted),
  'shelf.limits': entry('write', ShelfLimitsChange, acted),
  'cost.prices': entry('write', SavePrices, acted),
  /** When the keeper is awake: what plans put looks into. */
  'plan.awake': entry('write', SaveAwake, acted),
  /** `readAs`: how the keeper reads what this writes in words that may tell of spoilage; left open it is unread. */
  /** Of one jar, or of several that were looked at together: one act. */
  'outcome.save': entry(
    'write',
    z.union([JarOutcome.extend({ why, draft }), z.strictObject({ outcomes: z.array(JarOutcome).min(1).max(60), why, draft })]),
    acted,
  ),
  'source.save': entry('write', z.strictObject({ source: Source.extend({ id: Uid.nullable(), name: Name }), why, draft }), acted.extend({ id: Uid })),
  'package.save': entry('write', z.strictObject({ package: Package.extend({ id: Uid.nullable(), name: Name }), why, draft }), acted.extend({ id: Uid })),
  /** On one jar, or with one reason on as many as the keeper marks. */
  'caution.clear': entry(
    'write',
    z.union([
      z.strictObject({ jar: Uid, of: Uid, reason: Prose.min(3) }),
      z.strictObject({ jars: z.array(Uid).min(1).max(1000), of: Uid, reason: Prose.min(3) }),
    ]),
    acted,
  ),
  'draft.save': entry('write', z.strictObject({ key: z.string().min(1).max(100), json: z.string().max(1_000_000) }), z.strictObject({ savedAt: Moment })),
  'draft.drop': entry('write', z.strictObject({ key: z.string().min(1).max(100) }), empty),
  'act.undo': entry('write', z.strictObject({ act: Uid.nullable() }), acted.extend({ says: z.string() })),
  /** Several acts as one; with `later` also what stands on them, else that is refused. */
  'act.undoMany': entry('write', z.strictObject({ acts: z.array(Uid).min(1).max(200), later: z.boolean().default(false) }), acted.extend({ says: z.string() })),
  'act.redo': entry('write', empty, acted.extend({ says: z.string() })),
  'preferences.save': entry('write', Preferences, acted),
  'photograph.add': entry('write', z.strictObject({ jar: Uid, bytes: z.instanceof(Uint8Array), caption: Line.nullable() }), acted.extend({ photograph: Photograph })),
  'photograph.correct': entry('write', z.strictObject({ id: Uid, caption: Line.nullable(), draft }), acted),
  /** The record goes, the picture's file stays: undo brings both back. */
  'photograph.remove': entry('write', z.strictObject({ id: Uid, why }), acted),

  /** Keeps the choice with the advice as it stands. Only what advice.next offers can be chosen; never what is stopped. */
  'advice.choose': entry('write', z.strictObject({ line: Uid.nullable().default(null), jar: Uid.nullable(), portion: Uid.nullable().default(null), why }), acted.extend({ id: Uid })),

  /** What the keeper calls a line; null: by its founding batch again. */
  'line.name': entry('write', z.strictObject({ line: Uid, name: Name.nullable(), why }), acted),

  /** Facts of any kind in one act; each may name an earlier one by its `ref`. */
  'facts.record': entry('write', RecordFacts, acted.extend({ ids: z.array(Uid) })),
  'facts.correct': entry('write', CorrectFact, acted),
  /** With what is a part of it; refused where something else hangs on it. */
  'facts.remove': entry('write', RemoveFact, acted),
  /** Readings that are there already are not added again. */
  'readings.add': entry('write', AddReadings, acted.extend({ added: count })),
  'readings.leaveOut': entry('write', LeaveOutReadings, acted.extend({ changed: count })),
  /** A probe's export as a file. The same file again adds nothing: `act` is then null. */
  /** What bringing it in would add, leave out and bridge. */
  'readings.preview': entry('read', BringInReadings.extend({ file: FileInput }), BroughtInReply.omit({ act: true, series: true }).extend({ there: z.boolean() })),
  'readings.bringIn': entry('write', BringInReadings.extend({ file: FileInput }), BroughtInReply),
  /** Appliances with what their newest run proves. */
  'appliance.list': entry('read', empty, ApplianceList),
  'appliance.proof': entry('read', z.strictObject({ hold: Uid }), ProofReply),
  'appliance.save': entry('write', SaveAppliance, SavedAppliance),
  /** A run with water or milk, a file for each probe. */
  'appliance.prove': entry('write', ProveAppliance.extend({ runs: z.array(ProofRun.extend({ file: FileInput })).min(1).max(20) }), ProvedAppliance),
  'tool.list': entry('read', empty, ToolList),
  /** A meter in buffer of pH 4.01, a thermometer in ice water, a glass of water overnight in the fridge. */
  'tool.check': entry('write', CheckTool, CheckedTool),
  /** Trials with their tastings, and what all tastings of like treatments tell together. */
  'trial.list': entry('read', empty, TrialList),
  /** What so many tasters and jars can tell at all, and how many tastings would. */
  'trial.reach': entry('read', AskReach, ReachReply),
  /** What the jars of a batch differ in, and which of them nobody tastes yet. */
  'trial.propose': entry('read', ProposeTrial, ProposedTrial),
  'trial.save': entry('write', SaveTrial, SavedTrial),
  /** Codes and orders of a tasting, drawn afresh. Only jars past the gate; nobody is served what they avoid. */
  'session.start': entry('write', StartTasting, StartedTasting),
  'session.get': entry('read', z.strictObject({ session: Uid }), TastingReply),
  /** Which jar goes into which bowl: for whoever pours, and for nobody who tastes. */
  'session.pour': entry('read', z.strictObject({ session: Uid }), PourReply),
  'session.reveal': entry('write', Reveal, StartedTasting),
  'mark.record': entry('write', RecordMarks, RecordedMarks),
  /** A batch backwards from when one is awake, scaled by its jars. Records nothing. */
  'plan.batch': entry('read', PlanBatch, PlanReply),
  /** Holds that run: time left, looks done, due and missed, and how late. */
  'hold.now': entry('read', empty, HoldsReply),
  /** One hold with all that is known of it, and all holds of jars, the newest first. */
  'hold.get': entry('read', z.strictObject({ id: Uid }), HoldReply),
  'hold.list': entry('read', empty, HoldList),
  /** What asks for something today, due first. */
  'today.list': entry('read', empty, TodayReply),
  'hold.takeOut': entry('write', TakeOut, acted.extend({ ended: z.boolean() })),
  'hold.putIn': entry('write', PutIn, acted),
  'hold.move': entry('write', MoveJars, acted.extend({ hold: Uid })),
  'hold.interrupt': entry('write', Interrupt, acted.extend({ id: Uid })),
  'hold.look': entry('write', NoteLook, acted),
  'readings.note': entry('write', NoteReading, acted.extend({ series: Uid })),
  'calendar.get': entry('read', empty, CalendarReply),
  /** How the keeper reads remarks, one or many in one act; null: not read after all. Changed text is unread again. */
  'remarks.answer': entry('write', AnswerRemarks, acted.extend({ answered: count })),
  'received.decide': entry('write', DecideReceived, acted),

  /** Without a view: all of it. The same file with another view is not read again. */
  'notes.preview': entry('job', z.strictObject({ file: FileInput, mapping: Mapping.optional(), answers: Answers.optional(), view: NotesView.optional() }), NotesPreview),
  'notes.bringIn': entry(
    'job',
    z.strictObject({ file: FileInput, mapping: Mapping.optional(), answers: Answers.optional() }),
    z.strictObject({
      /** How many jars, seedings and sources this added, and how many jars that were there it changed. */
      jars: count, seedings: count, sources: count, changed: count,
      /** Whose spoons and cups the notes were written in, where the preferences have others; else null. */
      spoons: Preferences.shape.spoons.nullable(),
      problems: z.array(NoteProblem), questions: z.array(NoteQuestion), assumptions: z.array(NoteAssumption),
    }),
  ),
  /** file null: the window asks with the system's dialog. A path is for headless callers; from the page it is forbidden. */
  'ledger.open': entry('job', z.strictObject({ file: FilePath.nullable() }), AppState),
  /** A throwaway copy of the invented ledger. */
  'ledger.openDemo': entry('job', empty, AppState),
  /** Back to the keeper's own ledger, or to the three doors where there is none yet. */
  'ledger.leaveDemo': entry('job', empty, AppState),
  'ledger.create': entry('job', z.strictObject({ file: FilePath.nullable() }), AppState),
  /** A new ledger out of an archive. Null: the window asks with the system's dialog, first for the one, then for the other. */
  'ledger.fromArchive': entry('job', z.strictObject({ archive: FilePath.nullable(), file: FilePath.nullable() }), AppState),
  'ledger.recover': entry('job', z.strictObject({ how: z.enum(['newest backup', 'save what can be read', 'show folder']) }), AppState),
  'ledger.backup': entry('job', empty, z.strictObject({ file: z.string(), bytes: count })),
  /**
   * The backups of the open ledger that are whole, the newest first, and what going back to each would do: so many acts of now
   * would be gone (`says`: the latest of them, in words), so many that only it has would be there again.
   */
  'ledger.backups': entry(
    'job',
    empty,
    z.strictObject({
      backups: z.array(
        z.strictObject({ file: z.string(), madeAt: Moment, jars: count, gone: count, says: z.array(z.string()), again: count }),
      ),
    }),
  ),
  /** Goes back to a backup, by its file. What was there before is a backup itself from then on, so this can be taken back. */
  'ledger.restore': entry('job', z.strictObject({ backup: FilePath }), AppState),

  // Out and in again.
  /** The whole ledger as one file, where none lies yet. `missing`: photographs whose files are not beside the ledger. */
  'archive.write': entry(
    'job',
    z.strictObject({ file: FileOutput }),
    z.strictObject({ file: z.string(), bytes: count, jars: count, records: count, acts: count, photographs: count, missing: count }),
  ),
  /**
   * The ledger as tables (CSV) in a folder that is new or empty: `jars.csv`, which notes.bringIn reads back, and a table for each
   * kind of fact. `jars`: rows of jars.csv.
   */
  /** What is to come as a calendar file (RFC 5545). */
  'calendar.write': entry('job', z.strictObject({ file: FileOutput }), z.strictObject({ file: z.string(), events: count })),
  'tables.write': entry(
    'job',
    z.strictObject({ folder: z.union([FileOutput, FilePath.min(1)]) }),
    z.strictObject({ folder: z.string(), files: count, jars: count, rows: count }),
  ),
  /**
   * A jar with its ancestry as a file that goes with it. `to`: whom it goes to, kept here and never in the file; then it is
   * recorded as given (`amount` null: all of it). `followUp`: what is known now of a jar that went before, spoiled or not.
   */
  'handOver.write': entry(
    'job',
    z.strictObject({
      jar: Uid, file: FileOutput, include: z.array(z.enum(['private remarks'])).max(1).default([]), to: Line.nullable().default(null),
      amount: Amount.nullable().default(null), followUp: z.boolean().default(false),
    }),
    z.strictObject({ id: Uid, file: z.string(), bytes: count, records: count, jars: count, act: Uid.nullable(), about: AboutJar }),
  ),
  /** What a hand-over of a jar would tell, and how many records and jars would go; nothing is written. Refused as the write is. */
  'handOver.about': entry(
    'read',
    z.strictObject({ jar: Uid, include: z.array(z.enum(['private remarks'])).max(1).default([]) }),
    z.strictObject({ records: count, jars: count, about: AboutJar }),
  ),
  /** Labels of jars as pages, to look at and to print. */
  'label.sheet': entry('read', AskLabels, LabelSheets),
  /** The same as a PDF; `file` null: on paper, by the system's dialog. Only with a window. */
  'label.print': entry('job', AskLabels.extend({ file: FileOutput.nullable() }), z.strictObject({ file: z.string().nullable(), pages: count })),
  /** Asks the keeper whether the camera may be used for one photograph. Without a window there is nobody to ask: no. */
  'camera.ask': entry('job', empty, z.strictObject({ allowed: z.boolean() })),
  /** A page to be read outside of the program: on paper, as a picture, or on any screen. */
  'report.get': entry('read', z.strictObject({ report: AskReport }), ReportReply),
  /** The same as a PDF; `file` null: on paper, by the system's dialog. Only with a window. */
  'report.print': entry('job', z.strictObject({ report: AskReport, file: FileOutput.nullable() }), z.strictObject({ file: z.string().nullable() })),
  /** The same as a file: the family as SVG, or as the PNG (`png`) that a caller drew of it; any other as HTML. */
  'report.write': entry(
    'job',
    z.strictObject({ report: AskReport, file: FileOutput, png: z.instanceof(Uint8Array).nullable().default(null) }),
    z.strictObject({ file: z.string(), bytes: count }),
  ),
  /** What a hand-over would bring; `known`: its jar is here already. */
  'handOver.preview': entry(
    'job',
    z.strictObject({ file: FileInput }),
    z.strictObject({ id: Uid, jar: Uid, about: AboutJar, jars: count, known: z.boolean(), added: count, renewed: count, waiting: count }),
  ),
  /** Takes it in as one act; act null: all of it was here. What says otherwise than ours waits in received.list. */
  /**
   * `hoursOut`: how long it was out of the cold on its way here, kept as a remark on it; longer than two hours, or not known (null),
   * it is to be looked at first. Left out: nothing is written down of it.
   */
  'handOver.read': entry('job', z.strictObject({ file: FileInput, hoursOut: z.number().min(0).max(1000).nullable().optional() }), z.strictObject({ act: Uid.nullable(), jar: Uid, added: count, renewed: count, waiting: count })),
  /** Only into a ledger in which nothing was recorded. */
  'archive.read': entry('job', z.strictObject({ file: FileInput }), z.strictObject({ jars: count, records: count, acts: count, photographs: count })),
} as const satisfies Record<CallName, Entry>; // prettier-ignore

export type Contract = typeof contract;
export type Input<N extends CallName> = z.input<Contract[N]['input']>;
export type Parsed<N extends CallName> = z.output<Contract[N]['input']>;
export type Reply<N extends CallName> = z.output<Contract[N]['reply']>;
export type { CallName, JobName, ReadName, WriteName };

/** Why a call was refused: a code and what the sentence needs; core/sentences.ts makes the sentence. */
export const Refusal = z.strictObject({
  code: z.string(),
  params: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())])),
});
export type Refusal = z.infer<typeof Refusal>;
export type Result<T> = { ok: true; value: T } | { ok: false; error: Refusal };

export type { Amount, Moment, Price, Temperature };
