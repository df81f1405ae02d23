// One recorded batch, open: its day, its holds, its jars side by side.
import { isSeenOut } from '../../core/ledger/seen-out';
import { daysOf } from './batch-days';
import { useEffect, useMemo, useRef, useState, type RefObject } from 'react';
import type { BatchReply } from '../../core/contract';
import { powerCutOfMates } from '../../core/safety/hold-mates';
import type { Temperature } from '../../core/ledger/basics';
import type { Hold } from '../../core/ledger/records';
import { lengthWords } from '../../core/says/today-says';
import { printNotedTemperature } from '../../core/quantities/printing';
import { call } from '../state/ledger-calls';
import { showOut } from '../out/out-shown';
import { go, say } from '../state/store';
import { useRead } from '../state/use-read';
import { type Now, useNow } from '../parts/use-now';
import { type Caution, Cautions } from '../parts/caution-list';
import { usePreferences, useReader } from '../parts/use-reader';
import { AddHold, AddJar } from './add-to-batch';
import { holdText } from './batch-repeat';
import type { Writer } from '../parts/reading';
import { CorrectBatch, CorrectHold } from './batch-corrections';
import { isSetAside } from './is-set-aside';
import { STEPS, standingOf, type Standing } from './batch-steps';
import type { Row } from './batch-list';
import { inWords, JarColumn, type Once } from './jar-column';
import { gateSays, isUnseen, UNSEEN } from './jar-seen';
import { columnsOf, useBands, type Bands } from './use-bands';
import { additionWords, eatsWords, milkWords, seedWords } from './jar-says';
import { MakingCard } from './making-card';
import type { Asked } from './record-text';
import { RecordSheet } from './record-sheet';

/** "bath set to 38 °C": the warmth that was planned, and where it is measured. */
function warmthWords({ planned, probe }: Hold, printed: (one: Temperature) => string): string | null {
  const where = probe === null ? null : probe === 'jar' ? 'measured in a jar' : `measured in the ${probe}`;
  if (planned === null) return where;
  if (probe === null || probe === 'jar')
    return [`set to ${printed(planned)}`, where].filter(Boolean).join(', ');
  return `${probe} set to ${printed(planned)}`;
}

function holdWords(
  hold: Hold,
  planned: string | undefined,
  writer: Writer,
  printed: (one: Temperature) => string,
): string {
  const text = holdText(hold, writer);
  const { startedAt, endedAt, hours } = hold;
  const minutes =
    startedAt !== null && endedAt !== null ? (Date.parse(endedAt) - Date.parse(startedAt)) / 60_000 : null;
  // What the clock says was is not called by what was meant.
  const meant = minutes !== null && hours !== null && Math.abs(minutes - hours * 60) > 60;
  const times =
    minutes !== null
      ? `${text.started} to ${text.ended}${hours === null || meant ? `, ${lengthWords(minutes)}` : ''}`
      : text.started
        ? `from ${text.started}`
        : planned !== undefined
          ? `to begin ${writer.moment(planned)}`
          : '';
  const long = text.hours && `${text.hours} hours`;
  const parts = [meant ? `meant for ${long}` : long, times, warmthWords(hold, printed)].filter(Boolean);
  const warmth = parts.length === 0 ? 'Nothing said of the warmth.' : `${parts.join(', ')}.`;
  return text.note === '' ? warmth : `${warmth} ${text.note}`;
}

/** Jars that can be answered together: made, nothing noted yet, nothing that stands against them. */
const unseenTogether = ({ jars }: BatchReply, warm: ReadonlySet<string>): BatchReply['jars'] =>
  jars.filter(
    (one) =>
      one.jar.state === 'made' &&
      !isSeenOut(one.outcome) &&
      one.discard === null &&
      !isSetAside(one) &&
      !warm.has(one.jar.id),
  );

/** Its name, and what is done with the whole of it. */
function Head({
  batch,
  label,
  jars,
  heading,
  tasted,
  onChoose,
}: {
  readonly batch: string;
  readonly label: string;
  readonly jars: BatchReply['jars'];
  readonly heading: RefObject<HTMLHeadingElement | null>;
  /** Several of its jars were looked at: they can be tasted side by side. */
  readonly tasted: boolean;
  readonly onChoose: (form: string) => void;
}) {
  const first = jars.find(({ jar }) => jar.state === 'made');
  return (
    <header className="batch-view-head">
      <h1 ref={heading} tabIndex={-1}>
        {label}
      </h1>
      <div className="row">
        {jars.some(({ jar }) => jar.state === 'planned') && <MakingCard batch={batch} />}
        <button type="button" className="button" onClick={() => go('batch', `repeat:${batch}`)}>
          Make it again
        </button>
        {tasted && (
          <button type="button" className="button quiet" onClick={() => go('trials', `batch:${batch}`)}>
            Taste these
          </button>
        )}
        <button type="button" className="button quiet" onClick={() => onChoose(`batch:${batch}`)}>
          Correct day, word, note
        </button>
        {first && (
          <button
            type="button"
            className="button quiet"
            onClick={() => showOut({ panel: 'labels', jar: first.jar.id, label: first.label, mates: true })}
          >
            Labels
          </button>
        )}
        <button type="button" className="button quiet" onClick={() => go('history', `batch:${batch}`)}>
          Its history
        </button>
      </div>
    </header>
  );
}

