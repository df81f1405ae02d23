// Generated lines, walked batch by batch: after each batch everything that is said of the line, by the very functions that the
// calls use. Nothing here knows how judgement reasons.
import { keptCosts } from '../../core/advice/costs';
import { suggestFreshStarts } from '../../core/advice/two-weak-in-a-row';
import { lineTold } from '../../core/advice/line-told';
import { seededRandom } from '../../core/advice/random';
import {
  nextReply,
  outlookOf,
  restartReply,
  verdictReply,
  type Asked,
  type Outlook,
} from '../../core/says/advice-reply';
import { seedLevel, unknownLevel } from '../../core/advice/seed-level';
import type { NextReply, RestartReply, VerdictReply } from '../../core/shapes/advice-replies';
import { shelfCandidates, type ShelfPortion } from '../../core/advice/shelf';
import { USUAL_TIME_CONSTANT } from '../../core/growth/time-constant';
import { SET_WORDS } from '../../core/ledger/jar-fields';
import type { Outcome } from '../../core/ledger/records';
import { answerOf } from '../../core/safety/answer';
import type { LineJudgementReply } from '../../core/shapes/vigour-replies';
import { freshStartSays } from '../../core/says/fresh-start-says';
import { thoughWeak } from '../../core/says/verdict-says';
import { evidenceOf, MADE_AS_EVER, type JarRecord } from '../../core/vigour/evidence';
import { judgeLine, keepersUsual, type LineJudgement } from '../../core/vigour/line';
import { jarSays } from '../../core/says/vigour-says';
import { lineReply } from '../../core/says/judgement-reply';
import { unseen } from '../ledger/ledger-files';
import { familyOf, type Told } from '../lineage/short-families';

export interface Look {
  readonly batches: number;
  readonly judgement: LineJudgement;
  /** judgement.line, as it is replied. */
  readonly line: LineJudgementReply;
  /** The one answer on each jar that is offered: may it seed? */
  readonly maySeed: ReadonlyMap<string, boolean>;
  readonly verdict: VerdictReply;
  readonly next: NextReply;
  readonly restart: RestartReply;
  readonly freshStarts: readonly string[];
  /** What is said of the jars of the newest batch. */
  readonly jars: readonly string[];
}

const DAY = 86_400_000;
const dayOf = (n: number): string => new Date(Date.parse('2026-01-04') + n * DAY).toISOString().slice(0, 10);
const LINE = 1;
const JARS = 2;

/** How a line goes: level lost a generation and from when, a sudden fall, how uneven, how much is written down. */
function fateOf(random: () => number) {
  const kind = Math.floor(random() * 5);
  return {
    loss: kind === 1 ? 3 + 5 * random() : 0,
    fallsAt: kind === 2 ? 4 + Math.floor(5 * random()) : Number.POSITIVE_INFINITY,
    falls: 20 + 40 * random(),
    uneven: 2 + 8 * random(),
    fibre: kind === 3,
    unseen: 0.3 * random(),
    spoiled: kind === 4 ? 0.08 : 0,
    every: 5 + Math.floor(8 * random()),
    usual: 55 + 25 * random(),
    older: random() < 0.3,
    /** Cubes frozen of the third batch; the newest jar not yet out of its hold; jars of which nobody said that they are kept. */
    reserve: random() < 0.35,
    warm: random() < 0.2,
    unsaid: random() < 0.3,
    batches: 6 + Math.floor(7 * random()),
  };
}

interface Line {
  readonly fate: ReturnType<typeof fateOf>;
  readonly told: Told[];
  readonly records: JarRecord[];
  readonly days: number[];
}

function inventLine(random: () => number): Line {
  const fate = fateOf(random);
  const told: Told[] = [];
  const records: JarRecord[] = [];
  const days: number[] = [];
  const levels: number[] = [];
  for (let batch = 1; batch <= fate.batches; batch++) {
    const back = fate.older && batch > 3 && random() < 0.3 ? 2 : 1;
    const parent = batch - back;
    const day = (batch - 1) * fate.every;
    const level = batch === 1 ? fate.usual : (levels[parent - 1] ?? 0) - fate.loss - (batch === fate.fallsAt ? fate.falls : 0); // prettier-ignore
    levels.push(level);
    days.push(day);
    const shared = fate.uneven * (random() + random() + random() - 1.5) - (batch === 1 ? 25 : 0);
    for (let i = 0; i < JARS; i++) {
      const key = (batch - 1) * JARS + i + 1;
      const word = SET_WORDS[Math.min(4, Math.max(0, Math.floor((level + shared + 8 * (random() - 0.5)) / 20)))] ?? 'firm'; // prettier-ignore
      const spoiled = random() < fate.spoiled && batch > 1;
      const outcome: Omit<Outcome, 'jar'> | null = random() < fate.unseen ? null : { ...unseen, setAtTakeOut: true, setWord: word }; // prettier-ignore
      told.push({
        key, batch, madeOn: dayOf(day), hold: batch, letter: 'ab'[i] ?? 'c', label: `${dayOf(day)} ${'ab'[i]}`, spoiled,
        from: batch === 1 ? [{ source: 1, pieces: 10 }] : [{ fromJar: (parent - 1) * JARS + 1, volumeMl: 45 }],
      }); // prettier-ignore
      records.push({
        key, outcome, additions: fate.fibre && batch > 5 ? [{ name: 'oat bran' }] : [], milk: 'whole milk', made: MADE_AS_EVER, hold: null,
        follows: USUAL_TIME_CONSTANT, portions: new Map(),
      }); // prettier-ignore
    }
  }
  return { fate, told, records, days };
}

