// What the keeper chose to seed from, with the advice as it stood then. Never changed once released.
import { tableSql } from './journalled';

const choice = tableSql('choice', [
  // The line that was asked about (its founding batch); null: all that is kept.
  'line INTEGER REFERENCES batch (key) ON DELETE RESTRICT',
  // What was chosen; no jar: a fresh start.
  'jar INTEGER REFERENCES jar (key) ON DELETE RESTRICT',
  'portion INTEGER REFERENCES portion (key) ON DELETE RESTRICT CHECK (portion IS NULL OR jar IS NOT NULL)',
  'label TEXT NOT NULL CHECK (length(label) BETWEEN 1 AND 200)',
  'place INTEGER NOT NULL CHECK (place >= 1)',
  'model_version INTEGER NOT NULL CHECK (model_version >= 1)',
  "advice TEXT NOT NULL CHECK (json_valid(advice) AND json_type(advice) = 'object')",
]);

export default {
  version: 2,
  name: '0002-choice',
  sql: `${choice}
CREATE INDEX choice_line ON choice (line) WHERE line IS NOT NULL;
CREATE INDEX choice_jar ON choice (jar) WHERE jar IS NOT NULL;
CREATE INDEX choice_portion ON choice (portion) WHERE portion IS NOT NULL;
`,
} as const;
