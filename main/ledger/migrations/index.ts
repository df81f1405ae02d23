// All migrations, oldest first. A new one gets the next number, a file of its own and a line here; a released one
// never changes (its hash is held by tests/ledger/migrations.test.ts).
import ledger from './0001-ledger';
import choice from './0002-choice';

export interface Migration {
  readonly version: number;
  readonly name: string;
  /** Statements run in one transaction together with every other pending migration. */
  readonly sql: string;
}

export const migrations: readonly Migration[] = [ledger, choice];

for (const [index, migration] of migrations.entries()) {
  if (migration.version !== index + 1 || !migration.name.startsWith(String(index + 1).padStart(4, '0'))) {
    throw new Error(`migration ${migration.name} should be number ${index + 1}: numbers rise by exactly one`);
  }
}

export const LATEST_VERSION = migrations.length;
