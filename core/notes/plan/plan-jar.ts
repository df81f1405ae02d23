// One read row → the jar it would add: fields, seedings, outcome, and the fingerprints that know it again.
import { dayName, exactDay } from '../../text/rough-days';
import { plain } from '../../quantities/quantities';
import { finalVolume } from '../rows/row-facts';
import type { OwnCells, NotedRow, NotesInput, PlannedJar, PlannedSeeding } from '../notes-plan';
import type { RowFacts } from '../rows/row-cells';
import { labelOf, type NoteRow } from '../rows/note-row';
import { rowText } from '../rows/same-row';
import type { SourceMention } from '../named-seeds';

/** What was read of a row: rows that are written otherwise and read the same are the same. */
const readText = ({ identity, seeds }: NoteRow, facts: RowFacts, note: string): string => JSON.stringify([
  dayName(identity), plain(identity.word ?? ''), identity.letter,
  facts.hours, facts.temperature && Number(facts.temperature.value.toFixed(2)),
  plain(facts.milk ?? ''), facts.milkAmount?.value ?? null, facts.additions.map(({ name, actual }) => [plain(name), actual?.value ?? null]),
  seeds.map(({ part: { from }, amount }) => [
    'source' in from ? plain(from.source.name) : from.jar.label.toLowerCase(), amount?.value ?? null,
  ]),
  facts.outcome && [
    facts.outcome.setWord, facts.outcome.ph, facts.outcome.signs, facts.outcome.spoiledSaid, plain(facts.outcome.texture ?? ''),
  ],
  plain(note),
]); // prettier-ignore

/** The answers of a line: its own id is left out of the question's, so that they are found when the line moves. */
export function answersOf(line: number, answers: NotesInput['answers']): Map<string, string> {
  const found = new Map<string, string>();
  for (const [id, answer] of Object.entries(answers)) {
    const asked = /^([^:]+):(\d+)(:.*)?$/s.exec(id);
    if (asked && Number(asked[2]) === line) found.set(`${asked[1]}${asked[3] ?? ''}`, answer);
  }
  return found;
}

/** A jar with its sources by the names they go by. */
export const withSources = (
  jar: PlannedJar,
  { seeds }: NoteRow,
  sourceOf: (source: SourceMention) => string,
): PlannedJar => ({
  ...jar,
  seedings: jar.seedings.map((seeding, at) => {
    const from = seeds[at]?.part.from;
    return from && 'source' in from ? { ...seeding, source: sourceOf(from.source) } : seeding;
  }),
});

/** @param without headings of new columns that are not taken over */
function notedOf(row: NoteRow, read: string, input: NotesInput, without: readonly string[]): NotedRow {
  const before = input.ledger.answered.get(row.here ?? row.clash ?? '');
  const answers = new Map([...(before ?? []), ...answersOf(row.row.line, input.answers)]);
  const cells: OwnCells = Object.fromEntries(
    Object.entries(row.own).filter(([heading]) => !without.includes(heading)),
  );
  return {
    sha: without.length === 0 ? row.raw : input.hash(rowText(cells, null)),
    read: input.hash(read),
    occurrence: without.length === 0 ? row.occurrence : (row.other?.occurrence ?? row.occurrence),
    cells,
    without,
    answers: [...answers].map(([question, answer]) => ({ question, answer })),
  };
}

/**
 * @param sourceOf the name a source goes by: the ledger's spelling, else the first in the notes
 * @param without headings of new columns that are not taken over
 */
export function planJar(
  row: NoteRow,
  byId: ReadonlyMap<string, NoteRow>,
  sourceOf: (source: SourceMention) => string,
  input: NotesInput,
  without: readonly string[] = [],
): PlannedJar {
  input.look?.();
  const { identity } = row;
  const facts = row.facts as RowFacts;
  const seedings = row.seeds.map(({ part, amount }): PlannedSeeding => {
    if ('source' in part.from)
      return { fromRow: null, fromUid: null, source: sourceOf(part.from.source), part: null, amount };
    const { id } = part.from.jar;
    const seed = byId.get(id);
    const uid = seed ? (seed.here ?? seed.clash) : id.slice('ledger:'.length);
    return {
      fromRow: uid === null ? (seed?.id ?? null) : null,
      fromUid: uid,
      source: null,
      part: part.part ?? null,
      amount,
    };
  });
  const note = row.log.noteText();
  const volume = finalVolume(
    facts,
    seedings.map(({ amount }) => amount),
  );
  return {
    id: row.id,
    line: row.row.line,
    label: labelOf(row),
    madeOn: exactDay(identity),
    madeFrom: identity.between?.from ?? null,
    madeTo: identity.between?.to ?? null,
    word: identity.word,
    letter: identity.letter ?? '',
    hold:
      facts.hours === null && facts.temperature === null
        ? null
        : { hours: facts.hours, planned: facts.temperature },
    fields: {
      vessel: facts.vessel,
      ...volume,
      milk: facts.milk,
      milkAmount: facts.milkAmount,
      note: note === '' ? null : note,
    },
    additions: facts.additions.map(({ name, actual }) => ({ name, actual })),
    seedings,
    outcome: facts.outcome,
    noted: notedOf(row, readText(row, facts, note), input, without),
  };
}
