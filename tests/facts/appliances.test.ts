// Appliances through the calls: a run is kept with its readings and proves, or says what is missing. Invented.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { DRESSES } from '../growth/exports';
import { batchOf, fromSource, must, newFolder, newSession, plainJar, plainSource, refusalOf, stateOf } from '../ledger/ledger-files'; // prettier-ignore

it('an appliance is proven by a run, which is kept and undone as one', () => {
  const session = newSession();
  const { id } = must(session, 'appliance.save', {
    appliance: { id: null, name: 'Blue bath', type: 'bath' },
  });
  const folder = newFolder();
  const write = (name: string, level: number, tau: number): { path: string } => {
    const start = Date.UTC(2026, 2, 1, 18) / 1000;
    const points = Array.from({ length: 30 * 12 + 1 }, (_, i) => ({ civil: start + i * 300, celsius: level - 18 * Math.exp(-i / 12 / tau) })); // prettier-ignore
    writeFileSync(join(folder, name), DRESSES['semicolons, points, decimal comma']!(points, 60));
    return { path: join(folder, name) };
  };
  const runs = [
    { where: 'bath' as const, spot: 'centre' as const, file: write('centre.csv', 38, 0.1) },
    { where: 'bath' as const, spot: 'edge' as const, file: write('edge.csv', 37.5, 0.1) },
    { where: 'jar' as const, spot: null, file: write('jar.csv', 37.8, 0.9) },
  ];
  const before = stateOf(session);
  expect(must(session, 'appliance.list', {}).appliances).toMatchObject([{ name: 'Blue bath', proof: null, holds: 0 }]); // prettier-ignore
  const done = must(session, 'appliance.prove', { appliance: id, filled: true, runs });
  expect(done.proof).toMatchObject({
    passes: true,
    lacks: [],
    began: '2026-03-01T18:00:00+01:00',
    hours: 30,
  });
  expect(done.proof.edgeCooler).toBeCloseTo(0.5, 1);
  expect(done.proof.says).toMatch(/^Proven: it settles at 38\.0 °C/);
  expect(must(session, 'appliance.list', {}).appliances[0]?.proof).toEqual(done.proof);
  expect(must(session, 'appliance.proof', { hold: done.hold })).toEqual(done.proof);
  expect(must(session, 'act.undo', { act: done.act }).says).toContain('noted a run of Blue bath');
  expect(stateOf(session)).toBe(before);
  const short = must(session, 'appliance.prove', { appliance: id, runs: runs.slice(0, 1) });
  expect(short.proof.passes).toBe(false);
  expect(short.proof.lacks).toEqual(['it is not noted whether all its places were filled', 'nothing was read at its edge']); // prettier-ignore
  session.close();
});

it('checks of tools are kept with their day, and what is not checked is said to prove nothing', () => {
  const session = newSession();
  expect(must(session, 'tool.list', {}).tools.map(({ passes, due }) => [passes, due])).toEqual([[null, true], [null, true], [null, true]]); // prettier-ignore
  expect(must(session, 'tool.check', { tool: 'meter', day: '2026-03-14', shown: 4.03, unit: 'pH' }).passes).toBe(true); // prettier-ignore
  expect(must(session, 'tool.check', { tool: 'fridge', day: '2026-03-01', shown: 45, unit: '°F' }).says).toContain('turn it down'); // prettier-ignore
  const [meter, , fridge] = must(session, 'tool.list', {}).tools;
  expect(meter).toMatchObject({ day: '2026-03-14', passes: true, due: false });
  expect(fridge).toMatchObject({ shown: 7.22, passes: false });
  expect(refusalOf(session, 'tool.check', { tool: 'meter', day: '2026-03-14', shown: 4, unit: '°C' }).code).toBe('invalid'); // prettier-ignore
  session.close();
});

it('how fast jars follow their bath is learned from the run of the appliance they stand in, and reaches their warm hours', () => {
  const session = newSession();
  const folder = newFolder();
  // Newton's law in closed form: a bath that is at 38 °C after a quarter of an hour, and a jar in it that follows by tau (h).
  const write = (name: string, start: number, tau: number): { path: string } => {
    const points = Array.from({ length: 30 * 12 + 1 }, (_, i) => ({ civil: start + i * 300, celsius: 38 - 18 * Math.exp(-i / 12 / tau) })); // prettier-ignore
    writeFileSync(join(folder, name), DRESSES['semicolons, points, decimal comma']!(points, 60));
    return { path: join(folder, name) };
  };
  const proven = (name: string, tau: number): string => {
    const { id } = must(session, 'appliance.save', { appliance: { id: null, name, type: 'bath' } });
    const start = Date.UTC(2026, 2, 1, 18) / 1000;
    must(session, 'appliance.prove', { appliance: id, filled: true, runs: [
      { where: 'bath', spot: 'centre', file: write(`${name} bath.csv`, start, 0.05) },
      { where: 'jar', spot: null, file: write(`${name} jar.csv`, start, tau) },
    ] }); // prettier-ignore
    return id;
  };
  const [quick, slow] = [proven('Blue bath', 0.5), proven('Tall bath', 4)];
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const jarIn = (day: string, appliance: string | null): { jar: string; warm: () => number } => {
    const began = `${day}T18:00:00+01:00`;
    const holds = [{ startedAt: began, endedAt: `${day.slice(0, 8)}${String(Number(day.slice(8)) + 1).padStart(2, "0")}T23:00:00+01:00`, hours: null, planned: null, probe: null, readings: [], note: null }]; // prettier-ignore
    const { jars, batch } = must(session, 'batch.record', batchOf(day, [plainJar('a', { seedings: [fromSource(source)], hold: 0 })], { holds })); // prettier-ignore
    const hold = must(session, 'batch.get', { id: batch }).holds[0]?.id ?? '';
    if (appliance !== null) must(session, 'facts.correct', { kind: 'hold', id: hold, changes: { appliance } });
    must(session, 'readings.bringIn', { hold, where: 'bath', file: write(`${day}.csv`, Date.parse(began) / 1000 + 3600, 0.05) }); // prettier-ignore
    const jar = jars[0] ?? '';
    const shown = (): string => must(session, 'judgement.jar', { jar }).figures.find(({ name }) => name === 'warm hours')?.shown ?? ''; // prettier-ignore
    return { jar, warm: () => Number.parseFloat(shown()) };
  };
  const [a, b, c] = [jarIn('2026-03-03', quick), jarIn('2026-03-06', slow), jarIn('2026-03-09', null)];
  // Warming through takes a jar about its time constant: the slow one lost some hours of the same bath.
  expect(a.warm() - b.warm()).toBeGreaterThan(1.5);
  // Of one that stood nobody knows where, both runs speak.
  expect(c.warm()).toBeGreaterThanOrEqual(b.warm());
  expect(c.warm()).toBeLessThanOrEqual(a.warm());
  // Moved to the other bath on paper, it is judged by that.
  const hold = must(session, 'hold.list', {}).holds.find(({ began }) => began?.startsWith('2026-03-03'))?.id ?? '';
  expect(must(session, 'hold.get', { id: hold }).warmth?.warmHours?.mid).toBeCloseTo(a.warm(), 0);
  must(session, 'facts.correct', { kind: 'hold', id: hold, changes: { appliance: slow } });
  expect(a.warm()).toBeCloseTo(b.warm(), 1);
  session.close();
}); // prettier-ignore
