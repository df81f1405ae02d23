// Judgement and advice on ledgers of every odd kind: none may throw, and each says in plain words what it goes by.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Input, Reply } from '../../core/contract';
import type { Session } from '../../main/session';
import { runs } from '../runs';
import { batchOf, fromJar, fromSource, must, newFile, openSession, plainJar, plainSource, unseen } from '../ledger/ledger-files'; // prettier-ignore

const DAY_MS = 86_400_000;
const NOW = '2026-06-01T10:00:00+02:00';
const day = (index: number): string => new Date(Date.parse('2025-11-01') + index * DAY_MS).toISOString().slice(0, 10); // prettier-ignore
type Outcome = typeof unseen | null;
const seen = (more: Partial<typeof unseen>): typeof unseen => ({ ...unseen, ...more });
const start = (): Session => openSession(newFile(), 'create', NOW);

/** A line of one batch every three days; `make` gives each batch's jars their outcomes. */
function line(session: Session, source: string, batches: number, make: (batch: number) => Outcome[], more: Partial<Parameters<typeof batchOf>[2]> = {}, apart = 3): string[][] {
  const made: string[][] = [];
  for (let index = 0; index < batches; index++) {
    const seed = made.at(-1)?.[0];
    const jars = make(index).map((outcome, i) => plainJar('abcdefg'[i] ?? 'x', { seedings: [seed === undefined ? fromSource(source) : fromJar(seed)], outcome }));
    made.push([...must(session, 'batch.record', { ...batchOf(day(index * apart), jars, { sameLabelMeant: true, ...more }), why: 'Some of these seeds are set aside.' }).jars]);
  }
  return made;
} // prettier-ignore

const source = (session: Session, more: Parameters<typeof plainSource>[1] = {}): string =>
  must(session, 'source.save', plainSource('Blue Tin', more)).id;
const linesOf = (session: Session): string[] => must(session, 'family.get', {}).lines.map(({ id }) => id);

const SPOKEN = /^[A-Z0-9].*\.$/s;
const ODD = /NaN|undefined|Infinity|null|p-value/;
/** Words of the workshop, and days that aren't in words: none is for a keeper. */
const WORKSHOP =
  /from memory|lambda|\bprior|running mean|\b1 (days|sets|jars)\b|\d{4}-\d\d-\d\d|was called|\bdraws\b/;
function spoken(sentences: readonly string[]): void {
  for (const text of sentences) {
    expect(text).toMatch(SPOKEN);
    expect(text).not.toMatch(ODD);
    expect(text).not.toMatch(WORKSHOP);
  }
}

/** Every judgement and advice that a ledger can be asked for, each held to plain whole sentences. */
function askAll(session: Session): { lines: Reply<'judgement.line'>[]; restart: Reply<'advice.restart'>; next: Reply<'advice.next'> } {
  const lines = linesOf(session).map((id) => must(session, 'judgement.line', { line: id }));
  for (const { sentence, reasons, batches } of lines) {
    spoken([sentence, ...reasons, ...batches.flatMap(({ leftOut }) => leftOut.map(({ reason }) => reason))]);
  }
  for (const { id } of must(session, 'family.get', {}).jars) {
    const { sentence, reasons, parts, corrections, figures } = must(session, 'judgement.jar', { jar: id });
    spoken([sentence, ...reasons, ...parts.map(({ says }) => says), ...corrections.map(({ says }) => says)]);
    for (const { shown, why } of figures) expect(`${shown} ${JSON.stringify(why)}`).not.toMatch(/NaN|undefined|Infinity/);
  }
  for (const id of linesOf(session)) {
    spoken([must(session, 'advice.next', { line: id }).sentence, must(session, 'advice.restart', { line: id }).sentence]);
  }
  const next = must(session, 'advice.next', {});
  spoken([next.sentence, ...next.warnings, ...next.suggestions, ...next.ranking.flatMap(({ reasons, doubts, wouldChange }) => [...reasons, ...doubts, wouldChange])]);
  const restart = must(session, 'advice.restart', {});
  spoken([restart.sentence, ...restart.assumed]);
  for (const { why } of [next, restart, ...lines]) {
    expect(JSON.stringify(why)).not.toMatch(WORKSHOP);
    expect(JSON.stringify(why)).not.toMatch(/usual (set word|early set|whey)","value":"[\d.]/);
  }
  return { lines, restart, next };
} // prettier-ignore

