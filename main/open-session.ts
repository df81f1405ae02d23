// What the handlers of calls see of a session: the ledger that is open, and what is asked of the session itself.
import type { AppState, Reply } from '../core/contract';
import type { Ledger } from './ledger/ledger';

export interface OpenSession {
  /** @throws Refused where none is open */
  readonly ledger: Ledger;
  readonly state: () => AppState;
  readonly backup: () => { file: string; bytes: number };
  readonly backups: () => Reply<'ledger.backups'>;
  readonly restore: (backup: string) => AppState;
  readonly recover: (how: 'newest backup' | 'save what can be read') => AppState;
}
