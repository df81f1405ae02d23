// The gate at take-out. Threshold: 88 FR 22907 (2023-04-14), "pH of 4.6 or lower". That a strip can't decide it, the
// list of discard signs and the words for a slow start: common practice, no source.
import { describe, expect, it } from 'vitest';
import { acidShown, failsGate, gateReasonSentence, isSpoiled, takeOutGate } from '../../core/safety/gate';
import { DISCARD_SIGNS } from '../../core/ledger/records';

const nothing = {
  signs: [],
  spoiledSaid: false,
  setAtTakeOut: null,
  ph: null,
  phHow: null,
  earlySet: null,
  earlySour: null,
  texture: null,
  bubbles: null,
  powerCut: null,
  powerCutHours: null,
} as const;

describe('a pH at or below 4.6 is shown', () => {
  it.each([
    { ph: 4.6, phHow: 'meter', shown: true, why: 'the limit itself counts' },
    { ph: 4.61, phHow: 'meter', shown: false, why: 'just above' },
    { ph: 4.2, phHow: 'strip', shown: false, why: "a strip can't decide it" },
    { ph: 4.2, phHow: null, shown: false, why: 'unknown how it was measured' },
    { ph: null, phHow: 'meter', shown: false, why: 'no reading' },
  ] as const)('$why', ({ ph, phHow, shown }) => {
    expect(acidShown({ ph, phHow })).toBe(shown);
  });
});

describe('spoiled', () => {
  it('is not said of an outcome with nothing known', () => expect(isSpoiled(nothing)).toBe(false));
  it('holds for every discard sign, whatever else was seen', () => {
    for (const sign of DISCARD_SIGNS)
      expect(isSpoiled({ ...nothing, signs: [sign], setAtTakeOut: true, ph: 4.1, phHow: 'meter' })).toBe(
        true,
      );
  });
  it("holds for the keeper's plain word", () =>
    expect(isSpoiled({ ...nothing, spoiledSaid: true })).toBe(true));
  it('holds for not set with no pH, a strip, or a pH above 4.6', () => {
    expect(isSpoiled({ ...nothing, setAtTakeOut: false })).toBe(true);
    expect(isSpoiled({ ...nothing, setAtTakeOut: false, ph: 4.3, phHow: 'strip' })).toBe(true);
    expect(isSpoiled({ ...nothing, setAtTakeOut: false, ph: 4.7, phHow: 'meter' })).toBe(true);
  });
  it('does not hold for not set with a metered pH of 4.6', () =>
    expect(isSpoiled({ ...nothing, setAtTakeOut: false, ph: 4.6, phHow: 'meter' })).toBe(false));
  it('unknown is not "not set"', () =>
    expect(failsGate({ ...nothing, ph: 5.9, phHow: 'meter' })).toBe(false));
});

describe('the gate', () => {
  it('stays unanswered until it is said whether the jar set and that someone looked', () => {
    expect(takeOutGate(nothing, false).verdict).toBe('unanswered');
    expect(takeOutGate({ ...nothing, setAtTakeOut: true }, false).verdict).toBe('unanswered');
    expect(takeOutGate(nothing, true).verdict).toBe('unanswered');
    expect(takeOutGate({ ...nothing, setAtTakeOut: true }, true).verdict).toBe('open');
  });
  it('discards on a sign before anything else is answered', () => {
    const verdict = takeOutGate({ ...nothing, signs: ['pink'] }, false);
    expect(verdict.verdict).toBe('discard');
    expect(verdict.reasons.map(gateReasonSentence).join(' ')).toMatch(/do not taste/i);
  });
  it('says "not food, not seed" of a jar that did not set', () => {
    const verdict = takeOutGate({ ...nothing, setAtTakeOut: false }, true);
    expect(verdict.verdict).toBe('discard');
    expect(verdict.reasons.map(gateReasonSentence).join(' ')).toContain('not food, not seed');
  });
  it.each([
    { earlySet: 'loose', earlySour: null },
    { earlySet: null, earlySour: false },
    { earlySet: 'loose', earlySour: false },
  ] as const)('warns of a slow start ($earlySet, sour: $earlySour) even where it set in the end', (early) => {
    const verdict = takeOutGate({ ...nothing, ...early, setAtTakeOut: true, ph: 4.3, phHow: 'meter' }, true);
    expect(verdict.verdict).toBe('ask');
    expect(verdict.reasons.map(gateReasonSentence).join(' ')).toContain('does not undo a toxin');
  });
  it('asks about fine bubbles alone', () => {
    expect(
      takeOutGate({ ...nothing, setAtTakeOut: true, texture: 'smooth, fine bubbles' }, true).verdict,
    ).toBe('ask');
    expect(takeOutGate({ ...nothing, setAtTakeOut: true, texture: 'smooth' }, true).verdict).toBe('open');
    expect(takeOutGate({ ...nothing, setAtTakeOut: true, bubbles: 'fine' }, true).verdict).toBe('ask');
    expect(takeOutGate({ ...nothing, setAtTakeOut: true, bubbles: 'none' }, true).verdict).toBe('open');
  });
  it('asks after a power cut, however short, even where it set in the end and is sour', () => {
    const sour = { ...nothing, setAtTakeOut: true, ph: 4.2, phHow: 'meter' } as const;
    const cut = takeOutGate({ ...sour, powerCut: true, powerCutHours: 1 }, true);
    expect(cut.verdict).toBe('ask');
    expect(cut.reasons.map(gateReasonSentence)).toEqual([
      expect.stringMatching(/^The power failed during the hold, for an hour\. .*does not undo a toxin/),
    ]);
    expect(gateReasonSentence({ code: 'power cut', hours: null })).toMatch(
      /^The power failed during the hold\. /,
    );
    expect(takeOutGate({ ...sour, powerCut: false }, true).verdict).toBe('open');
    expect(takeOutGate({ ...sour, powerCut: null }, true).verdict).toBe('open');
  });
  it('a power cut never softens a discard', () =>
    expect(
      takeOutGate({ ...nothing, setAtTakeOut: false, powerCut: true, powerCutHours: 2 }, true).verdict,
    ).toBe('discard'));
});

