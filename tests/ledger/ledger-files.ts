// Real ledger files in folders of their own, and calls as the window makes them: parsed before, checked after.
import { createHash } from 'node:crypto';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CallName, Input, Refusal, Reply, Result } from '../../core/contract';
import type { BatchEntry } from '../../core/contract';
import { FACT_KINDS } from '../../core/ledger/facts/all-facts';
import type { Outcome, Source } from '../../core/ledger/records';
import { refusalSentence } from '../../core/sentences';
import { checkInput, checkReply } from '../../main/check-call';
import type { OpenMode, WorkerCall } from '../../main/ledger/worker-protocol';
import { tableOf } from '../../main/ledger/facts/tables';
import { Session } from '../../main/session';

export const NOW = '2026-03-14T18:30:00+01:00';

/** A folder of a test's own; it goes with all others when the tests are over (temporary-folder.ts). */
export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'jarline-ledger-'));

export const newFile = (): string => join(newFolder(), 'ledger.sqlite');

export const openSession = (file: string, mode: OpenMode = 'open', now: string | null = NOW): Session =>
  new Session({ file, mode, now, timeZone: 'Europe/Berlin', version: '0.0.0' });

/** A new, empty ledger. */
export const newSession = (): Session => openSession(newFile(), 'create');

let invented: string | null = null;

/** The invented ledger as it is when it opens, on its own last day. Played once for all that ask; each has a copy. */
export function demoSession(): Session {
  if (invented === null) {
    invented = newFile();
    openSession(invented, 'demo', null).close();
  }
  const file = newFile();
  copyFileSync(invented, file);
  return openSession(file, 'open', null);
}

/** One call, checked on both sides. */
export function ask<N extends CallName>(session: Session, name: N, input: Input<N>): Result<Reply<N>> {
  const checked = checkInput(name, input);
  if (!checked.ok) return checked;
  return checkReply(name, session.answer(name as WorkerCall, checked.value)) as Result<Reply<N>>;
}

/** The value of a call that must not be refused. */
export function must<N extends CallName>(session: Session, name: N, input: Input<N>): Reply<N> {
  const result = ask(session, name, input);
  if (!result.ok) throw new Error(`${name}: ${result.error.code}: ${refusalSentence(result.error)}`);
  return result.value;
}

/** The refusal of a call that must be refused. */
export function refusalOf<N extends CallName>(
  session: Session,
  name: N,
  input: Input<N>,
): Refusal & { sentence: string } {
  const result = ask(session, name, input);
  if (result.ok) throw new Error(`${name} was not refused`);
  return { ...result.error, sentence: refusalSentence(result.error) };
}

export const unseen: Omit<Outcome, 'jar'> = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
  setAtTakeOut: null, setWord: null, texture: null, whey: null, tang: null, smell: null, colour: null, ph: null,
  phHow: null, signs: [], bubbles: null, powerCut: null, powerCutHours: null, spoiledSaid: false, seenAt: null, openedDays: null, fibreDidThis: false, note: null,
}; // prettier-ignore

/** Set firm, and passed by a meter that was checked that day. */
export const FIRM = {
  ...unseen,
  setAtTakeOut: true,
  setWord: 'firm' as const,
  ph: 4.3,
  phHow: 'meter' as const,
  phChecked: true,
};

type JarEntry = BatchEntry['jars'][number];

export const plainJar = (letter: string, more: Partial<JarEntry> = {}): JarEntry => ({
  letter, state: 'made', vessel: null, finalVolume: { value: 946, unit: 'mL', typed: '1 qt' }, finalVolumeKnown: null,
  milk: null, milkAmount: null, milkPackage: null, countPerMl: null, onShelf: null, goneOn: null, note: null,
  hold: null, additions: [], seedings: [], outcome: null, ...more,
}); // prettier-ignore

export const fromJar = (jar: string, ml: number | null = 45): JarEntry['seedings'][number] => ({
  fromJar: jar, portion: null, part: null, source: null, package: null,
  amount: ml === null ? null : { value: ml, unit: 'mL', typed: `${ml} ml` },
}); // prettier-ignore

export const fromSource = (source: string, pieces = 10): JarEntry['seedings'][number] => ({
  fromJar: null, portion: null, part: null, source, package: null,
  amount: { value: pieces, unit: 'pieces', typed: `${pieces} capsules` },
}); // prettier-ignore

export const batchOf = (madeOn: string | null, jars: readonly JarEntry[], more: Partial<BatchEntry> = {}): BatchEntry => ({
  madeOn, word: null, note: null, holds: [], jars: [...jars], sameLabelMeant: false, draft: null, ...more,
}); // prettier-ignore

export const plainSource = (name: string, more: Partial<Source> = {}): Input<'source.save'> => ({
  source: {
    id: null, name, form: 'capsules', strains: [], blendTotalPerPiece: 1e8, guaranteed: null, receivedFrom: null,
    knownGenerations: null, note: null, ...more,
  },
}); // prettier-ignore

/** A line of three days: 1 Mar a ← a source, 5 Mar a ← 1 Mar a, 9 Mar a and b ← 5 Mar a. */
export function smallFamily(session: Session): {
  source: string;
  jars: [string, string, string, string];
  batches: string[];
} {
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const one = must(
    session,
    'batch.record',
    batchOf('2026-03-01', [plainJar('a', { seedings: [fromSource(source)] })]),
  );
  const first = one.jars[0] ?? '';
  const two = must(
    session,
    'batch.record',
    batchOf('2026-03-05', [plainJar('a', { seedings: [fromJar(first)] })]),
  );
  const second = two.jars[0] ?? '';
  const three = must(
    session,
    'batch.record',
    batchOf(
      '2026-03-09',
      ['a', 'b'].map((letter) => plainJar(letter, { seedings: [fromJar(second)] })),
    ),
  );
  return {
    source,
    jars: [first, second, three.jars[0] ?? '', three.jars[1] ?? ''],
    batches: [one.batch, two.batch, three.batch],
  };
}

/** Everything recorded, as one text. Numbers of forms are left out: they only ever rise, also when something is undone. */
export function stateOf(session: Session): string {
  const { db } = session.ledger;
  return FACT_KINDS.map((kind) => {
    const rows = db
      .prepare(`SELECT t.*, r.uid FROM ${tableOf(kind)} t JOIN record r ON r.key = t.key ORDER BY t.key`)
      .all();
    return `${kind}\n${rows.map((row) => JSON.stringify(row)).join('\n')}`;
  }).join('\n');
}

/** Every file of a folder with its hash: what must not change when a file is refused. */
export function footprint(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const name of readdirSync(folder).toSorted()) {
    const path = join(folder, name);
    found[name] = statSync(path).isDirectory()
      ? JSON.stringify(footprint(path))
      : createHash('sha256').update(readFileSync(path)).digest('hex');
  }
  return found;
}
