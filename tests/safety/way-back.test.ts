// What the way back of a seed says of it, and notes beside an outcome, through a real ledger. Common practice, no source:
// when in doubt, discard, and doubt is handed down with the seed.
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../core/contract';
import { FLAG } from '../../core/shapes/drawing-flags';
import type { Session } from '../../main/session';
import { batchOf, FIRM, fromJar, fromSource, must, newFile, openSession, plainJar, plainSource, refusalOf, unseen } from '../ledger/ledger-files'; // prettier-ignore

type Jar = NonNullable<Parameters<typeof plainJar>[1]>;
const HOLD = { startedAt: null, endedAt: null, hours: 30, planned: null, probe: null, readings: [], note: null }; // prettier-ignore
const kept = { onShelf: true, outcome: FIRM };

const make = (session: Session, day: string, jars: Jar[], more: Parameters<typeof batchOf>[2] = {}) =>
  must(session, 'batch.record', {
    ...batchOf(day, jars.map((jar, i) => plainJar('abc'[i] ?? 'x', { hold: i, ...jar })), { holds: jars.map(() => HOLD), ...more }),
    why: 'Seeds of any kind, for the test.',
  }); // prettier-ignore
const ranked = (session: Session): Reply<'advice.next'>['ranking'] =>
  must(session, 'advice.next', {}).ranking;
const of = (session: Session, label: string): Reply<'advice.next'>['ranking'][number] => {
  const found = ranked(session).find((one) => one.label === label);
  if (!found) throw new Error(`${label} is not ranked`);
  return found;
};

/** Two parents from one source, a as given and b clean, and a firm child of each; the parents are gone. */
function pair(parent: Partial<typeof unseen>, more: Jar = {}) {
  const session = openSession(newFile(), 'create', '2026-05-20T10:00:00+02:00');
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const seedings = [fromSource(source)];
  const one = { seedings, onShelf: false, outcome: FIRM };
  const parents = make(session, '2026-05-06', [{ ...one, ...more, outcome: { ...FIRM, ...parent } }, one]);
  const [a = '', b = ''] = parents.jars;
  const children = make(session, '2026-05-12', [{ ...kept, seedings: [fromJar(a)] }, { ...kept, seedings: [fromJar(b)] }]); // prettier-ignore
  return { session, source, a, b, children: children.jars, batch: children.batch };
}

describe('a jar in doubt on the way back', () => {
  it.each([
    ['a power cut', { powerCut: true, powerCutHours: 9 }, 'a power cut during its hold, for 9 hours'],
    ['a slow start', { earlySet: 'loose' as const }, 'a slow start'],
    ['a pH above 4.6', { ph: 4.9 }, 'a pH of 4.9 by meter, above 4.6'],
    ['a pH above 4.6 with nothing of set', { ph: 4.9, setAtTakeOut: null, setWord: null }, 'a pH of 4.9 by meter, above 4.6'],
  ])('by %s is to be read before its child is used, which comes after a clean one', (_what, parent, because) => {
    const { session, children } = pair(parent);
    const look = `It descends from 6 May a, which is in doubt (${because}). Look and smell first, and when in doubt, discard.`;
    expect(must(session, 'advice.next', {}).sentence).toBe('Seed the next batch from 12 May b.');
    expect(of(session, '12 May a')).toMatchObject({ allowed: true, doubts: [], looks: [look] });
    // At any depth, and beside the seed field.
    make(session, '2026-05-17', [{ ...kept, seedings: [fromJar(children[0] ?? '')] }]);
    expect(of(session, '17 May a').looks).toEqual([look]);
    expect(must(session, 'judgement.jar', { jar: children[0] ?? '' }).asSeed).toEqual([look]);
  }); // prettier-ignore
  it('stands against the newest jar in the verdict, with the jar at its root', () => {
    const { session, children, a } = pair({ earlySet: 'loose' });
    must(session, 'jar.correct', { id: children[1] ?? '', changes: { onShelf: false } });
    const [line] = must(session, 'line.list', { jar: children[0] ?? '' }).lines;
    const { sentence, against } = must(session, 'advice.line', { line: line?.id ?? '' });
    expect(against).toEqual({
      jar: children[0],
      label: '12 May a',
      says: '12 May a: it descends from 6 May a, which is in doubt (a slow start).',
      root: { jar: a, label: '6 May a' },
    });
    expect(sentence).toContain('12 May a');
  });
  it('is said in the sentence where nothing else is kept', () => {
    const { session, children } = pair({ powerCut: true });
    must(session, 'jar.correct', { id: children[1] ?? '', changes: { onShelf: false } });
    expect(must(session, 'advice.next', {}).sentence).toMatch(/^Seed the next batch from 12 May a\. It descends from 6 May a, .*discard\.$/); // prettier-ignore
  });
  it('by fine bubbles alone hands nothing down', () => {
    expect(of(pair({ bubbles: 'fine' }).session, '12 May a').looks).toEqual([]);
  });
});

