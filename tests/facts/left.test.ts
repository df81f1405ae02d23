// What is left of a jar follows from all that left it. Rules from design.md *movement* and the ledger of events.
import { describe, expect, it } from 'vitest';
import { type Event, type Held, whatIsLeft } from '../../core/ledger/jar-left';

const mL = (value: number) => ({ value, unit: 'mL', typed: null }) as const;
const g = (value: number) => ({ value, unit: 'g', typed: null }) as const;
const jar: Held = { amount: mL(900), pieces: null, place: null };
const cubes: Held = { amount: mL(180), pieces: 12, place: 'freezer' };
const event = (what: Event['what'], more: Partial<Event> = {}): Event => ({
  what,
  when: null,
  amount: null,
  pieces: null,
  ...more,
});

describe('how much is left', () => {
  it('is the volume less seeds, parts kept apart and what was eaten, given and discarded', () => {
    const left = whatIsLeft(jar, [
      event('seed', { amount: mL(45) }),
      event('kept apart', { amount: mL(155) }),
      event('eaten', { amount: mL(200) }),
      event('given', { amount: mL(100) }),
      event('discarded', { amount: mL(50) }),
    ]);
    expect(left).toMatchObject({
      amount: { value: 350, unit: 'mL' },
      none: false,
      unknown: null,
      gramsAsMl: false,
    });
  });
  it('takes 1 g as 1 mL, and says so', () => {
    expect(whatIsLeft(jar, [event('seed', { amount: g(30) })])).toMatchObject({
      amount: { value: 870, unit: 'mL' },
      gramsAsMl: true,
    });
    expect(whatIsLeft({ ...jar, amount: g(900) }, [event('seed', { amount: g(30) })])).toMatchObject({
      amount: { value: 870, unit: 'g' },
      gramsAsMl: false,
    });
  });
  it('is unknown from one unknown amount on, and of an unknown volume', () => {
    for (const what of ['seed', 'kept apart', 'eaten'] as const) {
      expect(whatIsLeft(jar, [event('eaten', { amount: mL(100) }), event(what)])).toMatchObject({
        amount: null,
        none: false,
        unknown: what,
      });
    }
    expect(whatIsLeft({ ...jar, amount: null }, [event('eaten', { amount: mL(1) })])).toMatchObject({
      amount: null,
      unknown: 'volume',
    });
    expect(
      whatIsLeft(jar, [event('seed', { amount: { value: 1e9, unit: 'CFU', typed: null } })]),
    ).toMatchObject({ amount: null, unknown: 'unit' });
  });
  it('is nothing where all was given or discarded, or where it is gone, whatever was unknown before', () => {
    for (const what of ['given', 'discarded', 'gone'] as const) {
      expect(whatIsLeft(jar, [event('eaten'), event(what)])).toMatchObject({
        amount: { value: 0 },
        none: true,
        unknown: null,
      });
    }
    // Of *eaten* no amount means some.
    expect(whatIsLeft(jar, [event('eaten')])).toMatchObject({ amount: null, none: false });
  });
  it('is never below nothing, and nothing is nothing', () => {
    expect(whatIsLeft(jar, [event('eaten', { amount: mL(900) })])).toMatchObject({
      amount: { value: 0 },
      none: true,
    });
    expect(whatIsLeft(jar, [event('eaten', { amount: mL(905) })])).toMatchObject({
      amount: { value: 0 },
      none: true,
    });
  });
  it('is there again, but nobody knows how much, where it is seen after it was said to be gone', () => {
    const left = whatIsLeft(jar, [
      event('gone', { when: '2026-03-05' }),
      event('still there', { when: '2026-03-08' }),
    ]);
    expect(left).toMatchObject({
      amount: null,
      none: false,
      unknown: 'said to be there',
      lastNoted: '2026-03-08',
    });
    // The other way round it went after it was seen.
    expect(
      whatIsLeft(jar, [event('gone', { when: '2026-03-08' }), event('still there', { when: '2026-03-05' })])
        .none,
    ).toBe(true);
  });
});

describe('pieces', () => {
  it('are counted, and turned into mL and back where one piece’s volume is known', () => {
    expect(whatIsLeft(cubes, [event('seed', { pieces: 3 })])).toMatchObject({
      pieces: 9,
      amount: { value: 135 },
    });
    expect(whatIsLeft(cubes, [event('seed', { amount: mL(45) })])).toMatchObject({
      pieces: 9,
      amount: { value: 135 },
    });
    expect(
      whatIsLeft(cubes, [event('seed', { amount: { value: 12, unit: 'pieces', typed: null } })]),
    ).toMatchObject({ pieces: 0, none: true });
  });
  it('of nobody knows how much each are counted all the same', () => {
    const some: Held = { amount: null, pieces: 12, place: 'freezer' };
    expect(whatIsLeft(some, [event('seed', { pieces: 5 })])).toMatchObject({
      pieces: 7,
      amount: null,
      unknown: 'volume',
    });
    expect(whatIsLeft(some, [event('seed', { amount: mL(20) })])).toMatchObject({ pieces: null });
  });
});

describe('where it stands', () => {
  it('is where it was moved last, in the order of days and moments, not of entry', () => {
    expect(whatIsLeft(jar, []).place).toBe('not said');
    const events = [
      event('freezer', { when: '2026-03-09' }),
      event('fridge', { when: '2026-03-05T09:00:00+01:00' }),
      event('opened', { when: '2026-03-06' }),
    ];
    expect(whatIsLeft(jar, events)).toMatchObject({ place: 'freezer', opened: '2026-03-06', thawed: false });
    expect(whatIsLeft(jar, events.toReversed())).toEqual(whatIsLeft(jar, events));
  });
  it('goes by the clock in the night the clocks change', () => {
    // Berlin, 25 October 2026: 02:30 summer time comes an hour before 02:30 winter time.
    const events = [
      event('fridge', { when: '2026-10-25T02:30:00+01:00' }),
      event('freezer', { when: '2026-10-25T02:30:00+02:00' }),
    ];
    expect(whatIsLeft(jar, events).place).toBe('fridge');
  });
  it('of what was thawed is the fridge, and it was frozen', () => {
    expect(whatIsLeft(cubes, [event('thawed')])).toMatchObject({ place: 'fridge', thawed: true });
    expect(whatIsLeft(cubes, [event('fridge')])).toMatchObject({ place: 'fridge', thawed: true });
    expect(whatIsLeft({ ...cubes, place: 'fridge' }, [event('fridge')]).thawed).toBe(false);
  });
  it('opened on no known day is still opened', () => {
    expect(whatIsLeft(jar, [event('opened')]).opened).toBe('not said');
  });
});
