// What else than the culture may be behind a fall, named with its figures; and a line that is not weaker but changed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chancesBy } from '../../core/advice/chances';
import { lineTold } from '../../core/advice/line-told';
import { seededRandom } from '../../core/advice/random';
import { restartOf } from '../../core/advice/restart-curve';
import { constantProfile } from '../../core/growth/warm-hours';
import { blameSays, suspectSays } from '../../core/says/suspects-says';
import { changedIn } from '../../core/vigour/changed';
import { MADE_AS_EVER } from '../../core/vigour/evidence';
import { judgeLine, keepersUsual, type LineJudgement } from '../../core/vigour/line';
import type { JarEvidence, Made, Seen } from '../../core/vigour/jar-evidence';
import { runs } from '../runs';

const NOTHING: Seen = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, setAfterHours: null, setByHours: null, setWord: null,
  whey: null, ph: null, phHow: null, tang: null,
}; // prettier-ignore
interface Batch {
  readonly seen: Partial<Seen>;
  readonly made?: Partial<Made>;
  /** Hours and °C of its hold, where readings tell. */
  readonly held?: readonly [hours: number, celsius: number];
  /** Hours of it where nothing tells how warm it was. */
  readonly hours?: number;
}
/** A line of two jars a batch, ten days apart, batch 1 the founding one. */
function lineOf(batches: number, of: (batch: number) => Batch): LineJudgement {
  const jars = Array.from({ length: 2 * batches }, (_, i): JarEvidence => {
    const batch = 1 + Math.floor(i / 2);
    const { seen, made, held, hours = 36 } = of(batch);
    return {
      key: i + 1, label: `jar ${i}`, madeOn: new Date(Date.parse('2026-01-02') + (batch - 1) * 864e6).toISOString().slice(0, 10), batch,
      hold: batch, lines: [1], mixes: false, generation: batch, founding: batch === 1, spoiled: false, spoiledUnopened: false, held: null,
      outcome: { ...NOTHING, ...seen }, additions: [], milk: null, made: { ...MADE_AS_EVER, seedMl: null, ...made }, seed: `jar ${batch - 1}`,
      seedBatch: batch === 1 ? null : batch - 1, profile: held ? constantProfile(...held) : null, warmth: null, heldHours: held?.[0] ?? hours, seedStorage: null,
    };
  }); // prettier-ignore
  return judgeLine(1, jars, keepersUsual([1], jars), 1);
}
const softFrom = (from: number) => (batch: number) => ({ setWord: batch < from ? ('firm' as const) : ('soft' as const) }); // prettier-ignore
const says = (line: LineJudgement): string => line.suspects.map(suspectSays).join(' ');

describe('a fall that came with what was written down', () => {
  const costs = { freshStart: 6, jarsPerGeneration: 3, jar: 1, weakKeeps: 0.5, unplanned: 3 };
  const advised = (judged: LineJudgement) => {
    const told = lineTold(judged);
    const chances = chancesBy([told], 30, 40, seededRandom(1));
    return { weak: told.weak.at(-1) ?? 0, cost: restartOf(costs, chances, 0)?.curve[13]?.cost ?? 0 };
  };
  const plain = advised(lineOf(14, (batch) => ({ seen: softFrom(8)(batch) })));
  it.each<[string, (batch: number) => Omit<Batch, 'seen'>]>([
    ['another dose', (batch) => ({ made: { dose: { value: batch < 8 ? 20 : 60, unit: 'g' } } })],
    ['less seed', (batch) => ({ made: { seedMl: batch < 8 ? 45 : 5 } })],
    ['a cool hold', (batch) => ({ held: [36, batch < 8 ? 38 : 31] })],
    ['a short hold', (batch) => ({ held: [batch < 8 ? 36 : 12, 38] })],
  ])('of %s makes weak jars less likely by generation, and going on cheaper, than with nothing written down', (_, more) => {
    const { weak, cost } = advised(lineOf(14, (batch) => ({ seen: softFrom(8)(batch), ...more(batch) })));
    expect(weak).toBeLessThan(0.7 * plain.weak);
    expect(cost).toBeLessThan(plain.cost);
  });
}); // prettier-ignore

