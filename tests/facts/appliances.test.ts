// Appliances through the calls: a run is kept with its readings and proves, or says what is missing. Invented.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { DRESSES } from '../growth/exports';
import { must, newFolder, newSession, refusalOf, stateOf } from '../ledger/ledger-files';

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
