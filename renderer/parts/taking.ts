// Values taken out of the fields of a form one by one, with the sentence for each that is wrong kept by its path. Pure.
import type { Read } from './reading';

/** What is wrong, by the path of its field: 'date', 'jars.0.seeds.1.amount'. */
export type Problems = ReadonlyMap<string, string>;

/** Empty text is unknown. */
export const lineOrNull = (text: string): string | null => (text.trim() === '' ? null : text.trim());
/** A choice that was not made is unknown. */
export const orNull = <T extends string>(text: T | ''): T | null => (text === '' ? null : text);

/** Collects problems by path while values are taken. */
export class Taking {
  readonly problems = new Map<string, string>();
  take<T>(path: string, read: Read<T>): T | null {
    if (read.ok) return read.value;
    this.problems.set(path, read.sentence);
    return null;
  }
  say(path: string, sentence: string): null {
    if (!this.problems.has(path)) this.problems.set(path, sentence);
    return null;
  }
}
