// Kills the program at one moment after another while it is at something, and looks at what it leaves.
import { spawn } from 'node:child_process';
import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { newFolder } from '../ledger/ledger-files';
import { copyOf, type Way } from './ways';

/** The moments lie all over the time that it takes: bits of the number, the other way round (van der Corput, base 2). */
function spread(number: number): number {
  let [value, part] = [0, 0.5];
  for (let rest = number; rest > 0; rest >>= 1, part /= 2) if (rest & 1) value += part;
  return value;
}

/** Names and lengths of all files below a folder, as one text. */
const filesIn = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .toSorted()
    .map((name) => `${name} ${statSync(join(folder, name), { throwIfNoEntry: false })?.size ?? '-'}`)
    .join('\n');

interface Ran {
  readonly said: readonly string[];
  /** From the first sign of it in the files to its end; null where there was none. */
  readonly ms: number | null;
  readonly killed: boolean;
}

/**
 * Runs the program, killed so many milliseconds after something in the folder has changed: what it takes until then is the
 * starting of a process, which is long, and longer on a busy machine. null: to its end.
 */
function run(program: string, way: Way, folder: string, killAfterMs: number | null): Promise<Ran> {
  const { args, input } = way.asked(folder);
  const before = filesIn(folder);
  return new Promise((done, failed) => {
    let began: number | null = null;
    let timer: NodeJS.Timeout | undefined;
    const child = spawn(process.execPath, [program, ...args], { stdio: ['pipe', 'pipe', 'ignore'] });
    const look = setInterval(() => {
      if (filesIn(folder) === before) return;
      clearInterval(look);
      began = performance.now();
      if (killAfterMs !== null) timer = setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    }, 1);
    let said = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => (said += text));
    // What is written to a program that was killed is of no matter.
    child.stdin.on('error', () => undefined);
    child.stdin.end(input ?? '');
    child.on('error', failed);
    child.on('close', (_code, signal) => {
      clearInterval(look);
      clearTimeout(timer);
      const whole = said
        .slice(0, said.lastIndexOf('\n') + 1)
        .split('\n')
        .slice(0, -1);
      done({ said: whole, ms: began && performance.now() - began, killed: signal === 'SIGKILL' });
    });
  });
}

export interface Killed {
  readonly kills: number;
  /** How many fell after its first trace in the files and before its last answer. */
  readonly amid: number;
}

/**
 * @param program the headless host, built
 * @throws Error saying which kill left what
 */
export async function killWhile(program: string, name: string, way: Way, kills: number): Promise<Killed> {
  const ready = newFolder();
  way.prepare(ready);
  const look = (folder: string, { said }: Ran, what: string): void => {
    const wrong = way.wrong(folder, said);
    if (wrong.length > 0) throw new Error(`${name}, ${what}: ${wrong.join('; ')} (left in ${folder})`);
    rmSync(folder, { recursive: true, force: true });
  };
  const whole = copyOf(ready);
  const unharmed = await run(program, way, whole, null);
  if (!unharmed.said.some((line) => line.startsWith('{"ok":true')))
    throw new Error(`${name} is refused: ${unharmed.said.join('')}`);
  look(whole, unharmed, 'not killed');
  let [killed, amid] = [0, 0];
  let takes = unharmed.ms ?? 0;
  for (let number = 1; number <= kills; number++) {
    const folder = copyOf(ready);
    const at = takes * spread(number);
    const ran = await run(program, way, folder, at);
    if (ran.killed) killed++;
    if (ran.killed && ran.said.length < unharmed.said.length) amid++;
    // Over before it was to be killed: it takes less than was thought.
    else if (ran.ms !== null) takes = Math.min(takes, ran.ms);
    look(folder, ran, `kill ${number}, ${Math.round(at)} ms after its first trace`);
  }
  return { kills: killed, amid };
}
