// Bringing in a keeper's spreadsheet: reads it against what the ledger has, and adds what is new as one act.
import { createHash } from 'node:crypto';
import type { NotesPreview, Parsed, Reply } from '../../core/contract';
import { discardOf } from '../../core/safety/take-out';
import {
  KeptStages,
  paged,
  pageOf,
  readNotes,
  type Paged,
  remarksOfPlan,
  doubtedRow,
  rowReadAs,
  suspiciousReadAs,
  sheetQuestion,
  sheetsCounted,
  type LedgerFacts,
  type LedgerView,
  type NotesPlan,
} from '../../core/notes/notes-door';
import { middleDay } from '../../core/quantities/day-ranges';
import { calledDay, jarLabel } from '../../core/lineage/labels';
import { readNotesFile, type NotesText } from '../files/notes-file';
import { ALL_ALIKE } from '../files/spreadsheet';
import { remarksAbout } from './derived/unread';
import { addOutcome } from './entries/outcome-entry';
import { addJar, jarEntry } from './entries/jar-entry';
import { addAddition, addSeeding } from './entries/kept-entries';
import type { OpenAct } from './facts/open-act';
import type { Job } from './job';
import type { Ledger } from './ledger';
import { changeFromRow, unworded, fileName, KeptFile, noteRow, type SeedOf } from './notes-changes';
import { Shared } from './notes-shared';
import { notedIn } from './notes-noted';
import { outcomeOf } from './entries/outcome-of-jar';
import { Refused } from '../refusal';
import { rulesForNotes } from './rules/ask-of-plan';

const STEP = 500;
const hash = (text: string): string => createHash('sha256').update(text).digest('hex');

function factsOf(ledger: Ledger, uid: string): LedgerFacts | null {
  const { rows } = ledger;
  const key = rows.keyOf('jar', uid);
  const jar = jarEntry(rows, key);
  const hold = jar.hold === null ? null : rows.get('hold', jar.hold);
  const outcome = outcomeOf(rows, key);
  const seeds = rows.where('seeding', 'jar', key).map((seeding) => {
    if (seeding.source !== null) return rows.get('source', seeding.source).name;
    const seed = seeding.fromJar === null ? null : rows.get('jar', seeding.fromJar);
    if (!seed) return '';
    const batch = rows.get('batch', seed.batch);
    return jarLabel({ ...calledDay(batch), word: batch.word, letter: seed.letter }, true);
  });
  return {
    hours: hold?.hours ?? null,
    temperature: hold?.planned?.value ?? null,
    milk: jar.milk,
    setWord: outcome?.setWord ?? null,
    ph: outcome?.ph ?? null,
    spoiled: outcome !== null && discardOf(outcome) !== null,
    additions: rows.where('addition', 'jar', key).map(({ name }) => name),
    seeds,
    note: jar.note,
  };
}

/** What the ledger has, as reading notes sees it. */
function viewOf(ledger: Ledger): LedgerView {
  const { rows } = ledger;
  const jars = rows
    .prepare(
      `SELECT r.uid, b.made_on AS day, b.made_from AS first, b.made_to AS last,
         b.word, j.letter, j.state = 'planned' AS planned FROM jar j JOIN batch b ON b.key = j.batch
         JOIN record r ON r.key = j.key WHERE j.state IN ('made', 'planned') ORDER BY j.key`,
    )
    .all() as {
    uid: string;
    day: string | null;
    first: string | null;
    last: string | null;
    word: string | null;
    letter: string;
    planned: number;
  }[];
  return {
    ...notedIn(ledger),
    jars: jars.map(({ planned, first: from, last: to, ...jar }) => {
      const between = from === null || to === null ? null : { from, to };
      return {
        ...jar,
        day: between === null ? jar.day : middleDay(between),
        between,
        planned: planned === 1,
      };
    }),
    sources: (
      rows.prepare('SELECT name, form, received_from FROM source ORDER BY key').all() as {
        name: string;
        form: LedgerView['sources'][number]['form'];
        received_from: string | null;
      }[]
    ).map(({ name, form, received_from }) => ({ name, form, culture: received_from !== null })),
    mistaken: new Set(
      rows
        .prepare("SELECT r.uid FROM jar j JOIN record r ON r.key = j.key WHERE j.state = 'mistake'")
        .pluck()
        .all() as string[],
    ),
    factsOf: (uid) => factsOf(ledger, uid),
  };
}

type Answers = Readonly<Record<string, string>>;

interface Reading {
  readonly file: NotesText;
  readonly preview: NotesPreview;
  readonly plan: NotesPlan;
  /** What the keeper said was so all the same, to be kept with the act; null where nothing was asked. */
  readonly word: string | null;
}

type Workbook = NonNullable<NotesText['workbook']>;

