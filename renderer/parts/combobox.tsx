// A text field with a list of suggestions: the editable combobox with list autocomplete of the W3C ARIA practices.
// The first suggestion that fits is taken by Enter (or Tab) once something was typed; one that makes something new only
// when it is gone to and Enter pressed, or clicked. Focus never leaves the field.
/* oxlint-disable jsx-a11y/prefer-tag-over-role -- the pattern asks for these roles; a datalist can't show why a jar is refused */
import { afterPress } from '../state/after-press';
import {
  useEffect,
  useId,
  useRef,
  useState,
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
} from 'react';
import { focusNext } from './form-keys';

export interface Suggestion {
  readonly id: string;
  readonly label: string;
  readonly detail?: ReactNode;
  /** Why it can't be picked. */
  readonly refused?: string;
  /** It can’t be picked and is what the text names: then nothing else is taken for it. */
  readonly meant?: boolean;
  /** It makes something new: never taken for what was typed, only when it is chosen itself. */
  readonly explicit?: boolean;
}

interface Props<S extends Suggestion> {
  readonly label: string;
  readonly value: string;
  readonly onText: (text: string) => void;
  /** Suggestions for a text, best first. */
  readonly find: (text: string) => Promise<readonly S[]>;
  readonly onPick: (suggestion: S) => void;
  readonly onRefused: (suggestion: S) => void;
  /**
   * The field was left, or Enter pressed, with text that picks nothing. `matched`: something in the list fits it.
   * `refused`: nothing does but this, which can't be picked.
   */
  readonly onLeft: (text: string, matched: boolean, refused: S | undefined) => void;
  /** Something is picked and its label stands in the field: leaving it picks nothing anew. */
  readonly picked: boolean;
  readonly problem?: string | undefined;
  readonly placeholder?: string;
  readonly startHere?: boolean;
  readonly children?: ReactNode;
}

const none: readonly never[] = [];

/** Whether a suggestion may be taken for what was typed. */
const fits = (one: Suggestion): boolean => !one.refused && !one.explicit;

/** The place of what is taken for the text as it stands; -1 where nothing is. One that is refused says why. */
function best(list: readonly Suggestion[]): number {
  const meant = list.findIndex((one) => one.meant);
  if (meant >= 0) return meant;
  const fitting = list.findIndex(fits);
  return fitting >= 0 ? fitting : list.findIndex((one) => !one.explicit);
}

/** The suggestions for a text, once they are here; what was asked for last counts. */
function useSuggestions<S extends Suggestion>(find: (text: string) => Promise<readonly S[]>) {
  const asked = useRef<Promise<readonly S[]> | null>(null);
  const [suggestions, setSuggestions] = useState<readonly S[]>(none);
  const [arrived, setArrived] = useState(false);
  const ask = (text: string): void => {
    const mine = find(text);
    asked.current = mine;
    setArrived(false);
    void mine.then((list) => {
      if (asked.current !== mine) return;
      setSuggestions(list);
      setArrived(true);
    });
  };
  return { suggestions, arrived, ask, soon: (text: string) => asked.current ?? find(text) };
}

