// A cell of the batch sheet: a field without a label of its own, in a row and a column of a table that is typed along.
import { useId, type KeyboardEvent } from 'react';
import { focusNext } from '../parts/form-keys';
import type { Read } from '../parts/reading';
import { completed } from './completed';

/** Up and down stay in the column (the cells say where they stand), and down from its foot leaves the sheet. */
function moveInColumn(from: HTMLInputElement, step: 1 | -1): boolean {
  const column = from.dataset['column'];
  const form = from.closest('form');
  if (column === undefined || form === null) return false;
  const cells = [...form.querySelectorAll<HTMLInputElement>('input[data-column]:read-write')];
  const own = cells.filter((cell) => cell.dataset['column'] === column);
  const next = own[own.indexOf(from) + step];
  const last = [...(from.closest('.sheet-row, .remember-row')?.querySelectorAll('input') ?? [])].at(-1);
  if (next) next.focus();
  else if (step === 1 && last) focusNext(form, last);
  return next !== undefined || step === 1;
}

interface Props {
  /** Read aloud: "Milk, jar b". Not needed where a label stands beside the cell and names it by `id`. */
  readonly label?: string;
  readonly id?: string;
  /** 0: one entry for all; then the jars. */
  readonly column: number;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** What stands there while it is empty. */
  readonly placeholder?: string | undefined;
  /** A word of these is filled in while its beginning is typed; its rest is marked, so that typing on replaces it. */
  readonly words?: readonly string[] | undefined;
  readonly read?: Read<unknown> | undefined;
  readonly problem?: string | undefined;
  /** Enter in the cell before goes on past it. */
  readonly rare?: boolean;
  /** Why nothing can be typed in it: said where it stands. It still takes the keyboard, so that no key does anything else. */
  readonly locked?: string | null;
  /** What the page finds it by. */
  readonly name?: string;
  /** Something is wrong in it, and is said below its row. */
  readonly wrongBelow?: boolean;
}

/** What is wrong in a cell, if anything. */
const cellProblem = ({ read, problem }: Pick<Props, 'read' | 'problem'>): string | undefined =>
  problem ?? (read && !read.ok ? read.sentence : undefined);

/** Whether what was understood is no more than what was typed: "= 10 g" of "10 g". */
const echoes = (typed: string, echo: string | null): boolean =>
  echo !== null && bare(typed) === bare(echo.replace(/^= /, ''));
const bare = (text: string): string => text.toLowerCase().replace(/\s/g, '');

/** The cell. Enter in an entry for all goes on below it; everywhere else to the next cell. */
export function Cell(props: Props) {
  const {
    label,
    id,
    column,
    value,
    onChange,
    placeholder,
    words = [],
    read,
    rare = false,
    locked = null,
    name,
    wrongBelow = false,
  } = props;
  const own = useId();
  const wrong = cellProblem(props);
  const echo = read?.ok && !echoes(value, read.echo) ? read.echo : null;
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.nativeEvent.isComposing || event.ctrlKey || event.metaKey || event.altKey) return;
    const down = event.key === 'ArrowDown' || (event.key === 'Enter' && column === 0 && value.trim() !== '');
    if ((down || event.key === 'ArrowUp') && moveInColumn(event.currentTarget, down ? 1 : -1))
      event.preventDefault();
  };
  return (
    <div className={column === 0 ? 'cell for-all' : 'cell'}>
      <input
        id={id}
        aria-label={label}
        className="input"
        data-column={column}
        data-enter={rare || locked !== null ? 'pass' : undefined}
        value={value}
        maxLength={200}
        autoComplete="off"
        spellCheck={false}
        data-cell={name}
        placeholder={locked === null ? placeholder : locked}
        readOnly={locked !== null}
        aria-disabled={locked === null ? undefined : true}
        aria-invalid={wrong || wrongBelow ? true : undefined}
        aria-describedby={wrong ? `${own}-problem` : echo ? `${own}-echo` : undefined}
        onChange={(event) => {
          const input = event.target;
          const typed = input.value;
          const whole =
            event.nativeEvent instanceof InputEvent && event.nativeEvent.inputType.startsWith('insert')
              ? completed(typed, words)
              : null;
          if (whole === null || whole.length <= typed.length || input.selectionEnd !== typed.length) {
            onChange(typed);
            return;
          }
          // At once, and not when it is next drawn: the next key may come before that, and replaces what wasn't typed.
          input.value = whole;
          input.setSelectionRange(typed.length, whole.length);
          onChange(whole);
        }}
        onFocus={(event) => event.currentTarget.select()}
        onKeyDown={onKeyDown}
      />
      {wrong ? (
        <span className="field-problem" id={`${own}-problem`}>
          {wrong}
        </span>
      ) : (
        echo && (
          <span className="field-echo cell-echo" id={`${own}-echo`}>
            {echo}
          </span>
        )
      )}
    </div>
  );
}

interface RowProps {
  readonly label: string;
  readonly all: Omit<Props, 'label' | 'id' | 'column'>;
  readonly jars: readonly (Omit<Props, 'label' | 'id' | 'column'> & { readonly letter: string })[];
}

/** A question of the sheet: its label, one entry for all, and a cell for each jar (none where there is one jar). */
export function SheetRow({ label, all, jars }: RowProps) {
  const id = useId();
  return (
    <div className="sheet-row">
      <label htmlFor={id}>{label}</label>
      <Cell {...all} id={id} column={0} />
      {jars.length > 1 &&
        jars.map(({ letter, ...cell }, at) => (
          <Cell key={at} {...cell} label={`${label}, jar ${letter}`} column={at + 1} />
        ))}
    </div>
  );
}
