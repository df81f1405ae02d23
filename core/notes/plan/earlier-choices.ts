// What was chosen about the columns of a file, kept with the first of its rows and taken over for the next file with the same
// headings: what each means, in which unit its bare figures are, how days are written, whose spoons are meant.
import type { NoteColumn } from '../../contract';
import { NOTE_COLUMNS } from '../../contract';
import { plain } from '../../quantities/quantities';
import { meaningWithin } from '../meanings';
import { assumed } from '../notes-says';
import type { KeptChoice, NotesInput, PlannedJar } from '../notes-plan';
import type { Said } from '../said';

/** What a heading means is asked about with this before it: the answer holds for every later file. */
export const MEANS = 'means:';
/** What a column was said to mean by whoever matched it, for files with the same headings. */
const COLUMN = 'column:';
const OF_HEADINGS = /^(?:column:|unit:|day order$|spoons$|letter alone$|which (?:seeds|days)$)/;
/** The answer that drops what was taken over. */
const KEPT = 'kept choices';

type Choices = Pick<NotesInput, 'mapping' | 'answers'>;

/** Whether all headings of one of two files stand in the other, too. */
function sameHeadings(one: readonly string[], other: readonly string[]): boolean {
  const [first, second] = [new Set(one.map(plain)), new Set(other.map(plain))];
  return (
    [...first].every((heading) => second.has(heading)) || [...second].every((heading) => first.has(heading))
  );
}

/** The choices of an earlier file with these headings that nothing was said of for this one; the last of each. */
function earlier(
  headings: readonly string[],
  { mapping, answers }: Choices,
  kept: readonly KeptChoice[],
): Map<string, string> {
  const found = new Map<string, string>();
  for (const one of kept)
    if (OF_HEADINGS.test(one.question) && sameHeadings(one.headings, headings))
      found.set(one.question, one.answer.trim());
  const said = (question: string): boolean =>
    answers[question] !== undefined ||
    (question.startsWith(COLUMN) && mapping[question.slice(COLUMN.length)] !== undefined);
  return new Map([...found].filter(([question, answer]) => answer !== '' && !said(question)));
}

const meant = (answer: string): NoteColumn | undefined => NOTE_COLUMNS.find((one) => one === answer);

/** A choice in words, after "was taken over:". */
const inWords = ([question, answer]: readonly [string, string]): string => {
  const heading = question.slice(question.indexOf(':') + 1);
  const meaning = question.startsWith(COLUMN) ? meant(answer) : undefined;
  if (meaning !== undefined) return assumed.keptMeaning(heading, meaningWithin(meaning));
  return question.startsWith('unit:')
    ? assumed.keptUnit(heading, answer)
    : assumed.keptChoice(question, answer);
};

/** What is chosen for a file, with what was chosen for an earlier one of the same headings, and what is said of that. */
export function withEarlierChoices(
  headings: readonly string[],
  given: Choices,
  kept: readonly KeptChoice[],
): Choices & { readonly said: readonly Said[] } {
  const choices = earlier(headings, given, kept);
  if (choices.size === 0) return { ...given, said: [] };
  const dropped = given.answers[KEPT]?.trim().toLowerCase() === 'drop';
  const said: Said = {
    row: null,
    sentence: assumed.keptChoices([...choices].map(inWords)),
    id: KEPT,
    choices: [
      { value: 'keep', label: 'Keep them' },
      { value: 'drop', label: 'Decide anew' },
    ],
    chosen: dropped ? 'drop' : 'keep',
  };
  if (dropped) return { ...given, said: [said] };
  const [columns, answers] = [true, false].map((ofColumns) =>
    Object.fromEntries([...choices].filter(([question]) => question.startsWith(COLUMN) === ofColumns)),
  );
  const mapping = Object.fromEntries(
    Object.entries(columns ?? {}).flatMap(([question, answer]) => {
      const meaning = meant(answer);
      return meaning === undefined ? [] : [[question.slice(COLUMN.length), meaning] as const];
    }),
  );
  return {
    mapping: { ...mapping, ...given.mapping },
    answers: { ...answers, ...given.answers },
    said: [said],
  };
}

/** A plan's jars with what was chosen about the file's columns, kept with the first of them. */
export function withChoices(jars: readonly PlannedJar[], { mapping, answers }: Choices): PlannedJar[] {
  const [first, ...others] = jars;
  const chosen = [
    ...Object.entries(answers).filter(([id]) => id.startsWith(MEANS) || OF_HEADINGS.test(id)),
    ...Object.entries(mapping).map(([heading, meaning]) => [`${COLUMN}${heading}`, meaning] as const),
  ].map(([question, answer]) => ({ question, answer }));
  if (!first || chosen.length === 0) return [...jars];
  return [{ ...first, noted: { ...first.noted, answers: [...first.noted.answers, ...chosen] } }, ...others];
}
