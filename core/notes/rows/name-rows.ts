// Which jar each row is: found again in the ledger, given its year and its letter, and set apart from rows of the same label.
import { dayName } from '../../text/rough-days';
import { plain } from '../../quantities/quantities';
import type { Layout } from '../layout/column-meanings';
import type { LedgerJar, NotesInput } from '../notes-plan';
import { assumed, problem } from '../notes-says';
import { fillYears, labelKey, Letters, setRanges } from './identity';
import { labelOf, type NoteRow, putTo } from './note-row';
import { throughOtherColumns } from './other-columns';
import { type Cell, filled, type RowFacts } from './row-cells';
import { pairByPlace } from './same-place';

/**
 * Finds what came in before, gives years and letters, and sets equal labels apart.
 * @param factsOf what the cells of a row tell, without a word said about it
 */
export function nameRows(
  rows: readonly NoteRow[],
  layout: Layout,
  input: NotesInput,
  factsOf: (row: NoteRow) => RowFacts,
): void {
  const { ledger } = input;
  const uids = new Map(ledger.jars.map((jar) => [jar.uid, jar]));
  const counts = new Map<string, number>();
  for (const row of rows) {
    input.look?.();
    row.occurrence = (counts.get(row.raw) ?? 0) + 1;
    counts.set(row.raw, row.occurrence);
    row.here = ledger.raw.get(`${row.raw}:${row.occurrence}`) ?? null;
    if (row.here === null && row.occurrence > 1 && row.identity.letter !== null)
      row.here = ledger.raw.get(`${row.raw}:1`) ?? null;
  }
  throughOtherColumns(rows, layout, input);
  fillYears(
    rows.map((row) => ({
      identity: row.identity,
      log: row.log,
      yearTold: row.yearTold,
      known: (row.here === null ? null : uids.get(row.here)?.day) ?? null,
    })),
    input.today,
  );
  setRanges(rows, input.today);

  for (const [row, jar] of pairByPlace(rows, input, factsOf)) {
    row.guessed = true;
    row.identity.letter = jar.letter.toLowerCase();
  }

  giveLetters(rows, input.ledger, uids);
  setApart(rows, input);
}

/** Letters for rows that name none: the jar's in the ledger, else the first that is free on its day. */
function giveLetters(
  rows: readonly NoteRow[],
  ledger: NotesInput['ledger'],
  uids: ReadonlyMap<string, LedgerJar>,
): void {
  const taken = new Map<string, Letters>();
  const takenOn = (day: string | null, word: string | null): Letters => {
    const key = `${day}|${plain(word ?? '')}`;
    const there = taken.get(key) ?? new Letters();
    taken.set(key, there);
    return there;
  };
  for (const jar of ledger.jars) takenOn(dayName(jar), jar.word).take(jar.letter.toLowerCase());
  for (const { identity } of rows)
    if (identity.letter !== null) takenOn(dayName(identity), identity.word).take(identity.letter);
  for (const { identity, log, here } of rows) {
    if (identity.letter !== null) continue;
    identity.letter =
      (here === null ? null : uids.get(here)?.letter) ?? takenOn(dayName(identity), identity.word).next();
    takenOn(dayName(identity), identity.word).take(identity.letter);
    if (identity.longName !== null) {
      log.assume(assumed.named(identity.longName, identity.letter));
      log.note.push(identity.longName);
    } else log.assume(assumed.letter(identity.letter));
  }
}

/** The cell that says what a row's jar is called, to be mended; none where its line names several jars. */
function calledBy({ id, row, cells }: NoteRow): Cell | undefined {
  if (id !== `row:${row.line}`) return undefined;
  return (['jar', 'label', 'date'] as const).flatMap((meaning) => filled(cells, meaning))[0];
}

/** Rows whose label another row or the ledger has: repeated, or to be told apart. */
function setApart(rows: readonly NoteRow[], input: NotesInput): void {
  const { ledger } = input;
  const inLedger = new Map(ledger.jars.map((jar) => [labelKey(dayName(jar), jar.word, jar.letter), jar.uid]));
  const byLabel = new Map<string, NoteRow[]>();
  for (const row of rows) {
    const { day, word, letter } = row.identity;
    if (day === null || letter === null) continue;
    const key = labelKey(dayName(row.identity), word, letter);
    putTo(byLabel, key, row);
    if (row.here === null) row.clash = inLedger.get(key) ?? null;
    if (day > input.today) row.log.problem(problem.dayFuture(day, input.today));
  }
  for (const same of byLabel.values()) {
    if (same.length < 2) continue;
    const [first] = same;
    if (!first) continue;
    if (same.every((row) => row.rawText === first.rawText)) {
      for (const row of same.slice(1)) {
        row.repeats = first.row.line;
        row.log.assume(assumed.repeated(first.row.line));
      }
      continue;
    }
    const sentence = problem.sameLabel(
      labelOf(first),
      same.map((one) => one.row.line),
    );
    for (const row of same) if (row.here === null) row.log.problem(sentence, calledBy(row));
  }
}
