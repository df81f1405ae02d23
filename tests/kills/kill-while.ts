// Kills the program at one moment after another while it is at something, and looks at what it leaves.
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { newFolder } from '../ledger/ledger-files';
import { copyOf, type Way } from './ways';

/** The moments lie all over the time that it takes: bits of the number, the other way round (van der Corput, base 2). */
function spread(number: number): number {
  let [value, part] = [0, 0.5];
  for (let rest = number; rest > 0; rest >>= 1, part /= 2) if (rest & 1) value += part;
  return value;
}

interface Ran {
  readonly said: readonly string[];
  readonly ms: number;
  readonly killed: boolean;
}

/** Runs the program, killed after so many milliseconds; null: to its end. */
function run(
  program: string,
  { args, input }: ReturnType<Way['asked']>,
  killAfterMs: number | null,
): Promise<Ran> {
  return new Promise((done, failed) => {
    const began = performance.now();
    const child = spawn(process.execPath, [program, ...args], { stdio: ['pipe', 'pipe', 'ignore'] });
    const timer = killAfterMs === null ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    let said = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => (said += text));
    // What is written to a program that was killed is of no matter.
    child.stdin.on('error', () => undefined);
    child.stdin.end(input ?? '');
    child.on('error', failed);
    child.on('close', (_code, signal) => {
      clearTimeout(timer);
      const whole = said
        .slice(0, said.lastIndexOf('\n') + 1)
        .split('\n')
        .slice(0, -1);
      done({ said: whole, ms: performance.now() - began, killed: signal === 'SIGKILL' });
    });
  });
}

export interface Killed {
  readonly kills: number;
  /** How many fell after it had acknowledged what it was asked, or some of it. */
  readonly after: number;
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
  const unharmed = await run(program, way.asked(whole), null);
  if (!unharmed.said.some((line) => line.startsWith('{"ok":true')))
    throw new Error(`${name} is refused: ${unharmed.said.join('')}`);
  look(whole, unharmed, 'not killed');
  let [killed, after] = [0, 0];
  for (let number = 1; number <= kills; number++) {
    const folder = copyOf(ready);
    // A program takes a while before it does anything at all.
    const at = unharmed.ms * (0.35 + 0.65 * spread(number));
    const ran = await run(program, way.asked(folder), at);
    if (ran.killed) killed++;
    if (ran.killed && ran.said.length > 0) after++;
    look(folder, ran, `kill ${number}, ${Math.round(at)} ms after its start`);
  }
  return { kills: killed, after };
}
