// Judgement and advice as a caller gets them from a ledger of 10,000 jars, beside the bare computation: the same pure
// functions on evidence that lies ready, with nothing kept between calls. Right after recording one jar, and asked again.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chancesBy } from '../../core/advice/chances';
import { lineTold } from '../../core/advice/line-told';
import { seededRandom } from '../../core/advice/random';
import { restartOf } from '../../core/advice/restart-curve';
import { limitsOf } from '../../core/advice/stops';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import { adviseNext } from '../../core/advice/seed-ranking';
import { earlyOf, judgeLine } from '../../core/vigour/line';
import { usualOfAll, type Usual } from '../../core/vigour/usual';
import { addJar, jarEntry } from '../../main/ledger/entries/jar-entry';
import { addSeeding, seedingEntries } from '../../main/ledger/entries/kept-entries';
import { addOutcome } from '../../main/ledger/entries/outcome-entry';
import { judgedOf } from '../../main/ledger/judged';
import { outcomeOf } from '../../main/ledger/entries/outcome-of-jar';
import type { WorkerCall } from '../../main/ledger/worker-protocol';
import { Session } from '../../main/session';
import type { Case } from './bench-cases';
import { writeLines } from './judgement-rows';
import type { Way } from './timing';

const DEFAULT_LIMITS = limitsOf(NEUTRAL_LIMITS);

interface Shape {
  readonly name: string;
  readonly lines: number;
  readonly batches: number;
}
/** Five jars a batch: 10,000 jars either way. */
const SHAPES: readonly Shape[] = [
  { name: '40 lines of 50 batches', lines: 40, batches: 50 },
  { name: 'one line of 2,000 batches', lines: 1, batches: 2000 },
];

/** The day on which the ledger is read: after its last batch. */
const NOW = '2031-08-01T10:00:00Z';

class Kept {
  readonly #folder = mkdtempSync(join(tmpdir(), 'jarline-bench-'));
  readonly session: Session;
  /** The newest jar: what is recorded is a sibling of it. */
  readonly #jar: number;
  readonly line: string;
  readonly jarId: string;
  #word = 0;

