// One read row → the jar it would add: fields, seedings, outcome, and the fingerprints that know it again.
import { plain } from '../../quantities';
import { finalVolume } from '../rows/row-facts';
import { answeredOf } from './changes';
import { withAnswersToNote } from '../rows/outcomes';
import type { NotesInput, PlannedJar, PlannedSeeding } from '../notes-plan';
import type { RowFacts } from '../rows/row-cells';
import { labelOf, type NoteRow } from '../rows/note-rows';
import type { SourceMention } from '../seeds/seed-index';

/** @param sourceOf the name a source goes by: the ledger's spelling, else the first in the notes. */
export function planJar(
  row: NoteRow,
  byId: ReadonlyMap<string, NoteRow>,
  sourceOf: (source: SourceMention) => string,
  input: NotesInput,
): PlannedJar {
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
  const before = input.ledger.answered.get(row.here ?? '') ?? new Set<string>();
  const answered = [...new Set([...before, ...answeredOf(row.row.line, input.answers)])].toSorted();
  const read = JSON.stringify([
    identity.day, plain(identity.word ?? ''), identity.letter, facts.hours, facts.temperature && Number(facts.temperature.value.toFixed(2)),
    plain(facts.milk ?? ''), facts.milkAmount?.value ?? null, facts.additions.map(({ name, actual }) => [plain(name), actual?.value ?? null]),
    row.seeds.map(({ part, amount }) => ['source' in part.from ? plain(part.from.source.name) : part.from.jar.label.toLowerCase(), amount?.value ?? null]),
    facts.outcome && [facts.outcome.setWord, facts.outcome.ph, facts.outcome.signs, facts.outcome.spoiledSaid, plain(facts.outcome.texture ?? '')], plain(note),
  ]); // prettier-ignore
  return {
    id: row.id,
    line: row.row.line,
    label: labelOf(row),
    madeOn: identity.day ?? '',
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
    outcome: withAnswersToNote(facts.outcome, note, input.answers, row.row.line),
    fingerprint: `${row.raw}:${input.hash(read)}${answered.length === 0 ? '' : `:${answered.join(',')}`}`,
    occurrence: row.occurrence,
  };
}
