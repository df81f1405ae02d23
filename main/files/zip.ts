// Zip archives (APPNOTE.TXT 6.3.10, sections 4.3 and 4.5.3), packed and unpacked by zlib, which ends on damaged data, each
// file held against its checksum. Read and written piece by piece: an archive may be larger than the memory. Larger than
// 4 GB, or of more than 65,535 files, it says so in the fields of zip64.
import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib';

const LOCAL = 0x04034b50;
const DIRECTORY = 0x02014b50;
const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;
const MOST_32 = 0xffffffff;
const MOST_16 = 0xffff;
/** Names are UTF-8. */
const UTF8 = 0x0800;
/** 1 January 1980, the first day there is: the same files make the same bytes whenever they are packed. */
const NO_DAY = 0x0021;
/** Bytes of the longest directory that is read: some hundred thousand files. */
const MOST_DIRECTORY = 64 * 1024 * 1024;

/** Bytes that lie somewhere. */
export interface Source {
  readonly length: number;
  /** So many bytes from a place on, or fewer where they end. */
  readonly read: (at: number, length: number) => Uint8Array;
}

export const sourceOf = (bytes: Uint8Array): Source => ({
  length: bytes.length,
  read: (at, length) => bytes.subarray(Math.max(0, at), Math.max(0, at) + length),
});

/** A file of an archive, still packed. */
export interface Packed {
  readonly name: Uint8Array;
  /** Bytes unpacked and packed. */
  readonly size: number;
  readonly packed: number;
  readonly crc: number;
  readonly deflated: boolean;
  /** Where its own header begins. */
  readonly at: number;
}

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** @throws Error where fewer bytes are left */
function exactly(source: Source, at: number, length: number): DataView {
  if (!(at >= 0 && length >= 0 && at + length <= source.length)) throw new Error('it ends too early');
  return viewOf(source.read(at, length));
}

/** Where the directory lies, and how many files it lists. */
function findDirectory(source: Source): { count: number; length: number; at: number } {
  const tail = viewOf(source.read(Math.max(0, source.length - 22 - MOST_16), 22 + MOST_16));
  let end = tail.byteLength - 22;
  while (end >= 0 && tail.getUint32(end, true) !== END) end -= 1;
  if (end < 0) throw new Error('it is no zip archive, or its end is missing');
  const found = {
    count: tail.getUint16(end + 10, true),
    length: tail.getUint32(end + 12, true),
    at: tail.getUint32(end + 16, true),
  };
  if (found.count !== MOST_16 && found.length !== MOST_32 && found.at !== MOST_32) return found;
  if (end < 20 || tail.getUint32(end - 20, true) !== LOCATOR_64) return found;
  const large = exactly(source, Number(tail.getBigUint64(end - 12, true)), 56);
  if (large.getUint32(0, true) !== END_64) throw new Error('its directory is not where it is said to be');
  const number = (at: number): number => Number(large.getBigUint64(at, true));
  return { count: number(32), length: number(40), at: number(48) };
}

/** Where a file begins, of one behind the first 4 GB. */
function farAt(extra: DataView, near: number): number {
  if (near !== MOST_32) return near;
  for (let at = 0; at + 12 <= extra.byteLength; at += 4 + extra.getUint16(at + 2, true))
    if (extra.getUint16(at, true) === 1) return Number(extra.getBigUint64(at + 4, true));
  return near;
}

/** The files of an archive as its directory lists them. @throws Error where that is damaged */
export function filesIn(source: Source): Packed[] {
  const { count, length, at: from } = findDirectory(source);
  if (length > MOST_DIRECTORY || count * 46 > length) throw new Error('its directory is damaged');
  const view = exactly(source, from, length);
  const files: Packed[] = [];
  for (let at = 0; files.length < count;) {
    if (at + 46 > length || view.getUint32(at, true) !== DIRECTORY)
      throw new Error('its directory is damaged');
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    if ((flags & 1) === 1 || (method !== 0 && method !== 8))
      throw new Error('it is locked, or packed in another way');
    const [named, extra, comment] = [
      view.getUint16(at + 28, true),
      view.getUint16(at + 30, true),
      view.getUint16(at + 32, true),
    ];
    const next = at + 46 + named + extra + comment;
    if (next > length) throw new Error('its directory is damaged');
    const bytes = (offset: number, size: number): Uint8Array =>
      new Uint8Array(view.buffer, view.byteOffset + offset, size);
    files.push({
      name: bytes(at + 46, named),
      size: view.getUint32(at + 24, true),
      packed: view.getUint32(at + 20, true),
      crc: view.getUint32(at + 16, true),
      deflated: method === 8,
      at: farAt(viewOf(bytes(at + 46 + named, extra)), view.getUint32(at + 42, true)),
    });
    at = next;
  }
  return files;
}

/**
 * One file, unpacked.
 * @param most bytes that it may come to
 * @throws Error where it is damaged; RangeError 'too large'
 */