/** The way from plan to last spoonful, where it stands on it, and what is to be done next. */
function Thread({ step, over = false, next }: Standing) {
  // Between two steps none is the one it is in: the first is behind.
  const at = STEPS.indexOf(step) + (over ? 0.5 : 0);
  return (
    <div className="batch-thread">
      <ol aria-label="Where it stands">
        {STEPS.map((one, index) => (
          <li
            key={one}
            className={index < at ? 'behind' : index === at ? 'here' : undefined}
            aria-current={index === at ? 'step' : undefined}
          >
            {one}
          </li>
        ))}
      </ol>
      <p className="batch-next">{next}</p>
    </div>
  );
}

/** Its holds, each in a line, corrected in place; one more jar, one more hold. */
function Holds({
  reply,
  label,
  editing,
  onChoose,
  onDone,
}: {
  readonly reply: BatchReply;
  readonly label: string;
  readonly editing: string | null;
  readonly onChoose: (form: string) => void;
  readonly onDone: () => void;
}) {
  const { writer } = useReader();
  const preferences = usePreferences();
  const printed = (one: Temperature): string => printNotedTemperature(one, preferences);
  const { batch, holds, jars, plannedStarts } = reply;
  const plan = jars.every(({ jar }) => jar.state === 'planned');
  const quiet = (says: string, form: string) => (
    <button type="button" className="button quiet" onClick={() => onChoose(form)}>
      {says}
    </button>
  );
  return (
    <>
      {holds.map((hold, at) => (
        <div key={hold.id} className="hold-line">
          <p>
            <strong>{holds.length === 1 ? 'Warmth' : `Hold ${at + 1}`}.</strong>{' '}
            {holdWords(
              hold,
              plan ? plannedStarts.find((one) => one.hold === hold.id)?.at : undefined,
              writer,
              printed,
            )}
          </p>
          {(hold.startedAt !== null || hold.readings.length > 0) && (
            <button type="button" className="button quiet" onClick={() => go('hold', hold.id)}>
              Show its hours<span className="visually-hidden"> in warmth</span>
            </button>
          )}
          {editing === `hold:${hold.id}` ? (
            <CorrectHold hold={hold} batch={batch} onDone={onDone} />
          ) : (
            quiet(holds.length === 1 ? 'Correct the warmth' : `Correct hold ${at + 1}`, `hold:${hold.id}`)
          )}
        </div>
      ))}
      {editing === `add-hold:${batch.id}` && <AddHold reply={reply} label={label} onDone={onDone} />}
      {editing === `add-jar:${batch.id}` && <AddJar reply={reply} label={label} onDone={onDone} />}
      {editing === null && (
        <div className="jar-actions">
          {quiet('Add a jar', `add-jar:${batch.id}`)}
          {quiet(holds.length === 0 ? 'Add the warmth' : 'Add another hold', `add-hold:${batch.id}`)}
        </div>
      )}
    </>
  );
}

/** Whether several jars are alike in something: then it is said once, at the left, and read out with each jar all the same. */
const alike = (
  jars: readonly BatchReply['jars'][number][],
  words: (record: (typeof jars)[number]) => string,
): string | null => {
  const all = new Set(jars.map(words));
  const [one = ''] = all;
  return jars.length > 1 && all.size === 1 && one !== '' ? one : null;
};

/** What the gate has against several jars, with their letters. A jar that is to be discarded says so itself. */
function saidOfSeveral(jars: BatchReply['jars']): ReadonlyMap<string, readonly string[]> {
  const said = new Map<string, string[]>();
  for (const record of jars)
    if (record.discard === null)
      for (const says of gateSays(record)) said.set(says, [...(said.get(says) ?? []), record.jar.letter]);
  return new Map([...said].filter(([, letters]) => letters.length > 1));
}

/** A caution that stands on several jars in the very same words, and those jars. */
interface SharedCaution {
  readonly caution: Caution;
  readonly jars: BatchReply['jars'];
}

