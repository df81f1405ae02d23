// Numbers that JSON writes and a double can't hold: each is found where it stands, whatever is around it.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundedIn } from '../../main/json-lines';

/** Beyond 2^53 − 1 two whole numbers that follow each other are one double (IEEE 754, binary64). */
const BEYOND = ['9007199254740993', '-9007199254740993', '12345678901234567890', '1e16', '9.1E+15', '1e400'];
const WITHIN = ['9007199254740991', '-9007199254740991', '1e15', '0.12345678901234567', '4.5', '1e-20'];

const around = fc.oneof(
  fc.integer(),
  fc.string(),
  fc.boolean(),
  fc.array(fc.string()),
  fc.dictionary(fc.string(), fc.integer()),
);

/** A JSON text in which a number stands at a path, beside other things. */
const planted = fc
  .tuple(fc.array(fc.oneof(fc.nat(3), fc.string()), { maxLength: 4 }), fc.array(around, { minLength: 8, maxLength: 8 }))
  .map(([path, beside]) => (number: string): string =>
    path.reduceRight<string>((inner, step, depth) => {
      const others = beside.slice(depth).map((one) => JSON.stringify(one));
      if (typeof step === 'number') return `[ ${[...others.slice(0, step), inner, ...others.slice(step, 4)].join(' ,')}]`;
      const own = `${JSON.stringify(step)} : ${inner}`;
      return `{${JSON.stringify(`x${step}`)}:${others[0] ?? 'null'}, ${own} }`;
    }, number),
  )
  .chain((text) => fc.constant(text)); // prettier-ignore

describe('a number in JSON', () => {
  it.each(BEYOND)('%s is found', (number) => {
    fc.assert(
      fc.property(planted, (text) => roundedIn(text(number)) !== null),
      { numRuns: 60 },
    );
    expect(roundedIn(`{"a":[1,{"b\\"]":"12345678901234567890"},{"c":${number}}]}`)).toBe('a.2.c');
    expect(roundedIn(` ${number} `)).toBe('');
  });

  it.each(WITHIN)('%s is kept, and so is one within a text', (number) => {
    fc.assert(
      fc.property(planted, (text) => roundedIn(text(number)) === null),
      { numRuns: 60 },
    );
    expect(roundedIn(JSON.stringify({ [`"${BEYOND[0]}`]: `\\"${BEYOND[1]}, [${BEYOND[2]}` }))).toBeNull();
  });
});