const standings = (session: Session): string[] => askAll(session).lines.map(({ standing }) => standing);
const firm = (): Outcome[] => [seen({ setWord: 'firm' }), seen({ setWord: 'firm' })];

describe('a ledger of', () => {
  it('nothing at all: a fresh start, and it says that it rests on what is assumed', () => {
    const { next, restart } = askAll(start());
    expect(next).toMatchObject({ nothingMayBeUsed: true, unit: 'jars' });
    expect(restart.sentence).toContain('rests on what is assumed');
    expect(restart.sure).toBe(false);
  });
  it('one batch: too few, and the next to seed from it', () => {
    const session = start();
    line(session, source(session), 1, firm);
    expect(standings(session)).toEqual(['too few batches to say']);
    const { next, restart } = askAll(session);
    expect(restart.sure).toBe(false);
    expect(restart.sentence).toMatch(
      /^It is too early to say when to start afresh: no line of yours has been seen beyond its first batch/,
    );
    expect(next.ranking[0]?.reasons.join(' ')).toContain(
      '(a starting assumption: nothing of yours tells yet)',
    );
  });
  it('many batches of one line: one line may be luck, so no figure is given as known', () => {
    const session = start();
    line(session, source(session), 9, firm);
    const { restart, next } = askAll(session);
    expect(restart.sure).toBe(false);
    expect(JSON.stringify(next.ranking)).not.toContain('a starting assumption');
  });
  it('many batches of one line and one jar of a second: that jar tells nothing of going on', () => {
    const session = start();
    const from = source(session);
    line(session, from, 9, firm, { word: 'Heron' });
    const { sure, sentence } = askAll(session).restart;
    line(session, from, 1, () => [seen({ setWord: 'firm' })], { word: 'Lantern' });
    expect(askAll(session).restart).toMatchObject({ sure, sentence });
    expect(sure).toBe(false);
  });
  it('two lines that have not gone far: what lies beyond is assumed, so no figure is given as known', () => {
    const session = start();
    const from = source(session);
    line(session, from, 5, firm, { word: 'Heron' });
    line(session, from, 5, firm, { word: 'Lantern' });
    const { restart } = askAll(session);
    expect(restart.sure).toBe(false);
    expect(restart.sentence).toContain('no line of yours has gone on long enough to tell');
  });
  it('two lines that were seen to wear: the figure is given, where they wore', () => {
    const session = start();
    const from = source(session);
    const wears = (batch: number): Outcome[] => batch < 7 ? firm() : [seen({ setWord: 'runny' }), seen({ setWord: 'runny' })]; // prettier-ignore
    line(session, from, 10, wears, { word: 'Heron' });
    line(session, from, 10, wears, { word: 'Lantern' });
    const { restart } = askAll(session);
    expect(restart.sure).toBe(true);
    // Where they wore: from there on it is about as good, since a weak jar keeps half its worth.
    expect([6, 7]).toContain(restart.from);
    expect(restart.sentence).toMatch(/^Start afresh after generation \d+; anything from [67]\D/);
  });
  it('28 good jars of one line and as many runny ones of another: neither condemns or excuses the other', () => {
    const session = start();
    const from = source(session);
    line(session, from, 14, firm, { word: 'Heron' });
    line(session, from, 14, (batch) => (batch < 5 ? firm() : [seen({ setWord: 'runny' }), seen({ setWord: 'runny' })]), { word: 'Lantern' }); // prettier-ignore
    const chances = linesOf(session).map((one) => must(session, 'advice.next', { line: one }).ranking.flatMap(({ weakChance }) => weakChance ?? [])); // prettier-ignore
    expect(Math.max(...(chances[0] ?? [1]))).toBeLessThan(0.05);
    expect(Math.min(...(chances[1] ?? [0]).slice(0, 3))).toBeGreaterThan(0.5);
  });
  it('no outcomes: unknown, neither weak nor fine', () => {
    const session = start();
    line(session, source(session), 9, () => [null, null]);
    const [judged] = askAll(session).lines;
    expect(judged).toMatchObject({ standing: 'too few batches to say', comparable: 0 });
    expect(judged?.reasons.join(' ')).toContain('unknown, neither weak nor fine');
  });
  it('spoiled jars alone: nothing may be used', () => {
    const session = start();
    line(session, source(session), 4, () => [seen({ spoiledSaid: true, setWord: 'runny' })]);
    const { lines, next } = askAll(session);
    expect(lines[0]?.standing).toBe('too few batches to say');
    expect(next.nothingMayBeUsed).toBe(true);
  });
  it('forty even batches: steady, with no spread to divide by', () => {
    const session = start();
    line(session, source(session), 40, firm);
    expect(standings(session)).toEqual(['steady']);
  });
  it('batches of one day', () => {
    const session = start();
    line(session, source(session), 8, firm, {}, 0);
    expect(askAll(session).lines[0]?.comparable).toBe(7);
  });
  it('a received culture of unknown past: generations are at least', () => {
    const session = start();
    line(session, source(session, { form: 'culture', receivedFrom: 'a neighbour' }), 7, firm);
    expect(askAll(session).lines[0]?.batches.at(-1)?.generation).toBeGreaterThanOrEqual(7);
  });
  it('scores at both ends: shown within 0 to 100, judged beyond', () => {
    const session = start();
    const words = [{ setWord: 'firm' as const, setAfterHours: 10, setByHours: 12 }, { setWord: 'runny' as const, setAfterHours: 90, setByHours: 120, ph: 6, phHow: 'meter' as const }]; // prettier-ignore
    line(session, source(session), 10, (batch) => [seen(words[batch < 5 ? 0 : 1] ?? {})]);
    const [judged] = askAll(session).lines;
    expect(judged?.batches.every(({ score }) => score === null || (score >= 0 && score <= 100))).toBe(true);
    expect(Math.min(...(judged?.batches ?? []).flatMap(({ points }) => points ?? []))).toBeLessThan(0);
  });
  it('a jar of two lines: it belongs to both and speaks for neither', () => {
    const session = start();
    const from = source(session);
    const [one, two] = ['Heron', 'Lantern'].map((word) => line(session, from, 6, firm, { word }));
    const seedings = [fromJar(one?.at(-1)?.[0] ?? ''), fromJar(two?.at(-1)?.[0] ?? '')];
    const { jars } = must(session, 'batch.record', batchOf(day(40), [plainJar('a', { seedings, outcome: seen({ setWord: 'soft' }) })])); // prettier-ignore
    const { lines } = askAll(session);
    for (const { batches } of lines) expect(batches.at(-1)?.leftOut.map(({ jar }) => jar)).toEqual([jars[0]]);
    expect(must(session, 'judgement.jar', { jar: jars[0] ?? '' }).leftOut).toContain('mixes two lines');
  });
});

