// A tasting: first poured, then one taster at a time, large enough to be read at arm's length; revealed at the end. What is being
// marked is kept as a draft, so that it goes on where it was.
import { useRef, useState } from 'react';
import { useDraft } from '../parts/use-draft';
import { call } from '../state/ledger-calls';
import { go, say } from '../state/store';
import { useRead } from '../state/use-read';
import { type Marking, markingOf, marksOf, nextTurn } from './marking';
import { PouringSheet } from './pouring-sheet';
import { Result } from './result';
import { HandOver, Reveal } from './turns';
import { OrderBowls, PickBowl } from './order-bowls';
import { TasteBowl } from './taste-bowl';
import type { Session, Trials } from './trial-types';

/** The steps until it is revealed. */
function Steps({ session }: { readonly session: Session }) {
  const { task, label, notBlind } = session;
  // Who has just marked has, though the tasting is not read again yet.
  const [recorded, setRecorded] = useState<readonly { readonly at: Session; readonly taster: string }[]>([]);
  const just = new Set(recorded.filter(({ at }) => at === session).map(({ taster: one }) => one));
  const tasters = session.tasters.map((one) => (just.has(one.taster) ? { ...one, done: true } : one));
  const busy = useRef(false);
  const key = `marks:${session.session}`;
  const place = { says: `tasting of ${label ?? 'some jars'}`, screen: 'trials', focus: `session:${session.session}` };
  const [initial] = useState<Marking>(() => ({
    ...nextTurn(tasters, []),
    ...(tasters.some(({ done }) => done) ? {} : { stage: 'pour' as const }),
  }));
  const draft = useDraft<Marking>(key, place, initial);
  const marking = draft.text;
  if (marking === null) return <div aria-busy="true" />;
  const taster = tasters.find((one) => one.taster === marking.taster);
  const turn = (next: Marking): void => {
    draft.restart(next);
    // Who is left out is remembered with the next one's turn.
    if (next.skipped.length > 0) draft.set(next);
  };
  const record = async (): Promise<void> => {
    if (!taster || busy.current) return;
    busy.current = true;
    draft.close();
    const marks = marksOf(task, taster, marking);
    const answer = await call('mark.record', { session: session.session, marks, draft: key });
    busy.current = false;
    if (answer.ok) {
      setRecorded((before) => [...before, { at: session, taster: taster.taster }]);
      turn(nextTurn(tasters, marking.skipped, taster.taster));
    } else {
      draft.reopen();
      say(answer.sentence, 'caution');
    }
  };
  const reveal = async (): Promise<void> => {
    const answer = await call('session.reveal', { session: session.session });
    if (!answer.ok) say(answer.sentence, 'caution');
  };
  const to = (change: Partial<Marking>): void => draft.set({ ...marking, ...change });
  if (marking.stage === 'pour')
    return <PouringSheet session={session.session} onDone={() => turn({ ...nextTurn(tasters, marking.skipped) })} />;
  if (marking.stage === 'reveal' || !taster)
    return (
      <Reveal
        tasters={tasters}
        onReveal={() => void reveal()}
        onTurn={(one) => draft.set(markingOf(one, marking.skipped, 'hand'))}
      />
    );
  if (marking.stage === 'hand')
    return (
      <HandOver
        key={taster.taster}
        taster={taster}
        notBlind={notBlind}
        onBegin={() => to({ stage: 'taste', at: 0 })}
        onSkip={() => turn(nextTurn(tasters, [...marking.skipped, taster.taster], taster.taster))}
        onPour={() => to({ stage: 'pour' })}
      />
    );
  if (marking.stage === 'taste')
    return <TasteBowl key={`${taster.taster} ${marking.at}`} taster={taster} marking={marking} onChange={to} />;
  const shared = { taster, marking, onChange: to, onDone: () => void record() };
  return task === 'rank' || task === 'score' ? (
    <OrderBowls {...shared} />
  ) : (
    <PickBowl {...shared} odd={task === 'triangle'} />
  );
} // prettier-ignore

/** The screen of one tasting. */
export function Tasting({ session, trials }: { readonly session: string; readonly trials: Trials }) {
  const answer = useRead('session.get', { session });
  if (answer === null) return <div aria-busy="true" />;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  const tasting = answer.value;
  const trial = trials.trials.find(({ id }) => id === tasting.trial);
  if (tasting.revealedAt !== null) return <Result session={tasting} trial={trial} />;
  return (
    <div className="tasting">
      <Steps session={tasting} />
      <p className="tasting-foot soft small">
        <span>Smells or tastes wrong? Spit it out, eat nothing more of that jar, and say so.</span>
        <button type="button" className="button quiet" onClick={() => go('trials')}>
          Leave it for now
        </button>
      </p>
    </div>
  );
}
