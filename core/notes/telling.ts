// What is told of rows and of the file as a whole: the preview's lines, changed rows, and what holds for all jars.
import type { NotesPreview } from '../contract';
import { MEASURES, plain, type KitchenMeasure } from '../quantities';
import { finalVolume } from './cells';
import { SYSTEMS, type Conventions, type Question } from './conventions';
import type { Layout, Said } from './layout';
import type { LedgerView } from './plan';
import { labelOf, type NoteRow } from './rows';
import { assumed, question } from './says';

const seedNames = (row: NoteRow): string[] =>
  row.seeds.map(({ part }) => ('jar' in part.from ? part.from.jar.label : part.from.source.name));

/** Line numbers in words, at most a dozen. */
function lines(rows: readonly NoteRow[]): string {
  const numbers = [...new Set(rows.map((row) => row.row.line))];
  const shown = numbers.slice(0, 12).join(', ');
  return numbers.length > 12
    ? `rows ${shown} and ${numbers.length - 12} more`
    : `${numbers.length === 1 ? 'row' : 'rows'} ${shown}`;
}

/** How spoons and cups were read: one sentence for each measure, with the words it was written in. */
export function spoonsSaid(
  rows: readonly NoteRow[],
  { spoons, spoonsReason }: Conventions,
): { said: Said[]; question: Question | null } {
  const measures = new Map<KitchenMeasure, string[]>();
  for (const { name, word } of rows.flatMap((row) => row.log.measures)) {
    const there = measures.get(name) ?? [];
    measures.set(name, there);
    // "T" and "t" are different spoons, "Tbsp" and "tbsp." are one.
    const bare = word.replace(/\.$/, '');
    const same = (other: string): boolean =>
      other === bare || (bare.length > 1 && plain(other) === plain(bare));
    if (!there.some(same)) there.push(bare);
  }
  const said = [...measures].map(([name, words]): Said => ({
    row: null,
    sentence: assumed.spoons(
      words,
      `${spoons === 'Australia' ? 'Australian' : spoons} ${name}`,
      String(Number(MEASURES[spoons][name].toFixed(2))),
      spoonsReason,
    ),
  }));
  const [first] = [...measures.values()].flat();
  if (first === undefined || !spoonsReason.startsWith('that is the spoon chosen'))
    return { said, question: null };
  return {
    said,
    question: {
      id: 'spoons',
      row: null,
      sentence: question.spoons(first),
      choices: SYSTEMS.map((system) => ({ value: system, label: system })),
      blocks: false,
    },
  };
}

/** What was assumed of many jars at once. */
export function fileLevelSays(rows: readonly NoteRow[], layout: Layout): Said[] {
  const said: Said[] = [];
  const plus = rows.filter(
    (row) =>
      row.facts &&
      finalVolume(
        row.facts,
        row.seeds.map(({ amount }) => amount),
      ).finalVolumeKnown === 'milk plus seed',
  );
  if (plus.length > 0) said.push({ row: null, sentence: assumed.milkPlusSeed(plus.length, lines(plus)) });
  if (layout.columns.some(({ meaning }) => meaning === 'volume') && rows.length > 0)
    said.push({ row: null, sentence: assumed.volume() });
  const batches = new Set(rows.map(({ identity }) => `${identity.day}|${plain(identity.word ?? '')}`));
  if (batches.size > 0 && rows.length > batches.size)
    said.push({ row: null, sentence: assumed.oneBatch(batches.size) });
  const holds = new Map<string, NoteRow[]>();
  for (const row of rows) {
    if (!row.facts || (row.facts.hours === null && row.facts.temperature === null)) continue;
    const key = `${row.identity.day}|${plain(row.identity.word ?? '')}|${row.facts.hours}|${row.facts.temperature?.value.toFixed(2)}`;
    holds.set(key, [...(holds.get(key) ?? []), row]);
  }
  const shared = [...holds.values()].filter((group) => group.length > 1).flat();
  if (shared.length > 0) said.push({ row: null, sentence: assumed.sharedHold(lines(shared)) });
  return said;
}

/** How a row differs from the jar that came in from it before, as a question; nothing is changed. */
export function changedRow(row: NoteRow, ledger: LedgerView): void {
  const uid = row.clash ?? '';
  row.log.questions.length = 0;
  if (!ledger.fromNotes.has(uid)) {
    row.log.ask('same label', question.byHand(labelOf(row)));
    return;
  }
  const now = ledger.factsOf(uid);
  const differences: string[] = [];
  const compare = (name: string, before: string | number | null, after: string | number | null): void => {
    if (String(before ?? '').toLowerCase() !== String(after ?? '').toLowerCase())
      differences.push(`${name} ${after ?? 'blank'} here, ${before ?? 'blank'} in the ledger`);
  };
  if (now && row.facts) {
    const { facts } = row;
    compare('hours', now.hours, facts.hours);
    compare(
      'temperature in °C',
      now.temperature === null ? null : Number(now.temperature.toFixed(1)),
      facts.temperature === null ? null : Number(facts.temperature.value.toFixed(1)),
    );
    compare('milk', now.milk, facts.milk);
    compare('set', now.setWord, facts.outcome?.setWord ?? null);
    compare('pH', now.ph, facts.outcome?.ph ?? null);
    compare('additions', now.additions.join(' + '), facts.additions.map(({ name }) => name).join(' + '));
    compare('seeds', now.seeds.toSorted().join(' + '), seedNames(row).toSorted().join(' + '));
    const spoiled = (facts.outcome?.signs.length ?? 0) > 0 || facts.outcome?.spoiledSaid === true;
    compare('spoiled', now.spoiled ? 'yes' : 'no', spoiled ? 'yes' : 'no');
    if (differences.length === 0) compare('note', now.note, row.log.note.join('\n') || null);
  }
  row.log.ask(
    'changed',
    question.changed(labelOf(row), differences.length > 0 ? differences : ['its text is not the same']),
  );
}

export function previewRow(row: NoteRow): NotesPreview['rows'][number] {
  const seeds = seedNames(row);
  const label = row.identity.day === null ? null : labelOf(row);
  const base = { row: row.row.line, label, seeds };
  if (row.here !== null)
    return { ...base, state: 'already here', says: 'This row is in the ledger already.' };
  if (row.repeats !== null) return { ...base, state: 'already here', says: assumed.repeated(row.repeats) };
  if (row.clash !== null)
    return { ...base, state: 'already here', says: row.log.questions.at(-1)?.sentence ?? '' };
  if (row.log.problems.length > 0)
    return { ...base, state: 'aside', says: row.log.problems[0]?.sentence ?? '' };
  return {
    ...base,
    state: 'new',
    says: `${label ?? ''}${seeds.length > 0 ? ` from ${seeds.join(' and ')}` : ''}`,
  };
}
