// Bringing in a keeper's spreadsheet: reads it against what the ledger has, and adds what is new as one act.
import { createHash } from 'node:crypto';
import type { NotesPreview, Parsed, Reply } from '../../core/contract';
import { isSpoiled } from '../../core/ledger/gate';
import { readNotes, type LedgerFacts, type LedgerView, type NotesPlan } from '../../core/notes';
import { jarLabel } from '../../core/lineage/labels';
import { readNotesFile, type NotesText } from '../files/notes';
import type { OpenAct } from './acts';
import type { Job } from './job';
import type { Ledger } from './ledger';
import { Refused } from './refusal';

const STEP = 500;
const hash = (text: string): string => createHash('sha256').update(text).digest('hex');

function factsOf(ledger: Ledger, uid: string): LedgerFacts | null {
  const { rows } = ledger;
  const key = rows.keyOf('jar', uid);
  const jar = rows.get('jar', key);
  const hold = jar.hold === null ? null : rows.get('hold', jar.hold);
  const [outcome] = rows.where('outcome', 'jar', key);
  const seeds = rows.where('seeding', 'jar', key).map((seeding) => {
    if (seeding.source !== null) return rows.get('source', seeding.source).name;
    const seed = seeding.fromJar === null ? null : rows.get('jar', seeding.fromJar);
    if (!seed) return '';
    const batch = rows.get('batch', seed.batch);
    return jarLabel({ madeOn: batch.madeOn, word: batch.word, letter: seed.letter }, true);
  });
  return {
    hours: hold?.hours ?? null,
    temperature: hold?.planned?.value ?? null,
    milk: jar.milk,
    setWord: outcome?.setWord ?? null,
    ph: outcome?.ph ?? null,
    spoiled: outcome !== undefined && isSpoiled(outcome),
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
      `SELECT j.uid, b.made_on AS day, b.word, j.letter, j.state = 'planned' AS planned FROM jar j JOIN batch b ON b.key = j.batch
       WHERE j.state IN ('made', 'planned') ORDER BY j.key`,
    )
    .all() as { uid: string; day: string | null; word: string | null; letter: string; planned: number }[];
  const noted = rows
    .prepare('SELECT n.fingerprint, n.occurrence, j.uid FROM note_row n LEFT JOIN jar j ON j.key = n.jar')
    .all() as { fingerprint: string; occurrence: number; uid: string | null }[];
  const raw = new Map<string, string>();
  const read = new Set<string>();
  const fromNotes = new Set<string>();
  for (const { fingerprint, occurrence, uid } of noted) {
    const [text = '', meaning = ''] = fingerprint.split(':');
    raw.set(`${text}:${occurrence}`, uid ?? '');
    read.add(meaning);
    if (uid !== null) fromNotes.add(uid);
  }
  return {
    jars: jars.map(({ planned, ...jar }) => ({ ...jar, planned: planned === 1 })),
    sources: rows.prepare('SELECT name FROM source ORDER BY key').all() as { name: string }[],
    raw,
    read,
    fromNotes,
    factsOf: (uid) => factsOf(ledger, uid),
  };
}

interface Reading {
  readonly file: NotesText;
  readonly preview: NotesPreview;
  readonly plan: NotesPlan;
}

function readFor(ledger: Ledger, input: Parsed<'notes.preview'>, job: Job): Reading {
  const file = readNotesFile(input.file);
  const reading = readNotes({
    text: file.text,
    mapping: input.mapping ?? {},
    answers: input.answers ?? {},
    today: ledger.clock.today(),
    preferences: ledger.preferences,
    ledger: viewOf(ledger),
    hash,
    step: (done, total) => job.step(done, total, 'reading rows'),
  });
  if (!reading.ok) throw new Refused(reading.code, { file: file.name, headings: reading.params.headings });
  const encoding = file.encodingAssumed
    ? [{ row: null, sentence: `The file does not say its encoding. It was read as ${file.encoding}.` }]
    : [];
  return {
    file,
    plan: reading.plan,
    preview: { ...reading.preview, assumptions: [...encoding, ...reading.preview.assumptions] },
  };
}

/** What bringing the file in would do; changes nothing. */
export function previewNotes(
  ledger: Ledger,
  input: Parsed<'notes.preview'>,
  job: Job,
): Reply<'notes.preview'> {
  return readFor(ledger, input, job).preview;
}

/** Batches, holds and sources by what names them, found once and made once. */
class Shared {
  readonly #sources: Map<string, number>;
  readonly #batches = new Map<string, number>();
  readonly #holds = new Map<string, number>();

