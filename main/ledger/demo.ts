// Builds the invented ledger: plays core/demo through the ledger's own calls, each at the moment it is said to have
// been made. Owns no act of its own.
import type { CallName, Result } from '../../core/contract';
import { demoWrites, type DemoReply } from '../../core/demo/writes';
import { refusalSentence } from '../../core/sentences';

/**
 * Fills an empty ledger with the invented scenario.
 * @param call one call of the contract, answered by the real handlers with the ledger's clock standing at `at`
 * @throws Error with the refusal's sentence when a write is refused: then the scenario or a handler is wrong
 */
export function playDemo(call: (name: CallName, input: unknown, at: string) => Result<unknown>): void {
  const writes = demoWrites();
  let step = writes.next({});
  while (!step.done) {
    const { call: name, input, at } = step.value;
    const result = call(name, input, at);
    if (!result.ok)
      throw new Error(`The invented ledger: ${name} at ${at} was refused. ${refusalSentence(result.error)}`);
    step = writes.next(result.value as DemoReply);
  }
}