it('a lifted hold is said of the jar with its reason, puts it after a clean one, and is said of what descends from it', () => {
  const { session, a, children } = pair({});
  const [child = ''] = children;
  must(session, 'outcome.save', { jar: a, outcome: { ...FIRM, signs: ['fuzz'], seenAt: 'after opening', openedDays: 9 }, onShelf: false }); // prettier-ignore
  must(session, 'caution.clear', { jar: child, of: a, reason: 'Probably just lint.' });
  expect(ranked(session)[0]?.label).toBe('12 May b');
  expect(of(session, '12 May a').looks).toEqual([
    'It was set aside because of 6 May a; lifted: “Probably just lint.” Look and smell first, and when in doubt, discard.',
  ]);
});

describe('notes beside an outcome', () => {
  const discards = (session: Session, jars: readonly string[]) =>
    jars.map((id) => must(session, 'jar.get', { id }).view.discard);
  it('with a plain word of spoilage stop the jar, and what they are about, until they are answered', () => {
    const { session, children, batch, a } = pair({});
    const [one = '', other = ''] = children;
    must(session, 'jar.correct', { id: one, changes: { note: 'pink mould on rim' } });
    expect(discards(session, children)).toEqual(['remark', null]);
    expect(of(session, '12 May a')).toMatchObject({
      allowed: false,
      stops: [{ code: 'condemned' }, { code: 'remark' }],
    });
    expect(of(session, '12 May a').reasons).toContain('Its note says: “pink mould on rim”.');
    expect(of(session, '12 May a').stops.at(-1)?.says).toContain('“pink mould on rim”');
    const reserve = { id: null, part: null, place: 'freezer' as const, pieces: 4, amount: null, keptOn: '2026-05-14', goneOn: null, reserve: true, note: null }; // prettier-ignore
    expect(refusalOf(session, 'portion.save', { portion: { ...reserve, jar: one } }).sentence).toContain(
      '“pink mould on rim”',
    );
    const [remark] = must(session, 'remarks.list', {}).remarks;
    must(session, 'remarks.answer', { answers: [{ id: remark?.id ?? '', readAs: 'fine' }] });
    expect(discards(session, children)).toEqual([null, null]);

    const pot = { id: null, part: null, place: 'fridge' as const, pieces: null, amount: null, keptOn: '2026-05-14', goneOn: null, reserve: false }; // prettier-ignore
    must(session, 'portion.save', { portion: { ...pot, jar: other, note: 'pink spots on the pot' } });
    expect(discards(session, children)).toEqual([null, 'remark']);
    must(session, 'act.undo', { act: null });

    must(session, 'batch.correct', { id: batch, changes: { note: 'jar a had orange mould' } });
    expect(discards(session, children)).toEqual(['remark', 'remark']);
    expect(must(session, 'remarks.list', {}).remarks[0]).toMatchObject({
      of: 'batch',
      about: 2,
      stops: true,
    });
    must(session, 'act.undo', { act: null });

    must(session, 'jar.correct', { id: a, changes: { note: 'roch faulig' } });
    expect(must(session, 'jar.get', { id: one }).view.caution).toBe('set aside');
    must(session, 'act.undo', { act: null });

    const [hold] = must(session, 'batch.get', { id: batch }).holds;
    must(session, 'hold.correct', { id: hold?.id ?? '', changes: { note: 'power was off all night' } });
    expect(of(session, '12 May a').doubts).toEqual([expect.stringMatching(/^The power failed .* The note of its hold tells of it\.$/)]); // prettier-ignore
    expect(of(session, '12 May b').doubts).toEqual([]);
  });
});

