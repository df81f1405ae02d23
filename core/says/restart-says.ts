// When a fresh start pays: in one sentence with at most one figure, and at length.
import { costWords, lostInHundred, thrownOut } from './cost-says';
import type { Lacking } from '../advice/sureness';
import type { VerdictWord } from '../shapes/advice-replies';

/** Where the cost is lowest or about as low. */
export interface RestartRange {
  readonly from: number;
  readonly to: number;
  /** Anything from `from` on. */
  readonly openEnded: boolean;
}

/** Where the last generation that is about as good lies so many times as far as the first, no generation is the one to end at. */
export const FLAT = 2;

/**
 * @param verdict on the line that was asked about; null: none was @param today generation of its newest jar
 * @param sure enough of the keeper's own lines tell
 */
export function restartShort(
  { from, to, openEnded }: RestartRange,
  sure: boolean,
  verdict: VerdictWord | null,
  today: number | null,
): string {
  if (!sure) return 'It is too early to say when a fresh start pays.';
  const reached = today !== null && today >= from;
  const stands = '; for this line the verdict above stands';
  // Where no later one is worse, or hardly, that a line has gone on for long is no reason to end it.
  if (openEnded || to >= FLAT * from)
    return `Over many lines it makes little difference when a fresh start is made, from generation ${from} ${openEnded ? 'on' : `to ${to}`}${verdict === 'start afresh' ? stands : ''}.`;
  const where = from === to ? `${from}` : `${from} to ${to}`;
  const parts = verdict !== null && (verdict === 'start afresh') !== reached;
  return `Over many lines a fresh start pays after generation ${where}${parts ? stands : ''}.`;
}

/** "9; anything from 6 to 14 is about as good." @param lastSeen the furthest generation that was seen */
export function restartSentence(
  { best, from, to, openEnded }: RestartRange & { readonly best: number },
  lastSeen: number,
): string {
  const range =
    from === to
      ? `${best}`
      : openEnded
        ? `${best}; anything from ${from} on is about as good`
        : `${best}; anything from ${from} to ${to} is about as good`;
  const wide =
    best > lastSeen
      ? ` No line of yours has gone beyond generation ${lastSeen}, so the rest is reckoned on and unsure.`
      : '';
  return `Start afresh after generation ${range}.${wide}`;
}

/** What a restart from a reserve costs beside one from sources. @param sourcesCost of a good jar, like the reserve's */
export function reserveSentence(
  reserve: { readonly label: string; readonly generation: number; readonly goodJar: number },
  sourcesCost: number,
  unit: string,
): string {
  const [here, there] = [reserve.goodJar, sourcesCost];
  const costs =
    unit === 'jars'
      ? `it is then as if ${thrownOut(lostInHundred(here))} were thrown out for every 100 good ones, not ${thrownOut(lostInHundred(there))}`
      : `it then costs ${costWords(here, unit)}, not ${there.toFixed(2)}`;
  return `Restarting from ${reserve.label} (generation ${reserve.generation}) makes a good jar ${here < there ? 'cheaper' : 'dearer'}: with what its storage delays ${costs}.`;
}

/** Why it is too early, and how much of the drawing rests on what is assumed. */
function lackingWords(lacking: Lacking): readonly [string, 'mostly' | 'partly'] {
  switch (lacking.code) {
    case 'no line':
      return ['no line of yours has been seen beyond its first batch', 'mostly'];
    case 'one line':
      return ['only one line of yours tells of it', 'mostly'];
    case 'few batches':
      return [`only ${lacking.batches} batches of yours tell of it`, 'mostly'];
    case 'none as far':
      return ['no line of yours has gone on long enough to tell', 'partly'];
    case 'one as far':
      return ['only one line of yours has gone on long enough to tell', 'partly'];
  }
}

/** What is said instead of a figure where too little tells. */
export function tooEarlySentence({ from, to, openEnded }: RestartRange, lacking: Lacking): string {
  const [why, part] = lackingWords(lacking);
  const range = openEnded
    ? `any generation from ${from} on would be about as good`
    : from === to
      ? `it would be after about generation ${from}`
      : `it would be after one of generations ${from} to ${to}`;
  return `It is too early to say when to start afresh: ${why}. The drawing ${part} rests on what is assumed: by that, ${range}.`;
}

/** That later generations rest on fewer lines. */
export const fewerSays = ({
  from,
  lines,
  of,
}: {
  readonly from: number;
  readonly lines: number;
  readonly of: number;
}): string =>
  `From generation ${from} on only ${lines} of your ${of} lines ${lines === 1 ? 'tells' : 'tell'}. Those not yet restarted may be the better ones, so the others count as they were last seen, and later chances are less sure.`;
