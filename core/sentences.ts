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
  'ledger stopped': () =>
    'The part that keeps the ledger stopped in the middle of this. Nothing unfinished was kept. Please try again.',
  'ledger refused': (p) => text(p, 'sentence'),
  'ledger exists': (p) =>
    `There is already a file at ${text(p, 'file')}. Choose another name for a new ledger.`,
  'no such ledger': (p) => `There is no file at ${text(p, 'file')}. Check the name, or start a new ledger.`,
  'no demo': () => 'The invented ledger is not open, so there is nothing to leave.',
  forbidden: () => 'That is not allowed from here.',
  'own ancestor': (p) =>
    `${text(p, 'jar')} would descend from itself: ${Array.isArray(p['loop']) ? p['loop'].join(' → ') : ''}. Choose another seed.`,
  'seed made later': (p) =>
    `${text(p, 'seed')} was made on ${text(p, 'seedDay')}, after ${text(p, 'jar')} (${text(p, 'day')}), so it can’t have seeded it. Correct a date or choose another seed.`,
  'condemned stays': (p) =>
    `${text(p, 'jar')} was seen to be spoiled, and that can’t be lifted. If it was not, correct what was seen.`,
  unexpected: (p) => `Something went wrong inside the program (${text(p, 'ref')}). Nothing was changed.`,
} as const satisfies Record<string, (params: Params) => string>;
export type RefusalCode = keyof typeof refusals;

/** The sentence for a refusal. */
export function refusalSentence(refusal: Refusal): string {
  const say: ((params: Params) => string) | undefined = refusals[refusal.code as RefusalCode];
  return say ? say(refusal.params) : refusals.unexpected({ ref: refusal.code });
}
