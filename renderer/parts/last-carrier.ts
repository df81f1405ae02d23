// Whether a jar is all that still carries a line and may be used: asked before it is marked as gone.
import { call } from '../state/ledger-calls';

/** What to say of it, one sentence for each line; empty where others carry them, or where that can't be told. */
export async function lastCarrier(jar: string): Promise<readonly string[]> {
  const answer = await call('advice.next', { line: null });
  if (!answer.ok) return [];
  return answer.value.lastOf.filter((one) => one.jar === jar && one.portion === null).map(({ says }) => says);
}
