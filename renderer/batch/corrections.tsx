// The forms that correct a recorded batch in place, one for each kind of record. Each sends only what was changed.
import type { BatchReply } from '../../core/contract';
import type { Batch, Hold, Jar, Outcome } from '../../core/ledger/records';
import { call } from '../app/calls';
import { ProseField, SelectField, TextField } from '../parts/fields';
import { EditForm } from '../parts/edit-form';
import { useReader } from '../parts/use-reader';
import { additionEntries, holdEntry, lineOrNull, milkEntry, seedEntries, Taking } from './batch-entry';
import { additionTexts, holdText, milkText, seedTexts } from './batch-repeat';
import { noAddition, noSeed } from './batch-text';
import { changedOnly } from './changes';
import { OutcomeFieldsForm } from './outcome-form';
import { outcomeText, readOutcome, saysAnything, type OutcomeFields } from './outcome-text';
import { AdditionRows, HoldFields, MilkFields } from './recipe-fields';
import { SeedRows } from './seed-rows';
import { usePackages } from './use-packages';

export type JarRecord = BatchReply['jars'][number];
interface Editing {
  readonly onDone: () => void;
}
const withoutJar = (outcome: Outcome): OutcomeFields => {
  const { jar: _jar, ...fields } = outcome;
  return fields;
};
const place = (says: string, batch: string) => ({ says, screen: 'batch', focus: batch });

/** Day, word and note of a batch. */
export function CorrectBatch({
  batch,
  label,
  onDone,
}: Editing & { readonly batch: Batch; readonly label: string }) {
  const { reader, writer } = useReader();
  const initial = { date: writer.day(batch.madeOn), word: batch.word ?? '', note: batch.note ?? '' };
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
        const madeOn =
          taking.take('date', reader.day(text.date)) ??
          taking.say('date', 'Say on which day, such as “14 Mar”.');
        const changes = changedOnly(
          { madeOn: batch.madeOn, word: batch.word, note: batch.note },
          { madeOn: madeOn ?? batch.madeOn, word: lineOrNull(text.word), note: lineOrNull(text.note) },
        );
        return {
          problems: taking.problems,
          send: changes && ((why) => call('batch.correct', { id: batch.id, changes, why })),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <div className="fields">
            <TextField
              label="Made on"
              value={text.date}
              read={reader.day(text.date)}
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
          send: changes && ((why) => call('hold.correct', { id: hold.id, changes, why })),
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
    state: jar.state === 'planned' ? ('planned' as const) : ('made' as const),
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
          send: changes && ((why) => call('jar.correct', { id: jar.id, changes, why })),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <div className="fields">
            <TextField
              label="Letter"
              width="short"
              value={text.letter}
              problem={problems.get('letter')}
              onChange={(letter) => set({ ...text, letter })}
            />
            <SelectField
              label="Made or planned"
              value={text.state}
              choices={[
                { value: 'made', label: 'Made' },
                { value: 'planned', label: 'Planned' },
              ]}
              onChange={(state) => set({ ...text, state })}
            />
            {holds.length > 0 && (
              <SelectField
                label="Stood in"
                value={text.hold}
                choices={[
                  { value: '', label: 'Not said' },
                  ...holds.map((hold, at) => ({ value: hold.id, label: `Hold ${at + 1}` })),
                ]}
                onChange={(hold) => set({ ...text, hold })}
              />
            )}
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

/** What seeded a jar. */
export function CorrectSeeds({
  record,
  madeOn,
  onDone,
}: Editing & { readonly record: JarRecord; readonly madeOn: string }) {
  const { reader, writer } = useReader();
  const packages = usePackages();
  const { jar, label } = record;
  const recorded = seedTexts(record.seedings, writer);
  const initial = recorded.length > 0 ? recorded : [noSeed];
  return (
    <EditForm
      label={`What seeded ${label}`}
      draftKey={`seeds:${jar.id}`}
      place={place(`seeds of ${label}`, jar.batch)}
      initial={initial}
      askWhy={recorded.length > 0}
      saved={`Corrected what seeded ${label}.`}
      onDone={onDone}
      read={(text) => {
        const taking = new Taking();
        const seedings = seedEntries(text, 'seeds', reader, taking);
        const same = JSON.stringify(text) === JSON.stringify(initial);
        return {
          problems: taking.problems,
          send: same ? null : (why) => call('seeding.set', { jar: jar.id, seedings, why }),
        };
      }}
    >
      {(text, set, problems) => (
        <SeedRows
          of={label}
          seeds={text}
          path="seeds"
          problems={problems}
          reader={reader}
          notAfter={madeOn}
          packages={packages}
          startHere
          onChange={(seeds) => set([...seeds])}
        />
      )}
    </EditForm>
  );
}

/** What was stirred into a jar. */
export function CorrectAdditions({ record, onDone }: Editing & { readonly record: JarRecord }) {
  const { reader, writer } = useReader();
  const packages = usePackages();
  const { jar, label } = record;
  const recorded = additionTexts(record.additions, writer);
  const initial = recorded.length > 0 ? recorded : [noAddition];
  return (
    <EditForm
      label={`What was stirred into ${label}`}
      draftKey={`additions:${jar.id}`}
      place={place(`additions of ${label}`, jar.batch)}
      initial={initial}
      askWhy={recorded.length > 0}
      saved={`Corrected what was stirred into ${label}.`}
      onDone={onDone}
      read={(text) => {
        const taking = new Taking();
        const additions = additionEntries(text, 'additions', reader, taking);
        const same = JSON.stringify(text) === JSON.stringify(initial);
        return {
          problems: taking.problems,
          send: same ? null : (why) => call('addition.set', { jar: jar.id, additions, why }),
        };
      }}
    >
      {(text, set, problems) => (
        <AdditionRows
          of={label}
          additions={text}
          path="additions"
          problems={problems}
          reader={reader}
          packages={packages}
          onChange={(additions) => set([...additions])}
        />
      )}
    </EditForm>
  );
}

/** What was seen of a jar, for the first time or corrected. */
export function OutcomeOf({ record, onDone }: Editing & { readonly record: JarRecord }) {
  const { reader, writer } = useReader();
  const { jar, label, outcome } = record;
  const known = outcome === null ? null : withoutJar(outcome);
  const initial = outcomeText(known, jar.onShelf, writer);
  return (
    <EditForm
      label={`Outcome of ${label}`}
      draftKey={`outcome:${jar.id}`}
      place={place(`outcome of ${label}`, jar.batch)}
      initial={initial}
      askWhy={outcome !== null}
      save="Record outcome"
      saved={`Recorded the outcome of ${label}.`}
      onDone={onDone}
      read={(text) => {
        const { outcome: now, problems } = readOutcome(text, reader);
        const shelf = text.shelf === '' ? null : text.shelf === 'kept';
        const same = JSON.stringify(text) === JSON.stringify(initial);
        return {
          problems,
          send: same
            ? null
            : (why) =>
                call('outcome.save', {
                  jar: jar.id,
                  outcome: saysAnything(now) ? now : null,
                  onShelf: shelf,
                  why,
                }),
        };
      }}
    >
      {(text, set, problems) => (
        <OutcomeFieldsForm text={text} onChange={set} problems={problems} reader={reader} />
      )}
    </EditForm>
  );
}

/** Draft keys of a jar's and a batch's forms, to reopen what was unfinished. */
export const draftKeysOf = (jar: Jar): readonly string[] =>
  ['outcome', 'jar', 'seeds', 'additions', 'reserve'].map((form) => `${form}:${jar.id}`);
