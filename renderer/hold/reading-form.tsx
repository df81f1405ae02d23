// A reading typed by hand: what the thermometer shows, where it stands, and when, if not now.
import { useState } from 'react';
import type { Reply } from '../../core/contract';
import { ChoiceField, SelectField, TextField } from '../parts/fields';
import { FormEnd } from '../parts/form-end';
import { Form } from '../parts/form';
import { useReader } from '../parts/use-reader';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';

type Hold = Reply<'hold.get'>;
export const PLACES = [
  { value: 'bath', label: 'In the bath' },
  { value: 'air', label: 'In the air' },
  { value: 'jar', label: 'In a jar' },
] as const;
export type Place = (typeof PLACES)[number]['value'];

/** Which jar a probe stood in: one that is eaten, or a dummy of water. */
export const jarChoices = (hold: Hold): readonly { value: string; label: string }[] => [
  { value: '', label: 'A jar of water or milk, not to be eaten' },
  ...hold.jars.map(({ id, label }) => ({ value: id, label })),
];

export function ReadingForm({ hold, onDone }: { readonly hold: Hold; readonly onDone: () => void }) {
  const { reader } = useReader();
  const [text, setText] = useState({
    shown: '',
    when: '',
    place: (hold.series.find(({ place }) => place !== null)?.place ?? 'bath') as Place,
    jar: '',
  });
  const [wrong, setWrong] = useState(0);
  const [refused, refuse] = useState<string | null>(null);
  const shown = reader.temperature(text.shown);
  const when = reader.moment(text.when, hold.now.slice(0, 10));
  const record = async (): Promise<void> => {
    if (!shown.ok || !when.ok || shown.value === null) {
      setWrong(wrong + 1);
      return;
    }
    const jar = text.place === 'jar' && text.jar !== '' ? text.jar : null;
    const answer = await call('readings.note', {
      hold: hold.id,
      where: text.place,
      jar,
      at: when.value,
      c: shown.value.value,
    });
    if (!answer.ok) {
      refuse(answer.sentence);
      return;
    }
    say('Noted the reading.');
    onDone();
  };
  return (
    <Form label="A reading" record={() => void record()} leave={onDone} wrong={wrong} startHere>
      <div className="fields">
        <TextField
          label="It shows"
          width="short"
          value={text.shown}
          startHere
          read={wrong > 0 || text.shown !== '' ? shown : undefined}
          problem={
            wrong > 0 && shown.ok && shown.value === null
              ? 'Type what the thermometer shows, like “38.1”.'
              : undefined
          }
          onChange={(next) => setText({ ...text, shown: next })}
        />
        <TextField
          label="When, if not now"
          width="short"
          value={text.when}
          read={text.when === '' ? undefined : when}
          placeholder="18:30"
          onChange={(next) => setText({ ...text, when: next })}
        />
        <ChoiceField
          label="Where it stands"
          value={text.place}
          choices={PLACES}
          unsaid={null}
          onChange={(place) => setText({ ...text, place: place === '' ? 'bath' : place })}
        />
        {text.place === 'jar' && (
          <SelectField
            label="Which jar"
            value={text.jar}
            choices={jarChoices(hold)}
            onChange={(jar) => setText({ ...text, jar })}
          />
        )}
      </div>
      <FormEnd refused={refused} caution yes="Note it" onLeave={onDone} />
    </Form>
  );
}
