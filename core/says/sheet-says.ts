// What is said on the page where a spreadsheet is brought in: how much comes in, what rows say, what stays open.

/** "1 jar", "3 jars". */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${number.toLocaleString('en-GB')} ${number === 1 ? one : many}`;

/** "a, b and c". */
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Rows in a few words: "rows 3, 8 and 12", "rows 3, 8, 12 and 40 more". @param of how many there are with those not listed */
export function rowsSaid(rows: readonly number[], of = rows.length): string {
  const shown = rows.map(String);
  const rest = of - shown.length;
  const parts = rest > 0 ? [...shown, `${rest.toLocaleString('en-GB')} more`] : shown;
  return `${of === 1 ? 'row' : 'rows'} ${listed(parts)}`;
}

/** Of many rows so many are named. */
const ROWS_NAMED = 8;
/** "Row 3", "Rows 3, 8 and 12", at the beginning of what is said of them. */
export function saidOfRows(rows: readonly number[]): string {
  const said = rowsSaid(rows.slice(0, ROWS_NAMED), rows.length);
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
}

/** What came in, counted. */
interface CameIn {
  readonly jars: number;
  readonly seedings: number;
  readonly sources: number;
  readonly changed: number;
}

/** "44 jars, 46 seedings and 2 sources came in. 1 jar was changed." */
export function resultSentence({ jars, seedings, sources, changed }: CameIn): string {
  const said =
    changed === 0
      ? ''
      : `${count(changed, 'jar')} ${changed === 1 ? 'was' : 'were'} changed as you answered.`;
  const parts = [
    jars > 0 ? count(jars, 'jar') : '',
    seedings > 0 ? count(seedings, 'seeding') : '',
    sources > 0 ? count(sources, 'source') : '',
  ].filter(Boolean);
  if (parts.length > 0) return `${listed(parts)} came in.${said === '' ? '' : ` ${said}`}`;
  return said || 'Nothing new came in: everything in this file is here already, or stays aside.';
}

/** "Bring in 3 rows", "Change 1 jar", or both in one. */
export function bringInLabel(fresh: number, changes: number): string {
  if (changes === 0) return `Bring in ${count(fresh, 'row')}`;
  const change = `change ${count(changes, 'jar')}`;
  return fresh === 0 ? `Change ${count(changes, 'jar')}` : `Bring in ${count(fresh, 'row')}, ${change}`;
}

/** What stays open after a file came in, and what answers it. Null where nothing does. */
export function openSentence(open: number, remarks: number): string | null {
  const parts = [
    open > 0
      ? `${count(open, 'question')} ${open === 1 ? 'stays' : 'stay'} open; bring the file in again to answer ${open === 1 ? 'it' : 'them'}.`
      : '',
    remarks > 0 ? `${count(remarks, 'remark')} to look over.` : '',
  ].filter(Boolean);
  return parts.length === 0 ? null : parts.join(' ');
}

/** Rows of a file by what becomes of them. */
type States = Readonly<Record<'new' | 'changes' | 'aside' | 'already here' | 'empty', number>>;

/** What the file comes to, in one line: "44 rows to come in, 1 aside and 1 empty." @param blocked an answer is waited for */
export function summarySentence(states: States, blocked: boolean): string {
  const parts = [
    states.new > 0 ? `${count(states.new, 'row')} to come in` : '',
    states.changes > 0 ? `${count(states.changes, 'jar')} to change` : '',
    ...(['aside', 'already here', 'empty'] as const).map((state) =>
      states[state] > 0 ? `${states[state].toLocaleString('en-GB')} ${state}` : '',
    ),
  ].filter(Boolean);
  if (parts.length > 0) return `${listed(parts)}.`;
  return blocked ? 'Its rows are read once you have answered.' : 'No rows in this file.';
}

/** How many rows tell of spoilage, and what becomes of what is not answered. @param silent rows that say nothing in words */
export function tellingSays(telling: number, silent: number): string {
  const first = telling === 0 ? 'None tells' : telling === 1 ? 'One tells' : `${count(telling, 'row')} tell`;
  const rest =
    silent > 0 ? ` ${count(silent, 'row')} ${silent === 1 ? 'has' : 'have'} no words to answer.` : '';
  return `${first} of spoilage in plain words. What you don’t answer comes in as not answered, and is quoted wherever its jar is offered.${rest}`;
}

/** Rows in doubt for another reason. */
export const doubtedSays = (rows: number): string =>
  `${rows === 1 ? 'One row is' : `${count(rows, 'row')} are`} in doubt for another reason, such as a power cut, its warmth or an accident: answer ${rows === 1 ? 'it' : 'each'} by itself.`;

/** "204 rows say nothing of safety". */
export const quietSays = (rows: number): string =>
  `${rows === 1 ? 'One row says' : `${count(rows, 'row')} say`} nothing of safety`;

/** What rows that say nothing of safety are answered with. @param others other rows are answered by themselves */
export const allFine = (rows: number, others: boolean): string =>
  rows === 1
    ? others
      ? 'The other is fine'
      : 'It is fine'
    : `All ${rows} ${others ? 'others are' : 'are'} fine`;

/** What rows that tell of spoilage are answered with. */
export const discardAll = (rows: number): string =>
  rows === 1 ? 'Discard the one that tells of spoilage' : `Discard all ${rows} that tell of spoilage`;

/** What stands there once none is left. */
export const allAnswered = (rows: number): string =>
  rows === 1 ? 'It is answered' : `All ${rows} are answered`;

/** Above columns that only their cells told the meaning of. */
export const LOOK_AT_COLUMNS =
  'Look at these columns first: their headings don’t tell what they are. What is wrong here comes in wrong in every row.';
/** What settles them. */
export const columnsRight = (columns: number): string => (columns === 1 ? 'It is right' : 'They are right');
