// What a laboratory measured of a jar, beside it: it changes no judgement, but for a count per mL, which doublings use.
import { useState } from 'react';
import type { Reply } from '../../core/contract';
import { SelectField, TextField } from '../parts/fields';
import { FormEnd } from '../parts/form-end';
import { Form } from '../parts/form';
import { lineOrNull } from '../parts/taking';
import { useReader } from '../parts/use-reader';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import type { Reader, Writer } from '../parts/reading';

type Fact = Reply<'facts.list'>['facts'][number];
type Result = Extract<Fact, { readonly kind: 'labResult' }>;
const BOUNDS = [
  { value: '=', label: 'is' },
  { value: '<', label: 'is less than' },
  { value: '>', label: 'is more than' },
] as const;
type Bound = (typeof BOUNDS)[number]['value'];
const COUNT_UNIT = 'CFU/mL';

/** "count 250,000,000 CFU/mL, Valley Dairy Laboratory, 3 May 2026" */
function words({ what, value, unit, bound, laboratory, sampledOn }: Result, writer: Writer): string {
  const figure = `${what} ${bound === '=' || bound === undefined ? '' : `${bound} `}${value.toLocaleString('en')} ${unit}`;
  return [figure, laboratory, sampledOn === null || sampledOn === undefined ? null : writer.day(sampledOn)]
    .filter(Boolean)
    .join(', ');
}

const EMPTY = { what: 'count', value: '', unit: COUNT_UNIT, bound: '=' as Bound, where: '', day: '' };

/** What was typed: a count as one writes it ("250 million"), anything else as a figure. */
function readTyped(text: typeof EMPTY, reader: Reader) {
  const counts = text.what.trim().toLowerCase() === 'count';
  const count = reader.count(text.value);
  const figure = text.value.trim();
  const plain = /^-?\d+(?:[.,]\d+)?$/.test(figure) ? Number(figure.replace(',', '.')) : null;
  return { day: reader.day(text.day), counts, value: counts ? (count.ok ? count.value : null) : plain };
}

function NewResult({ jar, onDone }: { readonly jar: string; readonly onDone: () => void }) {
  const { reader } = useReader();
  const [text, setText] = useState(EMPTY);
  const [wrong, setWrong] = useState(0);
  const [refused, refuse] = useState<string | null>(null);
  const { day, counts, value } = readTyped(text, reader);
  const record = async (): Promise<void> => {
    if (value === null || !day.ok || text.what.trim() === '' || text.unit.trim() === '') {
      setWrong(wrong + 1);
      return;
    }
    const answer = await call('facts.record', {
      facts: [
        {
          kind: 'labResult',
          jar,
          what: counts ? 'count' : text.what.trim(),
          value,
          unit: counts ? COUNT_UNIT : text.unit.trim(),
          bound: text.bound,
          laboratory: lineOrNull(text.where),
          sampledOn: day.value,
        },
      ],
    });
    if (!answer.ok) {
      refuse(answer.sentence);
      return;
    }
    say('Noted the result.');
    onDone();
  };
  return (
    <Form label="A laboratory result" record={() => void record()} leave={onDone} wrong={wrong} startHere>
      <TextField
        label="What was measured"
        value={text.what}
        startHere
        suggestions={['count', 'fat', 'protein', 'lactose', 'pH']}
        hint="A count per mL goes into the doublings. Nothing else changes a judgement."
        problem={wrong > 0 && text.what.trim() === '' ? 'Say what was measured.' : undefined}
        onChange={(what) => setText({ ...text, what })}
      />
      <SelectField
        label="It"
        value={text.bound}
        choices={BOUNDS}
        onChange={(bound) => setText({ ...text, bound })}
      />
      <TextField
        label="Value"
        width="short"
        value={text.value}
        numeric
        problem={wrong > 0 && value === null ? 'Type a number, such as “250 million” or “3.4”.' : undefined}
        onChange={(next) => setText({ ...text, value: next })}
      />
      {!counts && (
        <TextField
          label="Unit"
          width="short"
          value={text.unit === COUNT_UNIT ? '' : text.unit}
          problem={wrong > 0 && text.unit.trim() === '' ? 'Say the unit.' : undefined}
          onChange={(unit) => setText({ ...text, unit })}
        />
      )}
      <TextField label="Laboratory" value={text.where} onChange={(where) => setText({ ...text, where })} />
      <TextField
        label="Sampled on"
        width="short"
        value={text.day}
        read={wrong > 0 || text.day !== '' ? day : undefined}
        onChange={(next) => setText({ ...text, day: next })}
      />
      <FormEnd refused={refused} yes="Note it" onLeave={onDone} />
    </Form>
  );
}

export function LabResults({ jar }: { readonly jar: string }) {
  const answer = useRead('facts.list', { kind: 'labResult', of: jar });
  const { writer } = useReader();
  const [adding, add] = useState(false);
  const results = answer?.ok
    ? answer.value.facts.filter((one): one is Result => one.kind === 'labResult')
    : [];
  return (
    <section className="stack">
      <h3>From a laboratory</h3>
      {results.length > 0 && (
        <ul className="bullets">
          {results.map((one) => (
            <li key={one.id}>{words(one, writer)}</li>
          ))}
        </ul>
      )}
      {adding ? (
        <NewResult jar={jar} onDone={() => add(false)} />
      ) : (
        <button type="button" className="button quiet" onClick={() => add(true)}>
          Add a result
        </button>
      )}
    </section>
  );
}
