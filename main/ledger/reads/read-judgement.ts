// Reads of judgement and advice: names and ids round what core says.
import { keptCosts } from '../../../core/advice/costs';
import { answerOf } from '../../../core/safety/answer';
import { fromMateOf, setAsideOf } from '../../../core/safety/set-aside';
import { mayBeInHold, outOfWarmthOn } from '../../../core/safety/in-hold';
import {
  nextReply,
  outlookOf,
  restartReply,
  verdictReply,
  type Asked,
  type Outlook,
} from '../../../core/says/advice-reply';
import { shelfCandidates, type ShelfJar } from '../../../core/advice/shelf';
import { isSeenOut } from '../../../core/ledger/seen-out';
import { seedLevel, unknownLevel, type SeedLevel } from '../../../core/advice/seed-level';
import type { VerdictWord } from '../../../core/shapes/advice-replies';
import { cautionSentence, fromMateSentence, stopsSaid } from '../../../core/says/safety-says';
import { doubtSays, lookSays } from '../../../core/says/seed-looks-says';
import type { KeptSeed } from '../../../core/advice/seed-candidate';
import { limitsOf } from '../../../core/advice/stops';
import type { Parsed, Reply } from '../../../core/contract';
import type { Culture } from '../../../core/says/hold-figures-says';
import { jarReply, lineReply, type Names } from '../../../core/says/judgement-reply';
import { batchDay, calledDay } from '../../../core/lineage/labels';
import { compareDays, dayInOrder, earliestDay, latestDay } from '../../../core/lineage/lineage-shapes';
import { judgedOf, type Judged } from '../judged';
import { portionEntries } from '../entries/kept-entries';
import type { Ledger } from '../ledger';
import { goneJars } from '../derived/columns-of-jars';
import { emptyJars, emptyPortions } from '../entries/left-of-rows';
import { Refused } from '../../refusal';
import { againstIn } from './read-against';
import { costRecords } from './read-costs';
import { familyMember, lineNames } from './read-views';

function namesIn(ledger: Ledger): Names {
  const { rows, index } = ledger;
  const nameOf = lineNames(ledger);
  return {
    jar: (key) => index.jar(key),
    batch: (key) => {
      const row = rows.get('batch', key);
      const day = batchDay(calledDay(row), true) ?? 'a day not known';
      return { uid: row.uid, label: [day, row.word].filter(Boolean).join(' ') };
    },
    line: (batch) => ({ uid: rows.uidOf('batch', batch), name: nameOf(batch) }),
  };
}

/** Key of the founding batch of the line with that id. @throws Refused 'not found' */
function lineKey(ledger: Ledger, judged: Judged, uid: string): number {
  const key = ledger.rows.keyOf('batch', uid);
  if (!judged.all.lines.includes(key)) throw new Refused('not found', { kind: 'line' });
  return key;
}

export function judgeOneLine(ledger: Ledger, { line }: Parsed<'judgement.line'>): Reply<'judgement.line'> {
  const judged = judgedOf(ledger);
  const { all } = judged;
  return lineReply(all.line(lineKey(ledger, judged, line)), namesIn(ledger), () =>
    all.lines.map((one) => all.line(one)),
  );
}

export function judgeOneJar(ledger: Ledger, { jar }: Parsed<'judgement.jar'>): Reply<'judgement.jar'> {
  const judged = judgedOf(ledger);
  const { key } = familyMember(ledger, jar);
  const evidence = judged.all.byKey.get(key);
  if (!evidence) throw new Refused('not found', { kind: 'jar' });
  const [line] = evidence.lines;
  const mates = line === undefined ? [] : judged.all.jarsOf(line);
  const judgement = line === undefined ? null : judged.all.line(line);
  const { family } = ledger.index;
  const against = againstIn(ledger, judged)(key);
  const [aside, mate] = [setAsideOf(family, key), fromMateOf(family, key)];
  const holds = {
    discard: ledger.index.jar(key).safety.discard,
    caution: family.cautionLevelOf(key),
    onHold: aside && cautionSentence(aside, aside.spoiled),
    descendsFromHeld: mate && fromMateSentence(mate),
    asSeed: [
      ...stopsSaid(answerOf(family, key)),
      ...against.doubts.map(doubtSays),
      ...against.asks.map(lookSays),
    ],
  };
  return jarReply(evidence, judgement, mates, namesIn(ledger), cultureOf(ledger, key), holds);
}

/** What the sources that a jar traces back to are declared to hold. */
function cultureOf({ rows, index }: Ledger, key: number): Culture {
  const species = new Set<string>();
  let unknown = false;
  for (const { source } of index.family.tracedSharesOf(key)) {
    const strains = source === null ? [] : rows.where('strain', 'source', source);
    if (strains.length === 0) unknown = true;
    for (const strain of strains) species.add([strain.genus, strain.species].filter(Boolean).join(' '));
  }
  return { species: [...species], unknown };
}

