// The way back as a person would say it, and the why beside every figure.
import { describe, expect, it } from 'vitest';
import { lineageFigures, percent, plainNumber } from '../../core/lineage/figures-with-why';
import { inWords, wayBack } from '../../core/says/way-to-source';
import { familyOf, type Told } from './short-families';

const SOURCES = [
  { key: 1, name: 'Blue Tin' },
  { key: 2, name: 'Meadow Pot' },
  { key: 3, name: 'Lantern', culture: true },
  { key: 4, name: 'Old Lantern', culture: true, knownGenerations: 12 },
];
const START = [
  { source: 1, pieces: 8, countPerPiece: 1e9 },
  { source: 2, pieces: 4, countPerPiece: 1e9 },
];
const jar = (key: number, from: Told['from'], label = `jar ${key}`): Told => ({
  key,
  label,
  ...(from ? { from } : {}),
});
const from = (...keys: number[]) => keys.map((fromJar) => ({ fromJar, volumeMl: 40 }));
const said = (key: number, ...jars: Told[]): string => wayBack(familyOf(jars, SOURCES), key);
/** Jars 1 to n, each from the one before. */
const chain = (n: number): Told[] =>
  Array.from({ length: n }, (_, i) => jar(i + 1, i === 0 ? START : from(i)));

describe('the way back', () => {
  it('of a first jar names its sources', () => {
    expect(said(1, jar(1, START))).toBe('jar 1 was started from Blue Tin and Meadow Pot.');
    expect(said(1, jar(1, [{ source: 3, volumeMl: 40 }]))).toBe(
      'jar 1 was started from Lantern (received, its past unknown).',
    );
    expect(said(1, jar(1, [{ source: 4, volumeMl: 40 }]))).toBe(
      'jar 1 was started from Old Lantern (received at generation 12).',
    );
  });

  it('of the next ones names every jar', () => {
    expect(said(2, ...chain(2))).toBe(
      'jar 2 was seeded from jar 1, and jar 1 was started from Blue Tin and Meadow Pot.',
    );
    expect(said(3, ...chain(3))).toBe(
      'jar 3 was seeded from jar 2; jar 2 goes back to jar 1, which was started from Blue Tin and Meadow Pot.',
    );
    expect(said(6, ...chain(6))).toBe(
      'jar 6 was seeded from jar 5; jar 5 goes back through jar 4, jar 3 and jar 2 to jar 1, which was started from Blue Tin and Meadow Pot.',
    );
  });

  it('of a long line is abbreviated, and every jar of it is either named or counted', () => {
    expect(said(20, ...chain(20))).toBe(
      // Named: 20, 19, 18, 17 and 1; not named: 16 to 2, fifteen.
      'jar 20 was seeded from jar 19; jar 19 goes back through jar 18, jar 17 and 15 more jars, to jar 1, which was started from Blue Tin and Meadow Pot.',
    );
  });

  it('tells what was mixed in, jars and fresh sources', () => {
    expect(
      said(3, ...chain(2), jar(3, [...from(2), { fromJar: 1, volumeMl: 5 }, { source: 1, pieces: 2 }])),
    ).toBe(
      'jar 3 was seeded from jar 2, jar 1 and fresh Blue Tin; jar 2 goes back to jar 1, which was started from Blue Tin and Meadow Pot.',
    );
    expect(said(4, ...chain(2), jar(3, from(2, 1)), jar(4, from(3)))).toBe(
      'jar 4 was seeded from jar 3; jar 3 goes back through jar 2 (mixed with jar 1) to jar 1, which was started from Blue Tin and Meadow Pot.',
    );
    const mixed = chain(20).map((one) =>
      one.key === 10 ? jar(10, [...from(9), { source: 2, pieces: 1 }]) : one,
    );
    expect(said(20, ...mixed)).toContain('15 more jars, 1 of them mixed from several seeds, to jar 1');
  });

  it('says so where the past is unknown', () => {
    expect(said(1, jar(1, undefined))).toBe('jar 1 has no recorded seed, so its past is unknown.');
    expect(said(2, { ...jar(1, undefined, 'lost a'), lost: true }, jar(2, from(1)))).toBe(
      'jar 2 was seeded from lost a, and lost a stands for a jar that nobody can name.',
    );
    expect(said(1, jar(1, from(404)))).toBe(
      'jar 1 was seeded from a jar that is no longer in the ledger, so its past is unknown.',
    );
  });

  it('lists without end are cut', () => {
    expect(inWords([])).toBe('');
    expect(inWords(['a', 'b', 'c', 'd', 'e', 'f'])).toBe('a, b, c and 3 more');
  });
});

const figures = (key: number, ...jars: Told[]) => new Map(lineageFigures(familyOf(jars, SOURCES), key).map((one) => [one.name, one])); // prettier-ignore

describe('figures', () => {
  it('show every count with formula, inputs and assumptions', () => {
    const shown = figures(2, jar(1, START), {
      ...jar(2, [{ fromJar: 1, volumeMl: 10 }]),
      finalVolumeMl: 1000,
    });
    expect([...shown].map(([name, { shown }]) => [name, shown])).toEqual([
      ['Generation', '2'],
      ['Generation, shortest way', '2'],
      ['Generation, mean', '2'],
      ['Doublings in this jar', '6.6'],
      ['Doublings from jar to jar', '6.6'],
      ['Doublings since the start from sources', '4.0'],
      ['Seed shares', 'jar 1 100 % (volume)'],
      ['Traced back to sources', 'Blue Tin 66.7 %, Meadow Pot 33.3 %'],
    ]);
    for (const { why } of shown.values()) {
      expect(why.formula).not.toBe('');
      expect(why.inputs.length).toBeGreaterThan(0);
    }
    expect(shown.get('Doublings in this jar')?.why.inputs).toContainEqual({
      name: 'final volume',
      value: '1000 mL',
    });
    expect(shown.get('Traced back to sources')?.why.assumptions.join()).toContain('if all had grown equally');
  });

  it('say "at least" and "unknown" where that is so, never 0', () => {
    const shown = figures(
      2,
      { ...jar(1, undefined), lost: true },
      { ...jar(2, [{ fromJar: 1 }]), finalVolumeMl: null },
    );
    expect(shown.get('Generation')?.shown).toBe('at least 2');
    expect(shown.get('Doublings in this jar')?.shown).toBe('unknown');
    expect(shown.get('Doublings from jar to jar')?.shown).toBe('unknown');
    expect(shown.get('Traced back to sources')?.shown).toBe('unknown past 100 %');
    expect(shown.get('Generation')?.why.assumptions.join()).toContain('the past is unknown');
  });

  it('say when equal shares are only assumed', () => {
    const shown = figures(3, jar(1, START), jar(2, START), jar(3, [{ fromJar: 1 }, { fromJar: 2 }]));
    expect(shown.get('Seed shares')?.shown).toBe('jar 1 50 %, jar 2 50 % (equal, assumed)');
    expect(shown.get('Seed shares')?.why.assumptions).toEqual(['every seed brought as much as the others']);
  });

  it('numbers read well, and a small part is never shown as nothing', () => {
    expect([8.872e9, 44.36, 946.35, 0.000123, 1234].map(plainNumber)).toEqual(['8.87 × 10⁹', '44.4', '946', '1.23 × 10⁻⁴', '1234']); // prettier-ignore
    expect([0, 0.0001, 0.5, 0.9999, 1].map(percent)).toEqual([
      '0 %',
      'under 0.1 %',
      '50 %',
      'over 99.9 %',
      '100 %',
    ]);
  });
});
