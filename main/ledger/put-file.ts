// Writing a whole file where none lies.
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { ownName, putNew } from './place';
import { Refused, refusedFor } from '../refusal';

/** Puts a whole file where none lies. @throws Refused 'file exists', 'no folder there' */
export function putFile(file: string, bytes: Uint8Array): void {
  const part = ownName(file);
  try {
    if (existsSync(file)) throw new Refused('file exists', { file });
    writeFileSync(part, bytes, { flag: 'wx' });
    if (!putNew(part, file)) throw new Refused('file exists', { file });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') throw new Refused('no folder there', { file });
    throw refusedFor(error, file);
  } finally {
    rmSync(part, { force: true });
  }
}
