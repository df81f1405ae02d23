// Calls on a bare ledger in memory, as headless makes them.
import { randomBytes } from 'node:crypto';
import { type CallName, contract, type Result } from '../../core/contract';
import { handlers } from '../../main/calls';
import { stillClock } from '../../main/ledger/clock';
import { idGenerator } from '../../main/ledger/ids';
import { Ledger } from '../../main/ledger/ledger';
import { refusalOf as refusedIn } from '../../main/refusal';
import type { Session } from '../../main/session';
import type { WorkerCall } from '../../main/ledger/worker-protocol';
import { newFile } from '../ledger/ledger-files';

const noJob = { step: () => undefined, look: () => undefined };

/** A call on a bare ledger, as headless makes it. */
export function askOf(ledger: Ledger) {
  return (name: CallName, input: unknown): Result<unknown> => {
    const parsed = contract[name].input.safeParse(input);
    if (!parsed.success) return { ok: false, error: { code: 'invalid', params: {} } };
    const handler = handlers[name as WorkerCall] as (...given: unknown[]) => unknown;
    try {
      return { ok: true, value: handler({ ledger } as Pick<Session, 'ledger'>, parsed.data, noJob) };
    } catch (error) {
      const refused = refusedIn(error);
      if (!refused) throw error;
      return { ok: false, error: refused.refusal };
    }
  };
}

export const valueOf = (result: Result<unknown>): unknown => {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};

/** An empty ledger whose clock stands where another's does. */
export const emptyBeside = ({ clock }: Ledger): Ledger =>
  Ledger.inMemory(newFile(), {
    clock: stillClock(clock.now()),
    newId: idGenerator({ milliseconds: clock.milliseconds, random: randomBytes }),
  });
