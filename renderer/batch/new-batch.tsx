// A new batch by hand, on one sheet: what all jars share is typed once, each jar may differ, Ctrl+Enter records.
import { daysOf } from './batch-days';
import { useMemo, useRef, useState } from 'react';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { SelectField, TextField } from '../parts/fields';
import { Form } from '../parts/form';
import { Question } from '../parts/question';
import { useDraft } from '../parts/use-draft';
import { useReader } from '../parts/use-reader';
import { AdvisedSeed } from './advised-seed';
import { MOST_JARS, readBatch } from './batch-entry';
import { BatchSheet } from './batch-sheet';
import type { Reader } from '../parts/reading';
import type { Problems } from '../parts/taking';
import { noHold, withJarCount, withoutHold, withSharedSeeds, type BatchText } from './batch-text';
import { askAboutSeeds, seedsOfBatch } from './held-seeds';
import { HoldFields } from './recipe-fields';
import { HeldSeedQuestion } from '../parts/held-seed-question';
import { PlanBehind, PlanLine, usePlan } from './plan-line';
import { SeedRows } from './seed-rows';
import { usePackages } from './use-packages';
import { useVerdicts } from './use-verdicts';
import { RefusalNotice } from '../parts/refusal-notice';

/** As what all jars are recorded; null: as the fields say. */
type Recorded = 'planned' | null;

/** The same batch with all jars in that state. */
const asAll = (text: BatchText, state: 'planned'): BatchText => ({
  ...text,
  all: { ...text.all, state },
  jars: text.jars.map((jar) => ({ ...jar, state: null })),
});

export const NEW_BATCH_DRAFT = 'batch:new';
const none: Problems = new Map();

/** The holds, the first with the jars' own rows. */
function Warmth({
  text,
  set,
  problems,
  reader,
  day,
}: {
  readonly text: BatchText;
  readonly set: (text: BatchText) => void;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly day: string | null;
}) {
  return text.holds.map((hold, at) => (
    <section key={at} className="sheet-warmth" aria-label={at === 0 ? 'Warmth' : `Warmth, hold ${at + 1}`}>
      <HoldFields
        hold={hold}
        path={`holds.${at}`}
        problems={problems}
        reader={reader}
        day={day}
        onChange={(next) => set({ ...text, holds: text.holds.with(at, next) })}
      />
      {text.holds.length > 1 && (
        <button
          type="button"
          className="button quiet"
          data-enter="pass"
          onClick={() => set(withoutHold(text, at))}
        >
          Remove hold {at + 1}
        </button>
      )}
    </section>
  ));
}

/** What folds away below the jars: of the batch as a whole. */
function Rare({ text, set }: { readonly text: BatchText; readonly set: (text: BatchText) => void }) {
  return (
    <div className="fields">
      <TextField
        label="Note on the batch"
        width="full"
        value={text.note}
        onChange={(note) => set({ ...text, note })}
      />
      {text.all.state === 'made' && (
        <SelectField
          label="Still on the shelf"
          value={text.all.shelf}
          choices={[
            { value: '', label: 'Not noted' },
            { value: 'kept', label: 'Yes' },
            { value: 'gone', label: 'Gone' },
          ]}
          onChange={(shelf) => set({ ...text, all: { ...text.all, shelf } })}
        />
      )}
      <button
        type="button"
        className="button quiet"
        onClick={() => set({ ...text, holds: [...text.holds, noHold] })}
      >
        Some jars stood in another hold
      </button>
    </div>
  );
}

/**
 * The form.
 * @param start what the fields hold at first: empty, or another batch's recipe
 * @param repeated label of the batch whose recipe it is, or null
 */
