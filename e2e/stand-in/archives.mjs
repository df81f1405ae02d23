// The two archive formats the stand-in runtime needs: reading a plain zip, writing a small asar. No dependencies,
// because this runs where electron's own tools could not be had.
import {
  chmodSync,
  closeSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { inflateRawSync } from 'node:zlib';

/** Unpacks the entries for which `place` gives a path below `out`. Neither zip64 nor links: refused by their size. */
export function unzip(file, out, place) {
  const handle = openSync(file, 'r');
  const read = (length, position) => {
    const bytes = Buffer.alloc(length);
    if (readSync(handle, bytes, 0, length, position) !== length) throw new Error(`${file} ends too early`);
    return bytes;
  };
  try {
    const size = statSync(file).size;
    const tailLength = Math.min(size, 65557); // the end record and the longest comment
    const tail = read(tailLength, size - tailLength);
    const end = tail.lastIndexOf('PK\x05\x06', undefined, 'latin1');
    if (end < 0) throw new Error(`${file} is no zip archive`);
    const index = read(tail.readUInt32LE(end + 12), tail.readUInt32LE(end + 16));
    for (let at = 0; at < index.length;) {
      const nameLength = index.readUInt16LE(at + 28);
      const name = index.toString('utf8', at + 46, at + 46 + nameLength);
      const path = name.endsWith('/') ? undefined : place(name);
      if (path !== undefined) {
        const target = resolve(out, path);
        if (!target.startsWith(out + sep)) throw new Error(`${name} would land outside ${out}`);
        const header = read(30, index.readUInt32LE(at + 42));
        const start = index.readUInt32LE(at + 42) + 30 + header.readUInt16LE(26) + header.readUInt16LE(28);
        const packed = read(index.readUInt32LE(at + 20), start);
        mkdirSync(dirname(target), { recursive: true });
        writeFileSync(target, index.readUInt16LE(at + 10) === 0 ? packed : inflateRawSync(packed));
        chmodSync(target, (index.readUInt32LE(at + 38) >>> 16) & 0o777);
      }
      at += 46 + nameLength + index.readUInt16LE(at + 30) + index.readUInt16LE(at + 32);
    }
  } finally {
    closeSync(handle);
  }
}

/** A flat folder as one asar archive: four sizes, a JSON index padded to 4 bytes, then the files. */
export function asarOf(folder) {
  const files = {};
  const contents = [];
  let offset = 0;
  for (const name of readdirSync(folder)) {
    const bytes = readFileSync(join(folder, name));
    files[name] = { size: bytes.length, offset: String(offset) };
    offset += bytes.length;
    contents.push(bytes);
  }
  const index = Buffer.from(JSON.stringify({ files }));
  const padding = Buffer.alloc((4 - (index.length % 4)) % 4);
  const sizes = Buffer.alloc(16);
  const padded = index.length + padding.length;
  [4, padded + 8, padded + 4, index.length].forEach((value, i) => sizes.writeUInt32LE(value, i * 4));
  return Buffer.concat([sizes, index, padding, ...contents]);
}
