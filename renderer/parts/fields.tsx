// Fields: a label, the input, what was understood beside it, what is wrong below it. All of them keep what was typed.
import { useEffect, useId, useRef, type ReactNode } from 'react';
import './parts.css';
import type { Read } from './reading';

interface Said {
  readonly label: string;
  /** One clear sentence on what is wrong; shown under the field and read with it. */
  readonly problem?: string | undefined;
  readonly hint?: string | undefined;
}

/** Shows problem and echo under an input and names them for a screen reader. */
function Notes({
  id,
  problem,
  echo,
  hint,
}: {
  id: string;
  problem?: string | undefined;
  echo?: string | null;
  hint?: string | undefined;
}) {
  return (
    <>
      {hint && !echo && !problem && (
        <span className="field-hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {echo && !problem && (
        <span className="field-echo" id={`${id}-echo`}>
          {echo}
        </span>
      )}
      {problem && (
        <span className="field-problem" id={`${id}-problem`}>
          {problem}
        </span>
      )}
    </>
  );
}
const describedBy = (
  id: string,
  problem?: string,
  echo?: string | null,
  hint?: string,
): string | undefined => (problem ? `${id}-problem` : echo ? `${id}-echo` : hint ? `${id}-hint` : undefined);

interface TextProps extends Said {
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** What the text comes to; its sentence shows once the field was left or recording was tried. */
  readonly read?: Read<unknown> | undefined;
  readonly placeholder?: string;
  readonly width?: 'short' | 'middle' | 'full';
  readonly suggestions?: readonly string[];
  /** The form opens with the keyboard here. */
  readonly startHere?: boolean;
  readonly numeric?: boolean;
  /** The field was left, or Enter pressed in it. */
  readonly onLeave?: () => void;
}

/** One line of text. */
export function TextField(props: TextProps) {
  const id = useId();
  const {
    label,
    value,
    onChange,
    read,
    hint,
    placeholder,
    width = 'middle',
    suggestions,
    startHere = false,
  } = props;
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (!startHere) return;
    input.current?.focus();
    input.current?.select();
  }, [startHere]);
  const problem = props.problem ?? (read && !read.ok ? read.sentence : undefined);
  const echo = read?.ok ? read.echo : null;
  return (
    <div className={`field ${width}`}>
      <label className="label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        ref={input}
        className="input"
        value={value}
        maxLength={200}
        autoComplete="off"
        spellCheck={false}
        placeholder={placeholder}
        inputMode={props.numeric ? 'decimal' : undefined}
        list={suggestions && suggestions.length > 0 ? `${id}-list` : undefined}
        aria-invalid={problem ? true : undefined}
        aria-describedby={describedBy(id, problem, echo, hint)}
        onChange={(event) => onChange(event.target.value)}
        onBlur={props.onLeave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') props.onLeave?.();
        }}
      />
      {suggestions && suggestions.length > 0 && (
        <datalist id={`${id}-list`}>
          {suggestions.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </datalist>
      )}
      <Notes id={id} problem={problem} echo={echo} hint={hint} />
    </div>
  );
}

/** Several lines of text. */
export function ProseField({
  label,
  value,
  onChange,
  hint,
}: Said & { readonly value: string; readonly onChange: (value: string) => void }) {
  const id = useId();
  return (
    <div className="field full">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      <textarea
        id={id}
        className="input"
        rows={2}
        value={value}
        maxLength={10_000}
        aria-describedby={describedBy(id, undefined, null, hint)}
        onChange={(event) => onChange(event.target.value)}
      />
      <Notes id={id} hint={hint} />
    </div>
  );
}

export interface Choice<T extends string> {
  readonly value: T;
  readonly label: string;
}

/** A few words as choices, each with a capital. */
export const wordChoices = <const T extends string>(words: readonly T[]): readonly Choice<T>[] =>
  words.map((value) => ({ value, label: value.slice(0, 1).toUpperCase() + value.slice(1) }));

/** One of a few, all visible. `''` as a value stands for "not noted" and looks the same everywhere. */
export function ChoiceField<T extends string>({
  label,
  value,
  choices,
  onChange,
  problem,
  hint,
  unsaid = 'Not noted',
}: Said & {
  readonly value: T | '';
  readonly choices: readonly Choice<T>[];
  readonly onChange: (value: T | '') => void;
  /** Words for the choice "unknown", or null where one of the others must hold. */
  readonly unsaid?: string | null;
}) {
  const id = useId();
  const all: readonly Choice<T | ''>[] =
    unsaid === null ? choices : [{ value: '', label: unsaid }, ...choices];
  return (
    <fieldset className="choices" aria-describedby={describedBy(id, problem, null, hint)}>
      <legend className="label">{label}</legend>
      <div className="choice-row">
        {all.map((choice) => (
          <label key={choice.value} className={choice.value === '' ? 'choice unsaid' : 'choice'}>
            <input
              type="radio"
              name={id}
              checked={value === choice.value}
              onChange={() => onChange(choice.value)}
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
      <Notes id={id} problem={problem} hint={hint} />
    </fieldset>
  );
}

/** One of many, folded away. */
export function SelectField<T extends string>({
  label,
  value,
  choices,
  onChange,
  problem,
  hint,
}: Said & {
  readonly value: T;
  readonly choices: readonly Choice<T>[];
  readonly onChange: (value: T) => void;
}) {
  const id = useId();
  return (
    <div className="field middle">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="input"
        value={value}
        aria-invalid={problem ? true : undefined}
        aria-describedby={describedBy(id, problem, undefined, hint)}
        onChange={(event) => onChange(event.target.value as T)}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      <Notes id={id} problem={problem} hint={hint} />
    </div>
  );
}

/** Yes or not said. */
export function CheckField({
  label,
  checked,
  onChange,
  tone,
}: {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly tone?: 'caution';
}) {
  return (
    <label className={tone ? `choice check ${tone}` : 'choice check'}>
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}

/** Fields that belong together, under a heading. */
export function Section({
  title,
  says,
  level = 2,
  children,
}: {
  readonly title: string;
  readonly says?: string;
  /** Of its heading: one deeper than what it stands under. */
  readonly level?: 2 | 3;
  readonly children: ReactNode;
}) {
  const id = useId();
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section className="form-section" aria-labelledby={id}>
      <Heading id={id}>{title}</Heading>
      {says && <p className="soft">{says}</p>}
      {children}
    </section>
  );
}
