// The gate at take-out, the words of the trade one by one. Threshold: 88 FR 22907 (2023-04-14), "pH of 4.6 or lower". That a
// strip can't decide it, the list of discard signs, smell before set, thickening additions: common practice, no source.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SET_WORDS } from '../../core/ledger/jar-fields';
import { DISCARD_SIGNS } from '../../core/ledger/records';
import { gateOf } from '../../core/safety/gate';
import { gateReasonSentence } from '../../core/says/safety-says';
import { discardOf, takeOutGate } from '../../core/safety/take-out';
import { NOTHING_SEEN as nothing, look, seen } from './seen-in-words';

const gate = (take: Parameters<typeof look>[1], additions: readonly string[] = []) =>
  gateOf(seen([look('take-out', take)], additions));
const meter = (ph: number, checked: boolean | null = true) => ({
  acidity: [{ ph, how: 'meter' as const, checked }],
});
const strip = (ph: number) => ({ acidity: [{ ph, how: 'strip' as const, checked: null }] });
const set = { setState: 'set' as const };

describe('a jar passes', () => {
  it.each([
    ['a curd that holds and a sour, clean smell', { ...set, sour: true }],
    ['a set word for curds that hold, and a sour smell', { setWord: 'spoonable' as const, sour: true }],
    ['a meter that shows 4.6, the limit itself', { ...meter(4.6), setState: 'not set' as const }],
    ['a meter that was checked that day, whatever the smell', { ...meter(4.2, true), sour: false }],
  ])('by %s', (_why, take) => expect(gate(take)).toBe('passed'));
  it.each([
    ['thick alone: thick is never taken for sour', { setWord: 'very firm' as const }],
    ['sour alone', { sour: true }],
    ['a strip, which may stop and never pass', { ...set, ...strip(4.2) }],
    ['a meter that failed its check, which proves nothing', { ...set, ...meter(4.2, false) }],
    ['a meter that nobody noted as checked, which proves as little', { ...set, ...meter(4.2, null) }],
    ['a pH just above', { ...set, ...meter(4.61) }],
    [
      'a soft set word with a sour smell: it may be said of milk that has not set',
      { setWord: 'soft' as const, sour: true },
    ],
  ])('not by %s', (_why, take) => expect(gate(take)).toBe('not noted'));
});

describe('not set', () => {
  it.each([
    ['pours like milk', { setState: 'not set' as const, sour: true }],
    ['thick but not sour: spores curdle milk without acid, too', { ...set, sour: false }],
    ['pours like milk, and a strip says 4.2', { setState: 'not set' as const, ...strip(4.2) }],
    [
      'pours like milk, and an unchecked meter says 4.2',
      { setState: 'not set' as const, ...meter(4.2, null) },
    ],
  ])('%s', (_why, take) => expect(gate(take)).toBe('failed'));
  it('is its own word, beside spoiled', () => {
    expect(discardOf({ ...nothing, setAtTakeOut: false })).toBe('not set');
    expect(discardOf({ ...nothing, setAtTakeOut: true, sour: false })).toBe('not set');
    expect(discardOf({ ...nothing, setAtTakeOut: false, signs: ['pink'] })).toBe('spoiled');
    expect(discardOf({ ...nothing, setAtTakeOut: false, ph: 4.6, phHow: 'meter' })).toBe('not set');
    expect(
      discardOf({ ...nothing, setAtTakeOut: false, ph: 4.6, phHow: 'meter', phChecked: true }),
    ).toBeNull();
  });
});

describe('what was stirred in may have thickened it', () => {
  it.each(['potato starch', 'psyllium', 'something new'])('%s: its set shows nothing', (name) =>
    expect(gate({ ...set, sour: true }, [name])).toBe('thickened'),
  );
  it('sugar does not thicken, and a meter answers for any', () => {
    expect(gate({ ...set, sour: true }, ['Sugar'])).toBe('passed');
    expect(gate(meter(4.4), ['potato starch'])).toBe('passed');
  });
});

describe('spoiled', () => {
  it('is not said of an outcome with nothing known', () => expect(discardOf(nothing)).toBeNull());
  it('holds for every discard sign, whatever else was seen', () => {
    for (const sign of DISCARD_SIGNS)
      expect(discardOf({ ...nothing, signs: [sign], setAtTakeOut: true, sour: true })).not.toBeNull();
  });
  it("holds for the keeper's plain word", () =>
    expect(discardOf({ ...nothing, spoiledSaid: true })).toBe('spoiled'));
  it('unknown is not "not set"', () => expect(discardOf({ ...nothing, ph: 5.9, phHow: 'meter' })).toBeNull());
});

