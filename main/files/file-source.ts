// A file read at any place, so that a large one never lies in memory whole.
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import type { Source } from './zip';

/** @throws what the system says where it can't be opened; the caller closes it */
export function fileSource(file: string): Source & { readonly close: () => void } {
  const handle = openSync(file, 'r');
  const read = (at: number, length: number): Uint8Array => {
    const bytes = new Uint8Array(Math.max(0, Math.min(length, size - at)));
    let done = 0;
    while (done < bytes.length) {
      const got = readSync(handle, bytes, done, bytes.length - done, at + done);
      if (got === 0) break;
      done += got;
    }
    return bytes.subarray(0, done);
  };
  const { size } = fstatSync(handle);
  return { length: size, read, close: () => closeSync(handle) };
}