  constructor({ lines, batches }: Shape) {
    this.session = new Session({
      file: join(this.#folder, 'bench.sqlite'), mode: 'create', now: NOW, timeZone: 'UTC', version: '0.0.0',
    }); // prettier-ignore
    process.on('exit', () => {
      this.session.close();
      rmSync(this.#folder, { recursive: true, force: true });
    });
    const { ledger } = this.session;
    const done = ledger.acts.run('notes.bringIn', 'bench', null, (act) => writeLines(act, lines, batches));
    if (!done) throw new Error('nothing was written');
    this.#jar = done.value.newest;
    this.line = ledger.rows.uidOf('batch', done.value.founding);
    this.jarId = ledger.rows.uidOf('jar', this.#jar);
  }

  /** One more jar of the newest batch, with its outcome. */
  readonly recordOne = (): void => {
    const { ledger } = this.session;
    const { rows } = ledger;
    ledger.acts.run('batch.record', 'one more', null, (act) => {
      const { key: _key, uid: _uid, ...newest } = jarEntry(rows, this.#jar);
      const jar = addJar(act, { ...newest, letter: `x${++this.#word}` });
      const [seeding] = seedingEntries(rows, this.#jar);
      if (!seeding) throw new Error('the newest jar has no seed');
      const { key: _seeding, uid: _its, ...seed } = seeding;
      addSeeding(act, { ...seed, jar });
      const outcome = outcomeOf(rows, this.#jar);
      if (outcome) addOutcome(act, jar, outcome);
    });
  };

  readonly ask = (name: WorkerCall, input: unknown): unknown => {
    const result = this.session.answer(name, input);
    if (!result.ok) throw new Error(`${name}: ${result.error.code}`);
    return result.value;
  };
}

const bareLine = (kept: Kept, line: number): unknown => {
  const { all } = judgedOf(kept.session.ledger);
  return judgeLine(line, all.jarsOf(line), bareUsual(kept), all.lines.length);
};

const bareUsual = (kept: Kept): Usual => {
  const { all } = judgedOf(kept.session.ledger);
  return usualOfAll(all.lines.flatMap((line) => earlyOf(line, all.jarsOf(line))));
};

const DRAWS = 200;

const bareRestart = (kept: Kept): unknown => {
  const { all } = judgedOf(kept.session.ledger);
  const usual = bareUsual(kept);
  const told = all.lines.map((line) => lineTold(judgeLine(line, all.jarsOf(line), usual, all.lines.length)));
  const lastSeen = Math.max(0, ...told.map(({ last }) => last));
  const chances = chancesBy(told, Math.min(60, Math.max(20, 2 * lastSeen)), DRAWS, seededRandom(1));
  const costs = { freshStart: 6, jarsPerGeneration: 5, jar: 1, weakKeeps: 0.5, unplanned: 5 };
  return restartOf(costs, chances);
};

/** Every line judged and the outlook drawn; nothing on the shelf, so that bare is rather too little than too much. */
const bareNext = (kept: Kept, lines: readonly number[]): unknown => {
  const { all } = judgedOf(kept.session.ledger);
  const usual = bareUsual(kept);
  const judgements = lines.map((line) => judgeLine(line, all.jarsOf(line), usual, all.lines.length));
  bareRestart(kept);
  return adviseNext({
    candidates: [],
    limits: DEFAULT_LIMITS,
    unit: 'jars',
    costs: { freshStart: 6, jarsPerGeneration: 5, jar: 1, weakKeeps: 0.5, unplanned: 5 },
    jarsTell: 0,
    weak: [],
    discarded: [],
    ended: [],
    lastSeen: 0,
    freshStart: { cost: 1, generations: 10 },
    freshLabel: 'a fresh start',
    blocked: judgements.flatMap(({ blocked }) => blocked),
    lineNames: new Map(),
  }).ranking.length;
};

const built = new Map<string, Kept>();
function keptOf(shape: Shape): Kept {
  const kept = built.get(shape.name) ?? new Kept(shape);
  built.set(shape.name, kept);
  return kept;
}

export const judgementCases: readonly Case[] = SHAPES.flatMap((shape) => {
  const group = `judgement of 10,000 jars, ${shape.name}`;
  const kept = (): Kept => keptOf(shape);
  const founding = (): number => kept().session.ledger.rows.keyOf('batch', kept().line);
  const allLines = (): readonly number[] => judgedOf(kept().session.ledger).all.lines;
  const calls: readonly { task: string; name: WorkerCall; input: () => unknown; bare: () => unknown }[] = [
    {
      task: 'judgement.line',
      name: 'judgement.line',
      input: () => ({ line: kept().line }),
      bare: () => bareLine(kept(), founding()),
    },
    {
      task: 'judgement.jar',
      name: 'judgement.jar',
      input: () => ({ jar: kept().jarId }),
      bare: () => bareLine(kept(), founding()),
    },
    {
      task: 'advice.next of a line',
      name: 'advice.next',
      input: () => ({ line: kept().line }),
      bare: () => bareNext(kept(), [founding()]),
    },
    {
      task: 'advice.next',
      name: 'advice.next',
      input: () => ({ line: null }),
      bare: () => bareNext(kept(), allLines()),
    },
    {
      task: 'advice.restart',
      name: 'advice.restart',
      input: () => ({ line: null }),
      bare: () => bareRestart(kept()),
    },
  ];
  return calls.flatMap(({ task, name, input, bare }): Case[] => {
    const way = (before: boolean): Extract<Way, { prepare: unknown }> => ({
      prepare: () => {
        kept();
        return () => kept().ask(name, input());
      },
      ...(before ? { before: () => kept().recordOne() } : {}),
    });
    const others = { 'bare computation': { prepare: () => bare } };
    return [
      { group, task: `${task}, after one more jar`, ours: way(true), others },
      { group, task: `${task}, asked again`, ours: way(false), others },
    ];
  });
});
