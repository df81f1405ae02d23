// What is shown before a ledger is open: the three doors, or the way out of trouble.
import { useAppState } from '../state/store';
import { Doors } from './doors';
import { Recovery } from './recovery';
import './start.css';

/** No ledger is open: a first run, or a ledger that can't be opened. */
export function Start() {
  const state = useAppState();
  return state?.trouble ? <Recovery trouble={state.trouble} /> : <Doors />;
}
