// Reads a hand-over, which is a stranger's file: bounded before it is parsed, held against its schema, shown before it enters,
// taken in as one act that can be undone, and asked the rule book like any other.
import { readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { isShallow } from '../../core/archive/archive-format';
import type { Parsed, Reply } from '../../core/contract';
import {
  HAND_OVER_VERSION,
  HandOver,
  HandOverHead,
  MOST_HAND_OVER,
} from '../../core/hand-over/hand-over-format';
import { onItsWay } from '../../core/says/hand-over-says';
import { plainIssue } from '../../core/plain-issue';
import type { HandedRows } from '../ledger/facts/hand-over';
import { type Merged, mergeRows } from '../ledger/facts/merge';
import type { OpenAct } from '../ledger/facts/open-act';
import type { Job } from '../ledger/job';
import type { Ledger } from '../ledger/ledger';
import { Refused, refusedFor } from '../refusal';

/** @throws Refused 'no file there', 'hand-over unreadable', 'hand-over too large' */
function bytesOf(file: Parsed<'handOver.read'>['file']): { name: string; bytes: Uint8Array } {
  if ('bytes' in file) {
    if (file.bytes.length > MOST_HAND_OVER) throw new Refused('hand-over too large');
    return file;
  }
  const path = resolve(file.path);
  try {
    const about = statSync(path);
    if (!about.isFile()) throw new Refused('hand-over unreadable', { file: path, what: 'it is no file' });
    if (about.size > MOST_HAND_OVER) throw new Refused('hand-over too large');
    return { name: path, bytes: readFileSync(path) };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT')
      throw new Refused('no file there', { file: path });
    throw refusedFor(error, path);
  }
}

function jsonOf(bytes: Uint8Array, refuse: (what: string) => Refused): unknown {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw refuse('it is not text in UTF-8');
  }
  if (!isShallow(text)) throw refuse('it is nested too deep');
  try {
    return JSON.parse(text);
  } catch {
    throw refuse('it is not whole, or no hand-over');
  }
}

/** @throws Refused 'hand-over unreadable', 'hand-over newer', 'hand-over of the demo', and as bytesOf */
function open(ledger: Ledger, file: Parsed<'handOver.read'>['file']): HandOver {
  const { name, bytes } = bytesOf(file);
  const refuse = (what: string): Refused =>
    new Refused('hand-over unreadable', { file: name, what: what.slice(0, 200) });
  const json = jsonOf(bytes, refuse);
  const head = HandOverHead.safeParse(json);
  if (!head.success) throw refuse('it is no hand-over of a jar');
  if (head.data.version > HAND_OVER_VERSION) throw new Refused('hand-over newer', { file: name });
  const read = HandOver.safeParse(json);
  if (!read.success) {
    const [first] = read.error.issues;
    const path = first?.path.map(String).join('.') ?? '';
    throw refuse(`${path}${path === '' ? '' : ': '}${first ? plainIssue(first, json) : ''}`);
  }
  const { ledger: from, records, jar } = read.data;
  if (from.demo && !ledger.about.demo) throw new Refused('hand-over of the demo');
  if (new Set(records.map(({ id }) => id)).size !== records.length)
    throw refuse('a record stands in it twice');
  if (!records.some(({ id, kind }) => id === jar && kind === 'jar'))
    throw refuse('the jar that it is of is not in it');
  // Of what became of jars only that they were opened is anyone else's business.
  if (records.some(({ kind, form }) => kind === 'movement' && form['kind'] !== 'opened'))
    throw refuse('it tells what no hand-over does');
  return read.data;
}

const rowsOf = ({ ledger, records }: HandOver): HandedRows => ({
  ledger: { uid: ledger.id, name: null },
  records: records.map(({ id, ...one }) => ({ uid: id, ...one })),
});

const jarsIn = ({ records }: HandOver): string[] =>
  records.flatMap(({ kind, id }) => (kind === 'jar' ? [id] : []));

