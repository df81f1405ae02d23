// The screen of judgement: the lines with their verdicts, the chosen one batch by batch, what to seed from next, when a
// fresh start pays. What all this was worked out by stands behind one switch.
import { useCallback, useState } from 'react';
import { SAYS_NOTHING_OF_SAFETY } from '../../core/says/vigour-says';
import { go, turnTo, useLineInHand, usePlace } from '../state/store';
import { Linked } from '../parts/linked';
import { namedIn, verdictParts } from '../parts/verdict-parts';
import { useRead } from '../state/use-read';
import { BatchDetail } from './batch-detail';
import { LinePlot } from './line-plot';
import { LineCards, lives, useLines, type Known } from './line-list';
import { LineHeading } from './line-heading';
import { bestOf } from './best-of-lines';
import { NextSeed } from './next-seed';
import type { LineReply } from './plot-scale';
import { Restart } from './restart-panel';
import { WorkedPanel } from './worked-panel';
import type { Worked } from './worked-marks';
import './vigour.css';

/** The line shown first: the living one that began last, unless another slips. */
function firstShown(lines: readonly Known[]): string | null {
  const living = lines.filter(lives);
  const among = (living.length === 0 ? lines : living).map(({ line }) => line);
  const slipping = among.findLast(({ standing }) => standing === 'worn out' || standing === 'slipping');
  return (slipping ?? among.at(-1))?.line ?? null;
}

/** The screen. Its focus is null, "line:" and a line's id, or "next", with a line's id where it is about one. */
export function VigourScreen() {
  const place = usePlace();
  const { focus } = place;
  // Another line that is chosen afterwards shows its own plot, not its seeds.
  const [shownFor, setShownFor] = useState<typeof place | null>(null);
  const seedsShown = useCallback(() => setShownFor(place), [place]);
  const inHand = useLineInHand();
  const family = useRead('line.list', { jar: null });
  const answers = useLines(family?.ok ? family.value.lines.map(({ id }) => id) : []);
  const known = (answers ?? []).flatMap((answer) => ('line' in answer ? [answer] : []));
  const refused = (answers ?? []).flatMap((answer) => ('line' in answer ? [] : [answer.refused]));
  const first = firstShown(known);
  const [inHandOrFirst] = [inHand, first].flatMap((id) => known.filter(({ line }) => line.line === id));
  const shown = inHandOrFirst ?? known.at(-1);
  return (
    <div className="page vigour">
      <h1 className="visually-hidden">Vigour</h1>
      {family?.ok === false && <p>{family.sentence}</p>}
      {refused.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {family?.ok === true && family.value.lines.length === 0 && <Nothing />}
      {shown && (
        <>
          {known.length > 1 && <OfAll lines={known} />}
          <LineCards lines={known} chosen={shown.line.line} onChoose={turnTo} />
          <BatchByBatch key={shown.line.line} line={shown.line} />
          <NextSeed
            key={`next ${shown.line.line}`}
            of={shown}
            asked={focus?.startsWith('next') === true && shownFor !== place}
            onShown={seedsShown}
          />
          <Restart line={shown.line.line} />
          <p className="vigour-safety">{SAYS_NOTHING_OF_SAFETY}</p>
        </>
      )}
    </div>
  );
}

/** What to seed from today, of all lines: there is one kitchen, whatever is said of each. */
function OfAll({ lines }: { readonly lines: readonly Known[] }) {
  const answer = useRead('advice.next', {});
  const best = answer?.ok ? bestOf(lines, answer.value) : null;
  // It keeps its room while it is read.
  return (
    <p className="vigour-of-all">
      {answer?.ok === true &&
        (best === null ? (
          'Of all lines: none that is kept is worth going on with.'
        ) : (
          <>
            Of all lines, <strong>{best.line.name}</strong> first:{' '}
            <Linked text={verdictParts(best.verdict).sentence} jars={namedIn(best.verdict)} />
          </>
        ))}
      {answer?.ok === false && answer.sentence}
    </p>
  );
}

/** The chosen line: its plot, a batch opened from it, and behind one switch how it was worked out. */
function BatchByBatch({ line }: { readonly line: LineReply }) {
  const [batch, setBatch] = useState<string | null>(null);
  const [worked, setWorked] = useState<Worked | null>(null);
  const opened = line.batches.find((one) => one.batch === batch);
  const drawn = line.comparable > 0;
  return (
    <section className="vigour-line" aria-labelledby="line-plot">
      <header className="row">
        <LineHeading line={line.line} name={line.name} />
        <span className="push" />
        <button
          type="button"
          className="button"
          aria-expanded={worked !== null}
          onClick={() => setWorked(worked === null ? { corrected: true } : null)}
        >
          How this was worked out
        </button>
      </header>
      {line.standing === 'too few batches to say' && <TooFew line={line} />}
      {drawn && <LinePlot line={line} chosen={batch} onChoose={setBatch} worked={worked} />}
      {opened && <BatchDetail key={opened.batch} batch={opened} onClose={() => setBatch(null)} />}
      {worked && <WorkedPanel line={line} worked={worked} onWorked={setWorked} />}
    </section>
  );
}

/** Before there are enough batches: what will be shown. */
function TooFew({ line }: { readonly line: LineReply }) {
  const fewest = line.model.parameters['fewest'];
  return (
    <p>
      With {typeof fewest === 'number' ? fewest : 5} batches that can be compared, this shows how each set
      beside the early ones, and says whether the line slips. So far there{' '}
      {line.comparable === 1 ? 'is' : 'are'} {line.comparable === 0 ? 'none' : line.comparable}.
    </p>
  );
}

/** Before there is anything to judge: starts the job. */
function Nothing() {
  return (
    <section className="stack">
      <p>
        There is no line to judge yet. A line begins with a batch made from sources; five batches later there
        is something to say of it.
      </p>
      <div className="row">
        <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
          Record a batch
        </button>
        <button type="button" className="button" onClick={() => go('notes')}>
          Bring in notes
        </button>
      </div>
    </section>
  );
}
