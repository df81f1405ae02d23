// What the screen lists, worked out of a preview: pure functions, no React.
import type { NotesPreview, Reply } from '../../core/contract';

export type Row = NotesPreview['rows'][number];
export type RowState = Row['state'];
export type Problem = NotesPreview['problems'][number];
export type Question = NotesPreview['questions'][number];
export type Pages = NonNullable<NotesPreview['pages']>;

export const ROW_STATES: readonly RowState[] = ['new', 'changes', 'aside', 'already here', 'empty'];

/** "1 jar", "3 jars". */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${number.toLocaleString('en-GB')} ${number === 1 ? one : many}`;

/** "a, b and c". */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Rows in a few words: "rows 3, 8 and 12", "rows 3, 8, 12 and 40 more". @param of how many there are with those not listed */
export function rowsSaid(rows: readonly number[], of = rows.length): string {
  const shown = rows.map(String);
  const rest = of - shown.length;
  const parts = rest > 0 ? [...shown, `${rest.toLocaleString('en-GB')} more`] : shown;
  return `${of === 1 ? 'row' : 'rows'} ${listed(parts)}`;
}

/** "44 jars, 46 seedings and 2 sources came in. 1 jar was changed." */
export function resultSentence(
  result: Pick<Reply<'notes.bringIn'>, 'jars' | 'seedings' | 'sources' | 'changed'>,
): string {
  const changed =
    result.changed === 0
      ? ''
      : `${count(result.changed, 'jar')} ${result.changed === 1 ? 'was' : 'were'} changed as you answered.`;
  if (changed !== '' && result.jars + result.seedings + result.sources === 0) return changed;
  if (result.jars + result.seedings + result.sources === 0)
    return 'Nothing new came in: everything in this file is here already, or stays aside.';
  const parts = [
    result.jars > 0 ? count(result.jars, 'jar') : '',
    result.seedings > 0 ? count(result.seedings, 'seeding') : '',
    result.sources > 0 ? count(result.sources, 'source') : '',
  ].filter(Boolean);
  return `${listed(parts)} came in.${changed === '' ? '' : ` ${changed}`}`;
}

/** "Bring in 3 rows", "Change 1 jar", or both in one. */
export function bringInLabel(fresh: number, changes: number): string {
  if (changes === 0) return `Bring in ${count(fresh, 'row')}`;
  const change = `change ${count(changes, 'jar')}`;
  return fresh === 0 ? `Change ${count(changes, 'jar')}` : `Bring in ${count(fresh, 'row')}, ${change}`;
}

/** What stays open after a file came in, and what answers it. Null where nothing does. */
export function openSentence(questions: readonly Question[]): string | null {
  // Without choices, or about the file as a whole, there is nothing left to answer: only to look over.
  const open = questions.filter(({ row, choices }) => row !== null && choices.length > 0).length;
  const rest = questions.length - open;
  const parts = [
    open > 0
      ? `${count(open, 'question')} ${open === 1 ? 'stays' : 'stay'} open; bring the file in again to answer ${open === 1 ? 'it' : 'them'}.`
      : '',
    rest > 0 ? `${count(rest, 'remark')} to look over.` : '',
  ].filter(Boolean);
  return parts.length === 0 ? null : parts.join(' ');
}

/** Problems of a row together, rows in order. */
export function byRow<P extends Problem>(
  problems: readonly P[],
): { readonly row: number; readonly problems: readonly P[] }[] {
  const rows = new Map<number, P[]>();
  for (const problem of problems) {
    const list = rows.get(problem.row);
    if (list) list.push(problem);
    else rows.set(problem.row, [problem]);
  }
  return [...rows].toSorted(([one], [other]) => one - other).map(([row, list]) => ({ row, problems: list }));
}
