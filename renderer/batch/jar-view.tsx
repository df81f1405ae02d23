// One recorded jar of an open batch: what it is made of, what was seen, and everything that can be corrected.
import { useRef, useState } from 'react';
import {
  discardHead,
  discardWord,
  eatSentence,
  lookedSentence,
  gateReasonSentence,
} from '../../core/says/safety-says';
import { doubtSays } from '../../core/says/seed-looks-says';
import { onlyNormal, takeOutGate } from '../../core/safety/take-out';
import { Remarks } from '../parts/unanswered';
import type { MatesPowerCut } from '../../core/shapes/seed-codes';
import { volumeKnown } from '../../core/quantities/printing';
import { portionName } from '../../core/ledger/portions';
import type { Hold, Outcome, Portion } from '../../core/ledger/records';
import { call } from '../state/ledger-calls';
import { go, say } from '../state/store';
import { Question } from '../parts/question';
import { useReader } from '../parts/use-reader';
import { lastCarrier } from '../parts/last-carrier';
import { Cautions } from '../parts/caution-list';
import { withKept } from './batch-repeat';
import { isSetAside } from './is-set-aside';
import { CorrectJar, type JarRecord } from './batch-corrections';
import { CorrectAdditions, CorrectSeeds, OutcomeOf } from './jar-corrections';
import { MistakeQuestion } from './mistake-question';
import { Photographs } from './photographs';
import { ReserveForm } from './reserve-form';

type Editor = 'outcome' | 'jar' | 'seeds' | 'additions' | 'reserve';
const EDITORS: readonly Editor[] = ['outcome', 'jar', 'seeds', 'additions', 'reserve'];

function Fact({
  name,
  none,
  children,
}: {
  readonly name: string;
  /** What it is called where there is nothing, unless that is unknown. */
  readonly none?: string;
  readonly children: string;
}) {
  return (
    <div className="fact">
      <dt>{name}</dt>
      <dd className={children === '' && none === undefined ? 'soft' : undefined}>
        {children === '' ? (none ?? 'not noted') : children}
      </dd>
    </div>
  );
}

const list = (parts: readonly (string | null | undefined | false)[]): string =>
  parts.filter(Boolean).join(', ');

function Facts({ record }: { readonly record: JarRecord }) {
  const { writer } = useReader();
  const { jar } = record;
  const amount = (value: typeof jar.milkAmount): string | null => (value ? writer.noted(value) : null);
  return (
    <dl className="facts">
      <Fact name="Seeded from">
        {record.seedings
          .map(({ seeding, label, kept, share }) =>
            [
              seeding.amount ? `${amount(seeding.amount) ?? ''} of` : null,
              [withKept(label, kept), seeding.part === 'mixed' ? null : seeding.part]
                .filter(Boolean)
                .join(', '),
              share !== null && record.seedings.length > 1 ? `(share ${Math.round(share * 100)} %)` : null,
            ]
              .filter(Boolean)
              .join(' '),
          )
          .join(', ')}
      </Fact>
      <Fact name="Milk">{list([[amount(jar.milkAmount), jar.milk].filter(Boolean).join(' ')])}</Fact>
      <Fact name="Vessel">
        {list([
          jar.vessel,
          jar.finalVolume
            ? list([amount(jar.finalVolume), volumeKnown(jar.finalVolumeKnown, jar.finalVolume)])
            : null,
        ])}
      </Fact>
      <Fact name="Stirred in" none="plain: nothing">
        {record.additions
          .map((one) =>
            [
              amount(one.actual) ?? amount(one.planned),
              one.name,
              one.actual && one.planned && one.actual.typed !== one.planned.typed
                ? `(planned ${amount(one.planned) ?? ''})`
                : null,
            ]
              .filter(Boolean)
              .join(' '),
          )
          .join(', ')}
      </Fact>
      {record.portions.length > 0 && (
        <Fact name="Kept back">
          {record.portions
            .map((one) =>
              list([
                [one.pieces, portionName(one)].filter((part) => part !== null).join(' '),
                one.reserve ? 'a reserve' : null,
                amount(one.amount),
                one.goneOn ? `gone on ${writer.day(one.goneOn)}` : `kept since ${writer.day(one.keptOn)}`,
              ]),
            )
            .join('; ')}
        </Fact>
      )}
      {jar.note && <Fact name="Note">{jar.note}</Fact>}
    </dl>
  );
}

const wheyWords = {
  none: 'no whey',
  'a little': 'a little whey',
  some: 'some whey',
  'a lot': 'a lot of whey',
} as const;

/** What was answered at the gate: "sour and clean, curd holds". What speaks against the jar is said above it. */
const gateWords = ({ sour, setAtTakeOut }: Outcome): string =>
  list([sour === true && 'sour and clean', setAtTakeOut === true && 'curd holds']);

