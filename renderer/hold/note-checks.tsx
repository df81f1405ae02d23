// Checks of the tools that a keeper trusts: what each showed, and on which day. An unchecked meter proves nothing.
import { useState } from 'react';
import type { Reply } from '../../core/contract';
import { TextField } from '../parts/fields';
import { Form } from '../parts/form';
import { useReader } from '../parts/use-reader';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';

type Tool = Reply<'tool.list'>['tools'][number];
const NAMES = { meter: 'pH meter', thermometer: 'Thermometer', fridge: 'Fridge' } as const;
const SHOWS = {
  meter: 'In buffer of pH 4.01 it shows',
  thermometer: 'In ice water it shows',
  fridge: 'A glass of water left overnight shows',
} as const;

function Check({ tool, onDone }: { readonly tool: Tool['tool']; readonly onDone: () => void }) {
  const { reader, today } = useReader();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState(0);
  const [refused, refuse] = useState<string | null>(null);
  const ph = reader.ph(text);
  const warmth = reader.temperature(text);
  const read = tool === 'meter' ? ph : warmth;
  const record = async (): Promise<void> => {
    const shown =
      tool === 'meter' ? (ph.ok ? ph.value : null) : warmth.ok ? (warmth.value?.value ?? null) : null;
    if (!read.ok || shown === null) {
      setWrong(wrong + 1);
      return;
    }
    const answer = await call('tool.check', {
      tool,
      day: today,
      shown,
      unit: tool === 'meter' ? 'pH' : '°C',
    });
    if (!answer.ok) {
      refuse(answer.sentence);
      return;
    }
    say(answer.value.says, answer.value.passes ? 'calm' : 'caution');
    onDone();
  };
  return (
    <Form label={`Check the ${tool}`} record={() => void record()} leave={onDone} wrong={wrong} startHere>
      <TextField
        label={SHOWS[tool]}
        width="short"
        value={text}
        startHere
        numeric
        read={wrong > 0 || text !== '' ? read : undefined}
        problem={wrong > 0 && read.ok && read.value === null ? 'Type what it shows.' : undefined}
        onChange={setText}
      />
      {refused !== null && (
        <p className="notice" role="alert">
          {refused}
        </p>
      )}
      <div className="row">
        <button type="submit" className="button primary">
          Note it for today
        </button>
        <button type="button" className="button quiet" onClick={onDone}>
          Cancel
        </button>
      </div>
    </Form>
  );
}

export function ToolChecks() {
  const answer = useRead('tool.list', {});
  const { writer } = useReader();
  const [checking, check] = useState<Tool['tool'] | null>(null);
  if (answer === null) return null;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  return (
    <section className="stack" aria-label="Checks of tools">
      <h2>Checks of tools</h2>
      <ul className="tool-list">
        {answer.value.tools.map(({ tool, day, says, due }) => (
          <li key={tool}>
            <h3>{NAMES[tool]}</h3>
            <p>{says}</p>
            {day !== null && (
              <p className="soft small">
                Checked {writer.day(day)}
                {due ? ', due again.' : '.'}
              </p>
            )}
            {checking === tool ? (
              <Check tool={tool} onDone={() => check(null)} />
            ) : (
              <button type="button" className="button" onClick={() => check(tool)}>
                Note a check<span className="visually-hidden"> of the {tool}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
