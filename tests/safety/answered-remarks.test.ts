// Remarks and their answers, through a real ledger: only the keeper's answer is a fact, and no remark is unheard.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Input } from '../../core/contract';
import type { Session } from '../../main/session';
import { batchOf, fromJar, must, newSession, plainJar, smallFamily, unseen } from '../ledger/ledger-files';
import { runs } from '../runs';

const discardOf = (session: Session, id: string) => must(session, 'jar.get', { id }).view.discard;
const idsOf = (session: Session) => must(session, 'remarks.list', {}).remarks.map(({ id }) => id);

it('counts as discard until it is answered; undone and changed it is unread again', () => {
  const session = newSession();
  const [, jar] = smallFamily(session).jars;
  must(session, 'jar.correct', { id: jar, changes: { note: 'pink streaks' } });
  expect(discardOf(session, jar)).toBe('remark');
  const [id = ''] = idsOf(session);
  const answer = (readAs: 'fine' | 'look' | 'discard' | null) =>
    must(session, 'remarks.answer', { answers: [{ id, readAs }] });
  answer('look');
  const { view, record } = must(session, 'jar.get', { id: jar });
  expect([view.discard, record.safety?.looks]).toEqual([null, ['not noted', 'remark']]);
  answer('discard');
  expect(discardOf(session, jar)).toBe('spoiled');
  must(session, 'act.undo', { act: null });
  expect(discardOf(session, jar)).toBeNull();
  answer('fine');
  expect(idsOf(session)).toEqual([]);
  must(session, 'jar.correct', { id: jar, changes: { note: 'pink streaks, more of them' } });
  expect([discardOf(session, jar), idsOf(session)]).toEqual(['remark', [id]]);
});

it('many are answered in one act, which one undo takes back; what stops a jar is listed first', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const notes = ['pink streaks', 'lovely', 'black mould', 'schön fest'];
  for (const [at, note] of notes.entries())
    must(session, 'jar.correct', { id: jars[at] ?? '', changes: { note } });
  const listed = must(session, 'remarks.list', {});
  expect(listed.remarks.map(({ text, stops }) => [text, stops])).toEqual([
    ['black mould', true], ['pink streaks', true], ['schön fest', false], ['lovely', false],
  ]); // prettier-ignore
  expect([listed.stopping, listed.unread]).toEqual([2, 4]);
  const answers = listed.remarks.map(({ id }) => ({ id, readAs: 'fine' as const }));
  expect(must(session, 'remarks.answer', { answers }).answered).toBe(4);
  expect(jars.map((jar) => discardOf(session, jar))).toEqual([null, null, null, null]);
  must(session, 'act.undo', { act: null });
  expect([discardOf(session, jars[0]), idsOf(session).length]).toEqual(['remark', 4]);
});

it('the form’s answer is kept as an answer, in the act that records the words', () => {
  const session = newSession();
  const [jar] = smallFamily(session).jars;
  const outcome = { ...unseen, colour: 'pink streaks', note: 'raspberries' };
  must(session, 'outcome.save', { jar, outcome, onShelf: null, readAs: 'fine' });
  expect(discardOf(session, jar)).toBeNull();
  const { remarks } = must(session, 'jar.get', { id: jar }).record;
  expect(remarks.map(({ text, readAs }) => [text, readAs])).toEqual([['pink streaks', 'fine'], ['raspberries', null]]);
}); // prettier-ignore

it('a quote is no longer than 200 characters, in any language, and all of it stands with its jar', () => {
  const session = newSession();
  const [jar] = smallFamily(session).jars;
  const note = `とてもおいしい ${'あ'.repeat(400)}`;
  must(session, 'jar.correct', { id: jar, changes: { note, onShelf: true } });
  const entry = must(session, 'advice.next', {}).ranking.find((one) => one.jar === jar);
  const quote = entry?.reasons.find((reason) => reason.startsWith('Its note says: “')) ?? '';
  expect(quote).toMatch(/^Its note says: “とてもおいしい あ+…”\.$/);
  expect(quote.length - 'Its note says: “”.'.length).toBeLessThanOrEqual(200);
  expect(entry?.lines).toContain(quote);
  expect(must(session, 'jar.get', { id: jar }).record.remarks[0]?.text).toBe(note);
});

