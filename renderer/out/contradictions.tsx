// What came in with hand-overs and says otherwise than this ledger: side by side, and decided by the keeper.
import type { Reply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';

type Received = Reply<'received.list'>['received'][number];

/** A field's value as it can be read side by side. */
function valueWords(value: unknown): string {
  if (value === null || value === undefined) return 'not noted';
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const { value: figure, unit } = value as { value?: unknown; unit?: unknown };
  return typeof figure === 'number' && typeof unit === 'string' ? `${figure} ${unit}` : JSON.stringify(value);
}

/** "finalVolume" as words. */
const fieldWords = (name: string): string =>
  name.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

async function decide(id: string, decided: 'kept own' | 'took received'): Promise<void> {
  const done = await call('received.decide', { id, decided });
  say(
    done.ok ? (decided === 'kept own' ? 'Yours stays.' : 'Taken over.') : done.sentence,
    done.ok ? 'calm' : 'caution',
  );
}

function One({ one }: { readonly one: Received }) {
  return (
    <li className="notice stack">
      <h4>{one.says}</h4>
      <table className="out-sides">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Yours</th>
            <th scope="col">Theirs</th>
          </tr>
        </thead>
        <tbody>
          {one.differs.map((name) => (
            <tr key={name}>
              <th scope="row">{fieldWords(name)}</th>
              <td>{valueWords(one.ours[name])}</td>
              <td>{valueWords(one.theirs[name])}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="row">
        <button className="button" type="button" onClick={() => void decide(one.id, 'kept own')}>
          Keep mine<span className="visually-hidden">: {one.says}</span>
        </button>
        <button className="button" type="button" onClick={() => void decide(one.id, 'took received')}>
          Take theirs<span className="visually-hidden">: {one.says}</span>
        </button>
      </div>
    </li>
  );
}

/** Those that wait; nothing where none does. */
export function Contradictions() {
  const answer = useRead('received.list', {});
  const waiting = answer?.ok === true ? answer.value.received.filter(({ decided }) => decided === null) : [];
  if (waiting.length === 0) return null;
  return (
    <section>
      <h3>Says otherwise than yours</h3>
      <ul className="out-list stack">
        {waiting.map((one) => (
          <One key={one.id} one={one} />
        ))}
      </ul>
    </section>
  );
}
