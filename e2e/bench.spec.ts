// npm run bench:window: how long the real window takes until the family can be used, how evenly it draws while it is panned and
// zoomed, and the memory of each process, beside the same window with nothing to do and an empty ledger. Not a test: it prints.
import { existsSync, readFileSync, rmSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { shownMs, table } from '../tests/bench/timing';
import { syntheticLedger } from './synthetic-ledger';
import { Program, test } from './window';

const SIZES = (process.env['JARLINE_BENCH_JARS'] ?? '1000,10000,100000').split(',').map(Number);
/** Lines of at most a hundred generations, as in a kitchen. */
const SHAPE = { shape: 'lines', daysApart: 0.3 } as const;
const SETTINGS = {
  now: '2026-05-20T09:00:00+02:00',
  size: { width: 1280, height: 800 },
  systemLocale: 'en_GB.UTF-8',
};
const FRAMES = 240;

type Hand = 'nothing' | 'pan' | 'zoom';

/** Milliseconds from frame to frame while a hand is at the drawing. */
const framesOf = (page: Page, hand: Hand): Promise<number[]> =>
  page.evaluate(
    async ({ hand: doing, frames }) => {
      const stage = document.querySelector('.family-stage');
      // Asked once: asking for it has the page laid out there and then.
      const box = stage?.getBoundingClientRect() ?? new DOMRect();
      const at = { clientX: box.left + box.width / 2, clientY: box.top + box.height / 2 };
      const between: number[] = [];
      let last = await new Promise<number>(requestAnimationFrame);
      for (let frame = 0; frame < frames; frame++) {
        if (stage && doing !== 'nothing') {
          // There and back again.
          const to = Math.floor(frame / 30) % 2 === 0 ? 1 : -1;
          const wheel = { deltaX: doing === 'pan' ? 24 * to : 0, deltaY: 24 * to, ctrlKey: doing === 'zoom' };
          stage.dispatchEvent(new WheelEvent('wheel', { ...wheel, ...at, bubbles: true, cancelable: true }));
        }
        const now = await new Promise<number>(requestAnimationFrame);
        between.push(now - last);
        last = now;
      }
      return between;
    },
    { hand, frames: FRAMES },
  );

const times = (one: number, other: number): string => `${(one / other).toFixed(2)} ×`;
const at = (values: readonly number[], part: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * part))] ??
  Number.NaN;

/** Processes of the program that draw: the page's own, and the one that puts its picture on the screen. */
const DRAWING = ['Tab', 'GPU'];
/** Milliseconds in a tick of the system's clock of processes (Linux). */
const TICK = 10;

/** Processor time (ms) that the drawing processes have used; NaN where the system does not tell. */
async function drawingTime({ app }: Program): Promise<number> {
  const pids = await app.evaluate(
    (electron, kinds) =>
      electron.app.getAppMetrics().flatMap(({ type, pid }) => (kinds.includes(type) ? [pid] : [])),
    DRAWING,
  );
  return pids.reduce((sum, pid) => {
    const stat = `/proc/${pid}/stat`;
    if (!existsSync(stat)) return Number.NaN;
    // After the name in brackets: user time is the twelfth, system time the thirteenth.
    const fields = readFileSync(stat, 'utf8').split(') ')[1]?.split(' ') ?? [];
    return sum + (Number(fields[11]) + Number(fields[12])) * TICK;
  }, 0);
}

/** Megabytes that each process of the program holds, by its kind. */
async function memoryOf({ app }: Program): Promise<string> {
  const metrics = await app.evaluate((electron) =>
    electron.app.getAppMetrics().map(({ type, memory }) => ({ type, kilobytes: memory.workingSetSize })),
  );
  return metrics.map(({ type, kilobytes }) => `${type} ${Math.round(kilobytes / 1024)}`).join(', ');
}

interface Frames {
  readonly between: readonly number[];
  /** Processor time a frame of the processes that draw (ms): what another program on the machine does not change. */
  readonly work: number;
}

interface Measured {
  readonly usable: number;
  readonly frames: Record<Hand, Frames>;
  readonly memory: string;
}

async function measured(seed: string, drawn: (page: Page) => Promise<unknown>): Promise<Measured> {
  const program = new Program({ ...SETTINGS, seed }, null);
  const began = performance.now();
  await program.begin();
  const { page } = program;
  await drawn(page);
  const usable = performance.now() - began;
  await page.waitForTimeout(3000);
  const timed = async (hand: Hand): Promise<Frames> => {
    const before = await drawingTime(program);
    const between = await framesOf(page, hand);
    return { between, work: ((await drawingTime(program)) - before) / FRAMES };
  };
  const frames = { nothing: await timed('nothing'), pan: await timed('pan'), zoom: await timed('zoom') };
  const memory = await memoryOf(program);
  await program.end();
  return { usable, frames, memory };
}

const HEAD = [
  'jars',
  'usable (ms)',
  'idle p95',
  'pan p95',
  'pan worst',
  'pan work',
  'zoom p95',
  'zoom worst',
  'zoom work',
];

test('how quick the window is', async () => {
  test.setTimeout(1_800_000);
  const rows = [[...HEAD, 'memory (MB)']];
  const empty = await measured('empty', (page) => page.locator('main.screen:not([aria-busy])').waitFor());
  const idleOf = ({ frames }: Measured): number => at(frames.nothing.between, 0.95);
  rows.push([
    'none',
    shownMs(empty.usable),
    shownMs(idleOf(empty)),
    ...HEAD.slice(3).map(() => ''),
    empty.memory,
  ]);
  for (const jars of SIZES) {
    const { file, folder } = syntheticLedger({ ...SHAPE, jars });
    const seen = await measured(file, (page) =>
      page.locator('svg.jars [data-key]').first().waitFor({ timeout: 300_000 }),
    );
    rmSync(folder, { recursive: true });
    const hands = (['pan', 'zoom'] as const).flatMap((hand) => {
      const { between, work } = seen.frames[hand];
      const p95 = at(between, 0.95);
      return [`${shownMs(p95)} (${times(p95, idleOf(seen))})`, shownMs(Math.max(...between)), shownMs(work)];
    });
    const usable = `${shownMs(seen.usable)} (${times(seen.usable, empty.usable)})`;
    rows.push([jars.toLocaleString('en'), usable, shownMs(idleOf(seen)), ...hands, seen.memory]);
  }
  process.stdout.write(
    `${table(rows)}\nMilliseconds; work: processor time a frame of the page and of what puts it on the screen.\n`,
  );
});
