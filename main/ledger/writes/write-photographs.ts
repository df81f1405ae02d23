// Photographs: kept beside the ledger under their hash, never changed there; their captions; taking one away.
import { createHash } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Parsed, Reply } from '../../../core/contract';
import { addPhotograph as keepPhotograph, captionPhotograph } from '../entries/larder-entries';
import { removeWith } from '../entries/put-fact';
import { readJpeg } from '../jpeg';
import type { Ledger } from '../ledger';
import { ownName, putOver } from '../place';
import { photographFolder } from '../worker-protocol';
import { Refused } from '../../refusal';
import { standingJar } from './write-parts';
import { tidy } from '../tidy-typed';

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
    keepPhotograph(act, { jar: jar.key, ...fields }),
  );
  return {
    act: done.act.uid,
    photograph: { id: ledger.rows.uidOf('photograph', done.value), jar: jar.uid, ...fields },
  };
}

/** Writes a file once, whole or not at all; what stands under the name of these bytes is never written again. */
export function keepFile(folder: string, name: string, bytes: Uint8Array): void {
  const file = join(folder, name);
  if (existsSync(file) && hashOf(readFileSync(file)) === hashOf(bytes)) return;
  mkdirSync(folder, { recursive: true });
  const part = ownName(file);
  try {
    writeFileSync(part, bytes);
    putOver(part, file);
    chmodSync(file, 0o444);
  } finally {
    rmSync(part, { force: true });
  }
}

const labelOf = (ledger: Ledger, photograph: number): string =>
  ledger.index.jar(ledger.rows.get('photograph', photograph).jar).label;

/** @throws Refused 'not found', 'nothing changed' */
export function correctPhotograph(
  ledger: Ledger,
  input: Parsed<'photograph.correct'>,
): Reply<'photograph.correct'> {
  const key = ledger.rows.keyOf('photograph', input.id);
  const done = ledger.acts.mustRun(
    'photograph.correct',
    labelOf(ledger, key),
    null,
    (act) => captionPhotograph(act, key, tidy(input.caption)),
    input.draft,
  );
  return { act: done.act.uid };
}

/** Takes the record away. The file stays, for undo and for others of the same picture. @throws Refused 'not found' */
export function removePhotograph(
  ledger: Ledger,
  input: Parsed<'photograph.remove'>,
): Reply<'photograph.remove'> {
  const key = ledger.rows.keyOf('photograph', input.id);
  const done = ledger.acts.mustRun('photograph.remove', labelOf(ledger, key), tidy(input.why), (act) => {
    removeWith(act, 'photograph', key, [['remark', 'photograph']]);
  });
  return { act: done.act.uid };
}
