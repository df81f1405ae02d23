// Which jar of a batch it is, whether it was made, and which hold it stood in. The same fields add and correct.
import type { Hold } from '../../core/ledger/records';
import { SelectField, TextField } from '../parts/fields';
import type { Problems } from './batch-entry';
import type { JarPlaceText } from './batch-text';

const holdChoices = (holds: readonly Hold[]): readonly { value: string; label: string }[] => [
  { value: '', label: 'Not said' },
  ...holds.map((hold, at) => ({
    value: hold.id,
    label: holds.length === 1 ? 'The batch’s warmth' : `Hold ${at + 1}`,
  })),
];

/** Letter, made or planned, and the hold. */
export function JarPlaceFields({
  text,
  holds,
  problems,
  onChange,
}: {
  readonly text: JarPlaceText;
  readonly holds: readonly Hold[];
  readonly problems: Problems;
  readonly onChange: (part: Partial<JarPlaceText>) => void;
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
        choices={[
          { value: 'made', label: 'Made' },
          { value: 'planned', label: 'Planned' },
        ]}
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
