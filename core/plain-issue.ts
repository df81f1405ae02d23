// What is wrong with a value, in plain words: from zod's issues to the middle of a sentence. Pure.
import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a record with named fields',
  record: 'a record with named fields',
  array: 'a list',
  null: 'null',
};

const quoted = (values: readonly unknown[]): string => values.map((value) => `“${String(value)}”`).join(', ');

/** The first of many, so that a sentence stays one. */
const NAMED = 10;
const inShort = (values: readonly unknown[]): string =>
  values.length <= NAMED + 2
    ? quoted(values)
    : `${quoted(values.slice(0, NAMED))} and ${values.length - NAMED} more`;

/**
 * What is wrong, as the part of a sentence behind "amount: " (behind "amount " where it begins with a verb, see joinIssue).
 * @param input the whole value that was looked at, to tell what is missing from what is of the wrong kind
 */
export function plainIssue(issue: Issue, input: unknown): string {
  switch (issue.code) {
    case 'invalid_type': {
      const wanted = KINDS[issue.expected] ?? issue.expected;
      const given = at(input, issue.path);
      // JSON can carry 1e400, which is endless here.
      if (given === Infinity || given === -Infinity) return 'this is more than any number that is kept here';
      return given === undefined ? `this is missing; it needs ${wanted}` : `this has to be ${wanted}`;
    }
    case 'unrecognized_keys':
      return `takes no ${issue.keys.length === 1 ? 'field' : 'fields'} called ${quoted(issue.keys)}`;
    case 'invalid_value':
      return `this has to be one of ${inShort(issue.values)}`;
    case 'too_small':
      return ['string', 'array'].includes(issue.origin)
        ? `this is too short; the least is ${issue.minimum}`
        : `this is too small; the least is ${issue.inclusive === false ? 'more than ' : ''}${issue.minimum}`;
    case 'too_big':
      return ['string', 'array'].includes(issue.origin)
        ? `this is too long; the most is ${issue.maximum}`
        : `this is too large; the most is ${issue.inclusive === false ? 'less than ' : ''}${issue.maximum}`;
    case 'invalid_union': {
      if (issue.errors.length === 0) return 'this is none of the kinds that may stand here';
      // Of several forms the keeper most likely meant the one that fails last.
      const deepest = issue.errors
        .map((issues) => issues[0])
        .filter((one) => one !== undefined)
        .toSorted((a, b) => b.path.length - a.path.length)[0];
      if (deepest === undefined || deepest.path.length === 0)
        return 'this fits none of the forms it may have';
      return joinIssue(deepest.path.join('.'), plainIssue(deepest, at(input, issue.path)));
    }
    default:
      return issue.message;
  }
}

/** Where it is wrong and what is wrong there, as one clause. */
export const joinIssue = (path: string, problem: string): string =>
  problem.startsWith('takes no ') ? `${path} ${problem}` : `${path}: ${problem}`;

/** The part of a value that a path leads to, or undefined. */
function at(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inside, key) =>
      typeof inside === 'object' && inside !== null
        ? (inside as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}
