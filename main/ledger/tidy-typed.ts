// What the writers do to everything typed: trim it, take an empty field as unknown, refuse what can't be kept.
import { Refused } from '../refusal';

/** Fields that are text even when empty. */
const KEPT_EMPTY = new Set(['genus', 'species', 'designation']);

/** Characters that would not come back as they went in: controls but tab and line breaks, halves of pairs. */
const UNREADABLE = /\p{Surrogate}|(?![\t\n\r])\p{Cc}/u;

/** @throws Refused 'unreadable' where text would not come back as it went in */
export function refuseUnreadable(text: string, path: string): void {
  if (UNREADABLE.test(text)) throw new Refused('unreadable', { path });
}

/**
 * The same record with every text trimmed and empty text turned into null.
 * @throws Refused 'unreadable'
 */
export function tidy<T>(value: T, path = ''): T {
  if (typeof value === 'string') {
    refuseUnreadable(value, path);
    const trimmed = value.trim();
    return (trimmed === '' && !KEPT_EMPTY.has(path.slice(path.lastIndexOf('.') + 1)) ? null : trimmed) as T;
  }
  if (Array.isArray(value)) return value.map((one, index) => tidy(one as unknown, `${path}.${index}`)) as T;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(
      Object.entries(value).map(([field, one]) => [
        field,
        tidy(one as unknown, path === '' ? field : `${path}.${field}`),
      ]),
    ) as T;
  }
  return value;
}

/**
 * Refuses fields that must say something and don't.
 * @throws Refused 'invalid'
 */
export function mustSay(record: Readonly<Record<string, unknown>>, ...fields: string[]): void {
  for (const field of fields) {
    if (field in record && (record[field] === null || record[field] === undefined)) {
      throw new Refused('invalid', { path: field, problem: 'is empty' });
    }
  }
}
