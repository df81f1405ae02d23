// What every form that records or corrects does with what was typed: keeps it, reads it, asks what has to be asked first,
// sends it, and keeps it in its fields where it is refused.
import { useRef, useState } from 'react';
import type { Answer } from '../state/ledger-calls';
import { say } from '../state/store';
import type { Problems } from './taking';
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

export interface Editing<T> {
  /** null until it is known whether something unfinished is to be restored. */
  readonly typed: Typed<T> | null;
  readonly set: (text: T) => void;
  readonly setWhy: (why: string) => void;
  readonly restored: boolean;
  /** Gone once what it speaks of is changed: what is typed, or what it is about. */
  readonly refused: string | null;
  readonly refusedCode: string | null;
  /** Counts failed tries: each time, the first wrong field gets the keyboard. */
  readonly wrong: number;
  readonly record: (reason?: string | null, text?: T) => Promise<void>;
  /** Forgets what was typed. */
  readonly drop: () => Promise<void>;
  readonly held: readonly string[];
  readonly doubt: Doubt<T> | null;
  /** Closes a question without an answer. */
  readonly leaveQuestion: () => void;
}

export interface EditingOf<T> {
  readonly draftKey: string;
  readonly place: DraftPlace;
  readonly initial: T;
  readonly read: (text: T) => Reading<T>;
  /** Words said once it is saved. */
  readonly saved: string;
  readonly onDone: () => void;
  /** A form that stays open: what is still typed in it once the rest is recorded (the initial text where nothing is). */
  readonly left?: (text: T) => T;
  /** What else a refusal may speak of: other records, as one text. */
  readonly about?: string;
}

/** A refusal, and what it was of. */
interface Refused {
  readonly sentence: string;
  readonly code: string;
  readonly text: string;
  readonly about: string;
}

/** One form's text. */
export function useEditing<T>({
  draftKey,
  place,
  initial,
  read,
  saved,
  onDone,
  left,
  about = '',
}: EditingOf<T>): Editing<T> {
  const draft = useDraft<Typed<T>>(draftKey, place, { text: initial, why: '' });
  const [wrong, setWrong] = useState(0);
  const [refusal, setRefused] = useState<Refused | null>(null);
  const [held, setHeld] = useState<readonly string[]>([]);
  const [doubt, setDoubt] = useState<Doubt<T> | null>(null);
  const busy = useRef(false);
  const typed = draft.text;
  const stands = refusal !== null && refusal.about === about && refusal.text === JSON.stringify(typed?.text);

  /** What is left is kept anew: the act took the draft away with the rest. */
  const goOn = (text: T): void => {
    draft.restart({ text, why: '' });
    if (text !== initial) draft.set({ text, why: '' });
  };
  /** Whether it went through. */
  const send = async (what: NonNullable<Reading<T>['send']>, why: string, text: T): Promise<boolean> => {
    draft.close();
    const answer = await what(why === '' ? null : why, draftKey);
    if (answer.ok) return true;
    draft.reopen();
    setRefused({ sentence: answer.sentence, code: answer.error.code, text: JSON.stringify(text), about });
    return false;
  };
  const record = async (reason: string | null = null, given?: T): Promise<void> => {
    if (busy.current || typed === null) return;
    const text = given ?? typed.text;
    const reading = read(text);
    setRefused(null);
    if (reading.problems.size > 0) {
      setWrong(wrong + 1);
      return;
    }
    if (reading.send === null) {
      await draft.drop();
      if (left) goOn(initial);
      onDone();
      return;
    }
    if (reading.doubt) {
      setDoubt(reading.doubt);
      return;
    }
    busy.current = true;
    const asked = reason === null && reading.held ? await reading.held() : [];
    const sent = asked.length === 0 && (await send(reading.send, reason ?? typed.why.trim(), text));
    busy.current = false;
    if (asked.length > 0) setHeld(asked);
    if (!sent) return;
    say(saved);
    setWrong(0);
    if (left) goOn(left(text));
    onDone();
  };
  return {
    typed,
    set: (text) => typed && draft.set({ ...typed, text }),
    setWhy: (why) => typed && draft.set({ ...typed, why }),
    restored: draft.restored,
    refused: stands ? refusal.sentence : null,
    refusedCode: stands ? refusal.code : null,
    wrong,
    record,
    drop: async () => {
      await draft.drop();
      setRefused(null);
      setWrong(0);
      if (left) goOn(initial);
    },
    held,
    doubt,
    leaveQuestion: () => {
      setHeld([]);
      setDoubt(null);
    },
  };
}