function cautionsOfSeveral(jars: BatchReply['jars']): readonly SharedCaution[] {
  const standing = new Map<string, { caution: Caution; jars: BatchReply['jars'][number][] }>();
  for (const record of jars)
    for (const caution of record.cautions.filter(({ of, cleared }) => of !== record.jar.id && !cleared)) {
      const same = standing.get(inWords(caution));
      if (same) same.jars.push(record);
      else standing.set(inWords(caution), { caution, jars: [record] });
    }
  return [...standing.values()].filter((one) => one.jars.length > 1);
}

interface ColumnsProps {
  readonly reply: BatchReply;
  readonly bands: Bands;
  readonly row: Row | null;
  readonly asked: Asked;
  readonly warm: ReadonlySet<string>;
  readonly unfinished: ReadonlySet<string>;
}

/** The jars side by side, their rows level; what is said of all alike is said once. */
function Columns({ reply, bands, asked, row, warm, unfinished }: ColumnsProps) {
  const { today, writer } = useReader();
  const { batch, holds, jars } = reply;
  // What the gate is about to ask is not said beside it.
  const eatsOf = (record: (typeof jars)[number]): string =>
    warm.has(record.jar.id) || asked.together.has(record.jar.id)
      ? ''
      : (eatsWords(record, holds, daysOf(batch).first, today) ?? '');
  const eats = alike(jars, eatsOf);
  const against = saidOfSeveral(jars);
  const cautions = cautionsOfSeveral(jars);
  return (
    <>
      {cautions.map(({ caution, jars: [first, ...others] }) => {
        if (first === undefined) return null;
        const letters = [first, ...others].map(({ jar }) => jar.letter).join(', ');
        return (
          <section key={inWords(caution)} className="stack" aria-label={`Caution on ${letters}`}>
            <Cautions
              jar={first.jar.id}
              cautions={[caution]}
              together={{ letters, others: others.map(({ jar }) => jar.id) }}
            />
          </section>
        );
      })}
      {eats !== null && <p>{eats}</p>}
      {[...against].map(([says, letters]) => (
        <p key={says} className="notice caution small">
          <strong>{letters.join(', ')}: </strong>
          {says}
        </p>
      ))}
      {bands.map((band) => {
        const once = {
          seeds: alike(band, (one) => seedWords(one, writer)),
          additions: alike(band, (one) => additionWords(one, writer)),
          milk: alike(band, (one) => milkWords(one, writer)),
          unseen: alike(band, (one) => (isUnseen(one) ? UNSEEN : '')),
          above: new Set(against.keys()),
          cautions: new Set(cautions.map(({ caution }) => inWords(caution))),
        };
        return (
          <div key={band[0]?.jar.id} className="jar-columns" style={columnsOf(band)}>
            <Labels once={once} plan={band.every(({ jar }) => jar.state === 'planned')} />
            {band.map((record) => (
              <JarColumn
                key={record.jar.id}
                record={record}
                once={once}
                drawn={row?.jars.find(({ id }) => id === record.jar.id)}
                holds={holds}
                lastMadeOn={daysOf(batch).last}
                mates={powerCutOfMates(record, jars)}
                warm={warm.has(record.jar.id)}
                eats={eats === null ? eatsOf(record) || null : null}
                unfinished={unfinished}
              />
            ))}
          </div>
        );
      })}
    </>
  );
}

/** What the rows are, and what all jars of a band share in them. It is read out with each jar. */
function Labels({ once, plan }: { readonly once: Once; readonly plan: boolean }) {
  const rows = [
    ['Seeded from', once.seeds],
    ['Stirred in', once.additions],
    ['Milk, vessel', once.milk],
    [once.unseen === null && !plan ? 'Seen' : '', null],
    [plan ? '' : 'Photograph: drop or paste it on its jar', null],
  ] as const;
  const shared = rows.some(([, says]) => says !== null);
  return (
    <div className="jar-labels" aria-hidden="true">
      <p className="soft small all-jars">{shared && 'All jars'}</p>
      {rows.map(([label, says]) => (
        <p key={label}>
          <span className="soft small">{label}</span>
          {says !== null && <span>{says}</span>}
        </p>
      ))}
    </div>
  );
}

/** Whether the planned time of some hold is over. */
const isOver = (holds: Now['holds']): boolean =>
  holds.some(({ look }) => look.what === 'take-out' && look.due);

