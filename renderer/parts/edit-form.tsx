// Correcting something in place: the fields, a reason if the keeper wants to give one, save or leave it as it was.
// What was typed survives a crash, and a refusal keeps it in its fields.
import { useRef, useState, type ReactNode } from 'react';
import type { Answer } from '../state/ledger-calls';
import { say } from '../state/store';
import type { Problems } from './taking';
import { TextField } from './fields';
import { Form } from './form';
import { HeldSeedQuestion } from './held-seed-question';
import { SpoilageQuestion } from './spoilage-question';
import { useDraft, type DraftPlace } from './use-draft';

/** Words in the fields that tell of spoilage: asked about before they are recorded. */
export interface Doubt<T> {
  /** As they were written. */
  readonly words: readonly string[];
  /** The text once it is answered: spoiled, or what it is instead. */
  readonly answered: (answer: { readonly spoiled: true } | { readonly what: string }) => T;
}

/** What the fields came to: problems by path, or what to send. */
export interface Reading<T> {
  readonly problems: Problems;
  /** null where there is nothing to change. `draft` is the key of what was typed: the write takes it away. */
  readonly send: ((why: string | null, draft: string) => Promise<Answer<unknown>>) | null;
  /** Sentences about seeds that are set aside: where there are any, a written reason is asked for first. */
  readonly held?: () => Promise<readonly string[]>;
  readonly doubt?: Doubt<T> | null;
}

interface Typed<T> {
  readonly text: T;
  readonly why: string;
}
const none: Problems = new Map();

/** The form. */
export function EditForm<T>({
  label,
  draftKey,
  place,
  initial,
  read,
  saved,
  save = 'Save',
  askWhy,
  onDone,
  children,
}: {
  readonly label: string;
  readonly draftKey: string;
  readonly place: DraftPlace;
  readonly initial: T;
  readonly read: (text: T) => Reading<T>;
  /** Words said once it is saved. */
  readonly saved: string;
  readonly save?: string;
  /** Whether something recorded is corrected, so that a reason may be given. */
  readonly askWhy: boolean;
  readonly onDone: () => void;
  readonly children: (text: T, set: (text: T) => void, problems: Problems) => ReactNode;
}) {
  const draft = useDraft<Typed<T>>(draftKey, place, { text: initial, why: '' });
  const [wrong, setWrong] = useState(0);
  const [refused, setRefused] = useState<string | null>(null);
  const [held, setHeld] = useState<readonly string[]>([]);
  const [doubt, setDoubt] = useState<Doubt<T> | null>(null);
  const busy = useRef(false);
  const typed = draft.text;
  if (typed === null) return <p className="soft">Opening…</p>;
  const { problems } = read(typed.text);

  const record = async (reason: string | null = null, text: T = typed.text): Promise<void> => {
    if (busy.current) return;
    const reading = read(text);
    setRefused(null);
    if (reading.problems.size > 0) {
      setWrong(wrong + 1);
      return;
    }
    if (reading.send === null) {
      await draft.drop();
      onDone();
      return;
    }
    if (reading.doubt) {
      setDoubt(reading.doubt);
      return;
    }
    busy.current = true;
    const asked = reason === null && reading.held ? await reading.held() : [];
    if (asked.length > 0) {
      busy.current = false;
      setHeld(asked);
      return;
    }
    draft.close();
    const why = reason ?? typed.why.trim();
    const answer = await reading.send(why === '' ? null : why, draftKey);
    busy.current = false;
    if (!answer.ok) {
      draft.reopen();
      setRefused(answer.sentence);
      return;
    }
    say(saved);
    onDone();
  };

  return (
    <Form label={label} record={() => void record()} leave={onDone} wrong={wrong} startHere>
      {draft.restored && <p className="notice">Unfinished entry restored. Go on where you stopped.</p>}
      {children(typed.text, (text) => draft.set({ ...typed, text }), wrong > 0 ? problems : none)}
      {askWhy && (
        <TextField
          label="Why it is corrected, if you want to say"
          width="full"
          value={typed.why}
          onChange={(why) => draft.set({ ...typed, why })}
        />
      )}
      {refused && (
        <p className="notice caution" role="alert">
          {refused}
        </p>
      )}
      <div className="row">
        <button type="submit" className="button primary">
          {save}
        </button>
        <button type="button" className="button quiet" onClick={() => void draft.drop().then(onDone)}>
          {askWhy ? 'Leave it as it was' : 'Cancel'}
        </button>
      </div>
      {doubt && (
        <SpoilageQuestion
          words={doubt.words}
          onLeave={() => setDoubt(null)}
          onAnswer={(answer) => {
            const text = doubt.answered(answer);
            setDoubt(null);
            draft.set({ ...typed, text });
            void record(null, text);
          }}
        />
      )}
      {held.length > 0 && (
        <HeldSeedQuestion
          sentences={held}
          initial={typed.why}
          onNo={() => setHeld([])}
          onReason={(reason) => {
            setHeld([]);
            void record(reason);
          }}
        />
      )}
    </Form>
  );
}
