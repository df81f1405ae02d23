// The plan of a new batch in one quiet line: when to start. What goes in, how it is likely to come out, what it costs and what runs
// short lie a press behind it, with what a plan alone asks: the milk at hand, when one is awake, and how long one is away.
import { useEffect, useRef, useState } from 'react';
import { TextField } from '../parts/fields';
import type { Reader } from '../parts/reading';
import { useReader } from '../parts/use-reader';
import { useSettled } from '../parts/use-settled';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import type { BatchText } from './batch-text';
import { noPlan, planAsked, type PlanText } from './plan-text';
import type { Input, Reply } from '../../core/contract';

/** When one is awake, kept once both times can be read. */
function Awake({ awake }: { readonly awake: Reply<'plan.batch'>['awake'] }) {
  const [typed, type] = useState<Partial<typeof awake>>({});
  const now = { ...awake, ...typed };
  const save = (): void => {
    const whole = (time: string): string => (/^\d:\d\d$/.test(time.trim()) ? `0${time.trim()}` : time.trim());
    const next = { from: whole(now.from), to: whole(now.to) };
    if (next.from === awake.from && next.to === awake.to) return;
    void call('plan.awake', next).then((answer) => {
      if (!answer.ok) say(answer.sentence, 'caution');
      else type({});
    });
  };
  return (
    <div className="plan-awake" onBlur={save}>
      <TextField
        label="Awake from"
        width="short"
        value={now.from}
        onChange={(from) => type({ ...typed, from })}
      />
      <TextField label="Awake until" width="short" value={now.to} onChange={(to) => type({ ...typed, to })} />
    </div>
  );
}

/** What lies behind the line. */
function Behind({
  reply,
  plan,
  reader,
  onPlan,
  onStart,
}: {
  readonly reply: Reply<'plan.batch'>;
  readonly plan: PlanText;
  readonly reader: Reader;
  readonly onPlan: (plan: PlanText) => void;
  readonly onStart: (moment: string) => void;
}) {
  const { writer } = useReader();
  const { starts, says, awake } = reply;
  const section = useRef<HTMLElement>(null);
  useEffect(() => section.current?.scrollIntoView({ block: 'end' }), []);
  return (
    <section ref={section} className="plan-behind stack" aria-label="The plan">
      <p>{says.reason}</p>
      {starts.length > 0 && (
        <div className="row">
          {starts.slice(0, 3).map(({ from }) => (
            <button
              key={from}
              type="button"
              className="button"
              data-enter="pass"
              onClick={() => onStart(from)}
            >
              Begin {writer.moment(from)}
            </button>
          ))}
        </div>
      )}
      <ul className="plan-rest">
        {says.rest.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <div className="fields">
        <TextField
          label="Milk at hand"
          width="short"
          value={plan.milkAtHand}
          read={reader.amount(plan.milkAtHand, 'volume')}
          onChange={(milkAtHand) => onPlan({ ...plan, milkAtHand })}
        />
        <TextField
          label="Away until"
          width="short"
          value={plan.awayUntil}
          read={reader.day(plan.awayUntil, true)}
          onChange={(awayUntil) => onPlan({ ...plan, awayUntil })}
        />
        <Awake awake={awake} />
      </div>
    </section>
  );
}

/** A plan that is asked as the fields are typed in. */
export interface AskedPlan {
  readonly reply: Reply<'plan.batch'> | null;
  readonly problem: string | null;
  readonly open: boolean;
  readonly setOpen: (open: boolean) => void;
  readonly plan: PlanText;
  readonly setPlan: (plan: PlanText) => void;
}

/** @param text null: nothing is asked yet */
export function usePlan(text: BatchText | null, reader: Reader): AskedPlan {
  const [open, setOpen] = useState(false);
  const [plan, setPlan] = useState<PlanText>(noPlan);
  const asked = useSettled(text === null ? 'null' : JSON.stringify(planAsked(text, plan, reader)));
  const answer = useRead('plan.batch', JSON.parse(asked) as Input<'plan.batch'> | null);
  const reply = answer?.ok ? answer.value : null;
  const problem = answer !== null && !answer.ok ? answer.sentence : null;
  return { reply, problem, open, setOpen, plan, setPlan };
}

/** What lies behind the line, above the form's foot. @param onStart a start was chosen: the moment at which the first hold begins */
export function PlanBehind({
  asked,
  reader,
  onStart,
}: {
  readonly asked: AskedPlan;
  readonly reader: Reader;
  readonly onStart: (moment: string) => void;
}) {
  const { reply, open, plan, setPlan } = asked;
  return open && reply ? (
    <Behind reply={reply} plan={plan} reader={reader} onPlan={setPlan} onStart={onStart} />
  ) : null;
}

/** The line itself. */
export function PlanLine({ asked: { reply, problem, open, setOpen } }: { readonly asked: AskedPlan }) {
  const pressing = !open && reply?.short[0] ? reply.says.rest[0] : null;
  return (
    <p className="plan-line soft small">
      <span>
        {reply?.says.start ?? problem ?? ''}
        {pressing && <strong> {pressing}</strong>}
      </span>
      <button
        type="button"
        className="linked"
        aria-expanded={open}
        data-enter="pass"
        onClick={() => setOpen(!open)}
      >
        {open ? 'Less of the plan' : 'Plan it'}
      </button>
    </p>
  );
}
