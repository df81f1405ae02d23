// In which order what is kept should be eaten, and what stands apart from that. Pure.
import type { Answer } from '../shapes/safety-codes';
import { SHELF_GROUPS, type ShelfGroup } from '../shapes/shelf-calls';
import type { ByDay, Standing } from './by-when';

export interface Ordered {
  readonly label: string;
  readonly madeOn: string | null;
  readonly reserve: boolean;
  readonly standing: Standing;
  readonly eatBy: ByDay | null;
  readonly answer: Pick<Answer, 'eat' | 'discard'>;
}

/** @param today the keeper's day: what is to be eaten by today is not past yet */
export function groupOf({ standing, answer, eatBy, reserve }: Ordered, today: string): ShelfGroup {
  if (answer.discard !== null) return 'discard';
  if (standing.place === 'warmth') return 'warm';
  if (!answer.eat) return 'aside';
  if (reserve || standing.place === 'dried') return 'seed';
  return eatBy !== null && eatBy.on !== null && eatBy.on < today ? 'past' : 'eat';
}

/** Nobody noted when it was thawed: it comes first. Of what is dried no day is told: it comes last. */
const dueOf = ({ eatBy }: Ordered): string => (eatBy === null ? '9999' : (eatBy.on ?? ''));

/** Of equal days what is open comes first, then the older, then by name. */
export function inEatingOrder<T extends Ordered>(all: readonly T[], today: string): T[] {
  const rank = (one: T): number => SHELF_GROUPS.indexOf(groupOf(one, today));
  return all.toSorted(
    (a, b) =>
      rank(a) - rank(b) ||
      dueOf(a).localeCompare(dueOf(b)) ||
      Number(b.standing.opened !== null) - Number(a.standing.opened !== null) ||
      (a.madeOn ?? '').localeCompare(b.madeOn ?? '') ||
      a.label.localeCompare(b.label),
  );
}
