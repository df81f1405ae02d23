// What is read outside of the program: a line told on paper, the family as a picture, all of it as one page, whom to tell.
import { useState } from 'react';
import type { Input } from '../../core/contract';
import { CheckField, ChoiceField, SelectField } from '../parts/fields';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { pngOf, smallPhotograph } from './drawn-small';
import { JobLine, OutPanel } from './out-panel';
import { useJob } from './use-job';

type Report = Input<'report.get'>['report'];
type Kind = 'line' | 'family' | 'page' | 'told' | 'rows';
type Part = 'all' | 'line' | 'before' | 'after' | 'around';
type PaperKind = 'A4' | 'Letter' | 'one';

interface Of {
  readonly line: string | null;
  readonly jar: { readonly id: string; readonly label: string } | null;
}

interface Asked {
  readonly kind: Kind;
  readonly part: Part;
  readonly line: string;
  readonly paper: PaperKind;
  readonly privateToo: boolean;
}

/** What is asked for; null while a line has to be chosen. */
function reportOf({ kind, part, line, paper, privateToo }: Asked, jar: Of['jar']): Report | null {
  const sheet = paper === 'one' ? 'A4' : paper;
  switch (kind) {
    case 'line':
      return line === '' ? null : { of: 'line', line, paper: sheet };
    case 'told':
      return { of: 'told', paper: sheet };
    case 'rows':
      return { of: 'rows', paper: sheet };
    case 'page':
      return { of: 'page', line: line === '' ? null : line, privateToo };
    case 'family': {
      const on = paper === 'one' ? null : paper;
      if (part === 'all') return { of: 'family', part: { part }, paper: on };
      if (part === 'line')
        return line === '' ? null : { of: 'family', part: { part, line }, paper: on };
      return jar === null ? null : { of: 'family', part: { part, jar: jar.id }, paper: on };
    }
  }
} // prettier-ignore

const KINDS = [
  { value: 'line', label: 'A line on paper' },
  { value: 'family', label: 'The family as a picture' },
  { value: 'page', label: 'One page for a telephone' },
  { value: 'told', label: 'Whom to tell' },
  { value: 'rows', label: 'Rows to fill in by hand' },
] as const;