/** What its gate has against it, as it stands with what was seen: not said a second time. */
const saidOfGate = ({ outcome, additions }: JarRecord): readonly string[] =>
  outcome === null
    ? []
    : takeOutGate(outcome, true, additions.map(({ name }) => name)).reasons.map(gateReasonSentence); // prettier-ignore

/** Whether it was taken out today or is not due out before, and passed the gate: then it was looked at today. */
function passedToday(
  { jar, outcome, additions }: JarRecord,
  holds: readonly Hold[],
  madeOn: string,
  today: string,
): boolean {
  if (outcome === null || outcome.sour !== true) return false;
  const hold = holds.find(({ id }) => id === jar.hold);
  const begun = Date.parse(hold?.startedAt ?? madeOn);
  const out = hold?.endedAt ?? new Date(begun + (hold?.hours ?? 0) * 3_600_000).toISOString();
  const names = additions.map(({ name }) => name);
  return (
    out.slice(0, 10) >= today && takeOutGate(outcome, outcome.seenAt === 'take-out', names).verdict === 'open'
  );
}

function Seen({ record, mates }: { readonly record: JarRecord; readonly mates: MatesPowerCut | null }) {
  const { outcome } = record;
  const cut = mates && (outcome === null || outcome.powerCut === null) && (
    <p>{doubtSays({ code: 'failed in its hold', ...mates })}</p>
  );
  if (outcome === null)
    return (
      <div className={cut ? 'notice caution seen' : 'seen'}>
        <p className={cut ? undefined : 'soft'}>Outcome unknown so far.</p>
        {cut}
      </div>
    );
  const { discard } = record;
  const spoiled = discard !== null;
  const additions = record.additions.map(({ name }) => name);
  const gate = takeOutGate(outcome, true, additions);
  const uncertain = (gate.verdict === 'ask' && !onlyNormal(gate)) || cut;
  const words = list([
    outcome.setWord,
    outcome.texture,
    outcome.whey && wheyWords[outcome.whey],
    outcome.tang && `${outcome.tang === 'none' ? 'no' : outcome.tang} tang`,
    outcome.smell,
    outcome.colour,
    outcome.ph === null ? null : `pH ${outcome.ph}${outcome.phHow ? ` by ${outcome.phHow}` : ''}`,
    outcome.bubbles === 'none' ? 'no bubbles' : outcome.bubbles === 'fine' ? 'fine bubbles' : null,
    outcome.fibreDidThis ? 'tint or jelly put down to the fibre' : null,
  ]);
  const all = [gateWords(outcome), words].filter((part) => part !== '').join('; ');
  // "pH" keeps its small letter wherever it stands.
  const first = all.startsWith('pH') ? 'pH' : `${all.slice(0, 1).toUpperCase()}${all.slice(1, 2)}`;
  const said = all === '' ? 'Looked at; nothing more said.' : `${first}${all.slice(2)}.`;
  return (
    <div className={spoiled || uncertain ? 'notice caution seen' : 'seen'}>
      {discard !== null && <p className="gate-head">{discardHead(discard)}</p>}
      {gate.verdict !== 'open' &&
        gate.reasons.map((reason) => <p key={reason.code}>{gateReasonSentence(reason)}</p>)}
      {cut}
      {(all !== '' || gate.reasons.length === 0) && <p>{said}</p>}
      {outcome.note && <p>{outcome.note}</p>}
    </div>
  );
}

