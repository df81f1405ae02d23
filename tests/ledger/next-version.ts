// An invented version after the newest, to see migrating by.
import { latestOf, type Migration, migrations } from '../../main/ledger/migrations/all-migrations';

export const NEXT: Migration = {
  version: latestOf(migrations) + 1,
  name: 'next',
  sql: `ALTER TABLE source ADD COLUMN weather TEXT;
    CREATE TABLE more (name TEXT) STRICT; INSERT INTO more SELECT name FROM source;`,
};
