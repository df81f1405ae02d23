// Sources, packages, portions kept apart, preferences, drafts and photographs.
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Parsed, Reply } from '../../../core/contract';
import type { Ledger } from '../ledger';
import { readJpeg } from '../jpeg';
import { photographFolder } from '../protocol';
import { Refused } from '../refusal';
import { standingJar } from './parts';
import { inOrder, mustSay, tidy, whenOf } from './tidy';

export function saveSource(ledger: Ledger, input: Parsed<'source.save'>): Reply<'source.save'> {
  const { id, ...fields } = tidy(input.source);
  mustSay(fields, 'name');
  const key = ledger.rows.keyOrNull('source', id);
  const done = ledger.acts.mustRun('source.save', fields.name, tidy(input.why), (act) => {
    if (key === null) return act.insert('source', fields).uid;
    act.update('source', key, fields);
    return ledger.rows.uidOf('source', key);
  });
  return { act: done.act.uid, id: done.value };
}

export function savePackage(ledger: Ledger, input: Parsed<'package.save'>): Reply<'package.save'> {
  const { id, source, ...given } = tidy(input.package);
  mustSay(given, 'name');
  inOrder('Bought and opened', whenOf(given.boughtOn), whenOf(given.openedOn));
  if (source !== null && given.of !== 'source')
    throw new Refused('package of something else', { name: given.name });
  const fields = { ...given, source: ledger.rows.keyOrNull('source', source) };
  const key = ledger.rows.keyOrNull('package', id);
  const done = ledger.acts.mustRun('package.save', fields.name, tidy(input.why), (act) => {
    if (key === null) return act.insert('package', fields).uid;
    act.update('package', key, fields);
    return ledger.rows.uidOf('package', key);
  });
  return { act: done.act.uid, id: done.value };
}

export function savePortion(ledger: Ledger, input: Parsed<'portion.save'>): Reply<'portion.save'> {
  const { id, jar: jarUid, ...given } = tidy(input.portion);
  const jar = standingJar(ledger, jarUid);
  const key = ledger.rows.keyOrNull('portion', id);
  if (key !== null && ledger.rows.get('portion', key).jar !== jar.key) {
    throw new Refused('portion of another jar', { jar: jar.label });
  }
  inOrder('Kept and gone', whenOf(given.keptOn), whenOf(given.goneOn));
  const fields = { ...given, jar: jar.key };
  const done = ledger.acts.mustRun('portion.save', `some of ${jar.label}`, tidy(input.why), (act) => {
    if (key === null) return act.insert('portion', fields).uid;
    act.update('portion', key, fields);
    return ledger.rows.uidOf('portion', key);
  });
  return { act: done.act.uid, id: done.value };
}

export function savePreferences(
  ledger: Ledger,
  preferences: Parsed<'preferences.save'>,
): Reply<'preferences.save'> {
  const [old] = ledger.rows.all('preferences');
  const done = ledger.acts.mustRun('preferences.save', 'preferences', null, (act) => {
    if (old) act.update('preferences', old.key, preferences);
    else act.insert('preferences', preferences);
  });
  return { act: done.act.uid };
}

/** Drafts are no records: they leave no trace in the journal. */
export function saveDraft(ledger: Ledger, { key, json }: Parsed<'draft.save'>): Reply<'draft.save'> {
  try {
    JSON.parse(json);
  } catch {
    throw new Refused('invalid', { path: 'json', problem: 'is not JSON' });
  }
  const savedAt = ledger.clock.now();
  ledger.rows
    .prepare(
      `INSERT INTO draft (key, json, saved_at) VALUES (?, ?, ?)
       ON CONFLICT (key) DO UPDATE SET json = excluded.json, saved_at = excluded.saved_at`,
    )
    .run(key, json, savedAt);
  return { savedAt };
}

export function dropDraft(ledger: Ledger, { key }: Parsed<'draft.drop'>): Reply<'draft.drop'> {
  ledger.rows.prepare('DELETE FROM draft WHERE key = ?').run(key);
  return {};
}

/** Largest photograph that is kept (bytes). */
const MOST_BYTES = 20 * 1024 * 1024;

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * Keeps a photograph beside the ledger under its hash. The window re-encodes it first, so that the place it was taken
 * is gone; here that is checked, not trusted.
 * @throws Refused 'photograph too large', 'not a photograph', 'no re-encoder' where anything but the picture is left in it
 */
export function addPhotograph(ledger: Ledger, input: Parsed<'photograph.add'>): Reply<'photograph.add'> {
  const jar = standingJar(ledger, input.jar);
  if (input.bytes.length > MOST_BYTES) throw new Refused('photograph too large');
  const picture = readJpeg(input.bytes);
  if (!picture) throw new Refused('not a photograph');
  if (picture.carriesMore) throw new Refused('no re-encoder');
  const sha256 = hashOf(input.bytes);
  keepFile(photographFolder(ledger.file), `${sha256}.jpg`, input.bytes);
  const fields = { sha256, width: picture.width, height: picture.height, caption: tidy(input.caption) };
  const done = ledger.acts.mustRun('photograph.add', jar.label, null, (act) =>
    act.insert('photograph', { jar: jar.key, ...fields }),
  );
  return { act: done.act.uid, photograph: { id: done.value.uid, jar: jar.uid, ...fields } };
}

/** Writes a file once, whole or not at all; what stands under the name of these bytes is never written again. */
function keepFile(folder: string, name: string, bytes: Uint8Array): void {
  const file = join(folder, name);
  if (existsSync(file) && hashOf(readFileSync(file)) === hashOf(bytes)) return;
  mkdirSync(folder, { recursive: true });
  const part = `${file}.part`;
  rmSync(part, { force: true });
  writeFileSync(part, bytes, { mode: 0o444 });
  const handle = openSync(part, 'r');
  fsyncSync(handle);
  closeSync(handle);
  renameSync(part, file);
}
