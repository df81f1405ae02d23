// What is being typed, kept in the ledger's drafts so that a crash loses at most the last quarter second of it.
import { useCallback, useEffect, useRef, useState } from 'react';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';

/** Longest time a character waits before it is sent to be kept (ms). Half a second is promised; this leaves room. */
const WAIT_MS = 200;
/** Raised when the shape of any form's text changes: older drafts are then left alone and not restored. */
const SHAPE = 3;

/** Where a draft belongs, kept beside it so that it can be found again. */
export interface DraftPlace {
  /** In words: "outcome of 14 Mar b". */
  readonly says: string;
  readonly screen: string;
  readonly focus: string | null;
}
interface Kept<T> extends DraftPlace {
  readonly shape: number;
  readonly text: T;
}

/** Reads a kept draft, or null where it is of another shape. */
export function readDraft<T>(json: string): Kept<T> | null {
  const kept = JSON.parse(json) as Kept<T>;
  return kept.shape === SHAPE ? kept : null;
}

export interface Draft<T> {
  /** null until it is known whether something unfinished is to be restored. */
  readonly text: T | null;
  readonly set: (text: T) => void;
  readonly restored: boolean;
  /** Stops keeping it, before it is recorded: a recording act removes the draft itself. */
  readonly close: () => void;
  /** Keeps it again, after a refused recording. */
  readonly reopen: () => void;
  /** After it was recorded, in a form that stays open: goes on with this, which nothing unfinished is. */
  readonly restart: (text: T) => void;
  /** Forgets it for good. */
  readonly drop: () => Promise<void>;
}

/**
 * Text of a form that survives a crash.
 * @param key one for each record and form, such as "outcome:UID"
 * @param initial what the fields start with where nothing was unfinished
 */
export function useDraft<T>(key: string, place: DraftPlace, initial: T): Draft<T> {
  const [text, setText] = useState<T | null>(null);
  const [restored, setRestored] = useState(false);
  const latest = useRef<T | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const open = useRef(true);
  const where = useRef({ place, initial });
  useEffect(() => {
    where.current = { place, initial };
  });

  const keep = useCallback(() => {
    timer.current = null;
    if (!open.current || latest.current === null) return;
    const kept: Kept<T> = { shape: SHAPE, ...where.current.place, text: latest.current };
    void call('draft.save', { key, json: JSON.stringify(kept) }).then((answer) => {
      if (!answer.ok) say(`What you type is not being kept: ${answer.sentence}`, 'caution');
    });
  }, [key]);

  useEffect(() => {
    let current = true;
    open.current = true;
    void call('draft.list', {}).then((answer) => {
      if (!current) return;
      if (!answer.ok) say(answer.sentence, 'caution');
      const json = answer.ok ? answer.value.drafts.find((draft) => draft.key === key)?.json : undefined;
      const kept = json === undefined ? null : readDraft<T>(json);
      setRestored(kept !== null);
      setText((now) => now ?? (kept ? kept.text : where.current.initial));
    });
    return () => {
      current = false;
      if (timer.current !== null) {
        clearTimeout(timer.current);
        keep();
      }
    };
  }, [key, keep]);

  return {
    text,
    restored,
    set: (next) => {
      latest.current = next;
      setText(next);
      // The clock starts at the first change and is not put back by later ones, so steady typing is kept too.
      timer.current ??= setTimeout(keep, WAIT_MS);
    },
    close: () => {
      open.current = false;
      if (timer.current !== null) clearTimeout(timer.current);
      timer.current = null;
    },
    reopen: () => {
      open.current = true;
      keep();
    },
    restart: (next) => {
      open.current = true;
      latest.current = null;
      setRestored(false);
      setText(next);
    },
    drop: async () => {
      open.current = false;
      if (timer.current !== null) clearTimeout(timer.current);
      timer.current = null;
      const answer = await call('draft.drop', { key });
      if (!answer.ok) say(answer.sentence, 'caution');
    },
  };
}
