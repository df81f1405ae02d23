// Helpers of the notes tests: reads text with an empty ledger and gives back what a truth file can be compared with.
import { createHash } from 'node:crypto';
import { readNotes, type NotesInput, type NotesPlan, type PlannedJar } from '../../core/notes/notes-door';
import type { NotesPreview } from '../../core/contract';
import { buildFamily } from '../../core/lineage/family';
import type { FamilyJar, FamilySeeding, FamilySource } from '../../core/lineage/lineage-shapes';

export const hash = (text: string): string => createHash('sha256').update(text).digest('hex');

export const EMPTY: NotesInput['ledger'] = {
  jars: [],
  sources: [],
  mistaken: new Set(),
  raw: new Map(),
  forms: [],
  choices: [],
  read: new Set(),
  answered: new Map(),
  fromNotes: new Map(),
  factsOf: () => null,
};

export interface Read {
  readonly preview: NotesPreview;
  readonly plan: NotesPlan;
  /** Jars by their line in the file (the first of a line), and by "2 b" where a line is several. */
  readonly byLine: ReadonlyMap<number, PlannedJar>;
  readonly byName: ReadonlyMap<string, PlannedJar>;
  /** By id in the plan. */
  readonly generations: ReadonlyMap<string, number>;
}

export function read(text: string, more: Partial<NotesInput> = {}): Read {
  const reading = readNotes({
    file: 'notes.csv', text, mapping: {}, answers: {}, today: '2026-03-01', preferences: { spoons: 'US' }, ledger: EMPTY, hash, ...more,
  }); // prettier-ignore
  if (!reading.ok) throw new Error(`refused: ${reading.code}`);
  const { plan, preview } = reading;
  const byLine = new Map(plan.jars.toReversed().map((jar) => [jar.line, jar]));
  const byName = new Map(plan.jars.map((jar) => [byLine.get(jar.line) === jar ? String(jar.line) : `${jar.line} ${jar.letter}`, jar]));
  return { plan, preview, byLine, byName, generations: generationsOf(plan) };
}

/** Generations by core/lineage, by id in the plan. */
export function generationsOf(plan: NotesPlan): ReadonlyMap<string, number> {
  const keys = new Map(plan.jars.map(({ id }, at) => [id, at + 1]));
  const keyOf = (id: string | null): number | null => (id === null ? null : (keys.get(id) ?? null));
  const sources = plan.sources.map((source, at): FamilySource => ({ key: at + 1, name: source.name, culture: source.receivedFrom !== null, knownGenerations: null }));
  const sourceKey = new Map(sources.map(({ name, key }) => [name, key]));
  const batches = new Map<string, number>();
  const jars = plan.jars.map((jar): FamilyJar => {
    const batchKey = `${jar.madeOn}|${jar.word}`;
    if (!batches.has(batchKey)) batches.set(batchKey, batches.size + 1);
    return {
      key: keyOf(jar.id) ?? 0, madeOn: jar.madeOn, batch: batches.get(batchKey) ?? 0, hold: null, letter: jar.letter, label: jar.label, lost: false,
      finalVolumeMl: jar.fields.finalVolume?.value ?? null, countPerMl: null, spoiled: false, packages: [],
    }; // prettier-ignore
  });
  let key = 0;
  const seedings = plan.jars.flatMap((jar) =>
    jar.seedings.map((seeding): FamilySeeding => {
      key += 1;
      return {
        key, jar: keyOf(jar.id) ?? 0, fromJar: keyOf(seeding.fromRow), source: seeding.source === null ? null : (sourceKey.get(seeding.source) ?? null),
        volumeMl: seeding.amount?.unit === 'mL' ? seeding.amount.value : null, pieces: seeding.amount?.unit === 'pieces' ? seeding.amount.value : null,
        countPerPiece: null, countDirect: null,
      }; // prettier-ignore
    }),
  );
  const family = buildFamily({ jars, seedings, sources, clearings: [] });
  return new Map(plan.jars.map((jar) => [jar.id, family.generationOf(keyOf(jar.id) ?? 0).deepest]));
}

/** "2025-10-15 b", for comparing seeds. */
export const seedLabels = (read: Read, jar: PlannedJar): string[] =>
  jar.seedings.flatMap((seeding) => {
    const from = seeding.fromRow === null ? undefined : read.plan.jars.find(({ id }) => id === seeding.fromRow);
    return from ? [`${from.madeOn} ${[from.word, from.letter].filter(Boolean).join(' ')}`] : [];
  });
export const sourceNames = (jar: PlannedJar): string[] => jar.seedings.flatMap(({ source }) => source ?? []);