it('an imported note stops its jar until it is answered, there or afterwards', () => {
  const notes = 'date,jar,seed,notes\n2026-02-01,a,10 capsules Blue Tin,pink streaks\n2026-02-01,b,10 capsules Blue Tin,tasty\n';
  const file = { name: 'notes.csv', bytes: new TextEncoder().encode(notes) };
  const session = newSession();
  const { remarks } = must(session, 'notes.preview', { file });
  expect(remarks?.map(({ id, text, stops }) => [id, text, stops])).toEqual([['remark:2', 'pink streaks', true], ['remark:3', 'tasty', false]]);
  must(session, 'notes.bringIn', { file });
  const [a = '', b = ''] = must(session, 'family.get', {}).jars.map(({ id }) => id);
  // Nothing may be used: its mate is set aside because of it.
  expect([discardOf(session, a), must(session, 'jar.get', { id: b }).view.caution]).toEqual(['remark', 'set aside']);
  const [first] = must(session, 'remarks.list', {}).remarks;
  must(session, 'remarks.answer', { answers: [{ id: first?.id ?? '', readAs: 'fine' }] });
  expect([discardOf(session, a), must(session, 'jar.get', { id: b }).view.caution]).toEqual([null, null]);

  for (const [readAs, discard] of [['fine', null], ['look', null], ['discard', 'spoiled']] as const) {
    const other = newSession();
    must(other, 'notes.bringIn', { file, answers: { 'remark:2': readAs, 'remark:3': 'fine' } });
    const [jar] = must(other, 'family.get', {}).jars;
    expect([readAs, jar?.discard, must(other, 'remarks.list', {}).unread]).toEqual([readAs, discard, 0]);
  }
}); // prettier-ignore

/** Every place a remark can stand, and how it comes there: on the first of two jars of one batch, or about both. */
const PLACES = [
  'jar',
  'batch',
  'hold',
  'portion',
  'seeding',
  'package',
  'texture',
  'smell',
  'colour',
  'note',
] as const;
const words = fc.oneof(
  fc.constantFrom('pink streaks', 'Schimmel', 'lovely', 'no mould', 'foam strip', 'pH 5.2?', 'loose at 12 h, not sour', 'firmed in the fridge', 'liquide', 'かび臭くない', 'يبدو غريبا'),
  fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }).filter((text) => text.trim().length > 0),
); // prettier-ignore

/** Writes a remark on a place. */
function write(session: Session, place: (typeof PLACES)[number], text: string, jar: string, batch: string): void {
  const { holds, jars } = must(session, 'batch.get', { id: batch });
  const seeding = jars.find((one) => one.jar.id === jar)?.seedings[0]?.seeding.id;
  const observed = ['texture', 'smell', 'colour', 'note'].includes(place);
  const pot = { id: null, jar, part: null, place: 'fridge' as const, pieces: null, amount: null, keptOn: '2026-03-14', goneOn: null, reserve: false, note: text };
  if (place === 'portion') must(session, 'portion.save', { portion: pot });
  else if (observed) must(session, 'outcome.save', { jar, outcome: { ...unseen, [place]: text }, onShelf: true });
  else if (place === 'package') {
    const box = { id: null, of: 'addition' as const, source: null, name: 'Oats', size: null, price: null, boughtOn: null, openedOn: null, bestBefore: null, note: text };
    const { id } = must(session, 'package.save', { package: box });
    must(session, 'addition.set', { jar, additions: [{ name: 'oats', planned: null, actual: null, package: id }] });
  } else {
    const about = { jar, batch, hold: holds[0]?.id, seeding }[place as 'jar' | 'batch' | 'hold' | 'seeding'];
    must(session, 'facts.record', { facts: [{ kind: 'remark', [place]: about, text }], why: null } as unknown as Input<'facts.record'>);
  }
} // prettier-ignore

it('no remark is unheard: it stops its jar, or is quoted wherever the jar is offered, until it is answered', { timeout: 180_000 }, () => {
  fc.assert(
    fc.property(fc.constantFrom(...PLACES), words, (place, text) => {
      const session = newSession();
      const [seed] = smallFamily(session).jars;
      const holds = [{ startedAt: null, endedAt: null, hours: 30, planned: null, probe: null, readings: [], note: null }];
      const entry = batchOf('2026-03-12', [plainJar('a', { hold: 0, onShelf: true, seedings: [fromJar(seed)] })], { holds });
      const { batch, jars } = must(session, 'batch.record', entry);
      const [jar = ''] = jars;
      write(session, place, text, jar, batch);
      const { view, record } = must(session, 'jar.get', { id: jar });
      const own = record.remarks.filter((one) => one.readAs === null);
      expect(own.map((one) => one.text)).toEqual([text.trim()]);
      const ranked = must(session, 'advice.next', {}).ranking.find((one) => one.jar === jar && one.portion === null);
      const quoted = ranked?.reasons.some((reason) => reason.includes('says: “'));
      expect(quoted).toBe(true);
      if (view.discard === 'remark') expect(ranked?.allowed).toBe(false);
      else expect(ranked?.lines.some((line) => line.includes('says: “'))).toBe(true);
      const [found] = must(session, 'jar.find', { text: view.label, limit: 5, notAfter: null }).jars;
      expect(found?.quotes).toHaveLength(1);
      must(session, 'remarks.answer', { answers: own.map(({ id }) => ({ id, readAs: 'fine' as const })) });
      expect(must(session, 'jar.get', { id: jar }).view.discard).toBeNull();
      session.close();
    }),
    { numRuns: runs(7) },
  );
}); // prettier-ignore