// Every combination of the answers the gate asks for, against the rule in words: a sign, the keeper's word, or "not set"
// without a metered pH at or below 4.6 is discarded; open questions stay open; anything uncertain is asked about; and
// only a jar that has set, was looked at, and shows no pH above 4.6 by any means is left to the keeper.
describe('the gate over all combinations', () => {
  const all = [true, false, null].flatMap((setAtTakeOut) =>
    ([null, 4.3, 4.6, 4.61, 5.8] as const).flatMap((ph) =>
      ([null, 'meter', 'strip'] as const).flatMap((phHow) =>
        ([[], ['pink'], ['foam']] as const).flatMap((signs) =>
          [true, false].flatMap((spoiledSaid) =>
            [true, false].flatMap((looked) =>
              (['loose', 'set', null] as const).flatMap((earlySet) =>
                [true, false, null].flatMap((powerCut) =>
                  (['none', 'fine', null] as const).flatMap((bubbles) =>
                    [true, false].map((fibreDidThis) => ({
                      looked,
                      outcome: { ...nothing, setAtTakeOut, ph, phHow, signs, spoiledSaid, earlySet, powerCut, bubbles, fibreDidThis }, // prettier-ignore
                    })),
                  ),
                ),
              ),
            ),
          ),
        ),
      ),
    ),
  );
  const expected = ({ outcome, looked }: (typeof all)[number]): string => {
    const { setAtTakeOut, ph, phHow } = outcome;
    if (outcome.signs.length > 0 || outcome.spoiledSaid) return 'discard';
    if (setAtTakeOut === false && !(phHow === 'meter' && (ph === 4.3 || ph === 4.6))) return 'discard';
    if (setAtTakeOut === null || !looked) return 'unanswered';
    const uncertain =
      ph === 4.61 ||
      ph === 5.8 ||
      outcome.earlySet === 'loose' ||
      outcome.powerCut === true ||
      outcome.bubbles === 'fine';
    return uncertain ? 'ask' : 'open';
  };
  it('answers each as the rule does, and the fibre changes nothing', () => {
    const wrong = all.filter((one) => takeOutGate(one.outcome, one.looked).verdict !== expected(one));
    expect(all).toHaveLength(3 * 5 * 3 * 3 * 2 * 2 * 3 * 3 * 3 * 2);
    expect(wrong).toEqual([]);
  });
  it('condemns exactly what the definition of spoiled condemns: a set jar with a high pH is not spoiled by itself', () => {
    expect(
      all.filter(
        ({ outcome, looked }) => (takeOutGate(outcome, looked).verdict === 'discard') !== isSpoiled(outcome),
      ),
    ).toEqual([]);
    expect(isSpoiled({ ...nothing, setAtTakeOut: true, ph: 5.8, phHow: 'meter' })).toBe(false);
  });
  it.each(['meter', 'strip'] as const)('says of set and pH 5.8 by %s that the acid is not there', (phHow) => {
    const gate = takeOutGate({ ...nothing, setAtTakeOut: true, ph: 5.8, phHow }, true);
    const says = gate.reasons.map(gateReasonSentence).join(' ');
    expect(gate.verdict).toBe('ask');
    expect(says).toContain(`pH of 5.8 by ${phHow} is above 4.6`);
    expect(says).toMatch(/acid is not there yet.*do not taste.*hold it longer.*when in doubt, discard/i);
  });
});
