// Rows that changed since they came in, and questions answered later: asked, taken over in one act, never lost.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { contract, type Reply } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { Session } from '../../main/session';

let folder: string;
let session: Session;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'jarline-notes-'));
  session = new Session({
    file: join(folder, 'ledger.sqlite'),
    mode: 'create',
    now: '2026-04-01T09:00:00+02:00',
    timeZone: 'Europe/Berlin',
    version: '0',
  });
});
afterEach(() => {
  session.close();
  rmSync(folder, { recursive: true });
});

type Names = 'notes.bringIn' | 'notes.preview' | 'family.get' | 'jar.get' | 'history.list' | 'act.undo';
function call<N extends Names>(name: N, input: unknown): Reply<N> {
  const result = session.answer(name, contract[name].input.parse(input));
  if (!result.ok) throw new Error(refusalSentence(result.error));
  return contract[name].reply.parse(result.value) as Reply<N>;
}
const file = (text: string, name = 'notes.csv') => ({ name, bytes: new TextEncoder().encode(text) });
const bring = (text: string, answers: Record<string, string> = {}, name = 'notes.csv') =>
  call('notes.bringIn', { file: file(text, name), answers });
const preview = (text: string, answers: Record<string, string> = {}) =>
  call('notes.preview', { file: file(text), answers });
const acts = () => call('history.list', { record: null, before: null, limit: 200 }).acts;
const jarCalled = (madeOn: string) => {
  const found = call('family.get', {}).jars.find((jar) => jar.madeOn === madeOn);
  if (!found) throw new Error(`no jar of ${madeOn}`);
  const { record, hold } = call('jar.get', { id: found.id });
  return { ...found, record, hold };
};

const HEAD = 'Date,Jar,Seed,Amount,Hours,Fibre,Set,pH,Notes\n';
const FIRST = '2026-03-01,a,10 capsules Blue Tin,,36,,firm,,\n';
const SECOND = '2026-03-08,a,2026-03-01 a,3 tbsp,36,2 tbsp oat bran,firm,,\n';
const PINK = '2026-03-08,a,2026-03-01 a,3 tbsp,36,2 tbsp oat bran,firm,,went pink threw it out\n';
const THIRD = '2026-03-15,a,2026-03-08 a,3 tbsp,36,,firm,,\n';
const FOURTH = '2026-03-22,a,2026-03-15 a,3 tbsp,36,,firm,,\n';
const TAKE = { 'changed:3': 'take over' };

