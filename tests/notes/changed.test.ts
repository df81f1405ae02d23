// Rows that changed since they came in, and questions answered later: asked, taken over in one act, never lost.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { contract, type Reply } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { Session } from '../../main/ledger/session';

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
const file = (text: string) => ({ name: 'notes.csv', bytes: new TextEncoder().encode(text) });
const bring = (text: string, answers: Record<string, string> = {}) =>
  call('notes.bringIn', { file: file(text), answers });
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

  it('new rows that hang on it come in, and the question says that they would be on hold', () => {
    const reply = bring(HEAD + FIRST + PINK + THIRD + FOURTH);
    expect(reply.jars).toBe(2);
    expect(reply.questions[0]?.sentence).toMatch(/Rows 4 and 5 hang on it and would be on hold\./);
    bring(HEAD + FIRST + PINK + THIRD + FOURTH, TAKE);
    const { jars } = call('family.get', {});
    expect(jars.map(({ cautions }) => cautions.map(({ how }) => how.split(':')[0]))).toEqual([
      ['look'],
      ['condemned'],
      ['on hold'],
      ['on hold'],
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
    // US tablespoons of 14.787 mL (NIST Handbook 44, appendix C): one of each, then two of each.
    const amounts = () => jarCalled('2026-03-08').record.seedings.map(({ seeding: { amount } }) => Math.round((amount?.value ?? 0) * 10) / 10);
    expect(amounts()).toEqual([14.8, 14.8]);
    expect(bring(two).questions.filter(({ row }) => row !== null).map(({ id }) => id)).toEqual(['each:4']);
    expect(bring(two, { 'each:4': 'each' }).changed).toBe(1);
    expect(amounts()).toEqual([29.6, 29.6]);
  });
});
