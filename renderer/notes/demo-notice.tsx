// On the invented ledger nothing can be brought in: says so before a file is chosen, and leads to a ledger of one's own.
import { useState } from 'react';
import { refusalSentence } from '../../core/sentences';
import { startJob } from '../state/ledger-calls';
import { go, say } from '../state/store';

/** Leaves the invented ledger for the keeper's own, or makes that, and comes back to bringing in. */
async function toOwnLedger(): Promise<void> {
  const left = await startJob('ledger.leaveDemo', {}).done;
  if (!left.ok) {
    say(left.sentence, 'caution');
    return;
  }
  go('notes');
  if (left.value.ledger !== null || left.value.trouble !== null) return;
  const made = await startJob('ledger.create', { file: null }).done;
  if (!made.ok) say(made.sentence, 'caution');
}

/** In place of choosing a file. */
export function DemoNotice() {
  const [leaving, setLeaving] = useState(false);
  return (
    <div className="page stack notes">
      <h1>Bring in a spreadsheet</h1>
      <p className="notes-lead">{refusalSentence({ code: 'notes into demo', params: {} })}</p>
      <div className="row">
        <button
          className="button primary"
          type="button"
          disabled={leaving}
          onClick={() => {
            setLeaving(true);
            void toOwnLedger().finally(() => setLeaving(false));
          }}
        >
          Leave it and bring in my notes
        </button>
      </div>
    </div>
  );
}
