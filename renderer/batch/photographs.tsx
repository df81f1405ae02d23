// Photographs of a jar: chosen, dropped or pasted; kept at once, each as an act of its own; captioned, or taken away.
import { useEffect, useId, useRef, useState } from 'react';
import type { Photograph as Photo } from '../../core/ledger/records';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { Camera } from '../parts/camera';
import { EditForm } from '../parts/edit-form';
import { TextField } from '../parts/fields';
import { Photograph } from '../parts/photograph';
import { lineOrNull } from '../parts/taking';
import { place } from './batch-corrections';
import { reEncode } from './re-encode';
import { RefusalNotice } from '../parts/refusal-notice';

const pictures = (list: DataTransfer | null): readonly File[] =>
  [...(list?.files ?? [])].filter((file) => file.type.startsWith('image/'));

function Caption({
  photograph,
  name,
  batch,
  onDone,
}: {
  readonly photograph: Photo;
  readonly name: string;
  readonly batch: string;
  readonly onDone: () => void;
}) {
  const initial = { caption: photograph.caption ?? '' };
  return (
    <EditForm
      label={`Caption of ${name}`}
      draftKey={`caption:${photograph.id}`}
      place={place(`caption of ${name}`, batch)}
      initial={initial}
      askWhy={false}
      save="Keep the caption"
      saved={`Kept the caption of ${name}.`}
      onDone={onDone}
      read={(text) => ({
        problems: new Map(),
        send:
          text.caption.trim() === initial.caption
            ? null
            : (_why, draft) =>
                call('photograph.correct', { id: photograph.id, caption: lineOrNull(text.caption), draft }),
      })}
    >
      {(text, set) => (
        <TextField
          label="What it shows"
          width="full"
          value={text.caption}
          onChange={(caption) => set({ caption })}
        />
      )}
    </EditForm>
  );
}

/** The pictures and the place to add one. */
export function Photographs({
  jar,
  batch,
  label,
  photographs,
  unfinished,
}: {
  readonly jar: string;
  readonly batch: string;
  readonly label: string;
  readonly photographs: readonly Photo[];
  /** Draft keys that hold something unfinished. */
  readonly unfinished: ReadonlySet<string>;
}) {
  const id = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const [over, setOver] = useState(false);
  const [captioned, setCaptioned] = useState<string | null>(
    () => photographs.find((one) => unfinished.has(`caption:${one.id}`))?.id ?? null,
  );

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
  // With the keyboard on nothing, what is pasted goes to the jar under the pointer.
  const section = useRef<HTMLElement>(null);
  const pasted = useRef(add);
  useEffect(() => {
    pasted.current = add;
  });
  useEffect(() => {
    const onPaste = (event: ClipboardEvent): void => {
      if (event.target !== document.body || section.current?.matches(':hover') !== true) return;
      const found = pictures(event.clipboardData);
      if (found.length > 0) void pasted.current(found);
    };
    document.addEventListener('paste', onPaste);
    return () => document.removeEventListener('paste', onPaste);
  }, []);
  const takeAway = async (one: Photo, name: string): Promise<void> => {
    const answer = await call('photograph.remove', { id: one.id });
    say(
      answer.ok ? `Removed ${name}. Undo brings it back.` : answer.sentence,
      answer.ok ? 'calm' : 'caution',
    );
  };

  return (
    // Dropping and pasting are shortcuts; the button below does the same by keyboard.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <section
      ref={section}
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
        else void add(found);
      }}
      onPaste={(event) => {
        const found = pictures(event.clipboardData);
        if (found.length > 0) void add(found);
      }}
    >
      {photographs.length > 0 && (
        <ul className="photograph-row">
          {photographs.map((one, at) => {
            const name = `${label}, photograph ${at + 1}`;
            return (
              <li key={one.id}>
                <figure className="photograph">
                  <Photograph photograph={one} name={name} />
                  {one.caption !== null && <figcaption>{one.caption}</figcaption>}
                </figure>
                {captioned === one.id ? (
                  <Caption photograph={one} name={name} batch={batch} onDone={() => setCaptioned(null)} />
                ) : (
                  <div className="jar-actions">
                    <button type="button" className="button quiet" onClick={() => setCaptioned(one.id)}>
                      {one.caption === null ? 'Caption' : 'Correct caption'}
                      <span className="visually-hidden"> of {name}</span>
                    </button>
                    <button type="button" className="button quiet" onClick={() => void takeAway(one, name)}>
                      Remove<span className="visually-hidden"> {name}</span>
                    </button>
                  </div>
                )}
              </li>
            );
          })}
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
      <Camera label={label} onTaken={(picture) => void add([picture])} />
      <RefusalNotice words={problem} />
    </section>
  );
}
