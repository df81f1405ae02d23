// Keeping something back from a jar: a lidded pot, freezer cubes, dried flakes.
import type { Portion } from '../../core/ledger/records';
import { call } from '../state/ledger-calls';
import { EditForm } from '../parts/edit-form';
import { CheckField, ChoiceField, TextField } from '../parts/fields';
import { useReader } from '../parts/use-reader';
import { lineOrNull, Taking } from '../parts/taking';
import type { JarRecord } from './batch-corrections';

/** The form; `portion` null keeps something new. */
export function ReserveForm({
  record,
  portion,
  onDone,
}: {
  readonly record: JarRecord;
  readonly portion: Portion | null;
  readonly onDone: () => void;
}) {
  const { reader, writer, today } = useReader();
  const { jar, label } = record;
  const initial = {
    place: portion?.place ?? ('fridge' as Portion['place']),
    part: portion?.part ?? ('' as '' | 'whey' | 'curd' | 'mixed'),
    pieces: portion?.pieces ? writer.number(portion.pieces) : '',
    amount: portion?.amount ? writer.amount(portion.amount) : '',
    keptOn: writer.day(portion?.keptOn ?? today),
    goneOn: portion?.goneOn ? writer.day(portion.goneOn) : '',
    reserve: portion?.reserve ?? true,
    note: portion?.note ?? '',
  };
  return (
    <EditForm
      label={portion ? `Correct what was kept of ${label}` : `Keep some of ${label}`}
      draftKey={`reserve:${portion?.id ?? jar.id}`}
      place={{ says: `reserve of ${label}`, screen: 'batch', focus: jar.batch }}
      initial={initial}
      askWhy={portion !== null}
      saved={portion ? `Corrected what was kept of ${label}.` : `Kept some of ${label}.`}
      onDone={onDone}
      read={(text) => {
        const taking = new Taking();
        const same = portion !== null && JSON.stringify(text) === JSON.stringify(initial);
        const keptOn =
          taking.take('keptOn', reader.day(text.keptOn)) ??
          taking.say('keptOn', 'Say since when, such as “today”.');
        if (keptOn !== null && keptOn > today)
          taking.say('keptOn', 'This day is still to come. Please correct it.');
        const goneOn = taking.take('goneOn', reader.day(text.goneOn));
        if (keptOn !== null && goneOn !== null && goneOn < keptOn)
          taking.say('goneOn', 'It can’t be gone before it was kept. Please correct one of the days.');
        const kept = {
          id: portion?.id ?? null,
          jar: jar.id,
          part: text.part === '' ? null : text.part,
          place: text.place,
          pieces: taking.take('pieces', reader.whole(text.pieces, 10_000)),
          amount: taking.take('amount', reader.amount(text.amount)),
          keptOn: keptOn ?? today,
          goneOn,
          reserve: text.reserve,
          note: lineOrNull(text.note),
        };
        return {
          problems: taking.problems,
          send: same ? null : (why, draft) => call('portion.save', { portion: kept, why, draft }),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <ChoiceField
            label="Where"
            unsaid={null}
            value={text.place}
            choices={[
              { value: 'fridge', label: 'Fridge' },
              { value: 'freezer', label: 'Freezer' },
              { value: 'dried', label: 'Dried' },
            ]}
            onChange={(place) => place !== '' && set({ ...text, place })}
          />
          <ChoiceField
            label="Which part of the jar"
            value={text.part}
            choices={[
              { value: 'whey', label: 'Whey' },
              { value: 'curd', label: 'Curd' },
              { value: 'mixed', label: 'Mixed' },
            ]}
            onChange={(part) => set({ ...text, part })}
          />
          <div className="fields">
            <TextField
              label="How much"
              value={text.amount}
              placeholder="100 ml"
              read={reader.amount(text.amount)}
              problem={problems.get('amount')}
              onChange={(amount) => set({ ...text, amount })}
            />
            <TextField
              label="Cubes or pieces"
              width="short"
              value={text.pieces}
              problem={problems.get('pieces')}
              onChange={(pieces) => set({ ...text, pieces })}
            />
            <TextField
              label="Kept since"
              value={text.keptOn}
              read={reader.day(text.keptOn)}
              problem={problems.get('keptOn')}
              onChange={(keptOn) => set({ ...text, keptOn })}
            />
            <TextField
              label="Gone on"
              value={text.goneOn}
              read={reader.day(text.goneOn)}
              problem={problems.get('goneOn')}
              onChange={(goneOn) => set({ ...text, goneOn })}
            />
          </div>
          <CheckField
            label="A reserve: kept back on purpose as seed"
            checked={text.reserve}
            onChange={(reserve) => set({ ...text, reserve })}
          />
          <TextField
            label="Note"
            width="full"
            value={text.note}
            onChange={(note) => set({ ...text, note })}
          />
        </>
      )}
    </EditForm>
  );
}
