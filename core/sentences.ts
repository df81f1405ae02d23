// Every sentence the program says, in one table: what is wrong and what to do. Calm, short, no jargon, no blame.
// Pure: a code and its parameters in, a sentence out.
import type { Refusal } from './contract';

type Params = Refusal['params'];
const text = (params: Params, name: string): string => {
  const value = params[name];
  return Array.isArray(value) ? value.join(', ') : String(value ?? '');
};

/** Code → sentence. A code that is not here can't be sent: `RefusalCode` is its key type. */
export const refusals = {
  invalid: (p) => `${text(p, 'path')}: ${text(p, 'problem')}. Please correct it and try again.`,
  'unknown call': (p) => `There is no call named “${text(p, 'name')}”.`,
  'not found': (p) => `There is no ${text(p, 'kind')} with that id in this ledger.`,
  'no ledger': () => 'No ledger is open. Open or start one first.',
  forbidden: () => 'That is not allowed from here.',
  unexpected: (p) => `Something went wrong inside the program (${text(p, 'ref')}). Nothing was changed.`,
} as const satisfies Record<string, (params: Params) => string>;
export type RefusalCode = keyof typeof refusals;

/** The sentence for a refusal. */
export function refusalSentence(refusal: Refusal): string {
  const say: ((params: Params) => string) | undefined = refusals[refusal.code as RefusalCode];
  return say ? say(refusal.params) : refusals.unexpected({ ref: refusal.code });
}