describe('a jar that the notes now call spoiled', () => {
  beforeEach(() => {
    bring(HEAD + FIRST + SECOND);
  });

  it('is asked about first and urgently, with choices, and stays as it was while unanswered', () => {
    const before = jarCalled('2026-03-08');
    for (let time = 0; time < 2; time += 1) {
      const reply = bring(HEAD + FIRST + PINK);
      expect([reply.jars, reply.changed]).toEqual([0, 0]);
      const [question] = reply.questions;
      expect(question?.sentence).toMatch(
        /^Row 3: the notes now say that 8 Mar 2026 a spoiled \(pink\)\. The ledger says firm\. Take it over\?$/,
      );
      expect(question).toMatchObject({ id: 'changed:3', row: 3, urgent: true, blocks: false });
      expect(question?.choices.map(({ value }) => value)).toEqual(['take over', 'leave']);
    }
    expect(jarCalled('2026-03-08')).toEqual(before);
    expect(acts().length).toBe(1);
    expect(bring(HEAD + FIRST + PINK, { 'changed:3': 'leave' }).changed).toBe(0);
    expect(acts().length).toBe(1);
    expect(preview(HEAD + FIRST + PINK).questions[0]?.id).toBe('changed:3');
  });

  it('new rows that hang on it come in, and the question says that they would be set aside', () => {
    const reply = bring(HEAD + FIRST + PINK + THIRD + FOURTH);
    expect(reply.jars).toBe(2);
    expect(reply.questions[0]?.sentence).toMatch(/Rows 4 and 5 hang on it and would be set aside\./);
    bring(HEAD + FIRST + PINK + THIRD + FOURTH, TAKE);
    const { jars } = call('family.get', {});
    expect(jars.map(({ cautions }) => cautions.map(({ how }) => how.split(':')[0]))).toEqual([
      ['look'],
      ['condemned'],
      ['set aside'],
      ['set aside'],
    ]);
  });

  it('is spoiled once it is taken over, in the same act as new rows, and is not asked about again', () => {
    expect(preview(HEAD + FIRST + PINK + THIRD, TAKE).rows.map(({ state }) => state)).toEqual([
      'already here',
      'changes',
      'new',
    ]);
    const reply = bring(HEAD + FIRST + PINK + THIRD, TAKE);
    expect([reply.jars, reply.changed]).toEqual([1, 1]);
    expect(reply.questions.filter(({ id }) => id.startsWith('changed'))).toEqual([]);
    expect(acts().length).toBe(2);
    const { record } = jarCalled('2026-03-08');
    expect(record.outcome).toMatchObject({ signs: ['pink'], setWord: 'firm' });
    const again = bring(HEAD + FIRST + PINK + THIRD, TAKE);
    expect([again.jars, again.changed, acts().length]).toEqual([0, 0, 2]);
    expect(bring(HEAD + FIRST + PINK + THIRD).questions.filter(({ id }) => id.startsWith('changed'))).toEqual([]);
  });

  it('is asked about again where the notes go back, and spoilage is never taken back that way', () => {
    bring(HEAD + FIRST + PINK, TAKE);
    const back = bring(HEAD + FIRST + SECOND);
    expect(back.questions.map(({ id, sentence }) => `${id} ${sentence}`)).toEqual([
      expect.stringMatching(/^changed:3 .*spoiled no here, yes in the ledger \(which keeps it\)/),
    ]);
    bring(HEAD + FIRST + SECOND, TAKE);
    expect(jarCalled('2026-03-08').record.outcome?.signs).toEqual(['pink']);
    // And forward: it is there already, so nothing is to be said.
    bring(HEAD + FIRST + PINK, TAKE);
    expect(preview(HEAD + FIRST + PINK).questions).toEqual([]);
  });

  it('undo takes the taking over back, and it is asked again', () => {
    bring(HEAD + FIRST + PINK, TAKE);
    call('act.undo', { act: null });
    expect(jarCalled('2026-03-08').record.outcome?.signs).toEqual([]);
    expect(preview(HEAD + FIRST + PINK).questions[0]?.id).toBe('changed:3');
  });
});

describe('any other changed row', () => {
  it('has the same choices; what it tells is taken over and what it leaves blank is kept', () => {
    bring(HEAD + FIRST + SECOND);
    const changed = `${HEAD}${FIRST}2026-03-08,a,2026-03-01 a,2 tbsp,30,3 tbsp chicory inulin,,4.4,tasted fine\n`;
    const [question] = bring(changed).questions;
    expect(question?.choices.map(({ value }) => value)).toEqual(['take over', 'leave']);
    expect(question?.urgent).toBeUndefined();
    expect(question?.sentence).toMatch(/hours 30 here, 36 in the ledger; set blank here, firm in the ledger \(which keeps it\); pH 4\.4 here/);
    expect(bring(changed, TAKE).changed).toBe(1);
    const { record, hold } = jarCalled('2026-03-08');
    expect(record.outcome).toMatchObject({ setWord: 'firm', ph: 4.4 });
    expect(hold?.hours).toBe(30);
    expect(record.jar.note).toMatch(/tasted fine/);
    expect(record.additions.map(({ name }) => name)).toEqual(['chicory inulin']);
    expect(record.seedings.map(({ seeding: { amount } }) => Math.round(amount?.value ?? 0))).toEqual([30]);
    // The other jar's hold and outcome stay.
    expect(jarCalled('2026-03-01').hold?.hours).toBe(36);
  });

  it('with a problem of its own stays aside until that is mended', () => {
    bring(HEAD + FIRST + SECOND);
    const changed = HEAD + FIRST + PINK.replace('2026-03-01 a', 'the good one');
    const aside = bring(changed, TAKE);
    expect([aside.changed, aside.problems.map(({ row }) => row)]).toEqual([0, [3]]);
    expect(bring(changed, { ...TAKE, 'cell:3:Seed': '2026-03-01 a' }).changed).toBe(1);
    expect(jarCalled('2026-03-08').record.outcome?.signs).toEqual(['pink']);
  });
});

