// The forms that correct a recorded batch, its holds and its jars in place. Each sends only what was changed.
import type { BatchReply } from '../../core/contract';
import type { Batch, Hold } from '../../core/ledger/records';
import { call } from '../state/ledger-calls';
import { ProseField, TextField } from '../parts/fields';
import { EditForm } from '../parts/edit-form';
import { useReader } from '../parts/use-reader';
import { WHEN_MADE, holdEntry, milkEntry } from './batch-entry';
import { lineOrNull, Taking } from '../parts/taking';
import { holdText, milkText } from './batch-repeat';
import { changedOnly } from '../parts/changed-only';
import { JarPlaceFields, STATES } from './jar-place';
import { HoldFields, MilkFields } from './recipe-fields';
import { usePackages } from './use-packages';

export type JarRecord = BatchReply['jars'][number];
export interface Editing {
  readonly onDone: () => void;
}
/** Where a draft of these forms belongs. */
export const place = (says: string, batch: string) => ({ says, screen: 'batch', focus: batch });

/** Day, word and note of a batch. */
export function CorrectBatch({
  batch,
  label,
  onDone,
}: Editing & { readonly batch: Batch; readonly label: string }) {
  const { reader, writer } = useReader();
  const initial = { date: writer.made(batch), word: batch.word ?? '', note: batch.note ?? '' };
  return (
    <EditForm
      label={`Correct ${label}`}
      draftKey={`batch:${batch.id}`}
      place={place(`correction of ${label}`, batch.id)}
      initial={initial}
      askWhy
      saved={`Corrected ${label}.`}
      onDone={onDone}
      read={(text) => {
        const taking = new Taking();
        const { madeOn, madeFrom, madeTo, word, note } = batch;
        const made = taking.take('date', reader.made(text.date)) ?? taking.say('date', WHEN_MADE);
        const days = { madeOn, madeFrom, madeTo };
        const changes = changedOnly(
          { ...days, word, note },
          { ...(made ?? days), word: lineOrNull(text.word), note: lineOrNull(text.note) },
        );
        return {
          problems: taking.problems,
          send: changes && ((why, draft) => call('batch.correct', { id: batch.id, changes, why, draft })),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <div className="fields">
            <TextField
              label="Made on"
              value={text.date}
              read={reader.made(text.date)}
              problem={problems.get('date')}
              onChange={(date) => set({ ...text, date })}
            />
            <TextField label="Word" value={text.word} onChange={(word) => set({ ...text, word })} />
          </div>
          <ProseField
            label="Note on the batch"
            value={text.note}
            onChange={(note) => set({ ...text, note })}
          />
        </>
      )}
    </EditForm>
  );
}

/** A hold. */
export function CorrectHold({
  hold,
  batch,
  onDone,
}: Editing & { readonly hold: Hold; readonly batch: Batch }) {
  const { reader, writer } = useReader();
  const initial = holdText(hold, writer);
  return (
    <EditForm
      label="Correct this hold"
      draftKey={`hold:${hold.id}`}
      place={place('correction of a hold', batch.id)}
      initial={initial}
      askWhy
      saved="Corrected the hold."
      onDone={onDone}
      read={(text) => {
        const taking = new Taking();
        const before = holdEntry(initial, 'hold', batch.madeOn, reader, new Taking());
        const now = holdEntry(text, 'hold', batch.madeOn, reader, taking);
        const changes = changedOnly(before, now);
        return {
          problems: taking.problems,
          send: changes && ((why, draft) => call('hold.correct', { id: hold.id, changes, why, draft })),
        };
      }}
    >
      {(text, set, problems) => (
        <HoldFields
          hold={text}
          path="hold"
          problems={problems}
          reader={reader}
          day={batch.madeOn}
          onChange={set}
        />
      )}
    </EditForm>
  );
}

/** What a jar holds and stands in: letter, milk, vessel, volume, hold, made or planned, note. */
export function CorrectJar({
  record,
  holds,
  onDone,
}: Editing & { readonly record: JarRecord; readonly holds: readonly Hold[] }) {
  const { reader, writer } = useReader();
  const packages = usePackages();
  const { jar, label } = record;
  const initial = {
    letter: jar.letter,
    milk: milkText(jar, writer),
    hold: jar.hold ?? '',
    state: jar.state === 'planned' || jar.state === 'not made' ? jar.state : ('made' as const),
    countPerMl: jar.countPerMl === null ? '' : writer.number(jar.countPerMl),
    note: jar.note ?? '',
  };
  const entry = (text: typeof initial, taking: Taking) => ({
    ...milkEntry(text.milk, 'milk', reader, taking),
    letter:
      text.letter.trim().toLowerCase() ||
      (taking.say('letter', 'Give this jar a letter, such as “a”.') ?? ''),
    hold: text.hold === '' ? null : text.hold,
    state: text.state,
    countPerMl: taking.take('countPerMl', reader.count(text.countPerMl)),
    note: lineOrNull(text.note),
  });
  return (
    <EditForm
      label={`Correct ${label}`}
      draftKey={`jar:${jar.id}`}
      place={place(`correction of ${label}`, jar.batch)}
      initial={initial}
      askWhy
      saved={`Corrected ${label}.`}
      onDone={onDone}
      read={(text) => {
        const taking = new Taking();
        const changes = changedOnly(entry(initial, new Taking()), entry(text, taking));
        return {
          problems: taking.problems,
          send: changes && ((why, draft) => call('jar.correct', { id: jar.id, changes, why, draft })),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <div className="fields">
            <JarPlaceFields
              text={text}
              states={STATES}
              holds={holds}
              problems={problems}
              onChange={(part) => set({ ...text, ...part })}
            />
          </div>
          <MilkFields
            milk={text.milk}
            path="milk"
            problems={problems}
            reader={reader}
            packages={packages}
            onChange={(milk) => set({ ...text, milk })}
          />
          <div className="fields">
            <TextField
              label="Counted: CFU in each mL, if someone had it counted"
              value={text.countPerMl}
              problem={problems.get('countPerMl')}
              onChange={(countPerMl) => set({ ...text, countPerMl })}
            />
          </div>
          <ProseField
            label="Note on this jar"
            value={text.note}
            onChange={(note) => set({ ...text, note })}
          />
        </>
      )}
    </EditForm>
  );
}