/** The jar. */
export function JarView({
  record,
  holds,
  madeOn,
  mates,
  warm,
  unfinished,
}: {
  readonly record: JarRecord;
  readonly holds: readonly Hold[];
  readonly madeOn: string;
  /** A power cut that other jars of its hold tell of. */
  readonly mates: MatesPowerCut | null;
  /** It stands in a hold that runs. */
  readonly warm: boolean;
  /** Draft keys that hold something unfinished: such a form opens by itself. */
  readonly unfinished: ReadonlySet<string>;
}) {
  const { jar, label } = record;
  const { today } = useReader();
  const [chosen, setChosen] = useState<Editor | null | undefined>(undefined);
  const [mistake, setMistake] = useState(false);
  const [portion, setPortion] = useState<Portion | null>(
    () => record.portions.find((one) => unfinished.has(`reserve:${one.id}`)) ?? null,
  );
  const editor =
    chosen === undefined
      ? (EDITORS.find((one) => unfinished.has(`${one}:${jar.id}`)) ?? (portion ? 'reserve' : null))
      : chosen;
  const heading = useRef<HTMLHeadingElement>(null);
  const spoiled = record.discard !== null;
  // That it is spoiled itself is said with what was seen.
  const cautions = record.cautions.filter(({ of }) => of !== jar.id);
  const setAside = isSetAside(record);
  const { safety } = record;
  // That it is to be discarded is said with what was seen.
  const eats =
    safety === null || spoiled || jar.state !== 'made' || jar.onShelf === false || warm
      ? null
      : passedToday(record, holds, madeOn, today)
        ? lookedSentence(safety)
        : eatSentence(safety);
  const done = (): void => {
    setChosen(null);
    heading.current?.focus();
  };
  const keep = (kept: Portion | null): void => {
    setPortion(kept);
    setChosen('reserve');
  };
  const [last, setLast] = useState<readonly string[]>([]);
  const shelf = async (onShelf: boolean, sure = false): Promise<void> => {
    if (!onShelf && !sure) {
      const carries = await lastCarrier(jar.id);
      setLast(carries);
      if (carries.length > 0) return;
    }
    const answer = await call('jar.correct', { id: jar.id, changes: { onShelf }, why: null });
    say(
      answer.ok ? `${label} is ${onShelf ? 'on the shelf' : 'gone'}.` : answer.sentence,
      answer.ok ? 'calm' : 'caution',
    );
  };

  return (
    <section className={`jar-view${spoiled ? ' spoiled' : setAside ? ' set-aside' : ''}`} aria-label={label}>
      <header className="jar-view-head">
        <h2 ref={heading} tabIndex={-1}>
          {label}
        </h2>
        {record.discard !== null && <span className="jar-stand">{discardWord(record.discard)}</span>}
        {!spoiled && setAside && <span className="jar-stand">Set aside</span>}
        {jar.state === 'planned' && <span className="soft">planned, not counted</span>}
        {jar.state === 'not made' && <span className="soft">planned, but not made</span>}
        {jar.state === 'lost' && <span className="soft">a jar nobody can name</span>}
        {jar.state === 'made' && jar.onShelf !== null && (
          <span className="soft">{warm ? 'in warmth' : jar.onShelf ? 'on the shelf' : 'gone'}</span>
        )}
      </header>
      <Cautions jar={jar.id} cautions={cautions} />
      <Facts record={record} />
      <Seen record={record} mates={mates} />
      {eats !== null && !saidOfGate(record).includes(eats) && <p>{eats}</p>}
      <Remarks remarks={record.remarks.filter(({ readAs }) => readAs === null)} />
      {editor === 'outcome' && <OutcomeOf record={record} mates={mates} onDone={done} />}
      {editor === 'jar' && <CorrectJar record={record} holds={holds} onDone={done} />}
      {editor === 'seeds' && <CorrectSeeds record={record} madeOn={madeOn} onDone={done} />}
      {editor === 'additions' && <CorrectAdditions record={record} onDone={done} />}
      {editor === 'reserve' && <ReserveForm record={record} portion={portion} onDone={done} />}
      {editor === null && (
        <>
          {jar.state === 'made' && (
            <div className="jar-actions">
              <button type="button" className="button" onClick={() => setChosen('outcome')}>
                {record.outcome ? 'Correct outcome' : 'Record outcome'}
                <span className="visually-hidden"> of {label}</span>
              </button>
              <button
                type="button"
                className="button quiet"
                onClick={() => void shelf(jar.onShelf === false)}
              >
                {jar.onShelf === false ? 'Back on the shelf' : 'Gone'}
                <span className="visually-hidden">: {label}</span>
              </button>
              {!spoiled && (
                <button type="button" className="button quiet" onClick={() => keep(null)}>
                  Keep some back<span className="visually-hidden"> of {label}</span>
                </button>
              )}
            </div>
          )}
          <Photographs
            jar={jar.id}
            batch={jar.batch}
            label={label}
            photographs={record.photographs}
            unfinished={unfinished}
          />
          <details className="more">
            <summary>
              Correct or take back<span className="visually-hidden"> {label}</span>
            </summary>
            <div className="jar-actions">
              <button type="button" className="button quiet" onClick={() => setChosen('seeds')}>
                What seeded it
              </button>
              <button type="button" className="button quiet" onClick={() => setChosen('jar')}>
                Milk, vessel, letter
              </button>
              <button type="button" className="button quiet" onClick={() => setChosen('additions')}>
                What was stirred in
              </button>
              {record.portions.map((one) => (
                <button key={one.id} type="button" className="button quiet" onClick={() => keep(one)}>
                  What was kept back, {portionName(one)}
                </button>
              ))}
              <button type="button" className="button quiet" onClick={() => go('history', `jar:${jar.id}`)}>
                Its history
              </button>
              <button type="button" className="button quiet" onClick={() => setMistake(true)}>
                Entered by mistake
              </button>
            </div>
          </details>
        </>
      )}
      {last.length > 0 && (
        <Question
          title={`Is ${label} gone?`}
          yes="It is gone"
          no="It is still there"
          onNo={() => setLast([])}
          onYes={() => {
            setLast([]);
            void shelf(false, true);
          }}
        >
          {last.map((says) => (
            <p key={says}>{says}</p>
          ))}
          <p className="soft">
            Where it shows any sign of spoiling, discard it all the same: a line can be started afresh.
          </p>
        </Question>
      )}
      {mistake && (
        <MistakeQuestion jar={jar.id} label={label} spoiled={spoiled} onDone={() => setMistake(false)} />
      )}
    </section>
  );
}
