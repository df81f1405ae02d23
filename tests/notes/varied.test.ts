// Invented spreadsheets in other words, separators, units and orders, each against a truth written beforehand.
import { describe, expect, it } from 'vitest';
import { ALL_KEEPERS } from './all-keepers';
import { read, seedLabels, sourceNames } from './read';

describe.each(ALL_KEEPERS)('$name', (file) => {
  const notes = read(file.text, {
    ...(file.today === undefined ? {} : { today: file.today }),
    answers: file.answers ?? {},
  });
  const received = notes.plan.sources.filter(({ receivedFrom }) => receivedFrom !== null).length;

  it('brings in these lines and leaves those aside', () => {
    expect([...notes.byName.keys()].toSorted()).toEqual(Object.keys(file.jars).toSorted());
    expect([...new Set(notes.preview.problems.map(({ row }) => row))].toSorted((a, b) => a - b)).toEqual(file.aside ?? []);
    expect(notes.preview.questions.filter(({ blocks }) => blocks)).toEqual([]);
  });

  it('says what it took', () => {
    const { problems, questions, assumptions } = notes.preview;
    const said = [...problems, ...questions, ...assumptions].map(({ sentence }) => sentence).join('\n');
    for (const wanted of file.says ?? []) expect(said).toMatch(wanted);
  });

  it.each(Object.entries(file.jars))('line %s', (line, truth) => {
    const jar = notes.byName.get(line);
    expect(jar).toBeDefined();
    if (!jar) return;
    expect([jar.madeOn, jar.word, jar.letter].filter(Boolean).join(' ')).toBe(truth.jar);
    expect(seedLabels(notes, jar)).toEqual(truth.seeds ?? []);
    expect(sourceNames(jar)).toEqual(truth.sources ?? []);
    if (received === 0 || truth.generation > 1) expect(notes.generations.get(jar.id)).toBe(truth.generation);
    const ml = jar.seedings.flatMap(({ amount }) => (amount?.unit === 'mL' ? Number(amount.value.toFixed(1)) : []));
    expect(ml).toEqual(truth.ml ?? []);
    const pieces = jar.seedings.flatMap(({ amount }) => (amount?.unit === 'pieces' ? amount.value : []));
    expect(pieces).toEqual(truth.pieces ?? []);
    if (truth.hours !== undefined) expect(jar.hold?.hours).toBe(truth.hours);
    if (truth.celsius !== undefined) expect(jar.hold?.planned?.value).toBeCloseTo(truth.celsius, 3);
    expect(jar.outcome?.setWord ?? undefined).toBe(truth.set);
    expect(jar.outcome?.ph ?? undefined).toBe(truth.ph);
    if (truth.added)
      expect(jar.additions.map(({ actual }) => (actual === null ? 'blank' : `${Number(actual.value.toFixed(1))} ${actual.unit}`))).toEqual(truth.added);
    if (truth.milk !== undefined) expect(jar.fields.milk).toBe(truth.milk);
    if (truth.milkMl !== undefined) expect(jar.fields.milkAmount?.value).toBeCloseTo(truth.milkMl, 0);
    if (truth.part !== undefined) expect(jar.seedings.map(({ part }) => part)).toEqual([truth.part]);
    if (truth.note !== undefined) expect(jar.fields.note).toContain(truth.note);
    if (truth.additions) expect(jar.additions.map(({ name }) => name)).toEqual(truth.additions);
    expect((jar.outcome?.signs.length ?? 0) > 0 || jar.outcome?.spoiledSaid === true).toBe(truth.spoiled ?? false);
  });
});
