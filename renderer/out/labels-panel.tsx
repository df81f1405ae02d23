// Labels for a jar, or for its whole batch: looked at first, then saved as a PDF or printed.
import { useState } from 'react';
import { CheckField, ChoiceField, TextField } from '../parts/fields';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { FIGURES, layoutOf, type Paper, PAPERS, type Typed } from './label-layouts';
import { JobLine, OutPanel } from './out-panel';
import { useJob } from './use-job';

type Kind = 'shelf' | 'giving';

/** The first sheet as it will be, a picture by itself. */
const Preview = ({ pages }: { readonly pages: readonly string[] }) => (
  <figure className="out-sheet">
    <img
      alt="The first sheet, as it will be printed"
      src={`data:image/svg+xml,${encodeURIComponent(pages[0] ?? '')}`}
    />
    <figcaption className="soft small">
      {pages.length === 1 ? 'One page' : `The first of ${pages.length} pages`}. The code is random: it tells
      nobody anything, and typed where a jar is looked for it finds this one.
    </figcaption>
  </figure>
);

function Cut({
  paper,
  typed,
  onPaper,
  onTyped,
}: {
  readonly paper: Paper;
  readonly typed: Typed;
  readonly onPaper: (paper: Paper) => void;
  readonly onTyped: (typed: Typed) => void;
}) {
  return (
    <>
      <ChoiceField
        label="Paper"
        unsaid={null}
        value={paper}
        choices={[
          { value: 'A4', label: 'A4 sheet' },
          { value: 'Letter', label: 'Letter sheet' },
          { value: 'roll', label: 'A roll' },
        ]}
        onChange={(chosen) => chosen !== '' && onPaper(chosen)}
      />
      <details>
        <summary>How it is cut, in mm</summary>
        <div className="out-figures">
          {FIGURES.map(([name, label]) => (
            <TextField
              key={name}
              label={label}
              width="short"
              numeric
              value={typed[name]}
              onChange={(text) => onTyped({ ...typed, [name]: text })}
            />
          ))}
        </div>
      </details>
    </>
  );
}

export function LabelsPanel({
  jar,
  label,
  all,
}: {
  readonly jar: string;
  readonly label: string;
  readonly all: boolean;
}) {
  const [kind, setKind] = useState<Kind>('shelf');
  const [mates, setMates] = useState(all);
  const [paper, setPaper] = useState<Paper>('A4');
  const [typed, setTyped] = useState<Typed>(PAPERS.A4);
  const job = useJob();
  const known = useRead('jar.get', { id: jar });
  const others = known?.ok === true ? known.value.siblings.map(({ id }) => id) : [];
  const layout = layoutOf(typed);
  const asked = layout && { jars: mates ? [jar, ...others] : [jar], kind, layout };
  const answer = useRead('label.sheet', asked);
  const print = async (file: { readonly name: string } | null): Promise<void> => {
    if (asked === null) return;
    const done = await job.run('label.print', { ...asked, file });
    if (!done.ok) {
      if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
    } else say(done.value.file === null ? 'Sent to the printer.' : `Saved as ${done.value.file}.`);
  };
  const ready = answer?.ok === true && job.progress === null;
  return (
    <OutPanel title={`Labels for ${label}`}>
      <ChoiceField
        label="For"
        unsaid={null}
        value={kind}
        choices={[
          { value: 'shelf', label: 'My own shelf' },
          { value: 'giving', label: 'Giving it away' },
        ]}
        onChange={(chosen) => chosen !== '' && setKind(chosen)}
      />
      <CheckField label="For all jars of its batch" checked={mates} onChange={setMates} />
      <Cut
        paper={paper}
        typed={typed}
        onPaper={(chosen) => {
          setPaper(chosen);
          setTyped(PAPERS[chosen]);
        }}
        onTyped={setTyped}
      />
      <div className="row">
        <button
          className="button primary"
          type="button"
          disabled={!ready}
          onClick={() => void print({ name: `${label} labels.pdf` })}
        >
          Save as PDF…
        </button>
        <button className="button" type="button" disabled={!ready} onClick={() => void print(null)}>
          Print…
        </button>
      </div>
      <JobLine job={job} />
      {layout === null && (
        <p role="alert" className="notice">
          One of the figures is none, or no label can be cut by it. Type millimetres, like 99 or 63.5.
        </p>
      )}
      {answer?.ok === false && (
        <p role="alert" className="notice">
          {answer.sentence}
        </p>
      )}
      {answer?.ok === true && <Preview pages={answer.value.pages} />}
    </OutPanel>
  );
}
