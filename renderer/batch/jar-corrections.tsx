// The forms that correct what went into a jar and what was seen of it. Each sends only what was changed.
import { discardOf } from '../../core/safety/take-out';
import type { MatesPowerCut } from '../../core/shapes/seed-codes';
import type { Outcome } from '../../core/ledger/records';
import { spoilagePassages } from '../../core/safety/remarks';
import { call } from '../state/ledger-calls';
import { EditForm } from '../parts/edit-form';
import { useReader } from '../parts/use-reader';
import { additionEntries, seedEntries } from './batch-entry';
import { Taking } from '../parts/taking';
import { additionTexts, seedTexts } from './batch-repeat';
import { noAddition, noSeed } from './batch-text';
import { place, type Editing, type JarRecord } from './batch-corrections';
import { askAboutSeeds, pickedJars } from './held-seeds';
import { isSetAside } from './is-set-aside';
import { unanswered } from './record-text';
import { OutcomeFieldsForm } from './outcome-form';
import { outcomeText, passagesAnswered, readOutcome, saysAnything, type OutcomeFields } from './outcome-text';
import { AdditionRows } from './recipe-fields';
import { SeedRows } from './seed-rows';
import { usePackages } from './use-packages';

const withoutJar = (outcome: Outcome): OutcomeFields => {
  const { jar: _jar, ...fields } = outcome;
  return fields;
};

/** What seeded a jar. */
export function CorrectSeeds({
  record,
  lastMadeOn,
  onDone,
}: Editing & { readonly record: JarRecord; readonly lastMadeOn: string }) {
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
          // What it was said to be seeded from already is history; a jar that is new here is asked about.
          held: () => {
            const before = pickedJars(initial);
            return askAboutSeeds(pickedJars(text).filter((id) => !before.includes(id)));
          },
          send: same ? null : (why, draft) => call('seeding.set', { jar: jar.id, seedings, why, draft }),
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
          notAfter={lastMadeOn}
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
        const additions = additionEntries(text, 'additions', reader, taking, jar.state === 'planned');
        const same = JSON.stringify(text) === JSON.stringify(initial);
        return {
          problems: taking.problems,
          send: same ? null : (why, draft) => call('addition.set', { jar: jar.id, additions, why, draft }),
        };
      }}
    >
      {(text, set, problems) => (
        <AdditionRows
          of={label}
          plan={jar.state === 'planned'}
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
export function OutcomeOf({
  record,
  mates,
  onDone,
}: Editing & { readonly record: JarRecord; readonly mates: MatesPowerCut | null }) {
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
        const passages =
          same || text.wordsFine || discardOf(now) !== null ? [] : spoilagePassages(unanswered(now, record));
        return {
          problems,
          doubt:
            passages.length === 0
              ? null
              : {
                  words: passages.map(({ words }) => words),
                  answered: (answer) => passagesAnswered(text, passages, answer),
                },
          send: same
            ? null
            : (why, draft) =>
                call('outcome.save', {
                  jar: jar.id,
                  outcome: saysAnything(now) ? now : null,
                  onShelf: shelf,
                  readAs: text.wordsFine ? 'fine' : null,
                  why,
                  draft,
                }),
        };
      }}
    >
      {(text, set, problems) => (
        <OutcomeFieldsForm
          text={text}
          onChange={set}
          problems={problems}
          reader={reader}
          mates={mates}
          additions={record.additions.map(({ name }) => name)}
          setAside={isSetAside(record)}
        />
      )}
    </EditForm>
  );
}
