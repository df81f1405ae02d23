// A text once typing has paused: each word asks the ledger anew.
import { useEffect, useState } from 'react';

const PAUSE_MS = 150;

export function useSettled(text: string): string {
  const [settled, settle] = useState(text);
  useEffect(() => {
    const timer = window.setTimeout(() => settle(text), PAUSE_MS);
    return () => window.clearTimeout(timer);
  }, [text]);
  return settled;
}
