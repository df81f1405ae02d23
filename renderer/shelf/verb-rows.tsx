// The verbs of the chosen thing, one press each; beside some a field for how much, how many or to whom, which may stay empty.
import { useId, useState } from 'react';
import type { Reader } from '../parts/reading';
import { useReader } from '../parts/use-reader';
import { go } from '../state/store';
import type { Thing } from './things';
import type { Verbs } from './use-verbs';

interface RowProps {
  readonly verb: string;
  /** What the button does, beside its word; where a field stands beside it, that says so. */
  readonly says?: string;
  readonly field?: {
    readonly label: string;
    readonly empty: string;
    readonly numeric?: boolean;
    /** What is counted, behind the field. */
    readonly unit?: string;
  };
  readonly initial?: string;
  readonly primary?: boolean;
  /** @returns what is wrong with what was typed, or null where it was done */
  readonly onPress: (typed: string) => string | null;
}

function Row({ verb, says, field, initial = '', primary = false, onPress }: RowProps) {
  const [typed, type] = useState(initial);
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  const press = (): void => setProblem(onPress(typed));
  return (
    <div className="shelf-verb">
      <button type="button" className={`button${primary ? ' primary' : ''}`} onClick={press}>
        <strong>{verb}</strong>
        {says !== undefined && <span className="shelf-verb-says">{says}</span>}
      </button>
      {field && (
        <input
          className="input"
          aria-label={field.label}
          placeholder={field.empty}
          value={typed}
          maxLength={200}
          autoComplete="off"
          inputMode={field.numeric ? 'decimal' : undefined}
          aria-invalid={problem === null ? undefined : true}
          aria-describedby={problem === null ? undefined : id}
          onChange={(event) => {
            type(event.target.value);
            setProblem(null);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') press();
          }}
        />
      )}
      {field?.unit !== undefined && <span className="shelf-verb-unit">{field.unit}</span>}
      {problem !== null && (
        <p className="field-problem" id={id} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

const WHOLE = 'Type a whole number, such as 12.';
/** Null: nothing was typed; undefined: no whole number. */
const whole = (text: string): number | null | undefined => {
  if (text.trim() === '') return null;
  return /^\s*\d{1,4}\s*$/.test(text) && Number(text) > 0 ? Number(text) : undefined;
};

type Verb = Thing['verbs'][number];
type Words = Pick<RowProps, 'verb' | 'says' | 'field' | 'initial'>;

/** What each verb is called, and what may be typed beside it. */
function wordsOf(verb: Verb, { name, left, reserveOf }: Thing): Words {
  const inPieces = left.pieces !== null;
  switch (verb) {
    case 'open':
      return { verb: 'Open', says: 'it keeps less long then' };
    case 'eat':
      return inPieces
        ? { verb: 'Eat', field: { label: `How many of ${name} are eaten`, empty: 'all', numeric: true, unit: 'cubes' } }
        : { verb: 'Eat', field: { label: `How much of ${name} is eaten`, empty: 'all of it' } };
    case 'give':
      return { verb: 'Give', field: { label: `To whom ${name} is given (optional)`, empty: 'to whom' } };
    case 'freeze':
      return {
        verb: reserveOf.length > 0 ? 'Freeze as reserve' : inPieces ? 'Freeze' : 'Freeze all of it',
        field: { label: `Into how many cubes ${name} is frozen`, empty: 'as it is', numeric: true, unit: reserveOf.length > 0 ? 'cubes, 1 tbsp each' : 'cubes' },
        initial: inPieces ? '' : '12',
      };
    case 'thaw':
      return inPieces
        ? { verb: 'Thaw', field: { label: `How many of ${name} are thawed`, empty: 'all', numeric: true, unit: 'cubes' } }
        : { verb: 'Thaw', says: 'and not frozen again' };
    case 'keep':
      return { verb: 'Keep for seed', says: 'unopened' };
    case 'discard':
      return { verb: 'Discard', field: { label: `Why ${name} is discarded (optional)`, empty: 'why' } };
  }
} // prettier-ignore

/** mL in a cube of a tray: a spoonful (common practice, no source). */
const CUBE = 15;
/** Of a reserve only so much is frozen as its cubes hold: the rest stays a jar. */
const reserve = ({ amount }: Thing['left'], cubes: number) => ({
  forSeed: true,
  amount:
    amount?.unit === 'mL' && amount.value > cubes * CUBE
      ? { value: cubes * CUBE, unit: 'mL' as const, typed: null }
      : null,
});

/** Does it with what was typed. @returns what is wrong with that, or null where it was sent */
function press(
  verb: Verb,
  { id, left, reserveOf }: Thing,
  typed: string,
  reader: Reader,
  { run }: Verbs,
): string | null {
  const [text, count] = [typed.trim() || null, whole(typed)];
  if (verb === 'freeze' || verb === 'thaw' || (verb === 'eat' && left.pieces !== null)) {
    if (count === undefined) return WHOLE;
    if (verb === 'freeze')
      run('shelf.freeze', {
        id,
        into: count,
        ...(reserveOf.length > 0 && count !== null ? reserve(left, count) : {}),
      });
    else if (verb === 'thaw') run('shelf.thaw', { id, pieces: count });
    else run('shelf.eat', { id, pieces: count, all: count === null });
  } else if (verb === 'eat') {
    const read = reader.amount(typed, 'volume');
    if (!read.ok) return read.sentence;
    run('shelf.eat', { id, amount: read.value, all: read.value === null });
  } else if (verb === 'give') run('shelf.give', { id, all: true, to: text });
  else if (verb === 'discard') run('shelf.discard', { id, why: text });
  else if (verb === 'open') run('shelf.open', { id });
  else run('shelf.keep', { id });
  return null;
}

/** The rows of what may be done with it; seeding from it first. */
export function VerbRows({ thing, verbs }: { readonly thing: Thing; readonly verbs: Verbs }) {
  const { reader } = useReader();
  const portion = thing.kind === 'portion' ? `/${thing.id}` : '';
  return (
    <>
      {thing.safety.seed && thing.place !== 'warmth' && (
        <Row
          verb="Seed from it"
          says="in a new batch"
          primary={thing.nextSeedOf.length > 0}
          onPress={() => {
            go('batch', `seed:${thing.jar}${portion}`);
            return null;
          }}
        />
      )}
      {thing.verbs.map((verb) => (
        <Row
          key={verb}
          {...wordsOf(verb, thing)}
          onPress={(typed) => press(verb, thing, typed, reader, verbs)}
        />
      ))}
    </>
  );
}
