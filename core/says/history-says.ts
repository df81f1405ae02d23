// One plain sentence for each act of the history: what was made and of what, or what changed, rather than only its kind.
/** A field that is another than before. */
export interface Correction {
  /** The jar or thing it is of: "14 Mar b". */
  readonly of: string;
  /** "set word" */
  readonly field: string;
  /** In words; null where nothing was noted. */
  readonly before: string | null;
  readonly after: string | null;
}

/** What an act did, as far as a sentence tells it. */
export interface ActDone {
  readonly kind: string;
  /** Its kind and subject in words: "recorded 14 Mar a, b". */
  readonly says: string;
  /** The first few jars it touched. */
  readonly about: readonly string[];
  /** What seeded the jars that it made, each once. */
  readonly seeds: readonly string[];
  /** What was stirred into them, each once; "plain" for jars with nothing. */
  readonly stirredIn: readonly string[];
  /** How jars set that were looked at, each word once. */
  readonly setWords: readonly string[];
  readonly corrected: readonly Correction[];
  /** So many jars were made. */
  readonly jars: number;
}

const MOST_NAMED = 3;
const MOST_CORRECTIONS = 2;
/** A longer text (a note, a reason) is not said again in a sentence. */
const MOST_LETTERS = 40;

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;

/** "a, b and two more" */
function named(all: readonly string[]): string {
  if (all.length <= MOST_NAMED + 1)
    return all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
  const more = all.length - MOST_NAMED;
  return `${all.slice(0, MOST_NAMED).join(', ')} and ${counts[more] ?? more} more`;
}

function correctionWords({ field, before, after }: Correction): string {
  if (after === null) return `${field} taken out`;
  if (after.length > MOST_LETTERS || (before?.length ?? 0) > MOST_LETTERS) return `${field} changed`;
  if (before !== null) return `${field} ${before} → ${after}`;
  return field.endsWith(' on') ? `${field} ${after}` : `${field}: ${after}`;
}

/** That a jar is no longer on the shelf goes without saying where the day it went is told. */
const saidByDay = ({ of, field, after }: Correction, all: readonly Correction[]): boolean =>
  field === 'on the shelf' &&
  after === 'no' &&
  all.some((one) => one.of === of && one.field === 'gone on' && one.after !== null);

/** "14 Mar b: set word soft → spoonable, whey none → some; and three more changes" */
function correctedWords(all: readonly Correction[]): string {
  const told = all.filter((one) => !saidByDay(one, all));
  const shown = told.slice(0, MOST_CORRECTIONS);
  const things = [...new Set(shown.map(({ of }) => of))].map(
    (of) =>
      `${of}: ${shown
        .filter((one) => one.of === of)
        .map(correctionWords)
        .join(', ')}`,
  );
  const more = told.length - shown.length;
  const rest = more === 0 ? '' : `, and ${counts[more] ?? more} more ${more === 1 ? 'change' : 'changes'}`;
  return `${things.join('; ')}${rest}`;
}

/** The sentence, without a capital and a full stop, days as they are stored. */
export function actSentence(done: ActDone): string {
  const { kind, says, about, seeds, stirredIn, setWords, corrected, jars } = done;
  if (kind === 'notes.bringIn' && jars > 0) return `${says}: ${jars === 1 ? 'one jar' : `${jars} jars`}`;
  if (kind === 'remarks.answer' && about.length > 0) return `${says} on ${named(about)}`;
  if (kind === 'batch.record' || kind === 'batch.addJar') {
    const from = seeds.length > 0 ? ` from ${named(seeds)}` : '';
    const what = [stirredIn, setWords].filter((list) => list.length > 0).map(named);
    return `${says}${from}${what.length > 0 ? `: ${what.join('; ')}` : ''}`;
  }
  if (corrected.length > 0 && !TOLD_BY_KIND.has(kind)) return correctedWords(corrected);
  return kind === 'outcome.save' && setWords.length > 0 ? `${says}: ${named(setWords)}` : says;
}

/** What these did is not a matter of fields: an import, undoing, a name, a choice, a lifted caution. */
const TOLD_BY_KIND: ReadonlySet<string> = new Set([
  'act.undo',
  'act.redo',
  'notes.bringIn',
  'ledger.merge',
  'line.name',
  'advice.choose',
  'caution.clear',
  'jar.mistake',
  'portion.save',
  'batch.addHold',
  'batch.made',
  'shelf.open',
  'shelf.eat',
  'shelf.give',
  'shelf.freeze',
  'shelf.thaw',
  'shelf.discard',
  'shelf.keep',
  'shelf.answer',
  'shelf.limits',
  'cost.prices',
  'plan.awake',
]);