it('a power cut is read in any note, and handed down', () => {
  const { session, children, batch } = pair({});
  const [a = '', b = ''] = children;
  make(session, '2026-05-16', [{ ...kept, seedings: [fromJar(a)] }]);
  const cut = 'power cut 9 h, milk still liquid';
  must(session, 'batch.correct', { id: batch, changes: { note: cut } });
  for (const label of ['12 May a', '12 May b'])
    expect(of(session, label).doubts).toEqual([expect.stringMatching(/^The power failed .* The note of its batch tells of it\.$/)]);
  expect(of(session, '16 May a').looks).toEqual([expect.stringContaining('a power cut during its hold')]);
  must(session, 'batch.correct', { id: batch, changes: { note: null } });
  must(session, 'jar.correct', { id: b, changes: { note: cut } });
  expect(of(session, '12 May a').doubts).toEqual([]);
  expect(of(session, '12 May b').doubts).toEqual([expect.stringMatching(/^The power failed .* Its note tells of it\.$/)]);
}); // prettier-ignore

describe('a jar that may still be in its hold', () => {
  it('is no seed, nor what was kept apart of it, until its hold has ended, whatever is said of it before', () => {
    const { session, children } = pair({});
    const seedings = [fromJar(children[1] ?? '')];
    const holds = [{ ...HOLD, startedAt: '2026-05-19T20:00:00+02:00' }];
    const { jars } = make(session, '2026-05-19', [{ onShelf: true, seedings, outcome: { ...unseen, smell: 'fine' } }], { holds });
    const pot = { id: null, part: null, place: 'fridge' as const, pieces: null, amount: null, keptOn: '2026-05-20', goneOn: null, reserve: false, note: null };
    must(session, 'portion.save', { portion: { ...pot, jar: jars[0] ?? '' } });
    const waiting = () => ranked(session).filter(({ label, stops }) => label.startsWith('19 May a') && stops.some(({ code }) => code === 'in its hold')).length;
    expect(waiting()).toBe(2);
    const [jar = ''] = jars;
    const firm = { jar, outcome: FIRM, onShelf: true };
    expect(refusalOf(session, 'outcome.save', firm)).toMatchObject({ code: 'taken out early', sentence: expect.stringMatching(/^19 May a is in warmth for about \d+ more hours.*taken out early, correct when/) });
    // An early look says how it goes, and a written reason lets the words in; neither makes a seed of it.
    must(session, 'outcome.save', { ...firm, outcome: { ...unseen, earlyCheckHours: 12, earlySour: true, earlySet: 'starting' } });
    must(session, 'outcome.save', { ...firm, why: 'the clock of this computer is wrong' });
    expect(waiting()).toBe(2);
    const [hold] = must(session, 'batch.get', { id: must(session, 'jar.get', { id: jar }).batch }).holds;
    must(session, 'hold.correct', { id: hold?.id ?? '', changes: { endedAt: '2026-05-20T09:00:00+02:00' } });
    expect(waiting()).toBe(0);
  }); // prettier-ignore

  it.each([
    ['made today, nothing known of its end', '2026-05-20', {}, true],
    ['started yesterday for 30 hours', '2026-05-19', { startedAt: '2026-05-19T20:00:00+02:00' }, true],
    ['made yesterday and out since', '2026-05-19', { startedAt: '2026-05-19T01:00:00+02:00', endedAt: '2026-05-20T09:00:00+02:00' }, false],
    ['made two days ago, nothing known of its end', '2026-05-18', {}, false],
    // The earliest that 36 hours from the 19th can end is noon of the 20th.
    ['made yesterday for 36 hours, its start not noted, and set firm', '2026-05-19', { hours: 36 }, true, FIRM],
    ['made yesterday for 30 hours, its start not noted, and set firm', '2026-05-19', { hours: 30 }, false, FIRM],
    ['started two days ago for 72 hours', '2026-05-18', { startedAt: '2026-05-18T20:00:00+02:00', hours: 72 }, true],
  ] as const)('%s', (_what, day, hold, waits, outcome: typeof FIRM | null = null) => {
    const { session, children } = pair({});
    make(session, day, [{ onShelf: true, seedings: [fromJar(children[1] ?? '')], outcome }], { holds: [{ ...HOLD, ...hold }] });
    const one = of(session, `${Number(day.slice(-2))} May a`);
    expect(one.stops.map(({ code }) => code)).toEqual(waits ? ['in its hold'] : []);
    expect(must(session, 'advice.next', {}).sentence).toMatch(waits ? /^Seed the next batch from 12 May/ : /^Seed the next batch from 1[29] May/);
  }); // prettier-ignore

  it('made today for 36 hours, its start not noted: how it came out is asked about, a look in between is not', () => {
    const { session, children } = pair({});
    const { jars: [jar = ''] } = make(session, '2026-05-20', [{ onShelf: true, seedings: [fromJar(children[1] ?? '')] }], { holds: [{ ...HOLD, hours: 36 }] });
    expect(refusalOf(session, 'outcome.save', { jar, outcome: FIRM, onShelf: true })).toMatchObject({ code: 'taken out early', sentence: expect.stringMatching(/for at least 26 more hours/) });
    must(session, 'outcome.save', { jar, outcome: { ...unseen, earlyCheckHours: 8, earlySour: true, earlySet: 'starting' }, onShelf: true });
    expect(of(session, '20 May a').stops.map(({ code }) => code)).toEqual(['in its hold']);
  }); // prettier-ignore
});