it('before they come in all remarks are listed, a page at a time, and many are answered with one press', () => {
  const said = (at: number): string => (at % 9 === 4 ? 'pink streaks' : at % 2 === 0 ? 'lovely' : '');
  const rows = Array.from({ length: 60 }, (_, at) => {
    const day = new Date(Date.UTC(2025, 0, 1) + at * 86_400_000).toISOString().slice(0, 10);
    return `${day},a,8 caps Blue Tin,${said(at)}`;
  });
  const file = { name: 'notes.csv', bytes: new TextEncoder().encode(['date,jar,seed,note', ...rows].join('\n')) };
  const session = newSession();
  const page = (from: number, answers: Record<string, string> = {}) => {
    const slice = { from: 0, most: 10 };
    const view = { state: null, rows: slice, assumptions: slice, problems: { most: 10 }, questions: { most: 10 }, remarks: { from, most: 10 } };
    const { remarks = [], pages } = must(session, 'notes.preview', { file, answers, view });
    return { remarks, counts: [pages?.remarks, pages?.telling, pages?.unread.telling, pages?.unread.others] };
  };
  const texts = rows.flatMap((_, at) => said(at) || []);
  const telling = texts.filter((text) => text === 'pink streaks').length;
  const all = [0, 10, 20, 30, 40].flatMap((from) => page(from).remarks);
  expect(all.map(({ text }) => text)).toEqual(texts.toSorted().toReversed());
  expect(page(0).counts).toEqual([texts.length, telling, telling, texts.length - telling]);
  // An answer moves nothing in the list; one for a row goes before one for many.
  const [first, second] = page(0).remarks;
  const answers = { 'remark:suspicious': 'discard', 'remark:others': 'fine', [first?.id ?? '']: 'look' };
  const answered = page(0, answers);
  expect(answered.remarks.map(({ id }) => id)).toEqual(page(0).remarks.map(({ id }) => id));
  expect(answered.remarks.slice(0, 2).map(({ readAs }) => readAs)).toEqual(['look', 'discard']);
  expect(answered.counts).toEqual([texts.length, telling, 0, 0]);
  must(session, 'notes.bringIn', { file, answers });
  expect(idsOf(session)).toEqual([]);
  const inLedger = must(session, 'family.get', {}).jars.filter(({ spoiled }) => spoiled);
  expect(inLedger.length).toBe(telling - 1);
  expect(second?.tells).toBe(true);
  session.close();
}); // prettier-ignore

/** What befell a jar, as it is written: tests/safety/remark-words.test.ts has the words of each language. */
const BEFELL = ['a fly was in it', 'cooler died overnight, about 5 h', 'left on the counter all day'];

it('that all others are fine speaks for no row of which something else is in doubt', () => {
  const rows = ['2026-03-01,Blue Tin capsules,liked by all', '2026-03-02,2026-03-01 a,power cut 3 h in the night', '2026-03-03,2026-03-01 a,maybe a bit fizzy', ...BEFELL.map((text, at) => `2026-03-0${at + 4},2026-03-01 a,"${text}"`)]; // prettier-ignore
  const file = { name: 'notes.csv', bytes: new TextEncoder().encode(['date,seed,note', ...rows].join('\n')) };
  const session = newSession();
  const answers = { 'remark:others': 'fine' };
  const { remarks = [] } = must(session, 'notes.preview', { file, answers });
  const read = Object.fromEntries(remarks.map(({ text, doubted, readAs }) => [text, [doubted, readAs]]));
  expect(read).toEqual({
    'liked by all': [false, 'fine'],
    'power cut 3 h in the night': [true, null],
    'maybe a bit fizzy': [true, null],
    ...Object.fromEntries(BEFELL.map((text) => [text, [true, null]])),
  });
  // What is in doubt stands before the rest.
  expect(remarks.at(-1)?.text).toBe('liked by all');
  must(session, 'notes.bringIn', { file, answers });
  const open = must(session, 'remarks.list', {}).remarks.map(({ text }) => text);
  expect(open.toSorted()).toEqual([...BEFELL, 'maybe a bit fizzy', 'power cut 3 h in the night']);
  // An answer of its own counts.
  const own = remarks.find(({ text }) => text.startsWith('power'));
  const { remarks: answered = [] } = must(session, 'notes.preview', { file: { ...file, name: 'other.csv' }, answers: { ...answers, [own?.id ?? '']: 'look' } }); // prettier-ignore
  expect(answered.find(({ id }) => id === own?.id)?.readAs ?? 'look').toBe('look');
  session.close();
});