/** Of jars that came new only the one that was handed over stands here; parts of the others don't either. */
function placeJars(ledger: Ledger, act: OpenAct, handed: HandOver, before: ReadonlySet<string>): void {
  const { rows, clock } = ledger;
  for (const { id, kind } of handed.records) {
    if (before.has(id) || id === handed.jar || (kind !== 'jar' && kind !== 'portion')) continue;
    const found = rows.recordOf(id);
    if (found && !found.gone) act.insert('movement', { [kind]: found.key, kind: 'gone' });
  }
  const jar = rows.keyOf('jar', handed.jar);
  const [last] = rows.where('movement', 'jar', jar).toReversed();
  // One that came as an ancestor before is here now.
  if (last?.kind === 'gone' && last.day === null && last.at === null)
    act.insert('movement', { jar, kind: 'still there', day: clock.today() });
}

/** A jar that was out of the cold for longer than this is to be looked at first (common practice, no source). */
const MOST_HOURS_OUT = 2;

/** A jar that comes for the first time: how long it was out of the cold. It goes along where it is handed on. */
function noteItsWay(act: OpenAct, jar: number, hoursOut: number | null): void {
  const readAs = hoursOut !== null && hoursOut <= MOST_HOURS_OUT ? 'fine' : 'look';
  act.insert('remark', { jar, field: 'note', text: onItsWay(hoursOut), private: false, readAs });
}

function take(ledger: Ledger, act: OpenAct, handed: HandOver, hoursOut?: number | null): Merged {
  const { rows } = ledger;
  // Also again, after taking it in was undone.
  const arrives = rows.recordOf(handed.jar)?.gone !== false;
  const there = new Set(handed.records.filter(({ id }) => ledger.rows.recordOf(id)).map(({ id }) => id));
  const merged = mergeRows(ledger.rows, act, rowsOf(handed));
  if (rows.recordOf(handed.jar)?.gone !== false) return merged;
  placeJars(ledger, act, handed, there);
  if (arrives && hoursOut !== undefined) noteItsWay(act, rows.keyOf('jar', handed.jar), hoursOut);
  return merged;
}

/** Thrown to take back what was only tried. */
class Tried extends Error {
  constructor(readonly merged: Merged) {
    super('tried');
  }
}

/**
 * What a hand-over would bring, and nothing of it kept.
 * @throws Refused as readHandOver
 */
export function previewHandOver(
  ledger: Ledger,
  input: Parsed<'handOver.preview'>,
  job: Job,
): Reply<'handOver.preview'> {
  job.step(0, null, 'reading the hand-over');
  const handed = open(ledger, input.file);
  let merged: Merged = { added: 0, renewed: 0, waiting: 0 };
  try {
    ledger.acts.run('ledger.merge', handed.about.label, null, (act) => {
      throw new Tried(take(ledger, act, handed));
    });
  } catch (error) {
    if (!(error instanceof Tried)) throw error;
    merged = error.merged;
  }
  const known = ledger.rows.recordOf(handed.jar) !== undefined;
  return {
    id: handed.id,
    jar: handed.jar,
    about: handed.about,
    jars: jarsIn(handed).length,
    known,
    ...merged,
  };
}

/**
 * Takes a hand-over in, as one act.
 * @throws Refused 'hand-over unreadable', 'hand-over newer', 'hand-over too large', 'hand-over of the demo', 'handed incomplete',
 *   'handed unreadable', and as the rule book says; then nothing of it is kept
 */
export function readHandOver(
  ledger: Ledger,
  input: Parsed<'handOver.read'>,
  job: Job,
): Reply<'handOver.read'> {
  job.step(0, null, 'reading the hand-over');
  const handed = open(ledger, input.file);
  const label = handed.about.label;
  const done = ledger.acts.run('ledger.merge', label, null, (act) =>
    take(ledger, act, handed, input.hoursOut),
  );
  return {
    act: done?.act.uid ?? null,
    jar: handed.jar,
    ...(done?.value ?? { added: 0, renewed: 0, waiting: 0 }),
  };
}
