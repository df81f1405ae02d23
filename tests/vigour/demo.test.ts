// The judgement on the invented scenario: each case that was planted on purpose must come out as a keeper would read it.
import { describe, expect, it } from 'vitest';
import { cases } from '../../core/demo/cases';
import { lineNamed, jarNamed } from './demo-evidence';

const heron = lineNamed('Heron');
const lantern = lineNamed('Lantern');
const batch = (line: typeof heron, day: string) => {
  const found = line.batches.find(({ madeOn }) => madeOn === day);
  if (!found) throw new Error(`no batch ${day}`);
  return found;
};
const score = (line: typeof heron, name: string) =>
  line.batches.flatMap(({ scores }) => scores).find(({ jar }) => jar.key === jarNamed(name).key);

describe('the slipping line', () => {
  it('is called, not before its last even batch, and before two weak batches in a row', () => {
    const called = heron.batches[heron.firstCalled ?? -1];
    expect(called?.madeOn).toBeDefined();
    expect(called!.madeOn! > cases.slip.lastEven).toBe(true);
    expect(called!.madeOn! < cases.slip.weak[1]).toBe(true);
    expect(['slipping', 'worn out']).toContain(heron.standing);
    expect(heron.trend!.slope).toBeLessThan(0);
  });

  it('is called neither slipping nor worn out at any batch up to the ninth', () => {
    for (const { madeOn, standing } of heron.batches) {
      if (madeOn! <= cases.slip.lastEven)
        expect(['too few batches to say', 'no slip seen', 'steady']).toContain(standing);
    }
  });

  it('says too few until five batches can be compared', () => {
    const compared = heron.batches.filter(({ points }) => points !== null);
    compared.slice(0, 4).forEach(({ standing }) => expect(standing).toBe('too few batches to say'));
    expect(compared[4]?.standing).not.toBe('too few batches to say');
  });
});

describe('the fibre that wrecks two jars', () => {
  const day = '2025-12-14';
  it('does not touch the batch: its plain siblings stand for it, at the usual level', () => {
    expect(batch(heron, day).points).toBeGreaterThan(70);
    expect(batch(heron, day).leftOut.map(({ because }) => because)).toEqual([
      'other treatment',
      'other treatment',
    ]);
  });
  it('is found from the siblings; two odd jars of one batch correct by ten points at most', () => {
    const effect = heron.effects.find(({ name }) => name.includes(cases.fibre.addition));
    expect(effect?.seen).toBeLessThan(-25);
    expect(effect!.points).toBe(-10);
  });
  it('is taken out of the score of the wrecked jars, by how much is said', () => {
    for (const name of cases.fibre.wrecked) {
      const found = score(heron, name);
      expect(found?.corrections.find(({ name }) => name === 'oat bran')?.points).toBe(10);
    }
  });
});

describe('the cold night', () => {
  it('blames the hold, not the culture', () => {
    const cold = batch(lantern, cases.coldNight.batch);
    expect(cold.points).toBeNull();
    expect(cold.leftOut.every(({ because }) => because === 'ran cool')).toBe(true);
    expect(lantern.suspects.some((one) => one.code === 'ran cool' && one.days.includes('2026-01-28'))).toBe(
      true,
    );
    expect(['steady', 'no slip seen']).toContain(lantern.standing);
    expect(lantern.batches.every(({ standing }) => standing !== 'slipping' && standing !== 'worn out')).toBe(
      true,
    );
  });
  it('is over in the next batch', () => {
    expect(batch(lantern, cases.coldNight.nextBatch).points).toBeGreaterThan(70);
  });
});

describe('what else was planted', () => {
  it('leaves forgotten outcomes unknown: neither weak nor fine', () => {
    for (const day of cases.forgotten.batches) {
      const line = heron.batches.some(({ madeOn }) => madeOn === day) ? heron : lantern;
      expect(batch(line, day).points).toBeNull();
      expect(batch(line, day).leftOut.every(({ because }) => because === 'unseen')).toBe(true);
    }
  });
  it('gives a spoiled jar no score at all', () => {
    expect(score(lantern, cases.spoiled.jar)).toBeUndefined();
  });
  it('does not hold the thaw against the cubes: the delay is taken out', () => {
    const thawed = score(lantern, cases.cubes.thawedInto);
    expect(
      thawed?.corrections.some(({ name, points }) => name === 'how long the seed had waited' && points > 0),
    ).toBe(true);
  });
});
