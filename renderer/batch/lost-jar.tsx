// A jar that nobody can name: it stands in for a seed, so that what descends from it says "at least".
import { call } from '../state/ledger-calls';
import { go } from '../state/store';
import { EditForm } from '../parts/edit-form';
import { ProseField, TextField } from '../parts/fields';
import { useReader } from '../parts/use-reader';
import { lineOrNull, Taking } from '../parts/taking';

/** The form. */
export function LostJar() {
  const { reader } = useReader();
  return (
    <article className="stack">
      <h1>A jar nobody can name</h1>
      <p>
        Sometimes a jar was seeded from one that nobody can name any more. A lost jar stands in its place:
        what descends from it is counted as “at least”. It is not a made jar, and nothing is guessed about it.
      </p>
      <EditForm
        label="A lost jar"
        draftKey="lost"
        place={{ says: 'lost jar', screen: 'batch', focus: 'lost' }}
        initial={{ label: '', day: '', note: '' }}
        askWhy={false}
        save="Record the lost jar"
        saved="Recorded a lost jar. It can now be picked as a seed."
        onDone={() => go('batch')}
        read={(text) => {
          const taking = new Taking();
          const made = taking.take('day', reader.made(text.day)) ?? { madeOn: null };
          return {
            problems: taking.problems,
            send: (_why, draft) =>
              call('jar.lost', {
                ...made,
                label: lineOrNull(text.label),
                note: lineOrNull(text.note),
                draft,
              }),
          };
        }}
      >
        {(text, set, problems) => (
          <>
            <div className="fields">
              <TextField
                label="What it is called"
                value={text.label}
                placeholder="the good one from before new year"
                onChange={(label) => set({ ...text, label })}
              />
              <TextField
                label="Made on, if that is known"
                value={text.day}
                read={reader.made(text.day)}
                problem={problems.get('day')}
                onChange={(day) => set({ ...text, day })}
              />
            </div>
            <ProseField label="Note" value={text.note} onChange={(note) => set({ ...text, note })} />
          </>
        )}
      </EditForm>
    </article>
  );
}