function Choices({
  asked,
  jar,
  lines,
  onAsk,
}: {
  readonly asked: Asked;
  readonly jar: Of['jar'];
  readonly lines: readonly { readonly id: string; readonly name: string }[];
  readonly onAsk: (change: Partial<Asked>) => void;
}) {
  const { kind, part, paper } = asked;
  const ofLine = kind === 'line' || (kind === 'family' && part === 'line') || kind === 'page';
  const parts: readonly { readonly value: Part; readonly label: string }[] = [
    { value: 'all', label: 'All of it' },
    { value: 'line', label: 'A line' },
    ...(jar === null
      ? []
      : ([
          { value: 'before', label: `What ${jar.label} comes from` },
          { value: 'after', label: `What came of ${jar.label}` },
          { value: 'around', label: 'Both' },
        ] as const)),
  ];
  return (
    <>
      <ChoiceField
        label="What"
        unsaid={null}
        value={kind}
        choices={KINDS}
        onChange={(chosen) => chosen !== '' && onAsk({ kind: chosen, paper: paper === 'one' ? 'A4' : paper })}
      />
      {kind === 'family' && (
        <ChoiceField
          label="Which part"
          unsaid={null}
          value={part}
          choices={parts}
          onChange={(chosen) => chosen !== '' && onAsk({ part: chosen })}
        />
      )}
      {ofLine && (
        <SelectField
          label="Which line"
          value={asked.line}
          choices={[
            ...(kind === 'page' ? [{ value: '', label: 'All of the ledger' }] : []),
            ...lines.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={(line) => onAsk({ line })}
        />
      )}
      {kind === 'page' ? (
        <CheckField
          label="Private remarks too"
          checked={asked.privateToo}
          onChange={(privateToo) => onAsk({ privateToo })}
        />
      ) : (
        <ChoiceField
          label="Paper"
          unsaid={null}
          value={paper}
          choices={[
            { value: 'A4', label: 'A4' },
            { value: 'Letter', label: 'Letter' },
            ...(kind === 'family' ? [{ value: 'one', label: 'One sheet as large as it is' } as const] : []),
          ]}
          onChange={(chosen) => chosen !== '' && onAsk({ paper: chosen })}
        />
      )}
    </>
  );
}

/** Saves, prints, and says what came of it. */
function useSaving(report: Report | null, answer: ReturnType<typeof useRead<'report.get'>>) {
  const job = useJob();
  const name = answer?.ok === true ? answer.value.title : '';
  const told = (done: { ok: true; value: { file: string | null } } | { ok: false; error: { code: string }; sentence: string }): void => {
    if (done.ok) say(done.value.file === null ? 'Sent to the printer.' : `Saved as ${done.value.file}.`);
    else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
  };
  const print = async (onPaper: boolean): Promise<void> => {
    if (report !== null) told(await job.run('report.print', { report, file: onPaper ? null : { name: `${name}.pdf` } }));
  };
  const write = async (ending: string, png: Uint8Array<ArrayBuffer> | null, what = report): Promise<void> => {
    if (what !== null) told(await job.run('report.write', { report: what, file: { name: `${name}${ending}` }, png }));
  };
  const writePng = async (): Promise<void> => {
    const png = answer?.ok === true && answer.value.svg !== null ? await pngOf(answer.value.svg) : null;
    if (png === null) say('This machine can’t draw a picture that large. Save it as SVG instead.', 'caution');
    else await write('.png', png);
  };
  const writePage = async (): Promise<void> => {
    if (report?.of !== 'page' || answer?.ok !== true) return;
    const photographs = [];
    for (const { id, sha256 } of answer.value.photographs) {
      const bytes = await smallPhotograph(sha256);
      if (bytes !== null) photographs.push({ id, bytes });
    }
    await write('.html', null, { ...report, photographs });
  };
  return { job, print, write, writePng, writePage };
} // prettier-ignore

export function ReportsPanel({ kind, line, jar }: Of & { readonly kind: Kind | null }) {
  const [asked, setAsked] = useState<Asked>({
    kind: kind ?? (jar === null ? 'line' : 'family'),
    part: jar === null ? 'all' : 'before',
    line: line ?? '',
    paper: 'A4',
    privateToo: false,
  });
  const known = useRead('line.list', {});
  const lines = known?.ok === true ? known.value.lines : [];
  // Where none was named, the newest.
  const chosen = asked.line === '' && asked.kind !== 'page' ? (lines.at(-1)?.id ?? '') : asked.line;
  const report = reportOf({ ...asked, line: chosen }, jar);
  const answer = useRead('report.get', report && { report });
  const { job, print, write, writePng, writePage } = useSaving(report, answer);
  const ready = answer?.ok === true && job.progress === null;
  const onPaper = asked.kind !== 'page';
  return (
    <OutPanel title="Print, or save to be read elsewhere">
      <Choices
        asked={{ ...asked, line: chosen }}
        jar={jar}
        lines={lines}
        onAsk={(change) => setAsked((before) => ({ ...before, ...change }))}
      />
      <div className="row">
        {onPaper ? (
          <>
            <button className="button primary" type="button" disabled={!ready} onClick={() => void print(false)}>
              Save as PDF…
            </button>
            <button className="button" type="button" disabled={!ready} onClick={() => void print(true)}>
              Print…
            </button>
          </>
        ) : (
          <button className="button primary" type="button" disabled={!ready} onClick={() => void writePage()}>
            Save the page…
          </button>
        )}
        {asked.kind === 'family' && (
          <>
            <button className="button" type="button" disabled={!ready} onClick={() => void write('.svg', null)}>
              Save as SVG…
            </button>
            <button className="button" type="button" disabled={!ready} onClick={() => void writePng()}>
              Save as PNG…
            </button>
          </>
        )}
      </div>
      <JobLine job={job} />
      {answer?.ok === false && (
        <p role="alert" className="notice">
          {answer.sentence}
        </p>
      )}
      {answer?.ok === true && answer.value.svg !== null && (
        <figure className="out-sheet">
          <img alt="The family as it will be drawn" src={`data:image/svg+xml,${encodeURIComponent(answer.value.svg)}`} />
        </figure>
      )}
      <p className="soft small">
        {onPaper
          ? 'In greys that a printer keeps apart. Nothing private is in it, and no price.'
          : 'One file that opens in any browser, also on a telephone, and asks for nothing from anywhere.'}
      </p>
    </OutPanel>
  );
} // prettier-ignore