export function NewBatch({
  start,
  repeated,
  onRecorded,
  onLeave,
}: {
  readonly start: BatchText;
  readonly repeated: string | null;
  readonly onRecorded: (batch: string) => void;
  readonly onLeave: () => void;
}) {
  const place = { says: 'new batch', screen: 'batch', focus: 'new' };
  const draft = useDraft<BatchText>(NEW_BATCH_DRAFT, place, start);
  const { reader, writer } = useReader();
  const packages = usePackages();
  const before = useRead('batch.list', { before: null, limit: 20 });
  const fibres = before?.ok ? before.value.batches.flatMap(({ additions }) => additions) : [];
  const amounts = useRead('addition.usual', {});
  const usual = useMemo(
    () =>
      new Map(
        amounts?.ok
          ? amounts.value.additions.map(({ name, amount }) => [name.toLowerCase(), writer.amount(amount)])
          : [],
      ),
    [amounts, writer],
  );
  const [wrong, setWrong] = useState(0);
  const [refusal, setRefused] = useState<{ readonly says: string; readonly of: BatchText } | null>(null);
  const [sameLabel, setSameLabel] = useState<string | null>(null);
  const [held, setHeld] = useState<readonly string[]>([]);
  const [why, setWhy] = useState<string | null>(null);
  const busy = useRef(false);
  const recordedAs = useRef<Recorded>(null);
  const { text } = draft;
  const plan = usePlan(text, reader);
  const picked = text?.all.seeds[0]?.picked;
  const verdicts = useVerdicts(picked && picked.kind !== 'jar' ? undefined : (picked?.id ?? null));

  const read = useMemo(
    () => (text === null ? null : readBatch(text, reader, { sameLabelMeant: false, draft: NEW_BATCH_DRAFT })),
    [text, reader],
  );
  if (text === null || read === null) return <p className="soft">Opening…</p>;
  const problems = wrong > 0 ? read.problems : none;
  // What was refused of other fields than those that stand there now is no word about these.
  const refused =
    problems.size > 0
      ? 'Not recorded yet: a field needs another look. Nothing you typed is lost.'
      : refusal?.of === text
        ? refusal.says
        : null;
  const day = reader.made(text.date);
  const made = day.ok ? day.value : null;
  const notAfter = made && daysOf(made).last;
  // A day to come can only be a plan.
  const toCome = notAfter !== null && notAfter > reader.today;
  const set = (change: Partial<BatchText>): void => draft.set({ ...text, ...change });

  const record = async (
    sameLabelMeant: boolean,
    reason: string | null,
    as: Recorded = toCome ? 'planned' : null,
  ): Promise<void> => {
    if (busy.current) return;
    setRefused(null);
    recordedAs.current = as;
    const { entry } =
      as === null
        ? read
        : readBatch(asAll(text, as), reader, { sameLabelMeant: false, draft: NEW_BATCH_DRAFT });
    if (entry === null) {
      setWrong(wrong + 1);
      return;
    }
    busy.current = true;
    const asked = reason === null ? await askAboutSeeds(seedsOfBatch(text)) : [];
    if (asked.length > 0) {
      busy.current = false;
      setHeld(asked);
      return;
    }
    draft.close();
    const answer = await call('batch.record', { ...entry, sameLabelMeant, why: reason });
    busy.current = false;
    if (answer.ok) {
      const jars = answer.value.jars.length === 1 ? 'one jar' : `${answer.value.jars.length} jars`;
      say(
        as === 'planned'
          ? `Planned ${jars}. Once they are made, press Made as planned.`
          : `Recorded ${jars}.`,
      );
      onRecorded(answer.value.batch);
      return;
    }
    draft.reopen();
    if (answer.error.code === 'same label') setSameLabel(answer.sentence);
    else setRefused({ says: answer.sentence, of: text });
  };

  return (
    <Form label="New batch" record={() => void record(false, null)} leave={onLeave} wrong={wrong}>
      <header className="form-head sheet-title">
        <h1>{repeated === null || draft.restored ? 'New batch' : `${repeated} again`}</h1>
        <div className="sheet-day">
          <TextField
            label="Made on"
            value={text.date}
            // What a range of days is taken to be is said; a day stands there as it was typed.
            read={made?.madeOn === null ? day : undefined}
            problem={problems.get('date') ?? (day.ok ? undefined : day.sentence)}
            onChange={(date) => set({ date })}
          />
          <TextField
            label="Name for this batch (optional)"
            value={text.word}
            onChange={(word) => set({ word })}
          />
          <TextField
            label="How many jars"
            startHere={repeated === null}
            numeric
            width="short"
            value={text.count}
            problem={problems.get('count')}
            onChange={(count) => {
              const many = reader.whole(count, MOST_JARS);
              const jars = many.ok && many.value !== null ? withJarCount(text, many.value).jars : text.jars;
              set({ count, jars });
            }}
          />
        </div>
        {draft.restored && <p className="notice">Unfinished entry restored. Go on where you stopped.</p>}
      </header>
      <section className="sheet-seed" aria-label="Seed">
        <SeedRows
          of="all jars"
          rare
          seeds={text.all.seeds}
          path="all.seeds"
          problems={problems}
          reader={reader}
          notAfter={notAfter}
          packages={packages}
          startHere={repeated !== null}
          verdicts={verdicts}
          onChange={(seeds) => draft.set(withSharedSeeds(text, seeds))}
        />
        <AdvisedSeed
          verdicts={verdicts}
          seed={text.all.seeds[0]}
          onTake={(seed) => draft.set(withSharedSeeds(text, text.all.seeds.with(0, seed)))}
        />
      </section>
      <BatchSheet
        text={text}
        onChange={draft.set}
        problems={problems}
        reader={reader}
        packages={packages}
        notAfter={notAfter}
        fibres={fibres}
        start={start}
        usual={usual}
        warmth={
          <Warmth
            text={text}
            set={draft.set}
            problems={problems}
            reader={reader}
            day={made?.madeOn ?? null}
          />
        }
        fold={<Rare text={text} set={draft.set} />}
      />
      <PlanBehind
        asked={plan}
        reader={reader}
        onStart={(moment) => {
          say(`Its warmth begins ${writer.moment(moment)}. It can be changed under Start and end.`);
          const [first = noHold, ...others] = text.holds;
          set({
            date: writer.day(moment.slice(0, 10)),
            holds: [{ ...first, started: writer.moment(moment) }, ...others],
          });
        }}
      />
      <footer className="form-foot">
        <PlanLine asked={plan} />
        <RefusalNotice words={refused} />
        <div className="row">
          <button type="submit" className="button primary">
            {toCome ? 'Plan' : 'Record'} {text.jars.length === 1 ? 'the jar' : `${text.jars.length} jars`}
          </button>
          <span className="soft small">Ctrl Enter</span>
          {!toCome && (
            <button
              type="button"
              className="button quiet"
              onClick={() => void record(false, null, 'planned')}
            >
              Keep it as a plan
            </button>
          )}
          <button
            type="button"
            className="button quiet"
            onClick={() => {
              void draft.drop().then(onLeave);
            }}
          >
            Discard this entry
          </button>
        </div>
      </footer>
      {held.length > 0 && (
        <HeldSeedQuestion
          sentences={held}
          onNo={() => setHeld([])}
          onReason={(reason) => {
            setHeld([]);
            setWhy(reason);
            void record(false, reason, recordedAs.current);
          }}
        />
      )}
      {sameLabel && (
        <Question
          title="Two jars with the same label?"
          yes="They are two jars"
          no="Change the label"
          onNo={() => setSameLabel(null)}
          onYes={() => {
            setSameLabel(null);
            void record(true, why, recordedAs.current);
          }}
        >
          <p>{sameLabel}</p>
        </Question>
      )}
    </Form>
  );
}
