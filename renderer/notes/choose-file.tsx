// Where a file comes from: chosen, dropped, or pasted straight out of a spreadsheet.
import { useEffect, useRef, useState } from 'react';
import { go, usePlace } from '../state/store';
import { takeBlob, takeFile } from './notes-store';
import { UnreadRemarks } from './unread-remarks';

function takePasted(text: string): void {
  // A spreadsheet puts cells on the clipboard with tabs between them.
  void takeFile('pasted notes.tsv', new TextEncoder().encode(text));
}

/** Takes what is pasted or dropped anywhere on the page. @param setOver told while a file is held over it */
function useWholePage(setOver: (over: boolean) => void): void {
  useEffect(() => {
    const paste = (event: ClipboardEvent): void => {
      if (event.target instanceof HTMLTextAreaElement) return;
      const file = event.clipboardData?.files[0];
      const text = event.clipboardData?.getData('text/plain') ?? '';
      if (!file && text.trim() === '') return;
      event.preventDefault();
      if (file) void takeBlob(file);
      else takePasted(text);
    };
    const overWindow = (event: DragEvent): void => {
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      // Leaving for another element of the page is not leaving the window.
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file) void takeBlob(file);
    };
    const stop = new AbortController();
    const { signal } = stop;
    window.addEventListener('paste', paste, { signal });
    window.addEventListener('dragover', overWindow, { signal });
    window.addEventListener('dragleave', leave, { signal });
    window.addEventListener('drop', drop, { signal });
    return () => stop.abort();
  }, [setOver]);
}

/** The first step. */
export function ChooseFile({ trouble }: { readonly trouble: string | null }) {
  const [over, setOver] = useState(false);
  const [typed, setTyped] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const { focus } = usePlace();
  // Whoever came to bring in a spreadsheet is asked for it at once; who closes that finds the other ways here.
  useEffect(() => {
    if (focus !== 'choose') return;
    go('notes');
    input.current?.click();
  }, [focus]);

  useWholePage(setOver);

  return (
    <div className="page stack notes">
      <h1>Bring in a spreadsheet</h1>
      <p className="notes-lead">
        One row for each jar: when it was made, what seeded it, how it set. Headings may be your own, in any
        order. You see what each row is taken to mean before anything comes in, and undoing takes it all back.
      </p>
      <section className={over ? 'drop over' : 'drop'} aria-label="Choose or drop a file">
        <label className="button primary">
          Choose a file…
          <input
            ref={input}
            className="visually-hidden"
            type="file"
            accept=".xlsx,.ods,.csv,.tsv,.tab,.txt,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet,application/vnd.oasis.opendocument.spreadsheet,text/csv,text/tab-separated-values,text/plain"
            onChange={(event) => {
              const file = event.target.files?.[0];
              event.target.value = '';
              if (file) void takeBlob(file);
            }}
          />
        </label>
        <p>or drop it anywhere on this page</p>
        <p className="soft small">
          A workbook (.xlsx or .ods), or text as any spreadsheet program saves it. 20 MB at most.
        </p>
      </section>
      {trouble !== null && (
        <p className="notice" role="alert">
          {trouble}
        </p>
      )}
      <div className="field full">
        <label className="label" htmlFor="pasted-notes">
          Or copy the cells in your spreadsheet, headings too, and paste them here
        </label>
        <textarea
          id="pasted-notes"
          className="input pasted"
          rows={4}
          value={typed}
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
        />
        <button
          className="button"
          type="button"
          disabled={typed.trim() === ''}
          onClick={() => takePasted(typed)}
        >
          Read what I pasted
        </button>
      </div>
      <UnreadRemarks />
    </div>
  );
}
