// Which jar of a batch it is, whether it was made, and which hold it stood in. The same fields add and correct.
import type { Hold } from '../../core/ledger/records';
import { type Choice, SelectField, TextField } from '../parts/fields';
import type { Problems } from '../parts/taking';
import type { JarPlaceText } from './batch-text';

const holdChoices = (holds: readonly Hold[]): readonly { value: string; label: string }[] => [
  { value: '', label: 'Not noted' },
  ...holds.map((hold, at) => ({
    value: hold.id,
    label: holds.length === 1 ? 'The batch’s warmth' : `Hold ${at + 1}`,
  })),
];

const MADE = { value: 'made', label: 'Made' } as const;
const PLANNED = { value: 'planned', label: 'Planned' } as const;
/** What a jar that is added may be, and what one that is corrected may be said to be. */
export const NEW_STATES = [MADE, PLANNED] as const;
export const STATES = [MADE, PLANNED, { value: 'not made', label: 'Planned, but not made' }] as const;

/** Letter, made or planned, and the hold. */
export function JarPlaceFields<State extends string>({
  text,
  states,
  holds,
  problems,
  onChange,
}: {
  readonly text: JarPlaceText<State>;
  readonly states: readonly Choice<State>[];
  readonly holds: readonly Hold[];
  readonly problems: Problems;
  readonly onChange: (part: Partial<JarPlaceText<State>>) => void;
}) {
  return (
    <>
      <TextField
        label="Letter"
        width="short"
        value={text.letter}
        problem={problems.get('letter')}
        onChange={(letter) => onChange({ letter })}
      />
      <SelectField
        label="Made or planned"
        value={text.state}
        choices={states}
        onChange={(state) => onChange({ state })}
      />
      {holds.length > 0 && (
        <SelectField
          label="Stood in"
          value={text.hold}
          choices={holdChoices(holds)}
          onChange={(hold) => onChange({ hold })}
        />
      )}
    </>
  );
}
