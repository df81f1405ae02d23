// Killed at any moment, whatever it was at, the program leaves whole files and keeps what it acknowledged. All of 500 kills:
// npm run kills.
import { beforeAll, expect, it } from 'vitest';
import { built } from '../ledger/built';
import { killWhile } from './kill-while';
import { WAYS } from './ways';

let program = '';
beforeAll(async () => {
  program = await built('main/headless.ts');
}, 60_000);

it('whatever it is at', async () => {
  let amid = 0;
  for (const [name, way] of Object.entries(WAYS)) amid += (await killWhile(program, name, way, 1)).amid;
  expect(amid, 'every program was over before it was to be killed').toBeGreaterThan(0);
}, 120_000);