export function scoresOf(ledger: Ledger, { keys }: Parsed<'judgement.scores'>): Reply<'judgement.scores'> {
  const judged = judgedOf(ledger);
  return { scores: keys.map((key) => ({ key, score: judged.scoreOf(key) })) };
}

/** What a batch promises by the first of its lines that tells; of no line, what any culture does. */
function levelOf(
  judged: Judged,
  lines: readonly number[],
  batch: number,
  view: Outlook,
  poorer: number,
): SeedLevel {
  for (const line of lines) {
    const found = seedLevel(judged.all.line(line), batch, view, judged.weightsOf(line), poorer);
    if (found) return found;
  }
  return unknownLevel(judged.all.keeper['set word'].value, view, judged.trees());
}

interface Ended {
  readonly jars: ReadonlySet<number>;
  readonly portions: ReadonlySet<number>;
}
const ended = new WeakMap<Judged, Ended>();

/** Of which nothing is left. Asked for every line and screen, and the same until something is recorded. */
function endedIn({ rows }: Ledger, judged: Judged): Ended {
  const before = ended.get(judged);
  if (before) return before;
  const now = { jars: new Set([...goneJars(rows), ...emptyJars(rows, null)]), portions: emptyPortions(rows) };
  ended.set(judged, now);
  return now;
}

/** What is kept and could seed. @param only reserves alone, or all that is kept */
function candidatesOf(
  ledger: Ledger,
  judged: Judged,
  line: number | null,
  only: 'all' | 'reserves',
  view: Outlook,
): KeptSeed[] {
  const { rows, index } = ledger;
  const { family } = index;
  const gone = endedIn(ledger, judged);
  const jars = family.keys.map((jar): ShelfJar => ({
    key: jar,
    uid: index.jar(jar).uid,
    onShelf: only === 'reserves' ? false : index.jar(jar).onShelf,
    gone: gone.jars.has(jar),
    ...outOfWarmth(ledger, judged, jar),
  }));
  return shelfCandidates(
    family,
    jars,
    portionEntries(rows, null).filter(
      ({ key, reserve }) => (reserve || only === 'all') && !gone.portions.has(key),
    ),
    (jar) => family.linesOf(jar).map((one) => judged.all.line(one)),
    (jar, poorer) => levelOf(judged, family.linesOf(jar), family.jar(jar).batch, view, poorer),
    againstIn(ledger, judged),
    (batch) => rows.uidOf('batch', batch),
    ledger.clock.today(),
    line,
  );
}

/** Whether a jar may still stand in its hold, and since when it is out of it, as far as was noted. */
export function outOfWarmth(
  { index, clock }: Ledger,
  judged: Judged,
  jar: number,
): Pick<ShelfJar, 'outcomeKnown' | 'outOn' | 'inHold'> {
  const record = judged.records.get(jar);
  const [outcome, hold] = [record?.outcome ?? null, record?.hold ?? null];
  // It stands for as long as it may have stood, and is in its hold for as long as it may be.
  const [first, last] = [earliestDay(index.jar(jar)), latestDay(index.jar(jar))];
  const outcomeKnown = isSeenOut(outcome);
  if (first === null || last === null) return { outcomeKnown, outOn: null, inHold: false };
  return {
    outcomeKnown,
    outOn: { from: outOfWarmthOn(hold, first), to: outOfWarmthOn(hold, last) },
    inHold: mayBeInHold(hold, outcome, outcomeKnown, last, clock.now(), clock.today()),
  };
}

const outlook = (ledger: Ledger, judged: Judged): Outlook =>
  outlookOf(judged.told, keptCosts(costRecords(ledger, judged)));

export function restartAdvice(ledger: Ledger, { line }: Parsed<'advice.restart'>): Reply<'advice.restart'> {
  const judged = judgedOf(ledger);
  const key = line === null ? null : lineKey(ledger, judged, line);
  const newest = judged.all.evidence
    .filter((jar) => dayInOrder(jar) !== null && (key === null || jar.lines.includes(key)))
    .toSorted((a, b) => compareDays(b, a) || b.generation - a.generation)[0];
  const view = outlook(ledger, judged);
  const reserves = candidatesOf(ledger, judged, key, 'reserves', view);
  return restartReply(
    view,
    reserves,
    limitsOf(ledger.preferences),
    newest?.generation ?? null,
    key === null ? null : verdictOn(ledger, judged, view, key),
  );
}