describe('a question that stayed open', () => {
  const FIZZY = `${HEAD}${FIRST}2026-03-08,a,2026-03-01 a,3 tbsp,36,,firm,,fizzy?\n`;

  it('is asked again until it is answered, and the answer changes the jar that is there', () => {
    expect(bring(FIZZY).questions.filter(({ row }) => row !== null).map(({ id }) => id)).toEqual(['bubbles:3']);
    const again = bring(FIZZY);
    expect([again.jars, again.questions.filter(({ row }) => row !== null).map(({ id }) => id), acts().length]).toEqual([0, ['bubbles:3'], 1]);
    const answered = bring(FIZZY, { 'bubbles:3': 'spoiled' });
    expect([answered.changed, answered.questions]).toEqual([1, []]);
    expect(jarCalled('2026-03-08').record.outcome).toMatchObject({ spoiledSaid: true, setWord: 'firm' });
    expect([bring(FIZZY).questions, bring(FIZZY, { 'bubbles:3': 'spoiled' }).changed, acts().length]).toEqual([[], 0, 2]);
  });

  it('answered when the file first came in is not asked again', () => {
    bring(FIZZY, { 'bubbles:3': 'fine' });
    expect(bring(FIZZY).questions).toEqual([]);
    expect(jarCalled('2026-03-08').record.outcome?.spoiledSaid).toBe(false);
  });

  it('about how much of each seed changes those amounts', () => {
    const two = `${HEAD}${FIRST}2026-03-01,b,10 capsules Blue Tin,,36,,firm,,\n2026-03-08,a,2026-03-01 a + 2026-03-01 b,2 tbsp,36,,firm,,\n`;
    bring(two);
    // Metric tablespoons of 15 mL (as in 21 CFR 101.9(b)(5)(viii)): one of each, then two of each.
    const amounts = () => jarCalled('2026-03-08').record.seedings.map(({ seeding: { amount } }) => Math.round((amount?.value ?? 0) * 10) / 10);
    expect(amounts()).toEqual([15, 15]);
    expect(bring(two).questions.filter(({ row }) => row !== null).map(({ id }) => id)).toEqual(['each:4']);
    expect(bring(two, { 'each:4': 'each' }).changed).toBe(1);
    expect(amounts()).toEqual([30, 30]);
  });
});

