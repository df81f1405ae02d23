// Invented spreadsheets in other words, separators, units and orders, each against a truth written beforehand.
import { describe, expect, it } from 'vitest';
import { read, seedLabels, sourceNames } from './read';
import { VARIED } from './varied';

describe.each(VARIED)('$name', (file) => {
  const notes = read(file.text, file.today === undefined ? {} : { today: file.today });
  const received = notes.plan.sources.filter(({ receivedFrom }) => receivedFrom !== null).length;

  it('brings in these lines and leaves those aside', () => {
    expect(notes.plan.jars.map(({ line }) => line).toSorted((a, b) => a - b)).toEqual(Object.keys(file.jars).map(Number));
    expect([...new Set(notes.preview.problems.map(({ row }) => row))].toSorted((a, b) => a - b)).toEqual(file.aside ?? []);
    expect(notes.preview.questions.filter(({ blocks }) => blocks)).toEqual([]);
  });

  it.each(Object.entries(file.jars))('line %s', (line, truth) => {
    const jar = notes.byLine.get(Number(line));
    expect(jar).toBeDefined();
    if (!jar) return;
    expect([jar.madeOn, jar.word, jar.letter].filter(Boolean).join(' ')).toBe(truth.jar);
    expect(seedLabels(notes, jar.line)).toEqual(truth.seeds ?? []);
    expect(sourceNames(notes, jar.line)).toEqual(truth.sources ?? []);
    if (received === 0 || truth.generation > 1) expect(notes.generations.get(jar.line)).toBe(truth.generation);
    const ml = jar.seedings.flatMap(({ amount }) => (amount?.unit === 'mL' ? Number(amount.value.toFixed(1)) : []));
    expect(ml).toEqual(truth.ml ?? []);
    const pieces = jar.seedings.flatMap(({ amount }) => (amount?.unit === 'pieces' ? amount.value : []));
    expect(pieces).toEqual(truth.pieces ?? []);
    if (truth.hours !== undefined) expect(jar.hold?.hours).toBe(truth.hours);
    if (truth.celsius !== undefined) expect(jar.hold?.planned?.value).toBeCloseTo(truth.celsius, 3);
    expect(jar.outcome?.setWord ?? undefined).toBe(truth.set);
    expect(jar.outcome?.ph ?? undefined).toBe(truth.ph);
    if (truth.additions) expect(jar.additions.map(({ name }) => name)).toEqual(truth.additions);
    expect((jar.outcome?.signs.length ?? 0) > 0 || jar.outcome?.spoiledSaid === true).toBe(truth.spoiled ?? false);
  });
});
