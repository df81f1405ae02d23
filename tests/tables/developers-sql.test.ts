// The statements with which DEVELOPERS.md says that a ledger can be read by anybody.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { must } from '../ledger/ledger-files';
import { everyKind } from '../archive/every-kind';

it('run on a ledger with every kind of record, and tell what the calls tell', () => {
  const session = everyKind();
  const text = readFileSync(join(import.meta.dirname, '../../DEVELOPERS.md'), 'utf8');
  const [, sql = ''] = /```sql\n([^`]+)```/.exec(text) ?? [];
  const statements = sql.split(/;\s*(?:\n|$)/).filter((one) => one.replaceAll(/--.*$/gm, '').trim() !== '');
  expect(statements).toHaveLength(4);
  const [jars = [], edges = [], ancestors = [], acts = []] = statements.map(
    (one) => session.ledger.db.prepare(one).all() as Record<string, unknown>[],
  );
  const family = must(session, 'family.get', {}).jars;
  const made = jars.filter(({ state }) => state === 'made' || state === 'lost');
  expect(made.map(({ uid }) => uid).toSorted()).toEqual(family.map(({ id }) => id).toSorted());
  const mine = new Set(family.map(({ id }) => id));
  expect(edges.filter(({ jar }) => mine.has(String(jar)))).toHaveLength(
    family.reduce((sum, { seeds }) => sum + seeds.length, 0),
  );
  expect(ancestors[0]).toMatchObject({ steps: 0 });
  expect(acts.length).toBeGreaterThan(0);
  session.close();
});
