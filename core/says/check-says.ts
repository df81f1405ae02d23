// What a check of a whole ledger finds, in sentences.
export type Finding =
  /** Pages or indexes of the file, in SQLite's own words. */
  | { readonly code: 'file'; readonly what: string }
  /** Rows that point at a record that is not there. */
  | { readonly code: 'points nowhere'; readonly kind: string; readonly count: number }
  /** What the history says of records against what stands there. */
  | { readonly code: 'history'; readonly what: string; readonly count: number }
  /** A rule of the tables, or of the rule book in its own sentence. */
  | { readonly code: 'tables'; readonly what: string; readonly count: number }
  | { readonly code: 'rule'; readonly sentence: string }
  | { readonly code: 'more rules'; readonly count: number }
  | { readonly code: 'photographs'; readonly count: number }
  | { readonly code: 'backup'; readonly file: string };

const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);

/** What is wrong, and what to do. */
export function findingSentence(found: Finding): string {
  switch (found.code) {
    case 'file':
      return `The file is damaged: ${found.what}. Open the newest good backup, or save what can be read.`;
    case 'points nowhere':
      return `Records of the kind ${found.kind} point at something that is not there (${times(found.count)}). Open the newest good backup.`;
    case 'history':
      return `The history does not fit what is recorded: ${found.what} (${times(found.count)}). Open the newest good backup.`;
    case 'tables':
      return `A rule of the ledger does not hold: ${found.what} (not so ${times(found.count)}). Open the newest good backup.`;
    case 'rule':
      return found.sentence;
    case 'more rules':
      return `And ${found.count} more of this kind.`;
    case 'photographs':
      return `${found.count === 1 ? 'A photograph is' : `${found.count} photographs are`} not in the folder beside the ledger, or not what was put there. Copy the folder back from where the ledger came from.`;
    case 'backup':
      return `The backup ${found.file} can’t be opened, so don’t count on it. Make a new one.`;
  }
}

const counted = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;

/** The last line of a check: what was looked at, and what came of it. */
export function checkedSentence(
  findings: number,
  { jars, acts, photographs, backups }: { jars: number; acts: number; photographs: number; backups: number },
): string {
  const seen = `${counted(jars, 'jar')}, ${counted(acts, 'act')}, ${counted(photographs, 'photograph')}, ${counted(backups, 'backup')}`;
  if (findings === 0) return `The ledger is in order: ${seen}. Nothing was changed.`;
  return `${counted(findings, 'thing is', 'things are')} not in order. Nothing was changed.`;
}
