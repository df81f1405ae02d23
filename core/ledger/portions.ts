// What is kept apart of a jar: what it is called, and how much of it is left once seedings were taken from it. Pure.
import type { Amount } from './basics';
import type { Portion } from './records';

type Kept = Pick<Portion, 'part' | 'place' | 'pieces' | 'reserve'>;

/** "freezer cubes", "lidded pot", "whey in the fridge": what a keeper calls it, beside the jar's label. */
export function portionName({ part, place, pieces, reserve }: Kept): string {
  const of = part === 'whey' || part === 'curd' ? part : null;
  const cubes = pieces === 1 ? 'cube' : 'cubes';
  switch (place) {
    case 'freezer':
      if (pieces === null) return of ? `frozen ${of}` : 'frozen';
      return of ? `freezer ${cubes} of ${of}` : `freezer ${cubes}`;
    case 'dried':
      return of ? `dried ${of}` : 'dried flakes';
    case 'fridge':
      if (of) return reserve ? `lidded pot of ${of}` : `${of} in the fridge`;
      return reserve ? 'lidded pot' : 'pot in the fridge';
  }
}

/** mL of one piece, where both the pieces and what they hold together are known. */
function mlPerPiece({ pieces, amount }: Pick<Portion, 'pieces' | 'amount'>): number | null {
  return pieces !== null && amount?.unit === 'mL' && amount.value > 0 ? amount.value / pieces : null;
}

/** Volume of some pieces or mL of a portion (mL); null where it can't be told. */
export function takenMl(portion: Pick<Portion, 'pieces' | 'amount'>, taken: Amount | null): number | null {
  if (taken?.unit === 'mL') return taken.value;
  const each = mlPerPiece(portion);
  return taken?.unit === 'pieces' && each !== null ? taken.value * each : null;
}

/**
 * Pieces that are left of a portion kept in pieces.
 * @param taken what each seeding took; mL are turned into pieces where one piece's volume is known
 * @returns null where it is not kept in pieces, or a seeding took nobody knows how many; never below 0
 */
export function piecesLeft(
  portion: Pick<Portion, 'pieces' | 'amount'>,
  taken: readonly (Amount | null)[],
): number | null {
  if (portion.pieces === null) return null;
  const each = mlPerPiece(portion);
  let left = portion.pieces;
  for (const one of taken) {
    if (one?.unit === 'pieces') left -= one.value;
    else if (one?.unit === 'mL' && each !== null) left -= one.value / each;
    else return null;
  }
  return Math.max(0, Math.round(left));
}