/** The way out of warmth: before its jars are out, nobody can say how they came out. */
function TakeOut({ hold, jars }: { readonly hold: Now['holds'][number]; readonly jars: BatchReply['jars'] }) {
  const over = isOver([hold]);
  const inside = hold.jars.map(({ id }) => id).filter((id) => jars.some(({ jar }) => jar.id === id));
  const takeOut = async (): Promise<void> => {
    const answer = await call('hold.takeOut', { hold: hold.hold, jars: inside });
    say(
      answer.ok ? 'Taken out. Look and smell first, taste nothing yet.' : answer.sentence,
      answer.ok ? 'calm' : 'caution',
    );
  };
  return (
    <div className="row">
      <button type="button" className={over ? 'button primary' : 'button'} onClick={() => void takeOut()}>
        {over ? 'Taken out' : 'Taken out early'}
      </button>
      {hold.assumed !== null && <span className="soft small">{hold.assumed}</span>}
    </div>
  );
}

interface ViewProps {
  readonly reply: BatchReply;
  readonly label: string;
  /** How the list draws it; null while that is read. */
  readonly row: Row | null;
  /** Nobody pressed it: it leaves the keyboard where it is. */
  readonly unasked: boolean;
}

/** Looked at, not to be discarded, and not gone. */
const mayBeTasted = ({ jar, outcome, discard }: BatchReply['jars'][number]): boolean =>
  isSeenOut(outcome) && discard === null && jar.onShelf !== false;

/** Everything recorded of a batch. */
export function BatchView({ reply, label, row, unasked }: ViewProps) {
  const { batch, holds, jars } = reply;
  const drafts = useRead('draft.list', {});
  const { writer } = useReader();
  const { holds: running } = useNow();
  const own = useMemo(
    () => running.filter((hold) => hold.jars.some(({ id }) => jars.some(({ jar }) => jar.id === id))),
    [running, jars],
  );
  const warm = useMemo(() => new Set(own.flatMap((one) => one.jars.map(({ id }) => id))), [own]);
  const [chosen, setChosen] = useState<string | null | undefined>(undefined);
  const heading = useRef<HTMLHeadingElement>(null);
  const page = useRef<HTMLElement>(null);
  const bands = useBands(page, jars);
  const asked = useMemo(
    () => ({
      together: new Set(unseenTogether(reply, warm).map(({ jar }) => jar.id)),
      mates: new Map(reply.jars.map((one) => [one.jar.id, powerCutOfMates(one, reply.jars)])),
      failed:
        reply.interruptions.length > 0 || reply.jars.some((one) => powerCutOfMates(one, reply.jars) !== null),
    }),
    [reply, warm],
  );
  const ready = drafts !== null;
  useEffect(() => {
    // A batch that opens is read from its top, unless an unfinished form in it has the keyboard.
    if (ready && !unasked && !document.activeElement?.closest('form')) heading.current?.focus();
  }, [ready, unasked]);
  // Wait for the drafts, so that an unfinished form opens by itself and no later save closes it.
  if (drafts === null)
    return (
      <article ref={page} className="batch-view soft">
        Opening…
      </article>
    );
  const unfinished = new Set(drafts.ok ? drafts.value.drafts.map((draft) => draft.key) : []);
  const forms = [`batch:${batch.id}`, ...holds.map(({ id }) => `hold:${id}`), `add-jar:${batch.id}`, `add-hold:${batch.id}`]; // prettier-ignore
  const editing = chosen === undefined ? (forms.find((key) => unfinished.has(key)) ?? null) : chosen;
  const done = (): void => {
    setChosen(null);
    heading.current?.focus();
  };
  const until = own.find(({ ends }) => ends !== null)?.ends ?? null;
  const looked = jars.some(
    ({ jar, outcome }) => isSeenOut(outcome) || (jar.state === 'made' && !warm.has(jar.id)),
  );
  return (
    <article ref={page} className="batch-view" aria-label={label}>
      <Head
        batch={batch.id}
        label={label}
        jars={jars}
        heading={heading}
        tasted={jars.filter(mayBeTasted).length > 1}
        onChoose={setChosen}
      />
      {editing === `batch:${batch.id}` && <CorrectBatch batch={batch} label={label} onDone={done} />}
      <Thread
        {...standingOf(jars, warm, until === null ? null : { at: writer.moment(until), over: isOver(own) })}
      />
      {own.map((hold) => (
        <TakeOut key={hold.hold} hold={hold} jars={jars} />
      ))}
      {batch.note && <p className="note-lines">{batch.note}</p>}
      <Columns reply={reply} bands={bands} asked={asked} row={row} warm={warm} unfinished={unfinished} />
      <RecordSheet
        batch={batch.id}
        label={label}
        jars={jars}
        bands={bands}
        asked={asked}
        madeOn={batch.madeOn}
        looked={looked}
        onLeave={() => heading.current?.focus()}
        onWarmth={holds[0] ? () => setChosen(`hold:${holds[0]?.id}`) : null}
        warmth={JSON.stringify(holds)}
      />
      <Holds reply={reply} label={label} editing={editing} onChoose={setChosen} onDone={done} />
    </article>
  );
}