/** Whether a workbook has several sheets and nobody said which it is. */
const sheetToChoose = ({ sheet, sheets }: Workbook, answer: string | undefined): boolean =>
  sheets.length > 1 && sheet.toLowerCase() !== answer?.trim().toLowerCase();

/** Nothing is read of a workbook before its sheet is chosen. */
function whichSheet(file: NotesText): Reading {
  const question = sheetQuestion(file.workbook?.sheets ?? [], ALL_ALIKE, file.workbook?.alike ?? []);
  return {
    file,
    word: null,
    plan: { sources: [], jars: [], changes: [], spoons: null, headings: [] },
    preview: { columns: [], rows: [], problems: [], questions: [question], assumptions: [] },
  };
}

/** What readings of a ledger's notes go on from: an answer has nothing read again that it does not touch. */
const stagesOf = new WeakMap<Ledger, KeptStages>();

function keptStages(ledger: Ledger): KeptStages {
  const stages = stagesOf.get(ledger) ?? new KeptStages();
  stagesOf.set(ledger, stages);
  return stages;
}

function readFor(ledger: Ledger, input: Parsed<'notes.preview'>, job: Job): Reading {
  const file = readNotesFile(input.file, input.answers?.['sheet']);
  if (file.workbook && sheetToChoose(file.workbook, input.answers?.['sheet'])) return whichSheet(file);
  const rules = rulesForNotes(ledger, fileName(file.name), input.answers ?? {});
  const reading = readNotes({
    refuse: rules.refuse,
    file: fileName(file.name),
    text: file.text,
    // Of several sheets each has its name above it.
    title:
      file.workbook?.sheet === ALL_ALIKE
        ? ''
        : (file.workbook?.sheet ?? fileName(file.name).replace(/\.[^.]*$/, '')),
    separator: file.workbook ? '\t' : null,
    mapping: input.mapping ?? {},
    answers: input.answers ?? {},
    today: ledger.clock.today(),
    preferences: ledger.preferences,
    ledger: viewOf(ledger),
    hash,
    stages: keptStages(ledger),
    step: (done, total) => job.step(done, total, 'reading rows'),
    look: job.look,
  });
  if (!reading.ok) throw new Refused(reading.code, { file: file.name, headings: reading.params.headings });
  const encoding = file.encodingAssumed
    ? [{ row: null, sentence: `The file does not say its encoding. It was read as ${file.encoding}.` }]
    : [];
  return {
    file,
    word: rules.word(),
    plan: reading.plan,
    preview: {
      ...reading.preview,
      assumptions: [
        ...sheetsCounted(file.workbook?.begins ?? []),
        ...encoding,
        ...reading.preview.assumptions,
      ],
      remarks: remarksOfPlan(reading.plan, input.answers ?? {}, job.look),
    },
  };
}

/** What was read last of a ledger's notes, by all that the reading follows from. */
const lastRead = new WeakMap<Ledger, { readonly of: string; readonly paged: Paged }>();

/** Names a reading: the file and what was answered, and the ledger as it stands. */
function readingOf(ledger: Ledger, { file, mapping, answers }: Parsed<'notes.preview'>): string | null {
  if (!('bytes' in file)) return null;
  const acts = ledger.rows.prepare('SELECT max(key) FROM act').pluck().get();
  const bytes = createHash('sha256').update(file.bytes).digest('hex');
  const elsewhere = ledger.db.pragma('data_version', { simple: true });
  const known = [ledger.clock.today(), ledger.preferences.spoons, acts, elsewhere];
  return JSON.stringify([bytes, file.name, mapping, answers, ...known]);
}

/** What bringing the file in would do; changes nothing. A file that was read already is only looked up. */
export function previewNotes(
  ledger: Ledger,
  input: Parsed<'notes.preview'>,
  job: Job,
): Reply<'notes.preview'> {
  const { view } = input;
  if (!view) return readFor(ledger, input, job).preview;
  const of = readingOf(ledger, input);
  const last = lastRead.get(ledger);
  if (of !== null && last?.of === of) return pageOf(last.paged, view);
  const read = paged(readFor(ledger, input, job).preview);
  if (of !== null) lastRead.set(ledger, { of, paged: read });
  return pageOf(read, view);
}

/** Keys of the jars of the ledger that a plan names as seeds. */
const seedKeys = ({ rows }: Ledger, { jars, changes }: NotesPlan): ReadonlyMap<string, number> =>
  new Map(
    [...jars, ...changes.map(({ planned }) => planned)]
      .flatMap(({ seedings }) => seedings.flatMap(({ fromUid }) => fromUid ?? []))
      .map((uid) => [uid, rows.keyOf('jar', uid)]),
  );

