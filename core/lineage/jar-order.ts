// The order jars are met in.
import { type FamilyColumns, UNKNOWN_DAY } from './counting';
import { inOrder } from './primary-seed';

/** Day (an unknown one last), batch, letter, label, key. */
export function compareJars(columns: FamilyColumns, a: number, b: number): number {
  const [day, other] = [columns.day[a] as number, columns.day[b] as number];
  if (day !== other) return day === UNKNOWN_DAY ? 1 : other === UNKNOWN_DAY ? -1 : day - other;
  const [one, two] = [columns.jars[a], columns.jars[b]];
  if (!one || !two) return a - b;
  return (
    one.batch - two.batch ||
    one.letter.length - two.letter.length ||
    inOrder(one.letter, two.letter) ||
    inOrder(one.label, two.label) ||
    one.key - two.key
  );
}