describe('a changed row of a file without letters', () => {
  const TOP = 'Date,Seed,Amount,Hours,Fibre,Set,pH,Notes\n';
  const START = '2026-03-01,10 capsules Blue Tin,,36,,firm,,\n';
  const OLD = '2026-03-08,2026-03-01,3 tbsp,36,,firm,,\n';
  const EDITED = '2026-03-08,2026-03-01,3 tbsp,30,,firm,4.4,\n';
  const AFTER = '2026-03-15,2026-03-08,3 tbsp,36,,firm,,\n';
  const asked = (reply: { questions: readonly { id: string }[] }) =>
    reply.questions.map(({ id }) => id).filter((id) => id.startsWith('changed'));
  const labels = () =>
    call('family.get', {})
      .jars.map(({ madeOn, letter }) => `${madeOn} ${letter}`)
      .toSorted();

  it('is asked about by its day and place, and nothing is added or changed before it is answered', () => {
    bring(TOP + START + OLD + AFTER);
    const before = jarCalled('2026-03-08');
    for (let time = 0; time < 2; time += 1) {
      const reply = bring(TOP + START + EDITED + AFTER);
      expect([reply.jars, reply.changed, reply.problems]).toEqual([0, 0, []]);
      const [question] = reply.questions;
      expect(question?.id).toBe('changed:3');
      expect(question?.sentence).toMatch(/hours 30 here, 36 in the ledger; pH 4\.4 here, blank in the ledger/);
      expect(question?.sentence).toMatch(/^This row names no letter\. By its day and its place in the file it is 8 Mar 2026 a, and it now differs: .* Is it the same jar, or another one\? Until you say so the ledger stays as it is\.$/);
      expect(question?.choices.map(({ value }) => value)).toEqual(['take over', 'another', 'leave']);
    }
    expect(bring(TOP + START + EDITED + AFTER, { 'changed:3': 'leave' }).jars).toBe(0);
    expect(jarCalled('2026-03-08')).toEqual(before);
    expect([labels(), acts().length]).toEqual([['2026-03-01 a', '2026-03-08 a', '2026-03-15 a'], 1]);
  });

  it('is taken over as the same jar, once, and undone as one act', () => {
    bring(TOP + START + OLD + AFTER);
    const before = jarCalled('2026-03-08').id;
    const reply = bring(TOP + START + EDITED + AFTER, TAKE);
    expect([reply.jars, reply.changed, asked(reply)]).toEqual([0, 1, []]);
    const { id, hold, record } = jarCalled('2026-03-08');
    expect([id, hold?.hours, record.outcome?.ph]).toEqual([before, 30, 4.4]);
    const again = bring(TOP + START + EDITED + AFTER);
    expect([again.jars, again.changed, again.questions]).toEqual([0, 0, []]);
    call('act.undo', { act: null });
    expect(jarCalled('2026-03-08').hold?.hours).toBe(36);
    expect(asked(preview(TOP + START + EDITED + AFTER))).toEqual(['changed:3']);
  });

  it('comes in beside it where it is said to be another jar, and is not asked about again', () => {
    bring(TOP + START + OLD);
    expect(bring(TOP + START + EDITED, { 'changed:3': 'another' }).jars).toBe(1);
    expect(labels()).toEqual(['2026-03-01 a', '2026-03-08 a', '2026-03-08 b']);
    expect(jarCalled('2026-03-08').hold?.hours).toBe(36);
    const again = bring(TOP + START + EDITED);
    expect([again.jars, asked(again)]).toEqual([0, []]);
  });

  it('that now tells of spoilage is asked about first and urgently, and condemns the jar once taken over', () => {
    bring(TOP + START + OLD + AFTER);
    const pink = `${TOP}${START}2026-03-08,2026-03-01,3 tbsp,36,,firm,,went pink threw it out\n${AFTER}2026-03-22,2026-03-15,3 tbsp,36,,firm,,fizzy?\n`;
    const [question] = bring(pink).questions;
    expect(question).toMatchObject({ id: 'changed:3', urgent: true });
    expect(question?.sentence).toMatch(/8 Mar 2026 a spoiled \(pink\)\. The ledger says firm\. Take it over\? Rows 4 and 5 hang on it .* If it is another jar, say so\.$/);
    expect(bring(pink, TAKE).changed).toBe(1);
    const { jars } = call('family.get', {});
    expect(jars.map(({ madeOn, cautions }) => [madeOn, cautions.map(({ how }) => how.split(':')[0])])).toEqual([
      ['2026-03-01', ['look']],
      ['2026-03-08', ['condemned']],
      ['2026-03-15', ['set aside']],
      ['2026-03-22', ['set aside']],
    ]);
  });

  it('written otherwise and told the same is that jar without a word', () => {
    bring(TOP + START + OLD);
    const reply = bring(TOP + START + OLD.replace(',36,', ',36 hours,'));
    expect([reply.jars, asked(reply)]).toEqual([0, []]);
  });

  const PLAIN = '2026-03-08,2026-03-01,3 tbsp,36,,firm,,\n';
  const OATS = '2026-03-08,2026-03-01,3 tbsp,36,2 tbsp oat bran,runny,4.4,\n';
  const INULIN = '2026-03-08,2026-03-01,3 tbsp,36,2 tbsp inulin,firm,,\n';
  const ACACIA = '2026-03-08,2026-03-01,3 tbsp,36,2 tbsp acacia fibre,firm,,\n';
  const SOFT_OATS = OATS.replace('runny', 'soft');

  it.each([
    ['with a row added below', PLAIN + SOFT_OATS + INULIN + ACACIA, 4],
    ['with a row put in above', ACACIA + PLAIN + SOFT_OATS + INULIN, 5],
    ['with a row put in just above', PLAIN + ACACIA + SOFT_OATS + INULIN, 5],
    ['moved to the end', PLAIN + INULIN + ACACIA + SOFT_OATS, 6],
  ])('of several of one day is known %s', (_, rows, line) => {
    bring(TOP + START + PLAIN + OATS + INULIN);
    const reply = bring(TOP + START + rows);
    expect([reply.jars, asked(reply)]).toEqual([1, [`changed:${line}`]]);
    expect(reply.questions.find(({ id }) => id === `changed:${line}`)?.sentence).toMatch(/ it is 8 Mar 2026 b, and it now differs: set soft here, runny in the ledger\./);
    expect(bring(TOP + START + rows, { [`changed:${line}`]: 'take over' }).changed).toBe(1);
    expect(labels()).toEqual(['2026-03-01 a', '2026-03-08 a', '2026-03-08 b', '2026-03-08 c', '2026-03-08 d']);
  });

  it('is asked about where two of a day changed, each as the jar it was', () => {
    bring(TOP + START + PLAIN + OATS + INULIN);
    const reply = bring(TOP + START + PLAIN.replace('firm', 'very firm') + SOFT_OATS + INULIN);
    expect([reply.jars, asked(reply)]).toEqual([0, ['changed:3', 'changed:4']]);
    expect(reply.questions.map(({ sentence }) => /8 Mar 2026 ./.exec(sentence)?.[0])).toEqual(['8 Mar 2026 a', '8 Mar 2026 b']);
  });

  it('asks about the next row of the day where the first is said to be another jar', () => {
    bring(TOP + START + PLAIN);
    const rows = TOP + START + PLAIN.replace('36', '30') + PLAIN.replace('36', '31');
    expect(asked(preview(rows))).toEqual(['changed:3']);
    expect(asked(preview(rows, { 'changed:3': 'another' }))).toEqual(['changed:4']);
  });

  it('names the cells that differ where nothing that is compared does', () => {
    bring(TOP + START + PLAIN);
    const reply = bring(TOP + START + PLAIN.replace('3 tbsp', '2 tbsp'));
    expect(asked(reply)).toEqual(['changed:3']);
    expect(reply.questions[0]?.sentence).toMatch(/now differs: “Amount” “2 tbsp” here, “3 tbsp” when it came in\./);
  });

  it('is known in a file of another name too, by the rows that did not change', () => {
    bring(TOP + START + OLD);
    expect(asked(bring(TOP + START + EDITED, {}, 'notes, second try.csv'))).toEqual(['changed:3']);
  });

  it('is not looked for in another file, nor where every row is still there', () => {
    bring(TOP + START + OLD);
    const other = bring(TOP + EDITED.replace('2026-03-01', '10 capsules Meadow Pot'), {}, 'other line.csv');
    expect([other.jars, asked(other)]).toEqual([1, []]);
    const more = bring(TOP + START + OLD + EDITED);
    expect([more.jars, asked(more)]).toEqual([1, []]);
  });
}); // prettier-ignore
