// The command line without a program for each: that costs a start, and only few tests need a process of their own.
import { Readable, Writable } from 'node:stream';
import { runCommand } from '../../main/command-line';

/** What a command came to: its exit code, and what it said on either stream. */
export interface Said {
  readonly status: number;
  readonly said: string;
  readonly stderr: string;
}

/** As much as a pipe brings at a time. */
const PIECE = 65_536;

function* piecesOf(bytes: Buffer): Generator<Buffer> {
  for (let at = 0; at < bytes.length; at += PIECE) yield bytes.subarray(at, at + PIECE);
}

/**
 * Runs a command as the program does.
 * @param input what stands on standard input
 */
export async function commanded(args: readonly string[], input: string | Buffer = ''): Promise<Said> {
  const heard: Buffer[] = [];
  const stdout = new Writable({
    write: (piece: Buffer, _encoding, done) => {
      heard.push(piece);
      done();
    },
  });
  const { write } = process.stderr;
  let stderr = '';
  process.stderr.write = (text: string | Uint8Array): boolean => {
    stderr += String(text);
    return true;
  };
  try {
    const status = await runCommand(args, { stdin: Readable.from(piecesOf(Buffer.from(input))), stdout });
    return { status, said: Buffer.concat(heard).toString(), stderr };
  } finally {
    process.stderr.write = write;
  }
}