/** What the newest founding batch was started from: how a fresh start from it is called, and its form where all have one. */
function freshStartOf(
  ledger: Ledger,
  judged: Judged,
  line: number | null,
): Pick<Asked, 'freshLabel' | 'startForm'> {
  const { family } = ledger.index;
  // A culture was received once; a product can be bought again, so of several lines the newest of those counts.
  const isProduct = (source: number | null): boolean =>
    source !== null && family.source(source)?.culture === false;
  const fromProducts = judged.all.evidence
    .filter(({ key, founding }) => founding && family.seedsOf(key).some(({ source }) => isProduct(source)))
    .toSorted(compareDays);
  const batch = line ?? fromProducts.at(-1)?.batch ?? judged.all.lines.at(-1);
  const founders = judged.all.evidence.filter(
    (jar) => jar.founding && (batch === undefined || jar.batch === batch),
  );
  const sources = new Set(
    founders.flatMap(({ key }) => family.seedsOf(key).flatMap(({ source }) => source ?? [])),
  );
  const names = new Set([...sources].flatMap((source) => family.source(source)?.name ?? []));
  const [form = null, ...others] = new Set([...sources].map((key) => ledger.rows.get('source', key).form));
  return {
    freshLabel:
      names.size === 0 ? 'a fresh start from sources' : `a fresh start from ${[...names].join(' and ')}`,
    startForm: others.length === 0 ? form : null,
  };
}

function askedOf(ledger: Ledger, judged: Judged, view: Outlook, line: number | null): Asked {
  const names = namesIn(ledger);
  const asked = line === null ? judged.all.lines : [line];
  return {
    candidates: candidatesOf(ledger, judged, line, 'all', view),
    limits: limitsOf(ledger.preferences),
    ...freshStartOf(ledger, judged, line),
    blocked: [...new Set(asked.flatMap((one) => judged.all.line(one).blocked))],
    lineNames: new Map(asked.map((one) => [names.line(one).uid, names.line(one).name])),
  };
}

export function nextAdvice(ledger: Ledger, { line }: Parsed<'advice.next'>): Reply<'advice.next'> {
  const judged = judgedOf(ledger);
  const key = line === null ? null : lineKey(ledger, judged, line);
  const view = outlook(ledger, judged);
  return nextReply(view, askedOf(ledger, judged, view, key));
}

/** A seed that is kept: the jar itself, or what was kept apart of it. */
interface SeedId {
  readonly jar: string | null;
  readonly portion: string | null;
}

/** What the verdict on each line names as the next seed, and what alone still carries one. */
export function seedsNow(ledger: Ledger): {
  readonly next: readonly (SeedId & { readonly line: string })[];
  readonly lastOf: readonly (SeedId & { readonly says: string })[];
} {
  const judged = judgedOf(ledger);
  const [view, names] = [outlook(ledger, judged), namesIn(ledger)];
  const next = judged.all.lines.flatMap((line) => {
    const asked = askedOf(ledger, judged, view, line);
    if (asked.candidates.length === 0) return [];
    const { seed } = verdictReply(view, asked, judged.all.line(line), () => null);
    return seed === null ? [] : [{ jar: seed.jar, portion: seed.portion, line: names.line(line).name }];
  });
  return { next, lastOf: nextReply(view, askedOf(ledger, judged, view, null)).lastOf };
}

function verdictOn(ledger: Ledger, judged: Judged, view: Outlook, line: number): VerdictWord {
  return verdictReply(view, askedOf(ledger, judged, view, line), judged.all.line(line), () => null).verdict;
}

/** The verdict on a line, by the key of its founding batch. */
export function verdictOf(ledger: Ledger, line: number): VerdictWord {
  const judged = judgedOf(ledger);
  return verdictOn(ledger, judged, outlook(ledger, judged), line);
}

export function lineAdvice(ledger: Ledger, { line }: Parsed<'advice.line'>): Reply<'advice.line'> {
  const judged = judgedOf(ledger);
  const key = lineKey(ledger, judged, line);
  const view = outlook(ledger, judged);
  return verdictReply(view, askedOf(ledger, judged, view, key), judged.all.line(key), (jar) =>
    rootOf(ledger, judged, jar),
  );
}

/** The jar because of which another is held, or in doubt by its way back; null where nothing but itself is. */
function rootOf(ledger: Ledger, judged: Judged, uid: string): { jar: string; label: string } | null {
  const { rows, index } = ledger;
  const key = rows.keyOf('jar', uid);
  const { because } = answerOf(index.family, key);
  const root = because ? because.of : againstIn(ledger, judged)(key).doubtful;
  if (root === null || root === key) return null;
  const { uid: jar, label } = index.jar(root);
  return { jar, label };
}
