// The one sentence of advice, and what is said before the last of a line is eaten. A seed that has to be looked into or is in
// doubt is never recommended by either.
import { inWords } from '../lineage/way-to-source';
import type { Ranked, SeedCandidate } from './seed-candidate';

/** Why nothing but a fresh start is offered in earnest; null where something is. @param others what may be used beside it */
const whyLast = (others: readonly Ranked[]): string | null =>
  others.length > 0 && others.every(({ tells }) => tells === 'in doubt')
    ? 'all else that is kept is in doubt from its own hold. When in doubt, discard.'
    : null;

/** What has to be done before a seed is used, as it is said with every recommendation of it. */
const beforeUse = ({ keptSaid }: Pick<Ranked, 'keptSaid'>, looks: readonly string[]): string[] => [
  ...looks,
  ...(keptSaid ? [] : ['Nobody has said whether it is still kept.']),
];

/**
 * What to do: one sentence, and what has to be looked at first.
 * @param allowed in order, the fresh start among them @param waiting what only its hold keeps from being offered
 */
export function nextSentence(allowed: readonly Ranked[], waiting: readonly Ranked[]): string {
  const [first, ...others] = allowed;
  if ((!first || (others.length === 0 && first.kind === 'fresh start')) && waiting.length > 0)
    return `Nothing that is kept may be used as seed yet: nobody has written down how ${inWords(waiting.map(({ label }) => label))} came out. Write that down after the hold, or make a fresh start from sources.`;
  if (!first || (others.length === 0 && first.kind === 'fresh start'))
    return 'Nothing that is kept may be used as seed. Make a fresh start from sources.';
  // What is in doubt never stands first: a fresh start is offered before it.
  if (first.kind === 'fresh start') {
    const best = `${first.label.charAt(0).toUpperCase()}${first.label.slice(1)} comes out best now`;
    const looks = whyLast(others);
    return looks === null ? `${best}.` : `${best}: ${looks}`;
  }
  const seed =
    first.tells === 'unseen'
      ? `Seed the next batch from ${first.label}, but nobody has written down how it came out: look at it first.`
      : `Seed the next batch from ${first.label}.`;
  return [seed, ...beforeUse(first, first.looks)].join(' ');
}

/** What is said of the last that carries a line, before it is eaten or used. @param looks what has to be looked at first */
export function lastSays(only: SeedCandidate, looks: readonly string[], line: string): string {
  const { label, doubts } = only;
  const last = `${label} is the last that carries ${line}`;
  if (doubts.length > 0)
    return `${last}, and its own hold left it in doubt. No line is worth that: when in doubt, discard.`;
  const take = looks.length > 0 ? 'If nothing speaks against it, take seed' : 'Take seed';
  return [`${last}.`, ...beforeUse(only, looks), `${take} from it before it is eaten.`].join(' ');
}