  constructor(
    readonly ledger: Ledger,
    readonly act: OpenAct,
  ) {
    const known = ledger.rows.prepare('SELECT key, name FROM source ORDER BY key').all() as {
      key: number;
      name: string;
    }[];
    this.#sources = new Map(known.toReversed().map(({ key, name }) => [name.toLowerCase(), key]));
  }

  addSource(source: NotesPlan['sources'][number]): void {
    const { key } = this.act.insert('source', {
      ...source,
      strains: [],
      blendTotalPerPiece: null,
      guaranteed: null,
      knownGenerations: null,
      note: null,
    });
    this.#sources.set(source.name.toLowerCase(), key);
  }

  source(name: string): number {
    const key = this.#sources.get(name.toLowerCase());
    if (key === undefined) throw new Error(`the plan names a source ${name} that nothing makes`);
    return key;
  }

  /** Jars of one day, with the same word, are one batch: also with those that are there already. */
  batch(madeOn: string, word: string | null): number {
    const name = `${madeOn}|${word?.toLowerCase() ?? ''}`;
    const there =
      this.#batches.get(name) ??
      this.ledger.rows
        .where('batch', 'made_on', madeOn)
        .find((batch) => (batch.word?.toLowerCase() ?? '') === (word?.toLowerCase() ?? ''))?.key ??
      this.act.insert('batch', { madeOn, word, note: null }).key;
    this.#batches.set(name, there);
    return there;
  }

  /** Jars of a batch held as long and as warm shared a hold, as far as notes can tell. */
  hold(batch: number, planned: NonNullable<NotesPlan['jars'][number]['hold']>): number {
    const same = (hours: number | null, celsius: number | null): string =>
      `${batch}|${hours}|${celsius?.toFixed(2) ?? ''}`;
    const name = same(planned.hours, planned.planned?.value ?? null);
    const there =
      this.#holds.get(name) ??
      this.ledger.rows
        .where('hold', 'batch', batch)
        .find((hold) => hold.basis === 'notes' && same(hold.hours, hold.planned?.value ?? null) === name)?.key ??
      this.act.insert('hold', {
        batch, startedAt: null, endedAt: null, hours: planned.hours, planned: planned.planned, probe: null, readings: [], basis: 'notes', note: null,
      }).key; // prettier-ignore
    this.#holds.set(name, there);
    return there;
  }
}

function write(ledger: Ledger, act: OpenAct, { file, plan }: Reading, job: Job): void {
  const shared = new Shared(ledger, act);
  for (const source of plan.sources) shared.addSource(source);
  const byRow = new Map<string, number>();
  for (const [at, planned] of plan.jars.entries()) {
    if (at % STEP === 0) job.step(at, plan.jars.length, 'bringing in rows');
    const batch = shared.batch(planned.madeOn, planned.word);
    const { key } = act.insert('jar', {
      ...planned.fields,
      batch,
      letter: planned.letter,
      hold: planned.hold === null ? null : shared.hold(batch, planned.hold),
      state: 'made',
      milkPackage: null,
      countPerMl: null,
      onShelf: null,
      goneOn: null,
    });
    byRow.set(planned.id, key);
    for (const { name, actual } of planned.additions) {
      act.insert('addition', { jar: key, name, planned: null, actual, package: null });
    }
    for (const { fromRow, fromUid, source, part, amount } of planned.seedings) {
      const fromJar =
        fromUid !== null
          ? ledger.rows.keyOf('jar', fromUid)
          : fromRow !== null
            ? (byRow.get(fromRow) ?? null)
            : null;
      act.insert('seeding', {
        jar: key, fromJar, portion: null, part, source: source === null ? null : shared.source(source), package: null, amount,
      }); // prettier-ignore
    }
    if (planned.outcome) act.insert('outcome', { ...planned.outcome, jar: key });
    act.insert('noteRow', {
      file: file.name.slice(0, 500) || 'notes',
      fingerprint: planned.fingerprint,
      occurrence: planned.occurrence,
      line: planned.line,
      jar: key,
    });
  }
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
  if (plan.jars.length > 0) {
    ledger.acts.run('notes.bringIn', reading.file.name, null, (act) => write(ledger, act, reading, job));
  }
  return {
    jars: plan.jars.length,
    seedings: plan.jars.reduce((sum, { seedings }) => sum + seedings.length, 0),
    sources: plan.sources.length,
    problems: preview.problems,
    questions: preview.questions,
    assumptions: preview.assumptions,
  };
}
