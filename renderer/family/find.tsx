// Find a jar by part of its label: a combobox (W3C APG) whose list is the ledger's own search.
/* oxlint-disable jsx-a11y/prefer-tag-over-role -- the pattern asks for these roles; a datalist can't say more of a jar */
import { dayLabel } from '../../core/lineage/labels';
import { dayInOrder } from '../../core/lineage/lineage-shapes';
import type { DayRange } from '../../core/quantities/day-ranges';
import { useEffect, useId, useRef, useState } from 'react';
import { useRead } from '../state/use-read';
import { familyControl } from './family-actions';

/** "28 Sep 2025 a": a jar that is looked for is often an old one. A label with its year in it stays. */
export function withYear({
  label,
  madeOn,
  madeBetween = null,
}: {
  readonly label: string;
  readonly madeOn: string | null;
  readonly madeBetween?: DayRange | null;
}): string {
  const day = dayInOrder({ madeOn, madeBetween });
  return day === null || label.includes(day.slice(0, 4))
    ? label
    : label.replace(dayLabel(day, false), dayLabel(day, true));
}

/** As many as are listed at once. */
const LISTED = 8;

/** Types, lists, jumps. */
export function Find({ onFound }: { readonly onFound: (key: number) => void }) {
  const [text, setText] = useState('');
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const asked = text.trim();
  const answer = useRead(
    'jar.find',
    asked === '' ? null : { text: asked, limit: LISTED + 1, notAfter: null },
  );
  const found = answer?.ok ? answer.value.jars : [];
  const jars = found.slice(0, LISTED);
  const shown = open && asked !== '';
  useEffect(() => {
    familyControl.find = () => {
      input.current?.focus();
      input.current?.select();
    };
    return () => {
      familyControl.find = () => undefined;
    };
  }, []);
  const walked = jars[at]?.key ?? null;
  useEffect(() => {
    if (walked !== null) document.getElementById(`${id}-${walked}`)?.scrollIntoView({ block: 'nearest' });
  }, [id, walked]);
  const choose = (key: number | undefined): void => {
    if (key === undefined) return;
    setOpen(false);
    setText('');
    onFound(key);
  };
  return (
    <div className="family-find">
      <input
        ref={input}
        className="input"
        type="text"
        role="combobox"
        placeholder="Find a jar"
        title="Find a jar by part of its label (/)"
        aria-label="Find a jar by part of its label"
        aria-expanded={shown}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={shown && jars[at] ? `${id}-${jars[at].key}` : undefined}
        autoComplete="off"
        spellCheck={false}
        value={text}
        onChange={(event) => {
          setText(event.target.value);
          setAt(0);
          setOpen(true);
        }}
        onBlur={() => setOpen(false)}
        onKeyDown={(event) => {
          if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
            event.preventDefault();
            const by = event.key === 'ArrowDown' ? 1 : -1;
            setAt((before) => (before + by + Math.max(1, jars.length)) % Math.max(1, jars.length));
          } else if (event.key === 'Enter') {
            event.preventDefault();
            choose(jars[at]?.key);
          } else if (event.key === 'Escape') {
            event.stopPropagation();
            setText('');
            input.current?.blur();
          }
        }}
      />
      {shown && (
        <div className="family-find-list" role="listbox" id={`${id}-list`} aria-label="Jars found">
          {jars.map((jar, place) => (
            <div
              key={jar.key}
              id={`${id}-${jar.key}`}
              role="option"
              tabIndex={-1}
              aria-selected={place === at}
              onPointerDown={(event) => {
                event.preventDefault();
                choose(jar.key);
              }}
            >
              <strong>{withYear(jar)}</strong>
              <span className="soft small">{jar.says}</span>
            </div>
          ))}
          {found.length > LISTED && <p className="soft small">More jars fit: type more of the label.</p>}
          {answer?.ok === true && jars.length === 0 && (
            <p className="soft">No jar’s label has “{asked}” in it.</p>
          )}
          {answer?.ok === false && <p>{answer.sentence}</p>}
        </div>
      )}
    </div>
  );
}