describe('what changed with a fall', () => {
  const made = (before: Partial<Made>, now: Partial<Made>, from = 8, batches = 14): LineJudgement =>
    lineOf(batches, (batch) => ({ seen: softFrom(8)(batch), made: batch < from ? before : now }));

  it.each<[string, Partial<Made>, Partial<Made>, string]>([
    ['seed amount', { seedMl: 45 }, { seedMl: 5 }, 'Since 13 Mar 2026 it was made with 5 mL of seed instead of 45,'],
    ['dose', { dose: { value: 20, unit: 'g' } }, { dose: { value: 60, unit: 'g' } }, '60 g stirred in instead of 20'],
    ['seed part', { seedPart: 'curd' }, { seedPart: 'whey' }, 'whey as seed instead of curd'],
    ['whey where nothing was noted', {}, { seedPart: 'whey' }, 'whey as seed,'],
    ['vessel', { vessel: 'quart jar' }, { vessel: 'small pot' }, '“small pot” as vessel instead of “quart jar”'],
    ['carton', { carton: 1 }, { carton: 2 }, 'milk from another carton'],
  ])('names another %s with its figures, and does not put the fall down to the culture alone', (_, before, now, words) => {
    expect(says(made(before, now))).toContain(words);
    expect(made(before, now).look?.fallen).toBeLessThan(made(before, before).look?.fallen ?? 0);
  }); // prettier-ignore

  it.each<[string, (batch: number) => Omit<Batch, 'seen'>, string]>([
    ['held 24 h instead of 36', (batch) => ({ hours: batch < 11 ? 36 : 24 }), 'a hold of 24 h instead of 36'],
    ['given half the fibre', (batch) => ({ made: { dose: { value: batch < 11 ? 40 : 20, unit: 'g' } } }), '20 g stirred in instead of 40'],
  ])('does not condemn a line whose last jars were %s', (_, more, words) => {
    const spoonable = (batch: number) => ({ setWord: batch < 11 ? ('very firm' as const) : ('spoonable' as const) });
    const plain = lineOf(14, (batch) => ({ seen: spoonable(batch) }));
    const line = lineOf(14, (batch) => ({ seen: spoonable(batch), ...more(batch) }));
    expect(['slipping', 'worn out']).toContain(plain.standing);
    expect(['steady', 'no slip seen']).toContain(line.standing);
    expect(says(line)).toContain(words);
    // Not even the chances by generation take it for the culture's.
    expect(lineTold(line).weak.at(-1) ?? 1).toBeLessThanOrEqual(lineTold(plain).weak.at(-1) ?? 0);
  }); // prettier-ignore

  it('names all that came together, and nothing that came apart from the fall, or that went again', () => {
    const both = made({ seedMl: 45, vessel: 'a' }, { seedMl: 15, vessel: 'b' });
    expect(says(both)).toContain('15 mL of seed instead of 45 and “b” as vessel instead of “a”');
    const early = lineOf(14, (batch) => ({
      seen: softFrom(11)(batch),
      made: { seedMl: batch < 4 ? 45 : 5 },
    }));
    expect(says(early)).not.toContain('instead of');
    const back = lineOf(14, (batch) => ({ seen: softFrom(8)(batch), made: { seedMl: batch === 8 ? 5 : 45 } })); // prettier-ignore
    expect(says(back)).not.toContain('instead of');
  });

  it('is another amount of seed only beyond what recipes differ by: two to three spoons a quart (common practice, no source)', () => {
    const spoon = 15;
    const said = (before: number, now: number): string =>
      says(made({ seedMl: before * spoon }, { seedMl: now * spoon }));
    expect(said(3, 2.1)).not.toContain('of seed instead');
    expect(said(3, 1.9)).toContain('of seed instead');
    expect(said(2, 2.9)).not.toContain('of seed instead');
    expect(said(2, 3.2)).toContain('of seed instead');
  });

  it('is none where batches stand as near as jars of one batch differ twice over, and one beyond that', () => {
    const by = (ph: number): string =>
      says(lineOf(14, (batch) => ({ seen: { ph: batch < 8 ? 4.35 : 4.35 + ph, phHow: 'meter' }, made: { seedMl: batch < 8 ? 45 : 5 } })));
    // A hundredth of a pH is a point: 4 is what jars of one batch differ by.
    expect(by(0.05)).not.toContain('instead of');
    expect(by(0.12)).toContain('5 mL of seed instead of 45');
  }); // prettier-ignore

  it('is no suspect of a line that did not fall, whatever changed (property)', () => {
    const amounts = fc.constantFrom(5, 15, 45, 90);
    fc.assert(
      fc.property(fc.array(amounts, { minLength: 14, maxLength: 14 }), (seedMl) => {
        const line = lineOf(14, (batch) => ({ seen: { setWord: 'firm' }, made: { seedMl: seedMl[batch - 1] ?? 45 } })); // prettier-ignore
        expect(line.suspects).toEqual([]);
      }),
      { numRuns: runs(10) },
    );
  });
});

