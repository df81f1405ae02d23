// What is typed into the cell of an early look, read: "starting, sour", "l", "set, not sour, pH 5.1". Pure.
import type { Reply } from '../../core/contract';
import { parsePh } from '../../core/quantities/quantities';

type Look = NonNullable<Reply<'hold.get'>['jars'][number]['look']>;
export type Seen = Pick<Look, 'set' | 'sour' | 'ph'>;
export type ReadLook =
  { readonly ok: true; readonly seen: Seen } | { readonly ok: false; readonly sentence: string };

export const UNSEEN: Seen = { set: null, sour: null, ph: null };

const SETS = [
  [/^(?:l|loose|liquid|runny)$/, 'loose'],
  [/^(?:st|sta|start\w*)$/, 'starting'],
  [/^(?:set|firm)$/, 'set'],
  [/^(?:not set|ns|unset)$/, 'not set'],
] as const;
const SOUR = /^(?:so|sour|smells sour|y|yes)$/;
const SOURLESS = /^(?:not sour|no sour|sweet|n|no)$/;

const NOT_READ =
  'Type what you see and smell: “loose”, “starting” or “set”, then “sour” or “not sour”; a pH like “5.1”.';

/** One part of what was typed, put to what was read so far; null where it is neither. */
function partOf(part: string, seen: Seen): Seen | null {
  const set = SETS.find(([pattern]) => pattern.test(part));
  if (set) return seen.set === null ? { ...seen, set: set[1] } : null;
  if (SOUR.test(part)) return seen.sour === null ? { ...seen, sour: true } : null;
  if (SOURLESS.test(part)) return seen.sour === null ? { ...seen, sour: false } : null;
  if (!/\d/.test(part)) return null;
  const ph = parsePh(part);
  return ph.ok && seen.ph === null ? { ...seen, ph: ph.ph } : null;
}

/** Words apart by commas, "and" or nothing but a space. @param others what was read of jars before, by letter: "as b" */
export function readLook(text: string, others: ReadonlyMap<string, Seen>): ReadLook {
  const clean = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (clean === '' || clean === '?') return { ok: true, seen: UNSEEN };
  const as = /^as (\p{L}+)$/u.exec(clean)?.[1];
  if (as !== undefined) {
    const other = others.get(as);
    return other
      ? { ok: true, seen: other }
      : { ok: false, sentence: `There is no jar ${as} before this one.` };
  }
  const parts = clean
    .replace(/\b(?:and|but|&)\b/g, ',')
    // A decimal comma is no comma between words.
    .split(/,(?!\d)|;/)
    .flatMap((part) => (isPart(part.trim()) ? [part.trim()] : part.trim().split(/(?<!not|ph|no) /)))
    .filter(Boolean);
  let seen: Seen = UNSEEN;
  for (const part of parts) {
    const next = partOf(part, seen);
    if (next === null) return { ok: false, sentence: NOT_READ };
    seen = next;
  }
  return { ok: true, seen };
}

const isPart = (part: string): boolean => partOf(part, UNSEEN) !== null;

/** As it is written into a cell: "starting, sour". */
export const lookText = ({ set, sour, ph }: Seen): string =>
  [set, sour === null ? null : sour ? 'sour' : 'not sour', ph === null ? null : `pH ${ph}`]
    .filter((part) => part !== null)
    .join(', ');