export function unpackFile(
  source: Source,
  { size, packed, crc, deflated, at }: Packed,
  most: number,
): Uint8Array {
  if (size > most) throw new RangeError('too large');
  const head = exactly(source, at, 30);
  if (head.getUint32(0, true) !== LOCAL) throw new Error('a file is not where it is said to be');
  const from = at + 30 + head.getUint16(26, true) + head.getUint16(28, true);
  const { buffer, byteOffset, byteLength } = exactly(source, from, packed);
  const raw = new Uint8Array(buffer, byteOffset, byteLength);
  const data = deflated ? inflateRawSync(raw, { maxOutputLength: Math.max(1, size) }) : raw;
  if (data.length !== size || crc32(data) !== crc) throw new Error('a file of it is damaged');
  return data;
}

interface Written {
  readonly name: Uint8Array;
  readonly size: number;
  readonly packed: number;
  readonly crc: number;
  readonly method: 0 | 8;
  readonly at: number;
}

/** The fields that a file's own header and its line in the directory share. */
function fillFields(view: DataView, at: number, { name, size, packed, crc, method }: Written): void {
  view.setUint16(at, UTF8, true);
  view.setUint16(at + 2, method, true);
  view.setUint16(at + 6, NO_DAY, true);
  view.setUint32(at + 8, crc, true);
  view.setUint32(at + 12, packed, true);
  view.setUint32(at + 16, size, true);
  view.setUint16(at + 20, name.length, true);
}

/** Writes an archive, file by file. The same files in the same order make the same bytes. */
export class ZipWriter {
  readonly #write: (bytes: Uint8Array) => void;
  readonly #files: Written[] = [];
  #at = 0;

  /** @param write takes the next bytes of the archive */
  constructor(write: (bytes: Uint8Array) => void) {
    this.#write = (bytes) => {
      write(bytes);
      this.#at += bytes.length;
    };
  }

  /** @param how what is packed already (a photograph) is only stored */
  add(name: Uint8Array, data: Uint8Array, how: 'packed' | 'stored'): void {
    const body = how === 'packed' ? deflateRawSync(data) : data;
    const file: Written = {
      name,
      size: data.length,
      packed: body.length,
      crc: crc32(data),
      method: how === 'packed' ? 8 : 0,
      at: this.#at,
    };
    const head = new Uint8Array(30 + name.length);
    const view = viewOf(head);
    view.setUint32(0, LOCAL, true);
    view.setUint16(4, 20, true);
    fillFields(view, 6, file);
    head.set(name, 30);
    this.#write(head);
    this.#write(body);
    this.#files.push(file);
  }

  /** Writes the directory: then the archive is whole. */
  end(): void {
    const from = this.#at;
    for (const file of this.#files) this.#write(lineOf(file));
    const length = this.#at - from;
    const count = this.#files.length;
    const far = from >= MOST_32 || count >= MOST_16 || length >= MOST_32;
    if (far) this.#write(largeEnd(count, length, from, this.#at));
    const end = viewOf(new Uint8Array(22));
    end.setUint32(0, END, true);
    end.setUint16(8, Math.min(count, MOST_16), true);
    end.setUint16(10, Math.min(count, MOST_16), true);
    end.setUint32(12, Math.min(length, MOST_32), true);
    end.setUint32(16, Math.min(from, MOST_32), true);
    this.#write(new Uint8Array(end.buffer));
  }
}

/** A file's line in the directory. */
function lineOf(file: Written): Uint8Array {
  const far = file.at >= MOST_32;
  const line = new Uint8Array(46 + file.name.length + (far ? 12 : 0));
  const view = viewOf(line);
  view.setUint32(0, DIRECTORY, true);
  view.setUint16(4, 20, true);
  view.setUint16(6, far ? 45 : 20, true);
  fillFields(view, 8, file);
  view.setUint16(30, far ? 12 : 0, true);
  view.setUint32(42, Math.min(file.at, MOST_32), true);
  line.set(file.name, 46);
  if (far) {
    view.setUint16(46 + file.name.length, 1, true);
    view.setUint16(48 + file.name.length, 8, true);
    view.setBigUint64(50 + file.name.length, BigInt(file.at), true);
  }
  return line;
}

/** What zip64 writes before the end: the same figures with room for them, and where they lie. */
function largeEnd(count: number, length: number, from: number, at: number): Uint8Array {
  const view = viewOf(new Uint8Array(76));
  view.setUint32(0, END_64, true);
  view.setBigUint64(4, 44n, true);
  view.setUint16(12, 45, true);
  view.setUint16(14, 45, true);
  view.setBigUint64(24, BigInt(count), true);
  view.setBigUint64(32, BigInt(count), true);
  view.setBigUint64(40, BigInt(length), true);
  view.setBigUint64(48, BigInt(from), true);
  view.setUint32(56, LOCATOR_64, true);
  view.setBigUint64(64, BigInt(at), true);
  view.setUint32(72, 1, true);
  return new Uint8Array(view.buffer);
}

/** A whole archive in memory. */
export function zipOf(
  files: Iterable<readonly [name: Uint8Array, data: Uint8Array]>,
  how: 'packed' | 'stored',
): Uint8Array {
  const parts: Uint8Array[] = [];
  const zip = new ZipWriter((bytes) => parts.push(bytes));
  for (const [name, data] of files) zip.add(name, data, how);
  zip.end();
  return Buffer.concat(parts);
}