describe('what a fall most likely comes from, in one sentence', () => {
  it('is what came with it, which can’t be told from the culture; else the culture itself, or what nobody noted', () => {
    const changed = blameSays(['5 mL of seed instead of 45']);
    expect(changed).toBe("Most likely 5 mL of seed instead of 45; can't be told from the culture without one jar as before.");
    expect(blameSays([])).toMatch(/^Most likely from the culture itself, or from what nobody noted/);
    for (const said of [changed, blameSays([])]) expect(said.split(' ').length).toBeLessThanOrEqual(20);
  });
}); // prettier-ignore

describe('a line that changed', () => {
  const setIn = (hours: number): Partial<Seen> => ({ setWord: 'firm', setAfterHours: hours - 1, setByHours: hours + 1 }); // prettier-ignore
  const tasting = (from: number, before: Seen['tang'], now: Seen['tang']) =>
    changedIn(lineOf(9, (batch) => ({ seen: { setWord: 'firm', tang: batch < from ? before : now } })));

  // A takeover by a faster culture: set time 30 to 60 % shorter (common practice, no source).
  it('sets in half its time', () => {
    const from = (batch: number) => changedIn(lineOf(9, (one) => ({ seen: setIn(one < batch ? 12 : 6) })));
    expect(from(8)).toEqual({ code: 'changed', hours: 6, usual: 12 });
    expect(from(9)).toBeNull();
    expect(changedIn(lineOf(9, (one) => ({ seen: setIn(one < 8 ? 12 : 10) })))).toBeNull();
    // A third faster is what a warm night does; more than two fifths is not (a takeover takes 30 to 60 % off, common practice).
    const latest = (hours: number) =>
      changedIn(lineOf(9, (one) => ({ seen: setIn(one < 8 ? 12 : hours) })))?.code ?? null;
    expect([8, 7].map(latest)).toEqual([null, 'changed']);
  });

  it('or tastes otherwise in two batches in a row, by two steps of tang, either way', () => {
    expect(tasting(8, 'mild', 'sharp')).toEqual({ code: 'tastes changed', tang: 'sharp', usual: 'mild' });
    expect(tasting(8, 'clear', 'none')).toEqual({ code: 'tastes changed', tang: 'none', usual: 'clear' });
    expect(tasting(9, 'mild', 'sharp')).toBeNull();
    expect(tasting(8, 'mild', 'clear')).toBeNull();
    expect(tasting(8, null, 'sharp')).toBeNull();
    // Four batches tell what is usual before two can be otherwise (as many as make a line's early level).
    const of = (batches: number) =>
      changedIn(
        lineOf(batches, (batch) => ({
          seen: { setWord: 'firm', tang: batch < batches - 1 ? 'mild' : 'sharp' },
        })),
      );
    expect([6, 7].map((batches) => of(batches)?.code ?? null)).toEqual([null, 'tastes changed']);
  });
});
