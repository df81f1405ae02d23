// Photographs of a jar: chosen, dropped or pasted; kept at once, each as an act of its own.
import { useId, useState } from 'react';
import type { Photograph } from '../../core/ledger/records';
import { call } from '../app/calls';
import { say } from '../app/store';
import { reEncode } from './re-encode';

const pictures = (list: DataTransfer | null): readonly File[] =>
  [...(list?.files ?? [])].filter((file) => file.type.startsWith('image/'));

/** The pictures and the place to add one. */
export function Photographs({
  jar,
  label,
  photographs,
}: {
  readonly jar: string;
  readonly label: string;
  readonly photographs: readonly Photograph[];
}) {
  const id = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const [over, setOver] = useState(false);

  const add = async (files: readonly File[]): Promise<void> => {
    setProblem(null);
    let added = 0;
    for (const file of files) {
      const drawn = await reEncode(file);
      const answer = drawn.ok
        ? await call('photograph.add', { jar, bytes: drawn.bytes, caption: null })
        : drawn;
      if (answer.ok) added += 1;
      else setProblem(answer.sentence);
    }
    if (added > 0)
      say(added === 1 ? `Added a photograph of ${label}.` : `Added ${added} photographs of ${label}.`);
  };

  return (
    // Dropping and pasting are shortcuts; the button below does the same by keyboard.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <section
      className={over ? 'photographs over' : 'photographs'}
      aria-label={`Photographs of ${label}`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const found = pictures(event.dataTransfer);
        if (found.length === 0) setProblem('Only pictures can be added here.');
        void add(found);
      }}
      onPaste={(event) => {
        const found = pictures(event.clipboardData);
        if (found.length > 0) void add(found);
      }}
    >
      {photographs.length > 0 && (
        <ul className="photograph-row">
          {photographs.map((one, at) => (
            <li key={one.id}>
              <img
                src={`./photograph/${one.sha256}.jpg`}
                alt={one.caption ?? `${label}, photograph ${at + 1}`}
                width={one.width}
                height={one.height}
                loading="lazy"
              />
            </li>
          ))}
        </ul>
      )}
      <label className="button quiet photograph-add" htmlFor={id}>
        Add a photograph
        <span className="visually-hidden"> of {label}</span>
      </label>
      <input
        id={id}
        className="visually-hidden"
        type="file"
        accept="image/*"
        multiple
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          void add(files);
        }}
      />
      <span className="soft small">or drop or paste one here</span>
      {problem && (
        <p className="notice caution" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}
