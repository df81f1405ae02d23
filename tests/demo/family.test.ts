// The planted cases as lineage counts them. Expectations follow from the scenario by hand, not from what the code says.
import { expect, it } from 'vitest';
import { suggestFreshStarts } from '../../core/advice/two-weak-in-a-row';
import { cases } from '../../core/demo/cases';
import { buildFamily } from '../../core/lineage/family';
import { play } from './play';

const { key, records, jars } = play();
const family = buildFamily(records);
const names = (keys: readonly number[]): string[] => keys.map((one) => jars[one - 1]?.name ?? '?').toSorted();

it('has two lines, Heron the elder, and every jar belongs to one of them', () => {
  expect(family.lines.map((line) => line.founded)).toEqual(['2025-10-19', '2025-11-05']);
  for (const one of family.keys) expect(family.linesOf(one).length).toBeGreaterThan(0);
});

it('counts Heron a generation a batch, fourteen of them', () => {
  cases.slip.batches.forEach((day, index) => {
    expect(family.generationOf(key(`${day} a`)), day).toEqual({
      deepest: index + 1,
      shallowest: index + 1,
      mean: index + 1,
      atLeast: false,
    });
  });
});

it('counts Lantern as at least: its first jars were the second generation or later', () => {
  const first = family.generationOf(key('2025-11-05 a'));
  expect(first.deepest).toBe(2);
  expect(first.atLeast).toBe(true);
  expect(family.generationOf(key('2026-04-22 a'))).toMatchObject({ deepest: 10, atLeast: true });
});

it('a jar thawed from cubes is young again', () => {
  expect(family.generationOf(key(cases.cubes.thawedInto)).deepest).toBe(
    family.generationOf(key(cases.cubes.of)).deepest + 1,
  );
  expect(family.generationOf(key('2026-03-11 a')).deepest).toBe(8);
});

it('shares by volume: 15 and 10 mL of two jars are three and two fifths', () => {
  const shares = [...family.sharesOf(key(cases.twoJars.jar)).values()].toSorted();
  expect(shares[0]).toBeCloseTo(0.4, 12);
  expect(shares[1]).toBeCloseTo(0.6, 12);
});

it('one jar belongs to both lines', () => {
  const both = family.keys.filter((one) => family.linesOf(one).length === 2);
  expect(names(both)).toEqual([cases.bothLines.jar]);
});

it('a transfer of 45 mL into 900 is log2(20) doublings, thirteen times over', () => {
  expect(family.doublingsOf(key('2026-04-19 a')).transfers).toBeCloseTo(13 * Math.log2(20), 9);
});

it('the spoiled jar condemns itself and holds the three that descend from it, nothing else', () => {
  const condemned = family.keys.filter((one) => family.cautionLevelOf(one) === 'condemned');
  const held = family.keys.filter((one) => family.cautionLevelOf(one) === 'set aside');
  expect(names(condemned)).toEqual([cases.spoiled.jar]);
  expect(names(held)).toEqual([...cases.spoiled.setAside]);
});

it('suggests a fresh start for Heron alone, after its two weak batches; one cold night and the bran suggest nothing', () => {
  const suggestions = suggestFreshStarts(family, {
    setWord: (one) => jars[one - 1]?.outcome?.setWord ?? null,
  });
  expect(suggestions.map((one) => one.line)).toEqual([family.lines[0]?.batch]);
  expect(suggestions[0]?.weak.map((step) => step.madeOn)).toEqual([...cases.slip.weak]);
});