/** Days for which a jar is still on the shelf. */
const SHELF_DAYS = 16;

/** Everything that is said of a line when so many of its batches are made. @param before what advice stood on at an earlier look */
function lookAt(line: Line, batches: number, before: Outlook | null): Look & { readonly outlook: Outlook } {
  const count = batches * JARS;
  const family = familyOf(line.told.slice(0, count));
  const evidence = evidenceOf(family, line.records.slice(0, count));
  const judgement = judgeLine(LINE, evidence, keepersUsual([LINE], evidence), 1);
  const outlook =
    before ??
    outlookOf([lineTold(judgement)], keptCosts({ jars: [], starts: [], jarsPerBatch: [JARS], currency: 'EUR' })); // prettier-ignore
  const day = (line.days[batches - 1] ?? 0) + 2;
  const jars = line.told.slice(0, count).map(({ key, batch }) => ({
    key,
    uid: `jar ${key}`,
    onShelf:
      day - (line.days[(batch ?? 1) - 1] ?? 0) > SHELF_DAYS
        ? false
        : line.fate.unsaid && key % 3 === 0
          ? null
          : true,
    gone: false,
    outcomeKnown: (line.records[key - 1]?.outcome ?? null) !== null,
    inHold: line.fate.warm && batch === batches && (line.records[key - 1]?.outcome ?? null) === null,
    outOn: { from: dayOf(line.days[(batch ?? 1) - 1] ?? 0), to: dayOf(line.days[(batch ?? 1) - 1] ?? 0) },
  }));
  const portions: ShelfPortion[] = line.fate.reserve && batches >= 4 ? [{
    uid: 'cubes', jar: 2 * JARS + 2, goneOn: null, reserve: true, note: null, place: 'freezer', keptOn: dayOf((line.days[2] ?? 0) + 3),
  }] : []; // prettier-ignore
  const promised = (jar: number, poorer: number) =>
    seedLevel(judgement, family.jar(jar).batch, outlook, judgement.level.tree.weights, poorer) ??
    unknownLevel(3, outlook, []);
  const asked: Asked = {
    candidates: shelfCandidates(family, jars, portions, () => [judgement], promised, () => ({ doubts: [], asks: [], acidNotThere: null, quotes: [] }), String, dayOf(day), LINE), // prettier-ignore
    limits: { fridgeDays: 21, freezerDays: null, generation: null },
    freshLabel: 'a fresh start from Blue Tin',
    startForm: line.fate.reserve ? 'culture' : 'capsules',
    blocked: judgement.blocked,
    lineNames: new Map([[String(LINE), 'Heron']]),
  };
  const verdict = verdictReply(outlook, asked, judgement, () => null);
  const weak = suggestFreshStarts(family, {
    setWord: (key) => line.records[key - 1]?.outcome?.setWord ?? null,
  });
  const names = {
    jar: (key: number) => ({ uid: `jar ${key}`, label: String(key) }),
    batch: (key: number) => ({ uid: `batch ${key}`, label: String(key) }),
    line: () => ({ uid: 'heron', name: 'Heron' }),
  };
  const today = judgement.batches.at(-1)?.generation ?? null;
  return {
    outlook,
    batches,
    judgement,
    line: lineReply(judgement, names, () => []),
    maySeed: new Map(jars.map(({ key, uid }) => [uid, answerOf(family, key).seed])),
    verdict,
    next: nextReply(outlook, asked),
    restart: restartReply(outlook, asked.candidates, asked.limits, today, verdict.verdict),
    jars: (judgement.batches.at(-1)?.scores ?? []).map(
      (score) => jarSays(score.jar, score, judgement, evidence).sentence,
    ),
    freshStarts: weak.map((one) => freshStartSays(one, 'Heron').sentence + thoughWeak(verdict.verdict)),
  };
}

/** Walks one line from its first batch to its last. Chances by generation are drawn anew at every third look. */
export function walk(seed: number): Look[] {
  const line = inventLine(seededRandom(seed));
  let outlook: Outlook | null = null;
  return line.days.map((_, i) => {
    const look: Look & { readonly outlook: Outlook } = lookAt(line, i + 1, i % 3 === 0 ? null : outlook);
    ({ outlook } = look);
    return look;
  });
}