describe('the outlook', () => {
  it('says from which generation on fewer lines tell, and is wider there', () => {
    const session = start();
    const from = source(session);
    line(session, from, 4, firm, { word: 'Heron' });
    line(session, from, 4, firm, { word: 'Lantern' });
    line(session, from, 12, firm, { word: 'Wren' });
    const { restart } = askAll(session);
    expect(restart.assumed.join(' ')).toContain('From generation 5 on only 1 of your 3 lines tells.');
    expect(restart.lastSeen).toBe(12);
  });
  it('says nothing of the kind with one line, also where a batch of it was never written up', () => {
    const session = start();
    line(session, source(session), 8, (batch) => (batch === 3 ? [null, null] : firm()));
    expect(askAll(session).restart.assumed.join(' ')).not.toContain('of your');
  });
});

describe('costs', () => {
  const carton = (currency: string, minor: number): Input<'package.save'> => ({
    package: {
      id: null, of: 'milk', source: null, name: `carton in ${currency}`, size: { value: 1000, unit: 'mL', typed: null },
      price: { minor, currency, typed: null }, boughtOn: null, openedOn: null, bestBefore: null, note: null,
    },
  }); // prettier-ignore
  const withMilk = (session: Session, milks: readonly string[]) => {
    const from = source(session);
    let seed: string | undefined;
    milks.forEach((milkPackage, index) => {
      const seedings = [seed === undefined ? fromSource(from) : fromJar(seed)];
      const milkAmount = { value: 900, unit: 'mL' as const, typed: null };
      const jar = plainJar('a', { seedings, milkPackage, milkAmount, outcome: seen({ setWord: 'firm' }) });
      seed = must(session, 'batch.record', batchOf(day(index * 3), [jar])).jars[0];
    });
  };

  it('are in jars where no price is known, and that is said', () => {
    const session = start();
    line(session, source(session), 6, firm);
    const { restart } = askAll(session);
    expect([restart.unit, restart.assumed.join(' ')]).toEqual(['jars', expect.stringContaining('counted in jars')]); // prettier-ignore
  });
  it('are in the currency of the prices, whatever the keeper prefers now', () => {
    const session = start();
    const milk = must(session, 'package.save', carton('CHF', 200)).id;
    withMilk(session, [milk, milk, milk]);
    const { restart } = askAll(session);
    expect(restart.unit).toBe('CHF');
    // 900 of 1000 mL at 2.00: plain arithmetic.
    expect(restart.why.inputs).toContainEqual({ name: 'a jar', value: '1.80 CHF' });
  });
  it('in two currencies are not added: costs are counted in jars, and why is said', () => {
    const session = start();
    const [chf, usd] = ['CHF', 'USD'].map((currency) => must(session, 'package.save', carton(currency, 200)).id); // prettier-ignore
    withMilk(session, [chf ?? '', usd ?? '', chf ?? '']);
    const { restart } = askAll(session);
    expect(restart.unit).toBe('jars');
    expect(restart.assumed.join(' ')).toContain("CHF and USD. They can't be added");
  });
  it('count a currency without minor units whole', () => {
    const session = start();
    const milk = must(session, 'package.save', carton('JPY', 200)).id;
    withMilk(session, [milk, milk]);
    expect(askAll(session).restart.why.inputs).toContainEqual({ name: 'a jar', value: '180.00 JPY' });
  });
});

