// The kitchen notes, brought in and judged: what a keeper would read out of them. Invented notes; no truth file says this.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { must, newFile, openSession } from '../ledger/ledger-files';

const session = openSession(newFile(), 'create', '2026-03-20T10:00:00+01:00');
const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, '../notes/kitchen-notes.csv')));
must(session, 'notes.bringIn', { file: { name: 'kitchen-notes.csv', bytes } });
const { jars, lines } = must(session, 'family.get', {});
const judged = lines.map(({ id }) => must(session, 'judgement.line', { line: id }));

describe('the kitchen notes', () => {
  it('have a first line that slips: very firm and firm at first, spoonable at the end', () => {
    expect(['slipping', 'worn out']).toContain(judged[0]?.standing);
    expect(judged[0]!.slope!).toBeLessThan(-2);
    expect(judged[0]!.sentence).toMatch(
      /it loses about \d\.\d points with each generation .* below its early batches\.$/,
    );
  });
  it('have it called only on its last batch: what came before was neither steady enough nor bad enough', () => {
    const called = judged[0]?.batches.find(({ batch }) => batch === judged[0]?.calledAt);
    expect(called?.madeOn).toBe('2025-12-12');
    expect(judged[0]?.batches.slice(0, -1).every(({ standing }) => standing !== 'steady')).toBe(true);
  });
  it('do not take the soft jar held at 93 °F for a sign of the culture', () => {
    expect(judged[0]?.suspects.join(' ')).toContain('7 Dec 2025');
    const soft = jars.find(({ madeOn }) => madeOn === '2025-12-07');
    expect(must(session, 'judgement.jar', { jar: soft!.id }).leftOut).toContain('ran cool: 33.9 °C');
  });
  it('have a second line of which no slip is seen, and too short to be called steady', () => {
    expect(judged[1]?.standing).toBe('no slip seen');
    expect(judged[1]?.sentence).toContain("can't be ruled out yet");
  });
  it('leave nothing young enough to seed from in late March: a fresh start is offered', () => {
    const advice = must(session, 'advice.next', {});
    expect(advice.nothingMayBeUsed).toBe(true);
    expect(advice.ranking.filter(({ allowed }) => allowed).map(({ kind }) => kind)).toEqual(['fresh start']);
    // Made 45 days ago, and then a day and a half in warmth: days in the fridge count from the end of its hold.
    expect(advice.ranking[1]?.stops[0]?.says).toBe(
      'It has stood in the fridge for 44 days; the limit is 21 (Preferences).',
    );
  });
  it('in early February recommend no jar whose line runs through a set-aside jar without saying so', () => {
    const then = openSession(newFile(), 'create', '2026-02-05T09:00:00+01:00');
    must(then, 'notes.bringIn', { file: { name: 'kitchen-notes.csv', bytes } });
    const kept = must(then, 'family.get', {}).jars;
    const made = (madeOn: string, letter: string) =>
      kept.find((one) => one.madeOn === madeOn && one.letter === letter)!.id;
    const descendant = made('2026-01-25', 'a');
    // 4 Jan a is spoiled; c is its batch-mate set aside; 25 Jan a comes from c.
    const advice = must(then, 'advice.next', {});
    const place = advice.ranking.findIndex(({ jar }) => jar === descendant);
    expect(advice.ranking[place]).toMatchObject({ allowed: true, stops: [] });
    // What descends from a set-aside mate, and not from the spoiled jar, is *look*: never stopped, never without the word.
    const look = 'Look at it first: it descends from a jar of the same batch as the spoiled jar 4 Jan a.';
    expect(advice.ranking[place]).toMatchObject({ level: 'look' });
    expect(advice.ranking[place]?.reasons[0]).toBe(look);
    expect(advice.sentence).toContain(look);
    expect(must(then, 'judgement.jar', { jar: descendant }).descendsFromHeld).toContain('4 Jan c');
    expect(must(then, 'judgement.jar', { jar: made('2026-01-04', 'c') }).descendsFromHeld).toBeNull();
    // Once the caution is lifted in writing nothing stands against it.
    must(then, 'caution.clear', {
      jar: made('2026-01-04', 'c'),
      of: made('2026-01-04', 'a'),
      reason: 'opened and tasted',
    });
    expect(must(then, 'judgement.jar', { jar: descendant }).descendsFromHeld).toBeNull();
  });
  it('leave it open when to start afresh: two lines of 8 and 4 generations, none weak, tell of no end', () => {
    const { sentence, sure, unit, assumed } = must(session, 'advice.restart', {});
    expect(sure).toBe(false);
    expect(sentence).toMatch(
      /^It is too early to say when to start afresh: .* any generation from \d+ on would be about as good\.$/,
    );
    expect([unit, assumed.join(' ')]).toEqual([
      'jars',
      expect.stringContaining('only 1 of your 2 lines tells'),
    ]);
  });
  it('give a jar its hours first, and how warm they were with a band', () => {
    const firm = jars.find(({ madeOn }) => madeOn === '2025-10-28');
    const { figures } = must(session, 'judgement.jar', { jar: firm!.id });
    expect(figures.slice(0, 2).map(({ name }) => name)).toEqual(['hours held', 'warm hours']);
    expect(figures[1]?.shown).toMatch(/^\d\d\.\d h \(\d\d\.\d to \d\d\.\d\)$/);
  });
});
