// The kitchen notes against their truth, every field of every row.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { read, seedLabels, sourceNames } from './read';

interface TruthRow {
  row: number;
  date: string;
  jar: string;
  seeds: string[];
  sources: string[];
  generation: number;
  seed_ml_each: number | null;
  hours: number;
  set: string | null;
  ph: string | null;
  addition: string | null;
  spoiled: boolean;
}
const text = readFileSync(join(import.meta.dirname, 'kitchen-notes.csv'), 'utf8');
const truth = JSON.parse(readFileSync(join(import.meta.dirname, 'kitchen-notes.truth.json'), 'utf8')) as {
  rows: TruthRow[];
  problems: { row: number; problems: string[] }[];
  jars: number;
};
const iso = (label: string): string => {
  const [, month, day, year, letter] = /^(\d+)\/(\d+)\/(\d+) (\w)$/.exec(label) ?? [];
  return `20${year}-${month?.padStart(2, '0')}-${day?.padStart(2, '0')} ${letter}`;
};

describe('kitchen notes', () => {
  const notes = read(text);

  it('has 44 jars and says why row 47 is aside', () => {
    expect(notes.plan.jars.length).toBe(truth.jars);
    expect(notes.preview.problems.map(({ row }) => row)).toEqual([47, 47]);
    const sentences = notes.preview.problems.map(({ sentence }) => sentence).join(' ');
    expect(sentences).toContain('“the good one from before new year” was not found');
    expect(sentences).toContain('“1010F” is impossible');
    expect(notes.preview.questions.filter(({ row }) => row === 18).map(({ sentence }) => sentence)[0]).toContain('fizzy?');
    expect(notes.preview.questions.every(({ blocks }) => !blocks)).toBe(true);
    expect(notes.preview.questions.length).toBe(1);
  });

  it.each(truth.rows.map((row) => [row.row, row] as const))('row %i', (line, row) => {
    const jar = notes.byLine.get(line);
    expect(jar).toBeDefined();
    if (!jar) return;
    expect(`${jar.madeOn} ${jar.letter}`).toBe(`${row.date} ${row.jar}`);
    expect(seedLabels(notes, jar)).toEqual(row.seeds.map(iso));
    expect(sourceNames(jar)).toEqual(row.sources);
    expect(notes.generations.get(jar.id)).toBe(row.generation);
    const fromJars = jar.seedings.filter(({ fromRow }) => fromRow !== null);
    for (const seeding of fromJars) expect(Number(seeding.amount?.value.toFixed(1))).toBe(row.seed_ml_each);
    expect(jar.hold?.hours ?? null).toBe(row.hours);
    expect(jar.outcome?.setWord ?? null).toBe(row.set);
    expect(jar.outcome?.ph ?? null).toBe(row.ph === null ? null : Number(row.ph));
    expect(jar.additions[0]?.name ?? null).toBe(row.addition);
    expect((jar.outcome?.signs.length ?? 0) > 0 || jar.outcome?.spoiledSaid === true).toBe(row.spoiled);
  });

  it('keeps what is not a figure in the note', () => {
    expect(notes.byLine.get(20)?.fields.note).toBe('used the short jar');
    expect(notes.byLine.get(20)?.fields.vessel).toBeNull();
    expect(notes.byLine.get(21)?.fields.note).toBe('half inch headroom');
    expect(notes.byLine.get(36)?.outcome?.signs).toEqual(['orange']);
  });

  it('reads milk, volume and pieces', () => {
    const jar = notes.byLine.get(4);
    expect(jar?.fields.milk).toBe('half and half');
    expect(jar?.fields.milkAmount?.value).toBeCloseTo(946.352946, 9);
    expect(jar?.fields.finalVolume?.value).toBeCloseTo(946.352946 + 4 * 14.78676478125, 9);
    expect(jar?.fields.finalVolumeKnown).toBe('milk plus seed');
    expect(notes.byLine.get(2)?.seedings.map(({ amount }) => amount?.value)).toEqual([10, 5]);
    expect(notes.plan.sources.map(({ name, form }) => [name, form])).toEqual([['Blue Tin', 'capsules'], ['Meadow Pot', 'tablets']]);
    expect(notes.byLine.get(47)).toBeUndefined();
  });

  it('says every bare temperature and the volume as assumptions', () => {
    const bare = notes.preview.assumptions.filter(({ sentence }) => sentence.includes('has no scale')).map(({ row }) => row);
    const expected = text.split('\n').flatMap((line, at) => (/,(?:99|100|101),/.test(line) ? [at + 1] : []));
    expect(bare).toEqual(expected);
    expect(notes.preview.assumptions.some(({ sentence }) => sentence.includes('milk plus seed'))).toBe(true);
  });
});