/** How the keeper read what rows say in words: once all of them are there. */
function readRemarks(
  act: OpenAct,
  rows: readonly (readonly [key: number, line: number])[],
  answers: Answers,
  doubted: ReadonlySet<number>,
): void {
  const others = (line: number) => rowReadAs(answers, line, doubted.has(line) ? 'doubted' : 'other');
  const lineOf = new Map(
    rows.filter(([, line]) => (suspiciousReadAs(answers, line) ?? others(line)) !== null),
  );
  if (lineOf.size === 0) return;
  for (const [jar, remarks] of remarksAbout(act.rows, [...lineOf.keys()], false)) {
    const line = lineOf.get(jar) as number;
    const suspicious = remarks.some(({ of, stops }) => stops && of === 'jar');
    for (const { key, of, readAs, stops } of remarks) {
      const answer = stops
        ? suspiciousReadAs(answers, line)
        : suspicious
          ? rowReadAs(answers, line, 'spoilage')
          : others(line);
      if (of === 'jar' && readAs === null && answer !== null) act.update('remark', key, { readAs: answer });
    }
  }
}

function write(ledger: Ledger, act: OpenAct, { file, plan }: Reading, job: Job, answers: Answers): void {
  const shared = new Shared(act);
  const kept = new KeptFile(ledger, file.name, plan.headings);
  for (const source of plan.sources) shared.addSource(source);
  const byRow = new Map<string, number>();
  const doubted = new Set<number>();
  const known = seedKeys(ledger, plan);
  const seedsOf = (planned: NotesPlan['jars'][number]): SeedOf[] =>
    planned.seedings.map(({ fromRow, fromUid, source, part, amount }) => {
      const fromJar = (fromUid === null ? byRow.get(fromRow ?? '') : known.get(fromUid)) ?? null;
      return { from: { fromJar, source: source === null ? null : shared.source(source) }, part, amount };
    });
  // From here on nothing is asked of the ledger until all rows are there.
  act.together();
  for (const [at, planned] of plan.jars.entries()) {
    if (at % STEP === 0) job.step(at, plan.jars.length, 'bringing in rows');
    const batch = shared.batch(planned);
    const key = addJar(act, {
      ...planned.fields,
      batch,
      letter: planned.letter,
      hold: planned.hold === null ? null : shared.hold(batch, planned.hold),
      state: 'made',
    });
    byRow.set(planned.id, key);
    for (const { name, actual } of planned.additions) {
      addAddition(act, { jar: key, name, planned: null, actual, package: null });
    }
    for (const { from, part, amount } of seedsOf(planned)) {
      addSeeding(act, { jar: key, ...from, portion: null, part, package: null, amount });
    }
    if (planned.outcome) addOutcome(act, key, unworded(planned));
    noteRow(act, kept, planned, key);
    if (doubtedRow(planned)) doubted.add(planned.line);
  }
  for (const change of plan.changes) {
    changeFromRow(act, shared, change, kept, seedsOf);
    if (doubtedRow(change.planned)) doubted.add(change.planned.line);
  }
  const changed = plan.changes.map(
    ({ uid, planned }) => [ledger.rows.keyOf('jar', uid), planned.line] as const,
  );
  readRemarks(
    act,
    [...plan.jars.map(({ id, line }) => [byRow.get(id) as number, line] as const), ...changed],
    answers,
    doubted,
  );
  job.step(plan.jars.length, plan.jars.length, 'bringing in rows');
}

/**
 * Brings a file in: all that is new in it, as one act; nothing at all where nothing is new.
 * @throws Refused 'notes into demo'; 'ambiguous' with the question where one must be answered first; 'cancelled'; as readNotesFile
 */
export function bringInNotes(
  ledger: Ledger,
  input: Parsed<'notes.bringIn'>,
  job: Job,
): Reply<'notes.bringIn'> {
  if (ledger.about.demo) throw new Refused('notes into demo');
  const reading = readFor(ledger, input, job);
  const { preview, plan } = reading;
  const blocking = preview.questions.find(({ blocks }) => blocks);
  if (blocking) {
    throw new Refused('ambiguous', {
      id: blocking.id,
      question: blocking.sentence,
      choices: blocking.choices.map(({ value }) => value),
    });
  }
  if (plan.jars.length + plan.changes.length > 0) {
    ledger.acts.run('notes.bringIn', reading.file.name, reading.word, (act) =>
      write(ledger, act, reading, job, input.answers ?? {}),
    );
  }
  return {
    jars: plan.jars.length,
    seedings: plan.jars.reduce((sum, { seedings }) => sum + seedings.length, 0),
    sources: plan.sources.length,
    changed: plan.changes.length,
    spoons: plan.spoons === ledger.preferences.spoons ? null : plan.spoons,
    problems: preview.problems,
    questions: preview.questions,
    assumptions: preview.assumptions,
  };
}