/** What the field does: which suggestion is active, what its keys do, what leaving it tells. */
function useCombobox<S extends Suggestion>(
  props: Props<S>,
  id: string,
  input: RefObject<HTMLInputElement | null>,
) {
  const { value, find, onPick, onRefused, onLeft, picked } = props;
  const { suggestions, arrived, ask, soon } = useSuggestions(find);
  const [open, setOpen] = useState(false);
  const [moved, setMoved] = useState<number | null>(null);

  const typed = value.trim() !== '' && !picked;
  const shown = open && suggestions.length > 0;
  const active = !shown
    ? -1
    : moved !== null
      ? Math.min(moved, suggestions.length - 1)
      : typed
        ? best(suggestions)
        : -1;

  useEffect(() => {
    if (active >= 0) document.getElementById(`${id}-${active}`)?.scrollIntoView({ block: 'nearest' });
  }, [active, id]);

  const show = (text: string): void => {
    ask(text);
    setMoved(null);
    setOpen(true);
  };
  const close = (): void => {
    setOpen(false);
    setMoved(null);
  };
  const take = (suggestion: S | undefined, moveOn: boolean): void => {
    if (!suggestion) return;
    if (suggestion.refused) {
      onRefused(suggestion);
      return;
    }
    onPick(suggestion);
    close();
    const form = input.current?.closest<HTMLElement>('form');
    // Not from another field, where the keeper has gone on before the suggestions were here.
    if (moveOn && form && input.current && document.activeElement === input.current)
      focusNext(form, input.current);
  };

  /** Tells of text that picks nothing, once it is known whether the list has something for it. */
  const tellLeft = (): void => {
    const text = value;
    void soon(text).then((list) => {
      const meant = list.find((one) => one.meant);
      const matched = !meant && list.some(fits);
      onLeft(text, matched, matched ? undefined : (meant ?? list.find((one) => one.refused)));
    });
  };
  /** Enter or Tab: `at` in the list, or what fits best. */
  const choose = (list: readonly S[], at: number, moveOn: boolean): void => {
    const suggestion = list[at >= 0 ? at : best(list)];
    if (suggestion && (moveOn || !suggestion.explicit)) take(suggestion, moveOn);
    else if (moveOn) tellLeft();
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.nativeEvent.isComposing || event.ctrlKey || event.metaKey) return;
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      if (!shown) show(picked ? '' : value);
      else if (!event.altKey) {
        const down = event.key === 'ArrowDown';
        const from = active < 0 ? (down ? -1 : suggestions.length) : active;
        setMoved((from + (down ? 1 : -1) + suggestions.length) % suggestions.length);
      }
    } else if (event.key === 'Escape' && shown) {
      event.preventDefault();
      close();
    } else if (event.key === 'Enter' || (event.key === 'Tab' && !event.shiftKey)) {
      const moveOn = event.key === 'Enter';
      if (!typed && !(moveOn && active >= 0)) return;
      if (moveOn) event.preventDefault();
      const waitFor = soon(value);
      const at = moved ?? -1;
      if (arrived && shown) choose(suggestions, at, moveOn);
      // Pressed before the suggestions were here: take the first that fits once they are.
      else void waitFor.then((list) => choose(list, at, moveOn));
    }
  };

  const onBlur = (): void => {
    close();
    if (typed) afterPress(tellLeft);
  };
  return { suggestions, shown, active, show, take, onKeyDown, onBlur };
}

/** What is suggested, below the field. The pointer picks here; the keyboard picks from the field, as the pattern asks. */
function SuggestionList<S extends Suggestion>(props: {
  /** Of the field. */
  readonly id: string;
  readonly shown: boolean;
  readonly suggestions: readonly S[];
  readonly active: number;
  readonly onTake: (suggestion: S) => void;
}) {
  const { id, shown, suggestions, active, onTake } = props;
  return (
    <div
      className="suggestions"
      id={`${id}-list`}
      role="listbox"
      tabIndex={-1}
      aria-label="Suggestions"
      hidden={!shown}
    >
      {suggestions.map((suggestion, at) => (
        <div
          key={`${suggestion.id} ${suggestion.label}`}
          id={`${id}-${at}`}
          className="suggestion"
          role="option"
          tabIndex={-1}
          aria-selected={at === active}
          aria-disabled={suggestion.refused ? true : undefined}
          onMouseDown={(event) => {
            event.preventDefault();
            onTake(suggestion);
          }}
        >
          <span className="suggestion-label">{suggestion.label}</span>
          {(suggestion.refused ?? suggestion.detail) && (
            <span className="suggestion-detail">{suggestion.refused ?? suggestion.detail}</span>
          )}
        </div>
      ))}
    </div>
  );
}

/** The combobox. */
export function Combobox<S extends Suggestion>(props: Props<S>) {
  const { label, value, onText, picked, problem, startHere } = props;
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const { suggestions, shown, active, show, take, onKeyDown, onBlur } = useCombobox(props, id, input);
  useEffect(() => {
    // On a form that opens at this field; later renders don't pull focus back.
    if (!startHere) return;
    input.current?.focus();
    input.current?.select();
  }, [startHere]);

  return (
    <div className="field full combobox">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        ref={input}
        className="input"
        role="combobox"
        type="text"
        value={value}
        maxLength={200}
        autoComplete="off"
        spellCheck={false}
        placeholder={props.placeholder}
        aria-autocomplete="list"
        aria-expanded={shown}
        aria-controls={`${id}-list`}
        aria-activedescendant={active >= 0 ? `${id}-${active}` : undefined}
        aria-invalid={problem ? true : undefined}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onChange={(event) => {
          onText(event.target.value);
          show(event.target.value);
        }}
        onClick={() => show(picked ? '' : value)}
        onKeyDown={onKeyDown}
        onBlur={onBlur}
      />
      <SuggestionList
        id={id}
        shown={shown}
        suggestions={suggestions}
        active={active}
        onTake={(one) => take(one, true)}
      />
      {problem && (
        <span className="field-problem" id={`${id}-problem`}>
          {problem}
        </span>
      )}
      {props.children}
    </div>
  );
}
