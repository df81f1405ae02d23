// Whether the log beside a ledger holds something recorded behind a part that can't be read. SQLite takes a log up to its first
// broken frame and drops the rest without a word, as it must after a power cut; a bit lost on the disk looks the same to it, and
// what lies behind was acknowledged. (Layout and checksums: SQLite's fileformat2, section 4, "The Write-Ahead Log".)
import { closeSync, existsSync, openSync, readSync } from 'node:fs';

const HEADER = 32;
const FRAME_HEADER = 24;
const MAGIC = 0x377f0682;
/** A log may be read while another program writes it: what seems broken is looked at again. */
const LOOKS = 3;
const BETWEEN_MS = 30;

/** The running checksum of a log. */
class Checksum {
  #first = 0;
  #second = 0;
  readonly #bigEndian: boolean;

  constructor(bigEndian: boolean) {
    this.#bigEndian = bigEndian;
  }

  add(bytes: Buffer, from: number, to: number): this {
    const word = (at: number): number => (this.#bigEndian ? bytes.readInt32BE(at) : bytes.readInt32LE(at));
    for (let at = from; at < to; at += 8) {
      this.#first = (this.#first + word(at) + this.#second) | 0;
      this.#second = (this.#second + word(at + 4) + this.#first) | 0;
    }
    return this;
  }

  copy(): Checksum {
    const copy = new Checksum(this.#bigEndian);
    copy.#first = this.#first;
    copy.#second = this.#second;
    return copy;
  }

  stands(bytes: Buffer, at: number): boolean {
    return bytes.readInt32BE(at) === this.#first && bytes.readInt32BE(at + 4) === this.#second;
  }
}

/** Ends of things recorded (frames that commit) that lie in or behind the first broken part of an open log. */
function lostIn(log: number): number {
  const head = Buffer.alloc(HEADER);
  if (readSync(log, head, 0, HEADER, 0) < HEADER) return 0;
  const sum = new Checksum((head.readUInt32BE(0) & 1) === 1).add(head, 0, 24);
  let whole = (head.readUInt32BE(0) & ~1) === MAGIC && sum.stands(head, 24);
  // Where its heading is broken: the size that every ledger is made with.
  const pageSize = whole ? head.readUInt32BE(8) : 4096;
  const frame = Buffer.alloc(FRAME_HEADER + pageSize);
  let lost = 0;
  for (let at = HEADER; readSync(log, frame, 0, frame.length, at) === frame.length; at += frame.length) {
    // A log is begun again from its start: what is left behind the end is older and has other salts.
    const salts = [8, 12].filter((place) => frame.readUInt32BE(place) === head.readUInt32BE(place + 8));
    if (whole) {
      whole =
        salts.length === 2 && sum.add(frame, 0, 8).add(frame, FRAME_HEADER, frame.length).stands(frame, 16);
      if (whole) continue;
    }
    if (salts.length > 0 && frame.readUInt32BE(4) > 0) lost += 1;
  }
  return lost;
}

/**
 * How many things that were recorded lie in or behind a part of a ledger's log that can't be read: 0 where it is whole, ends as a
 * killed program leaves it, or isn't there.
 */
export function lostInLog(file: string): number {
  const place = `${file}-wal`;
  for (let look = 1; ; look += 1) {
    if (!existsSync(place)) return 0;
    const log = openSync(place, 'r');
    try {
      const lost = lostIn(log);
      if (lost === 0 || look === LOOKS) return lost;
    } finally {
      closeSync(log);
    }
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, BETWEEN_MS);
  }
}

/** Turns each bit of a part over until it stands; else leaves it as it was. */
function mendPart(bytes: Buffer, from: number, to: number, stands: () => boolean): boolean {
  if (stands()) return true;
  for (let bit = from * 8; bit < to * 8; bit += 1) {
    const at = bit >> 3;
    bytes[at] = (bytes[at] ?? 0) ^ (1 << (bit & 7));
    if (stands()) return true;
    bytes[at] = (bytes[at] ?? 0) ^ (1 << (bit & 7));
  }
  return false;
}

/**
 * Puts one lost bit right in each part of a log that can't be read, up to the first where more was lost: sixty-four bits of checksum
 * leave no doubt which one it was.
 * @param log the bytes of the log, changed in place
 */
export function mendLog(log: Buffer): void {
  const summed = (): Checksum => new Checksum((log.readUInt32BE(0) & 1) === 1).add(log, 0, 24);
  const headStands = (): boolean => (log.readUInt32BE(0) & ~1) === MAGIC && summed().stands(log, 24);
  if (log.length < HEADER || !mendPart(log, 0, HEADER, headStands)) return;
  const length = FRAME_HEADER + log.readUInt32BE(8);
  let sum = summed();
  for (let at = HEADER; at + length <= log.length; at += length) {
    const frame = log.subarray(at, at + length);
    const salts = log.subarray(16, 24);
    // Of an older log that this one was begun over.
    if (frame.readUInt32BE(8) !== salts.readUInt32BE(0) && frame.readUInt32BE(12) !== salts.readUInt32BE(4))
      return;
    salts.copy(frame, 8);
    let next = sum;
    const stands = (): boolean => {
      next = sum.copy().add(frame, 0, 8).add(frame, FRAME_HEADER, length);
      return next.stands(frame, 16);
    };
    if (!mendPart(frame, 0, length, stands)) return;
    sum = next;
  }
}
