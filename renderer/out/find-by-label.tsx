// A jar found by its label: by a photograph of the square code, or by the short code under it as it is typed.
import { useState } from 'react';
import { TextField } from '../parts/fields';
import { PickFile } from '../parts/pick-file';
import { call } from '../state/ledger-calls';
import { go } from '../state/store';
import { OutPanel } from './out-panel';
import { showOut } from './out-shown';
import { readCode } from './read-code';

export function FindByLabel() {
  const [typed, setTyped] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const [looking, setLooking] = useState(false);
  const find = async (code: string): Promise<void> => {
    const answer = await call('jar.find', { text: code, limit: 2, notAfter: null });
    if (!answer.ok) return setTrouble(answer.sentence);
    const [jar] = answer.value.jars;
    if (!jar) return setTrouble(`No jar of this ledger has the code ${code}. It may be of another ledger.`);
    showOut(null);
    go('family', `jar:${jar.id}`);
  };
  const look = async (file: File): Promise<void> => {
    setLooking(true);
    const read = await readCode(file);
    setLooking(false);
    if (read.ok) await find(read.code);
    else setTrouble(read.sentence);
  };
  return (
    <OutPanel title="Find a jar by its label">
      <p>
        A photograph of the square code on the label is enough. It is looked at here and nowhere else, and not
        kept.
      </p>
      <div className="row">
        <PickFile
          says="Choose a photograph…"
          accept="image/jpeg,image/png,image/webp"
          disabled={looking}
          onFile={(file) => {
            setTrouble(null);
            void look(file);
          }}
        />
        {looking && <span aria-live="polite">Looking…</span>}
      </div>
      <form
        className="row"
        onSubmit={(event) => {
          event.preventDefault();
          setTrouble(null);
          if (typed.trim() !== '') void find(typed.trim());
        }}
      >
        <TextField label="Or the code under it" placeholder="7K3M-9QXV" value={typed} onChange={setTyped} />
        <button className="button" type="submit">
          Find it
        </button>
      </form>
      {trouble !== null && (
        <p className="notice" role="alert">
          {trouble}
        </p>
      )}
    </OutPanel>
  );
}
