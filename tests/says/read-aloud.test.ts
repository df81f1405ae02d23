// Every sentence that thirty generated ledgers make the program say: none breaks the rules of how it speaks that can be
// told by counting, and all of them are written to test-results/sentences.txt, for a person to read aloud.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { CallName, Input } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { Generated } from '../ledger/generated-ledgers';
import { runs } from '../runs';

const LEDGERS = runs(15);
const PRINT = join(import.meta.dirname, '../../test-results/sentences.txt');

/** What a cook need not know, and what reads as a number that nobody can act on. */
const NEVER: readonly (readonly [RegExp, string])[] = [
  [/\band \d+ more\b(?! (jars?|batches|lines|rows|products|days|generations|seeds|acts|files))/, 'a list cut off by a number alone'],
  [/standard error|p-value|\bsigma\b|NaN|undefined|Infinity/, 'a word of the workshop'],
  [/(?<![\d.])0 in 100\b/, 'a chance below 1 in 50 is hardly any'],
  [/\b\d+\.\d{3,}/, 'more decimals than anybody weighs'],
  [/\d ?× ?10\^/, 'a power of ten'],
  [/\d{4}-\d\d-\d\d/, 'a day that is not in words'],
  [/-0(?!\.\d)(?!\d)|−0(?!\.\d)(?!\d)/, 'minus nothing'],
  [/\b(Not said|Take away)\b/, 'words that the voice has others for'],
  [/ {2}|\s[.,;:?!](\s|$)|\.\.(?!\.)|,,/, 'a slip of the pen'],
]; // prettier-ignore

/** A sentence begins large and ends; words of a list and names don't. */
/** Where a figure is from is quoted as it is published. */
const isSource = (text: string): boolean => /\bdoi 10\./.test(text);
const isSentence = (text: string): boolean =>
  !isSource(text) && /^["“]?[\p{Lu}\d].*[.?!]["”]?$/su.test(text) && text.includes(' ');

function* textsIn(value: unknown): Generator<string> {
  if (typeof value === 'string') yield value;
  else if (Array.isArray(value)) for (const one of value) yield* textsIn(one);
  else if (value !== null && typeof value === 'object') for (const one of Object.values(value)) yield* textsIn(one);
} // prettier-ignore

/** The same said of other jars, days and figures is one sentence. */
const shapeOf = (sentence: string): string =>
  sentence
    .replaceAll(/\b\d{1,2} (?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)(?: \d{4})?(?: [\p{L}\d]+)?? [a-z]\b/gu, '◇')
    .replaceAll(/\b\d{1,2} (?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)(?: \d{4})?\b/g, '▢')
    .replaceAll(/\d+(?:[.,]\d+)*/g, '#')
    .replaceAll(/◇(?:, ◇)+/g, '◇'); // prettier-ignore

function repliesOf(ledger: Generated): unknown[] {
  const replies: unknown[] = [];
  const ask = <N extends CallName>(name: N, input: Input<N>): void => {
    const reply = ledger.ask(name, input);
    // A planned jar is not judged: then it is said so.
    replies.push(reply.ok ? reply.value : refusalSentence(reply.error));
  };
  const family = ledger.ask('family.get', {});
  if (!family.ok) throw new Error(family.error.code);
  const { jars, lines } = family.value;
  ask('advice.next', {});
  ask('advice.restart', {});
  ask('advice.freshStart', {});
  for (const { id: line } of lines) {
    ask('judgement.line', { line });
    ask('advice.line', { line });
    ask('advice.next', { line });
    ask('advice.restart', { line });
  }
  for (const { id } of jars.slice(-6)) {
    ask('judgement.jar', { jar: id });
    ask('jar.get', { id });
  }
  ask('history.list', { record: null, before: null, limit: 40 });
  return replies;
}

it(`no sentence of ${LEDGERS} ledgers breaks what can be counted`, { timeout: 240_000 }, () => {
  const said = new Map<string, { readonly first: string; count: number }>();
  for (let seed = 1; seed <= LEDGERS; seed += 1)
    for (const reply of repliesOf(new Generated(seed * 10)))
      for (const text of textsIn(reply)) {
        if (!isSentence(text)) continue;
        const shape = shapeOf(text);
        const known = said.get(shape);
        if (known) known.count += 1;
        else said.set(shape, { first: text, count: 1 });
      }
  mkdirSync(join(PRINT, '..'), { recursive: true });
  const lines = [...said.values()].map(({ first, count }) => `${String(count).padStart(6)}  ${first}`);
  writeFileSync(PRINT, `${lines.toSorted((a, b) => a.slice(8).localeCompare(b.slice(8))).join('\n')}\n`);
  const wrong = [...said.values()].flatMap(({ first }) =>
    NEVER.filter(([form]) => form.test(first)).map(([, why]) => `${why}: ${first}`),
  );
  expect(wrong).toEqual([]);
  expect(said.size).toBeGreaterThan(60);
});
