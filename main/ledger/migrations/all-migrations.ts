// All migrations, oldest first. A new one gets the next number, a file of its own and a line here; a released one
// never changes (its hash is held by tests/ledger/migrations.test.ts).
import events from './0003-events';
import seedingSearch from './0004-seeding-search';

export interface Migration {
  readonly version: number;
  readonly name: string;
  /** Statements run in one transaction together with every other pending migration. */
  readonly sql: string;
}

/** Versions before this one were never released: their files are refused as they are. */
export const FIRST_VERSION = 3;

export const migrations: readonly Migration[] = [events, seedingSearch];

for (const [index, migration] of migrations.entries()) {
  const number = FIRST_VERSION + index;
  if (migration.version !== number || !migration.name.startsWith(String(number).padStart(4, '0'))) {
    throw new Error(`migration ${migration.name} should be number ${number}: numbers rise by exactly one`);
  }
}

/** The version that a list of migrations leads to. */
export const latestOf = (list: readonly Migration[]): number => list.at(-1)?.version ?? 0;
