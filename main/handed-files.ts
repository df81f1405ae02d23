// Files that the system hands to the program: opened by a double click, dropped on its icon, named on the command line.
import { closeSync, openSync, readSync, statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { MOST_HAND_OVER } from '../core/hand-over/hand-over-format';

/** A ledger is opened by its path; a jar's file is read here and shown to the keeper before anything of it enters. */
export interface HandedFile {
  readonly kind: 'ledger' | 'hand-over';
  readonly path: string;
}

/** At most so many bytes of a file, and one more, so that whoever bounds it sees that it is too long. */
function beginningOf(path: string, most: number): Uint8Array<ArrayBuffer> {
  const opened = openSync(path, 'r');
  try {
    const bytes = new Uint8Array(Math.min(statSync(path).size, most) + 1);
    return bytes.slice(0, readSync(opened, bytes, 0, bytes.length, 0));
  } finally {
    closeSync(opened);
  }
}

/**
 * The last file among words of a command line: a jar's file is text that begins with a brace; what is neither is taken for a
 * ledger, whose opening says what is wrong with it. Null where none of them is a file.
 * @param words what is no option; those up to the program's own folder are not the keeper's
 * @param folder that relative ones are meant from
 */
export function handedFile(words: readonly string[], folder: string, program: string): HandedFile | null {
  const paths = words.map((word) => resolve(folder, word));
  const path = paths
    .slice(paths.lastIndexOf(program) + 1)
    .findLast((one) => statSync(one, { throwIfNoEntry: false })?.isFile() === true);
  if (path === undefined) return null;
  const isText = /^\uFEFF?\s*\{/.test(new TextDecoder().decode(beginningOf(path, 100)));
  return { kind: isText ? 'hand-over' : 'ledger', path };
}

/** A jar's file as the page is given it. */
export const handedBytes = (path: string): { name: string; bytes: Uint8Array<ArrayBuffer> } => ({
  name: basename(path),
  bytes: beginningOf(path, MOST_HAND_OVER),
});

/** What was handed over last: kept until the page can be told of it. */
export class Handed {
  #last: HandedFile | null = null;
  #up = false;
  readonly #tell: (file: HandedFile) => void;

  /** @param tell what is done with a file once the page is up; of a ledger the path is then asked for */
  constructor(tell: (file: HandedFile) => void) {
    this.#tell = tell;
  }

  take(file: HandedFile): void {
    this.#last = file;
    if (this.#up) this.#pass();
  }

  pageIsUp(): void {
    this.#up = true;
    this.#pass();
  }

  /** The path of a ledger that is to be opened now; told once. */
  ledger(): string | null {
    const file = this.#last;
    if (file?.kind !== 'ledger') return null;
    this.#last = null;
    return file.path;
  }

  #pass(): void {
    const file = this.#last;
    if (file === null) return;
    if (file.kind === 'hand-over') this.#last = null;
    this.#tell(file);
  }
}