describe('a jar taken out of warmth after a minute', () => {
  /** Made now for 36 hours, then taken out, at what the clock says. */
  const taken = (later: string) => {
    const { session, children } = pair({});
    const { jars: [jar = ''] } = make(session, '2026-05-20', [{ onShelf: true, seedings: [fromJar(children[1] ?? '')] }], { holds: [{ ...HOLD, hours: 36 }] });
    const [hold] = must(session, 'batch.get', { id: must(session, 'jar.get', { id: jar }).batch }).holds;
    must(session, 'hold.takeOut', { hold: hold?.id ?? '', jars: null, at: later });
    return { session, jar, hold: hold?.id ?? '' };
  }; // prettier-ignore

  it('can’t have set: how it came out is asked about, and a reason lets it in', () => {
    const { session, jar } = taken('2026-05-20T10:01:00+02:00');
    expect(must(session, 'family.get', {}).jars.find(({ id }) => id === jar)?.holdHours).toBeLessThan(1.1);
    const refused = refusalOf(session, 'outcome.save', { jar, outcome: FIRM, onShelf: true });
    expect(refused.code).toBe('set too soon');
    expect(refused.sentence).toMatch(
      /^20 May a was in warmth for (?:1 h )?\d+ min as noted, and no milk sets/,
    );
    // That it had not set needs no reason.
    must(session, 'outcome.save', { jar, outcome: { ...unseen, setAtTakeOut: false }, onShelf: true });
    must(session, 'outcome.save', { jar, outcome: FIRM, onShelf: true, why: 'the clock was wrong' });
  });

  it('says nothing of its culture, and is no better seed for having set', () => {
    const { session, jar } = taken('2026-05-20T10:01:00+02:00');
    must(session, 'outcome.save', { jar, outcome: FIRM, onShelf: true, why: 'the clock was wrong' });
    expect(must(session, 'judgement.jar', { jar }).leftOut).toMatch(/^It was in warmth for/);
  });

  it.each([0, 1, 200])('after %i minutes it is no advised seed, whatever reason let it in', (minutes) => {
    const { session, children } = pair({});
    const out = new Date(Date.parse('2026-05-19T10:00:00Z') + minutes * 60_000).toISOString().slice(0, 19);
    const warm = { ...HOLD, startedAt: '2026-05-19T10:00:00+00:00', endedAt: `${out}+00:00`, hours: null };
    const { jars: [jar = ''] } = make(session, '2026-05-19', [{ onShelf: true, seedings: [fromJar(children[1] ?? '')], hold: 0 }], { holds: [warm] });
    must(session, 'outcome.save', { jar, outcome: FIRM, onShelf: true, why: 'the clock was wrong' });
    expect(must(session, 'judgement.jar', { jar }).leftOut).toMatch(/^It was in warmth for/);
    const { ranking } = must(session, 'advice.next', {});
    const at = ranking.findIndex((one) => one.jar === jar);
    expect(ranking[at]?.doubts[0]).toMatch(/^It was in warmth for .* only, too short for anything to set\./);
    // Behind a fresh start, and behind all that is not in doubt.
    expect(at).toBeGreaterThan(ranking.findIndex(({ kind }) => kind === 'fresh start'));
    expect(must(session, 'advice.line', { line: must(session, 'line.list', { jar: null }).lines[0]?.id ?? '' }).seed?.jar).not.toBe(jar);
  }); // prettier-ignore
});

