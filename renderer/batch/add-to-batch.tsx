// One more jar, or one more hold, of a batch that is recorded already.
import { daysOf } from './batch-days';
import type { BatchReply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { EditForm } from '../parts/edit-form';
import { CheckField, ProseField, Section, SelectField } from '../parts/fields';
import { useReader } from '../parts/use-reader';
import { addedJarEntry, addedJarText } from './added-jar';
import { holdEntry } from './batch-entry';
import { Taking } from '../parts/taking';
import { noHold } from './batch-text';
import { place, type Editing } from './batch-corrections';
import { askAboutSeeds, pickedJars } from './held-seeds';
import { JarPlaceFields, NEW_STATES } from './jar-place';
import { AdditionRows, HoldFields, MilkFields } from './recipe-fields';
import { SeedRows } from './seed-rows';
import { usePackages } from './use-packages';

interface Of extends Editing {
  readonly reply: BatchReply;
  /** The batch's. */
  readonly label: string;
}

/** One more jar: filled in as the batch's first, with the next letter. */
export function AddJar({ reply, label, onDone }: Of) {
  const { reader, writer } = useReader();
  const packages = usePackages();
  const { batch, holds, jars } = reply;
  const [like] = jars;
  return (
    <EditForm
      label={`One more jar of ${label}`}
      draftKey={`add-jar:${batch.id}`}
      place={place(`one more jar of ${label}`, batch.id)}
      initial={addedJarText(reply, writer)}
      askWhy={false}
      save="Add the jar"
      saved="Added the jar."
      onDone={onDone}
      read={(text) => {
        const { jar, problems } = addedJarEntry(text, reply, reader);
        return {
          problems,
          held: () => askAboutSeeds(pickedJars(text.seeds)),
          send: (why, draft) =>
            call('batch.addJar', { batch: batch.id, jar, sameLabelMeant: false, why, draft }),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <h2>One more jar</h2>
          {like && <p className="soft">Filled in as {like.label}. Change what differs.</p>}
          <div className="fields">
            <JarPlaceFields
              text={text}
              states={NEW_STATES}
              holds={holds}
              problems={problems}
              onChange={(part) => set({ ...text, ...part })}
            />
            {text.state === 'made' && (
              <SelectField
                label="Still on the shelf"
                value={text.shelf}
                choices={[
                  { value: '', label: 'Not noted' },
                  { value: 'kept', label: 'Yes' },
                  { value: 'gone', label: 'Gone' },
                ]}
                onChange={(shelf) => set({ ...text, shelf })}
              />
            )}
          </div>
          <Section level={3} title="Seed">
            <SeedRows
              of="the jar"
              seeds={text.seeds}
              path="seeds"
              problems={problems}
              reader={reader}
              notAfter={daysOf(batch).last}
              packages={packages}
              onChange={(seeds) => set({ ...text, seeds })}
            />
          </Section>
          <Section level={3} title="Milk and vessel">
            <MilkFields
              milk={text.milk}
              path="milk"
              problems={problems}
              reader={reader}
              packages={packages}
              onChange={(milk) => set({ ...text, milk })}
            />
          </Section>
          <Section level={3} title="Stirred in">
            <AdditionRows
              of="the jar"
              plan={text.state === 'planned'}
              additions={text.additions}
              path="additions"
              problems={problems}
              reader={reader}
              packages={packages}
              onChange={(additions) => set({ ...text, additions })}
            />
          </Section>
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

/** One more time in warmth, and which jars stood in it. */
export function AddHold({ reply, label, onDone }: Of) {
  const { reader } = useReader();
  const { batch, jars } = reply;
  return (
    <EditForm
      label={`Another hold of ${label}`}
      draftKey={`add-hold:${batch.id}`}
      place={place(`another hold of ${label}`, batch.id)}
      initial={{ hold: noHold, jars: [] as readonly string[] }}
      askWhy={false}
      save="Add the hold"
      saved="Added the hold."
      onDone={onDone}
      read={(text) => {
        const taking = new Taking();
        const hold = holdEntry(text.hold, 'hold', batch.madeOn, reader, taking);
        return {
          problems: taking.problems,
          send: (_why, draft) =>
            call('batch.addHold', { batch: batch.id, hold, jars: [...text.jars], draft }),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <h2>Another hold</h2>
          <HoldFields
            hold={text.hold}
            path="hold"
            problems={problems}
            reader={reader}
            day={batch.madeOn}
            onChange={(hold) => set({ ...text, hold })}
          />
          <fieldset className="choices">
            <legend className="label">Which jars stood in it</legend>
            <div className="choice-row">
              {jars.map(({ jar, label: name }) => (
                <CheckField
                  key={jar.id}
                  label={name}
                  checked={text.jars.includes(jar.id)}
                  onChange={(on) =>
                    set({
                      ...text,
                      jars: on ? [...text.jars, jar.id] : text.jars.filter((one) => one !== jar.id),
                    })
                  }
                />
              ))}
            </div>
          </fieldset>
        </>
      )}
    </EditForm>
  );
}
