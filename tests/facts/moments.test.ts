// Moments as told and as stored. ISO 8601 (RFC 3339): an offset is what the clock was ahead of UTC.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Moment } from '../../core/ledger/basics';
import { momentText, storedMoment } from '../../core/ledger/stored-moments';

describe('a moment', () => {
  // RFC 3339, section 5.8: the examples "1996-12-19T16:39:57-08:00" and "1996-12-20T00:39:57Z" are one instant.
  it('is the same instant whatever its offset', () => {
    const west = storedMoment('1996-12-19T16:39:57-08:00');
    expect(west).toEqual({ seconds: storedMoment('1996-12-20T00:39:57Z').seconds, offset: -480 });
    expect(momentText(west.seconds, west.offset)).toBe('1996-12-19T16:39:57-08:00');
  });

  it('comes back as it went in, with its seconds, and with Z where the offset is none', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -2_208_988_800, max: 7_258_118_399 }),
        fc.integer({ min: -1080, max: 1080 }),
        (seconds, offset) => {
          const text = momentText(seconds, offset);
          expect(storedMoment(text)).toEqual({ seconds, offset: offset === 0 ? 0 : offset });
          // The same instant by the language's own reading of the text.
          expect(Date.parse(text)).toBe(seconds * 1000);
        },
      ),
      { numRuns: 500, seed: 11 },
    );
    expect(momentText(0, 0)).toBe('1970-01-01T00:00:00Z');
    expect(storedMoment('2026-03-14T18:30+01:00')).toEqual(storedMoment('2026-03-14T18:30:00.400+01:00'));
  });

  it.each([
    '2026-02-30T10:00:00Z', '2026-13-01T10:00:00Z', '2026-02-03T24:00:00Z', '2026-02-03T10:60:00Z', '2026-02-03T10:00:60Z',
    '2026-02-03T10:00:00', '2026-02-03', '2026-02-03T10:00:00+19:00', '2026-02-03T10:00:00+01:75', '2026-02-03 10:00:00Z',
  ])('is not %s', (text) => {
    expect(Moment.safeParse(text).success).toBe(false);
  }); // prettier-ignore
});
