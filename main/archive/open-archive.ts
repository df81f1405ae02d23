// An archive as it lies: which files it holds, what they come to, and their lines. What it says of itself is bounded and held
// against what is there before anything of it is unpacked.
import { createHash } from 'node:crypto';
import {
  ARCHIVE_VERSION,
  ArchiveHead,
  Contents,
  CONTENTS_FILE,
  fileNamed,
  isShallow,
} from '../../core/archive/archive-format';
import { Refused } from '../refusal';
import { filesIn, type Packed, type Source, unpackFile } from '../files/zip';

/** No file of lines is longer (bytes), and no photograph. */
const MOST_OF_A_FILE = 64 * 1024 * 1024;
/** All files of lines together: a small archive can unpack to anything. */
const MOST_LINES = 4 * 1024 * 1024 * 1024;
/** Nobody's records come down to less than this share of themselves; beside it a floor for small archives (bytes). */
const MOST_TIMES = 200;
const SMALL = 64 * 1024 * 1024;

/** What is wrong with an archive, for its sentence. */
export class Unreadable extends Error {}

export interface OpenArchive {
  /** Names of the files of lines of one kind, in order. */
  readonly partsOf: (of: string) => readonly string[];
  readonly photographs: readonly string[];
  /** @throws Unreadable where it is damaged */
  readonly bytes: (name: string) => Uint8Array;
}

function unpack(source: Source, file: Packed, name: string): Uint8Array {
  try {
    return unpackFile(source, file, MOST_OF_A_FILE);
  } catch (error) {
    throw new Unreadable(
      `${name} in it: ${error instanceof RangeError ? 'it is too large' : 'it is damaged'}`,
    );
  }
}

/** @throws Unreadable for text that is no JSON, or deeper than any that is written */
export function parseShallow(text: string, where: string): unknown {
  if (!isShallow(text)) throw new Unreadable(`${where}: it is nested too deep`);
  try {
    return JSON.parse(text);
  } catch {
    throw new Unreadable(`${where}: that is not JSON`);
  }
}

function textOf(bytes: Uint8Array, where: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Unreadable(`${where}: that is not text in UTF-8`);
  }
}

/** @throws Unreadable, Refused 'archive newer' */
function contentsOf(source: Source, packed: Packed | undefined, file: string): Contents {
  if (!packed) throw new Unreadable(`there is no ${CONTENTS_FILE} in it`);
  const json = parseShallow(textOf(unpack(source, packed, CONTENTS_FILE), CONTENTS_FILE), CONTENTS_FILE);
  const head = ArchiveHead.safeParse(json);
  if (!head.success) throw new Unreadable(`${CONTENTS_FILE} is not one of a Jarline archive`);
  if (head.data.version > ARCHIVE_VERSION) throw new Refused('archive newer', { file });
  const contents = Contents.safeParse(json);
  if (!contents.success) throw new Unreadable(`${CONTENTS_FILE} is not as it should be`);
  return contents.data;
}

/** Looks through an archive before anything of it is unpacked. @throws Unreadable, Refused 'archive newer' */
export function openArchive(source: Source, file: string): OpenArchive {
  let listed: Packed[];
  try {
    listed = filesIn(source);
  } catch (error) {
    throw new Unreadable(error instanceof Error ? error.message : '');
  }
  const packed = new Map(listed.map((one) => [new TextDecoder().decode(one.name), one]));
  if (packed.size !== listed.length) throw new Unreadable('a name stands in it twice');
  const contents = contentsOf(source, packed.get(CONTENTS_FILE), file);
  if (contents.files.length !== packed.size - 1) throw new Unreadable('it holds other files than it says');
  const told = new Map(contents.files.map((one) => [one.name, one]));
  let lines = 0;
  for (const { name, bytes } of contents.files) {
    const what = fileNamed(name);
    if (!what || packed.get(name)?.size !== bytes) throw new Unreadable('it holds other files than it says');
    if (what.of !== 'photograph') lines += bytes;
  }
  if (lines > Math.min(MOST_LINES, SMALL + MOST_TIMES * source.length))
    throw new Unreadable('it is too large');
  const names = (of: string): string[] =>
    contents.files.map(({ name }) => name).filter((name) => fileNamed(name)?.of === of);
  return {
    partsOf: (of) => names(of).toSorted((a, b) => (fileNamed(a)?.part ?? 0) - (fileNamed(b)?.part ?? 0)),
    photographs: names('photograph'),
    bytes: (name) => {
      const bytes = unpack(source, packed.get(name) as Packed, name);
      if (createHash('sha256').update(bytes).digest('hex') !== told.get(name)?.sha256)
        throw new Unreadable(`${name} in it: it is damaged`);
      return bytes;
    },
  };
}

/** Lines of an archive with where each stands, kind by kind. */
export function* linesIn(archive: OpenArchive, of: string): Generator<{ where: string; json: unknown }> {
  for (const name of archive.partsOf(of)) {
    const text = textOf(archive.bytes(name), name);
    let number = 0;
    for (let from = 0; from < text.length;) {
      const to = text.indexOf('\n', from);
      const end = to < 0 ? text.length : to;
      number += 1;
      const where = `line ${number} of ${name}`;
      yield { where, json: parseShallow(text.slice(from, end), where) };
      from = end + 1;
    }
  }
}
