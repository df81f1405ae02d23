// Where a file is to be written. In the window the system's dialog says it (main/open-ledger.ts) before a call gets here.
import { Refused } from '../refusal';

/** @throws Refused 'not from here' where nobody has said it */
export function chosenPath(
  told: { readonly path: string } | { readonly name: string } | string,
  call: string,
): string {
  if (typeof told === 'string') return told;
  if (!('path' in told)) throw new Refused('not from here', { name: call });
  return told.path;
}