const anyOutcome = fc.option(
  fc.record({
    setWord: fc.constantFrom(null, 'runny', 'soft', 'spoonable', 'firm', 'very firm'),
    ph: fc.option(fc.double({ min: 2, max: 9, noNaN: true })),
    earlyPh: fc.option(fc.double({ min: 2, max: 9, noNaN: true })),
    earlyCheckHours: fc.option(fc.double({ min: 0, max: 100, noNaN: true })),
    setAfterHours: fc.option(fc.double({ min: 0, max: 20, noNaN: true })),
    setByHours: fc.option(fc.double({ min: 20, max: 200, noNaN: true })),
    whey: fc.constantFrom(null, 'none', 'a little', 'some', 'a lot'),
    earlySet: fc.constantFrom(null, 'loose', 'starting'),
    bubbles: fc.constantFrom(null, 'none', 'fine'),
    powerCut: fc.option(fc.boolean()),
    spoiledSaid: fc.boolean(),
  }),
);

it('no ledger makes judgement or advice throw or speak in anything but sentences (property)', () => {
  fc.assert(
    fc.property(fc.array(fc.array(anyOutcome, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 9 }), fc.nat({ max: 9 }), (batches, apart) => {
      const session = start();
      line(session, source(session), batches.length, (index) => (batches[index] ?? []).map((one) => one && seen(one)), {}, apart);
      askAll(session);
      session.close();
    }),
    { numRuns: runs(13) },
  );
}, 120_000); // prettier-ignore