describe('the form of the gate', () => {
  const passed = { ...nothing, setAtTakeOut: true, sour: true } as const;
  it('stays unanswered until it is said whether the jar set and smelled sour, and that someone looked', () => {
    expect(takeOutGate(nothing, true).verdict).toBe('unanswered');
    expect(takeOutGate({ ...nothing, setAtTakeOut: true }, true).verdict).toBe('unanswered');
    expect(takeOutGate(passed, false).verdict).toBe('unanswered');
    expect(takeOutGate(passed, true).verdict).toBe('open');
  });
  it('discards on a sign before anything else is answered', () => {
    const verdict = takeOutGate({ ...nothing, signs: ['pink'] }, false);
    expect(verdict.verdict).toBe('discard');
    expect(verdict.reasons.map(gateReasonSentence).join(' ')).toMatch(/do not taste/i);
  });
  it('says "not food, not seed" of a jar that did not set, and why of one that is only thick', () => {
    const says = (outcome: Parameters<typeof takeOutGate>[0]) =>
      takeOutGate(outcome, true).reasons.map(gateReasonSentence).join(' ');
    expect(says({ ...nothing, setAtTakeOut: false })).toMatch(/^Not set.*not food, not seed/);
    expect(says({ ...nothing, setAtTakeOut: true, sour: false })).toMatch(
      /^Thick but not sour.*not food, not seed/,
    );
  });
  it('asks about fine bubbles, which are normal, and about a power cut, however short', () => {
    const codes = (outcome: Parameters<typeof takeOutGate>[0]) =>
      takeOutGate(outcome, true).reasons.map(({ code }) => code);
    expect(codes({ ...passed, bubbles: 'fine' })).toEqual(['bubbles']);
    expect(codes({ ...passed, texture: 'smooth, fine bubbles' })).toEqual(['bubbles']);
    expect(codes({ ...passed, bubbles: 'none' })).toEqual([]);
    expect(
      takeOutGate({ ...passed, powerCut: true, powerCutHours: 1 }, true).reasons.map(gateReasonSentence),
    ).toEqual([
      expect.stringMatching(/^The power failed during the hold, for an hour\. .*does not undo a toxin/),
    ]);
    expect(codes({ ...passed, powerCut: false })).toEqual([]);
  });
  it('a power cut never softens a discard', () =>
    expect(
      takeOutGate({ ...nothing, setAtTakeOut: false, powerCut: true, powerCutHours: 2 }, true).verdict,
    ).toBe('discard'));
  it('says that an unchecked meter proves nothing, where something rests on it', () => {
    const asked = (more: Partial<Parameters<typeof takeOutGate>[0]>) => {
      const { verdict, reasons } = takeOutGate({ ...nothing, ph: 4.3, phHow: 'meter', ...more }, true);
      return { verdict, says: reasons.map(gateReasonSentence).join(' ') };
    };
    expect(asked({ phChecked: null })).toEqual({
      verdict: 'unanswered',
      says: expect.stringMatching(
        /^A pH of 4.3 proves nothing: nobody noted that the meter was checked in a pH 4.01/,
      ),
    });
    expect(asked({ phChecked: false }).says).toMatch(/^A pH of 4.3 proves nothing: the meter was wrong/);
    expect(asked({ setAtTakeOut: false })).toEqual({
      verdict: 'discard',
      says: expect.stringMatching(/^Not set.*A pH of 4.3 proves nothing.*not food, not seed/),
    });
    expect(asked({ setAtTakeOut: false, phChecked: true })).toEqual({ verdict: 'open', says: '' });
    expect(asked({ setAtTakeOut: true, sour: true })).toEqual({ verdict: 'open', says: '' });
  });
  it.each(['meter', 'strip'] as const)(
    'says of sour, set and pH 5.8 by %s that the acid is not there',
    (phHow) => {
      const { verdict, reasons } = takeOutGate({ ...passed, ph: 5.8, phHow }, true);
      const says = reasons.map(gateReasonSentence).join(' ');
      expect(verdict).toBe('ask');
      expect(says).toContain(`pH of 5.8 by ${phHow} is above 4.6`);
      expect(says).toMatch(/acid is not there yet.*do not taste.*hold it longer.*when in doubt, discard/i);
    },
  );
});

// Any two looks, against the rule in words. Written anew from the words of the trade, not from the code.
const anyLook = fc.record({
  setState: fc.constantFrom(null, 'set' as const, 'not set' as const),
  setWord: fc.constantFrom(null, ...SET_WORDS),
  sour: fc.constantFrom(null, true, false),
  acidity: fc.array(
    fc.record({ ph: fc.constantFrom(3.9, 4.6, 4.61, 5.8), how: fc.constantFrom('meter' as const, 'strip' as const, 'not said' as const), checked: fc.constantFrom(null, true, false) }),
    { maxLength: 2 },
  ),
}); // prettier-ignore

it('for any looks: passed only by a meter or by smell and curd; failed wherever it poured or did not smell sour (property)', () => {
  fc.assert(
    fc.property(fc.array(anyLook, { maxLength: 3 }), fc.boolean(), (looks, starch) => {
      const found = gateOf(seen(looks.map((one) => look('take-out', one)), starch ? ['starch'] : [])); // prettier-ignore
      const metered = looks.some(({ acidity }) => acidity.some(({ ph, how, checked }) => how === 'meter' && checked === true && ph <= 4.6)); // prettier-ignore
      const against = looks.some(({ setState, sour }) => setState === 'not set' || sour === false);
      const smelled = looks.some(({ sour }) => sour === true);
      const holds = looks.some(({ setState, setWord }) => setState === 'set' || ['spoonable', 'firm', 'very firm'].includes(setWord ?? '')); // prettier-ignore
      const bySense = smelled && holds ? (starch ? 'thickened' : 'passed') : 'not noted';
      expect(found).toBe(metered ? 'passed' : against ? 'failed' : bySense);
      // Thick is never taken for sour.
      const thicker = looks.map((one) => look('take-out', { ...one, setState: one.setState === 'not set' ? 'not set' : 'set', setWord: 'very firm', sour: one.sour === true ? null : one.sour })); // prettier-ignore
      if (!metered) expect(gateOf(seen(thicker, []))).not.toBe('passed');
    }),
    { numRuns: 500 },
  );
});
