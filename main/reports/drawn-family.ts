// The family, or a part of it, drawn for paper: which jars, and what is written beside them.
import type { Drawing } from '../../core/contract';
import { type FamilyPicture, familyPicture } from '../../core/pictures/family-picture';
import { partOfFamily } from '../../core/pictures/part-of-family';
import { dayLabel } from '../../core/lineage/labels';
import { startedFrom } from '../../core/says/report-says';
import type { FamilyPart } from '../../core/shapes/report-calls';
import type { Ledger } from '../ledger/ledger';
import { drawing } from '../ledger/reads/read-family';
import { familyMember } from '../ledger/reads/read-views';
import { Refused } from '../refusal';

/** More jars than these are no picture that anybody reads. */
const MOST = 3000;

/** The founding batch of a line by its id. @throws Refused 'not found' */
export function lineBatch({ rows, index }: Ledger, line: string): number {
  const batch = rows.keyOf('batch', line);
  if (!index.family.lines.some((one) => one.batch === batch))
    throw new Refused('not found', { kind: 'line' });
  return batch;
}

/** Keys of the jars of a line, of what a jar comes from, of what came of it, or of all. @throws Refused 'not found' */
export function keysOfPart(ledger: Ledger, part: FamilyPart): readonly number[] {
  const { family } = ledger.index;
  if (part.part === 'all') return family.keys;
  if (part.part === 'line') {
    const batch = lineBatch(ledger, part.line);
    return family.keys.filter((key) => family.linesOf(key).includes(batch));
  }
  const { key } = familyMember(ledger, part.jar);
  const before = part.part === 'after' ? [] : family.ancestorsOf(key);
  const after = part.part === 'before' ? [] : family.descendantsOf(key);
  return [key, ...before, ...after];
}

/** What a lane began with: "founded 1 Nov 2025 from Blue Tin (2 strains)". */
function beganWith(drawn: Drawing, lane: number): string {
  const head = drawn.lanes[lane];
  if (!head) return '';
  const [first] = [...drawn.lane.keys()].filter((index) => drawn.lane[index] === lane && drawn.parent[index] === -1); // prettier-ignore
  const founder = drawn.founders.find(({ jars }) => first !== undefined && jars.includes(first));
  const sources = founder?.sources ?? [];
  const how = sources.length > 0 && sources.every(({ culture }) => culture) ? 'received' : 'founded';
  const from = startedFrom(sources);
  if (head.founded === null) return from;
  return `${how} ${dayLabel(head.founded, true)} ${from}`.trim();
}

/**
 * @param href what a jar links to by its id; null: nothing
 * @throws Refused 'picture too large', 'nothing to draw'
 */
export function drawnFamily(
  ledger: Ledger,
  keys: readonly number[],
  href: ((uid: string) => string) | null = null,
): FamilyPicture {
  if (keys.length === 0) throw new Refused('nothing to draw');
  if (keys.length > MOST) throw new Refused('picture too large', { jars: keys.length, most: MOST });
  const drawn = drawing(ledger, { spacing: 'generation' });
  const jarAt = (index: number) => ledger.index.jar(drawn.keys[index] ?? 0);
  const began = new Map<number, string>();
  return familyPicture(drawn, partOfFamily(drawn, new Set(keys)), {
    jar: (index) => jarAt(index).label,
    lane: (lane) => {
      const words = began.get(lane) ?? beganWith(drawn, lane);
      began.set(lane, words);
      return { name: drawn.lanes[lane]?.name ?? '', began: words };
    },
    href: href && ((index) => href(jarAt(index).uid)),
  });
}