it('a seed whose acid is not there is taken only with a written reason', () => {
  const { session, a } = pair({ ph: 4.9, setAtTakeOut: null, setWord: null });
  const entry = batchOf('2026-05-19', [plainJar('a', { seedings: [fromJar(a)] })]);
  const refused = refusalOf(session, 'batch.record', entry);
  expect([refused.code, refused.sentence]).toEqual(['seed without acid', expect.stringMatching(/^6 May a: A meter showed a pH of 4\.9, above 4\.6/)]); // prettier-ignore
  must(session, 'batch.record', { ...entry, why: 'It had set; nobody wrote it down.' });
});

it('a caution that descends from a mate ends where two generations are opened and nothing is seen, on every screen at once', () => {
  const session = openSession(newFile(), 'create', '2026-03-01T10:00:00+02:00');
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const [, mate = ''] = make(session, '2026-01-05', [
    { seedings: [fromSource(source)], outcome: { ...FIRM, signs: ['pink'] }, hold: 0 },
    { seedings: [fromSource(source)], outcome: FIRM, onShelf: false, hold: 0 },
  ]).jars;
  const passed = { ...FIRM, sour: true };
  const line: string[] = [];
  for (let generation = 1; generation <= 8; generation++) {
    const day = new Date(Date.parse('2026-01-05') + 6 * generation * 86_400_000).toISOString().slice(0, 10);
    const [jar = ''] = make(session, day, [{ seedings: [fromJar(line.at(-1) ?? mate)], outcome: passed, onShelf: true, hold: 0 }]).jars;
    line.push(jar);
  }
  const newest = line.at(-1) ?? '';
  const told = () => {
    const { keys, flags } = must(session, 'family.drawing', { spacing: 'generation' });
    const { cautions, view } = must(session, 'jar.get', { id: newest });
    return {
      pane: cautions.map(({ ended, mayEnd, relation }) => ({ ended, mayEnd, relation })),
      level: view.caution,
      ring: ((flags[keys.indexOf(view.key)] ?? 0) & FLAG.look) !== 0,
      picker: must(session, 'advice.next', {}).ranking.find(({ jar }) => jar === newest)?.looks.length,
    };
  };
  expect(told()).toEqual({ pane: [{ ended: false, mayEnd: true, relation: 'from a mate' }], level: 'look', ring: true, picker: 1 });
  // One generation alone does not end it.
  must(session, 'shelf.open', { id: line[5] ?? '', looked: true });
  expect(told()).toMatchObject({ level: 'look', ring: true, picker: 1 });
  must(session, 'shelf.open', { id: line[6] ?? '', looked: true });
  expect(told()).toEqual({ pane: [{ ended: true, mayEnd: true, relation: 'from a mate' }], level: null, ring: false, picker: 0 });
}); // prettier-ignore
