// Beside the diary while acts are chosen: what would be undone, what stands on it and goes too, and the button that does it.
import { daysInWords } from '../../core/lineage/labels';
import { call } from '../state/ledger-calls';
import { say, sentenceCase } from '../state/store';
import { useRead } from '../state/use-read';
import { numberWord } from '../parts/number-words';

const MOST_NAMED = 6;

function Names({ list }: { readonly list: readonly { readonly act: string; readonly says: string }[] }) {
  return (
    <ul className="bullets">
      {list.slice(0, MOST_NAMED).map(({ act, says }) => (
        <li key={act}>{sentenceCase(daysInWords(says))}</li>
      ))}
      {list.length > MOST_NAMED && <li>and {numberWord(list.length - MOST_NAMED)} more</li>}
    </ul>
  );
}

interface Props {
  readonly chosen: readonly string[];
  readonly onDone: () => void;
}

export function UndoPanel({ chosen, onDone }: Props) {
  const answer = useRead('act.standing', { acts: [...chosen] });
  if (answer === null) return null;
  if (!answer.ok) return <aside className="undo-panel">{answer.sentence}</aside>;
  const { acts, later } = answer.value;
  const many = acts.length + later.length;
  const undo = async (): Promise<void> => {
    const done = await call('act.undoMany', { acts: acts.map(({ act }) => act), later: true });
    say(
      done.ok ? `${many === 1 ? 'Undone' : `${sentenceCase(numberWord(many))} acts undone`}. Redo brings ${many === 1 ? 'it' : 'all of them'} back.` : done.sentence,
      done.ok ? 'calm' : 'caution',
    );
    if (done.ok) onDone();
  }; // prettier-ignore
  return (
    <aside className="undo-panel stack" aria-label="Undo what is chosen">
      <h2>{acts.length === 1 ? 'Undo this?' : `Undo these ${numberWord(acts.length)}?`}</h2>
      <Names list={acts} />
      {later.length > 0 && (
        <>
          <h3>What stands on {acts.length === 1 ? 'it' : 'them'} and goes too</h3>
          <Names list={later} />
        </>
      )}
      <div className="row">
        <button type="button" className="button primary" onClick={() => void undo()}>
          {many === 1 ? 'Undo it' : `Undo all ${numberWord(many)}`}
        </button>
        <button type="button" className="button" onClick={onDone}>
          Keep
        </button>
      </div>
      <p className="soft small">This can be redone, also after a restart.</p>
    </aside>
  );
}
