// What a keeper is told of odd seeds, through a real ledger: each case is one that a careful reader found advised wrongly.
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../core/contract';
import type { Session } from '../../main/session';
import { batchOf, fromJar, fromSource, must, newFile, openSession, plainJar, plainSource, unseen } from '../ledger/ledger-files'; // prettier-ignore

type Outcome = typeof unseen;
type Jar = NonNullable<Parameters<typeof plainJar>[1]>;
const NOW = '2026-05-20T10:00:00+02:00';
const FIRM: Outcome = { ...unseen, setAtTakeOut: true, setWord: 'firm', ph: 4.3, phHow: 'meter', phChecked: true, setAfterHours: 10, setByHours: 12 }; // prettier-ignore
const RUNNY: Outcome = { ...FIRM, setWord: 'runny', ph: 4.55, setAfterHours: 20, setByHours: 26 };

interface Kept {
  readonly session: Session;
  /** The jars of generation 1 to 5, all gone. */
  readonly line: readonly string[];
  /** The last of them, which seeds what most cases are about. */
  readonly seed: string;
}

/** A steady line of five batches, one a week, each of one firm jar that is gone. */
function kept(now = NOW): Kept {
  const session = openSession(newFile(), 'create', now);
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const line: string[] = [];
  for (const day of ['2026-03-01', '2026-03-08', '2026-03-15', '2026-03-22', '2026-03-29']) {
    const seed = line.at(-1);
    const seedings = [seed === undefined ? fromSource(source) : fromJar(seed)];
    line.push(...batch(session, day, { a: { seedings, outcome: FIRM, onShelf: false } }));
  }
  return { session, line, seed: line.at(-1) ?? '' };
}

/** Records a batch of jars, each with what is given; kept unless said otherwise. */
const batch = (session: Session, day: string, jars: Record<string, Jar>): string[] => [
  ...must(session, 'batch.record', {
    ...batchOf(day, Object.entries(jars).map(([letter, more]) => plainJar(letter, { onShelf: true, ...more }))),
    why: 'Some of these seeds are set aside.',
  }).jars,
]; // prettier-ignore
const next = (session: Session): Reply<'advice.next'> => must(session, 'advice.next', {});
function of(session: Session, label: string): Reply<'advice.next'>['ranking'][number] {
  const found = next(session).ranking.find((one) => one.label === label);
  if (!found) throw new Error(`${label} is not ranked`);
  return found;
}
const places = (session: Session): string[] =>
  next(session).ranking.filter(({ kind }) => kind !== 'fresh start').map(({ label }) => label); // prettier-ignore
const newest = (session: Session): Reply<'judgement.line'>['batches'][number] => {
  const line = must(session, 'family.get', {}).lines[0]?.id ?? '';
  const found = must(session, 'judgement.line', { line }).batches.at(-1);
  if (!found) throw new Error('no batch');
  return found;
};

describe('what was seen in its own hold', () => {
  const one = (outcome: Outcome) => {
    const { session, seed } = kept();
    batch(session, '2026-05-13', { a: { seedings: [fromJar(seed)], outcome } });
    return { ranked: of(session, '13 May a'), sentence: next(session).sentence };
  };

  // Fine bubbles alone are normal for this kind of culture: common practice, no source.
  it('fine bubbles alone ask for a look, said with the recommendation, and are no doubt', () => {
    for (const outcome of [
      { ...FIRM, bubbles: 'fine' as const },
      { ...unseen, setWord: 'spoonable' as const, bubbles: 'fine' as const },
      { ...unseen, ph: 4.4, phHow: 'meter' as const, phChecked: true, texture: 'a little fizzy' },
    ]) {
      const { ranked, sentence } = one(outcome);
      expect([ranked.allowed, ranked.doubts]).toEqual([true, []]);
      const look = 'Fine bubbles were seen; alone they are normal for this kind of culture. Look and smell first.';
      expect(ranked.looks.join(' ')).toContain(look);
      if (sentence.startsWith('Seed')) expect(sentence).toContain(look);
    }
  }); // prettier-ignore

  it('bubbles with another doubt, or where nobody says that it set, are a doubt; with a slow start both are looked at', () => {
    const bubbles = 'fine' as const;
    expect(one({ ...FIRM, bubbles, ph: 4.9 }).ranked.doubts).toHaveLength(2);
    expect(one({ ...FIRM, bubbles, earlySet: 'loose' }).ranked).toMatchObject({ doubts: [], looks: [expect.stringMatching(/^A slow start/), expect.stringMatching(/^Fine bubbles/)] }); // prettier-ignore
    expect(one({ ...unseen, bubbles }).ranked.doubts).toHaveLength(1);
    expect(one({ ...unseen, setAtTakeOut: false, ph: 4.4, phHow: 'meter', phChecked: true, bubbles }).ranked.doubts).toHaveLength(1); // prettier-ignore
  });

  // 21 CFR 131.200 as amended by 88 FR 22907: 4.6 or lower is the acidity requirement.
  it.each([
    ['a meter above 4.6 and nothing of set', { ...unseen, ph: 6.6, phHow: 'meter' }, 'stop'],
    ['runny, and a meter above 4.6', { ...unseen, setWord: 'runny', ph: 5.6, phHow: 'meter' }, 'stop'],
    ['set, and a meter above 4.6', { ...FIRM, ph: 5.6 }, 'doubt'],
    ['a strip above 4.6 and nothing of set: a strip may stop', { ...unseen, ph: 6.6, phHow: 'strip' }, 'stop'],
    ['set, and a strip above 4.6', { ...FIRM, ph: 6.4, phHow: 'strip' }, 'doubt'],
    ['a pH above 4.6 of which nobody said how, as a row of notes gives it', { ...unseen, ph: 6.4 }, 'doubt'],
    ['a meter at 4.6 and nothing of set', { ...unseen, ph: 4.6, phHow: 'meter', phChecked: true }, 'neither'],
  ] as const)('%s: %o is a %s', (_what, outcome, is) => {
    const { ranked, sentence } = one(outcome);
    expect(ranked.allowed).toBe(is !== 'stop');
    if (is === 'stop') {
      expect(ranked.stops.map(({ code }) => code)).toEqual(['failed the gate']);
      expect(ranked.stops[0]?.says).toMatch(/^A (?:meter|strip) showed a pH of [56]\.6, above 4\.6, and nobody has written down/);
    }
    if (is === 'doubt') expect(ranked.doubts[0]).toContain('above 4.6');
    else expect(ranked.doubts.length === 0 || is === 'stop').toBe(true);
    if (is !== 'neither') expect(sentence).not.toContain('Seed the next batch from');
  }); // prettier-ignore
});

describe('a jar among its batch-mates', () => {
  const pair = () => {
    const { session, seed } = kept();
    const seedings = [fromJar(seed)];
    batch(session, '2026-05-13', { a: { seedings, outcome: RUNNY }, b: { seedings, outcome: FIRM } });
    return session;
  };

  it('counts by its batch, drawn down where it came out worse, and both are said', () => {
    const session = pair();
    const [a, b] = [of(session, '13 May a'), of(session, '13 May b')];
    expect(places(session)).toEqual(['13 May b', '13 May a']);
    expect(a.weakChance!).toBeGreaterThan(b.weakChance!);
    expect(a.reasons).toContain('It came out runny itself; of its batch b firm.');
    expect(a.reasons.join(' ')).toContain('clearly below its batch: part of that counts against it');
    // The better one gains nothing by having come out better: no evidence of its culture.
    expect(b.reasons.join(' ')).toContain('no evidence that its culture is better');
  });

  it('has the median of the jars that are named for it, in advice and on the batch', () => {
    const session = pair();
    const { jars, score, points, says } = newest(session);
    const scores = jars.map((jar) => jar.score);
    expect(Math.abs(points! - (scores[0]! + scores[1]!) / 2)).toBeLessThanOrEqual(1);
    expect(says).toBe(`${score} is the median of its jars that can be compared: a ${scores[0]}, b ${scores[1]}.`); // prettier-ignore
    const said = of(session, '13 May a').reasons.find((reason) => reason.startsWith('Its batch scored'));
    expect(said).toContain(`Its batch scored ${score} (`);
    expect(said).toContain(`the median of a ${scores[0]}, b ${scores[1]};`);
  });
});

describe('cautions and holds', () => {
  it('a jar that seeded a spoiled one comes after a clean one that costs as much, and is never named without it', () => {
    const { session, seed } = kept();
    const seedings = [fromJar(seed)];
    const [a = '', b = ''] = batch(session, '2026-05-06', { a: { seedings, outcome: FIRM }, b: { seedings, outcome: FIRM } }); // prettier-ignore
    batch(session, '2026-05-09', { a: { seedings: [fromJar(a)], outcome: { ...unseen, signs: ['pink'] } } });
    expect(places(session)).toEqual(['6 May b', '6 May a', '9 May a']);
    const look = 'Look at it first: it seeded the spoiled jar 9 May a.';
    expect(of(session, '6 May a').looks).toEqual([look]);
    expect(of(session, '6 May a').reasons.join(' ')).toContain('It stands a little further back, because it has to be looked at first.'); // prettier-ignore
    must(session, 'outcome.save', { jar: b, outcome: FIRM, onShelf: false, why: null, draft: null });
    expect(next(session).sentence).toBe(`Seed the next batch from 6 May a. ${look}`);
    expect(next(session).warnings[0]).toContain(look);
  });

  /** Batch-mates of three generations: a deep one, a shallow one, and one whose seed turned out spoiled. */
  const heldMate = () => {
    const { session, line } = kept();
    const [first = '', , , fourth = '', last = ''] = line;
    const [bad = ''] = batch(session, '2026-05-01', { a: { seedings: [fromJar(last)], outcome: FIRM, onShelf: false } }); // prettier-ignore
    const [a = '', r = '', x = ''] = batch(session, '2026-05-05', {
      a: { seedings: [fromJar(fourth)], outcome: { ...FIRM, setWord: 'spoonable' } },
      r: { seedings: [fromJar(first)], outcome: { ...FIRM, setWord: 'very firm' } },
      x: { seedings: [fromJar(bad)], outcome: FIRM },
    });
    must(session, 'outcome.save', { jar: bad, outcome: { ...FIRM, signs: ['pink'] }, onShelf: false, why: null, draft: null }); // prettier-ignore
    return { session, a, r, x };
  };

  it('a set-aside jar is no evidence for jars that are not: those left out say their own score', () => {
    const { session, a, r, x } = heldMate();
    for (const jar of [a, r]) {
      const judged = must(session, 'judgement.jar', { jar });
      const { label, reasons } = of(session, judged.label);
      expect(judged.leftOut, label).toContain('It is of generation');
      expect(reasons.join(' '), label).toContain(`It scored ${judged.score} (${judged.low} to ${judged.high}) itself`);
      expect(reasons.join(' '), label).toContain('It is not compared with its batch: it is of generation');
      expect(reasons.join(' '), label).not.toContain('Its batch scored');
    }
    const held = newest(session);
    expect(held.score).toBeNull();
    expect(held.says).toMatch(/Left out: .*x \(it is set aside because of a spoiled jar: it speaks for none that is not\)\./);
    expect(held.jars.find(({ jar }) => jar === x)).toMatchObject({ compared: false, held: 'set aside because of a spoiled jar' });
    expect(must(session, 'judgement.jar', { jar: x }).onHold).toBe('It is set aside: seeded from 1 May a.');
    expect(must(session, 'judgement.jar', { jar: a }).onHold).toBeNull();
  }); // prettier-ignore

  it('where all that was seen of a batch is set aside, it stands for itself on the line, said so, and for no other jar', () => {
    const { session, seed } = kept();
    const seedings = [fromJar(seed)];
    const hold = { startedAt: null, endedAt: null, hours: 12, planned: null, probe: null, readings: [], note: null }; // prettier-ignore
    const jars = [
      plainJar('a', { seedings, hold: 0, outcome: { ...unseen, signs: ['pink'] } }),
      plainJar('b', { seedings, hold: 0, outcome: FIRM, onShelf: true }),
      plainJar('c', { seedings, hold: 1, outcome: null, onShelf: true }),
    ];
    const made = must(session, 'batch.record', batchOf('2026-05-13', jars, { holds: [hold, hold] }));
    const judged = newest(session);
    expect(judged.score).toBe(must(session, 'judgement.jar', { jar: made.jars[1] ?? '' }).score);
    expect(judged.jars[0]).toMatchObject({ compared: true, held: 'set aside because of a spoiled jar' });
    expect(judged.says).toContain('so it speaks for no other jar');
    // c stood in another warmth and is free of the hold; what b scored is no score of it.
    const c = of(session, '13 May c');
    expect(c.allowed).toBe(true);
    expect(c.reasons).toContain('There is nothing to score it by, so it is taken to be a little riskier.');
    expect(c.reasons.join(' ')).not.toContain('Its batch scored');
  });
});

describe('what is not known', () => {
  const strays = () => {
    const made = kept();
    const { session, seed } = made;
    const [young = ''] = batch(session, '2026-05-13', { k: { seedings: [fromJar(seed)], outcome: FIRM } });
    batch(session, '2026-05-13', { s: { seedings: [], outcome: FIRM } });
    return { ...made, young };
  };

  it('an unknown past is at least so many generations, and its chances are the worst that were seen, not the best', () => {
    const { session } = strays();
    const [stray, known] = [of(session, '13 May s'), of(session, '13 May k')];
    expect(stray.weakChance!).toBeGreaterThanOrEqual(known.weakChance!);
    expect(stray.reasons.join(' ')).toContain(
      'of generation 2 at least. Its past is not known, so its chances are taken as those of generation 6, the furthest that any jar of yours has gone.',
    );
    expect(places(session)).toEqual(['13 May k', '13 May s']);
    expect(known.reasons.join(' ')).not.toContain('at least');
  }); // prettier-ignore

  it('of a jar seeded from a lost one too, and what a limit means then is said', () => {
    const { session } = kept();
    const { jar } = must(session, 'jar.lost', {
      label: 'the blue bowl',
      madeOn: null,
      note: null,
      draft: null,
    });
    batch(session, '2026-05-13', { l: { seedings: [fromJar(jar)], outcome: FIRM } });
    must(session, 'preferences.save', { ...session.ledger.preferences, mostGenerations: 9 });
    const { reasons } = of(session, '13 May l');
    expect(reasons.join(' ')).toContain('Its past is not known');
    expect(reasons).toContain("Whether the limit of 9 generations (Preferences) is reached can't be told.");
  });

  it('a received culture keeps the chances of its own generations: its line tells', () => {
    const session = openSession(newFile(), 'create', NOW);
    const culture = must(session, 'source.save', plainSource('the neighbour', { form: 'culture', receivedFrom: 'a neighbour' })).id; // prettier-ignore
    batch(session, '2026-05-13', { a: { seedings: [fromSource(culture)], outcome: FIRM } });
    const said = of(session, '13 May a').reasons.join(' ');
    expect(said).toContain('of generation 3 at least.');
    expect(said).not.toContain('Its past is not known');
  });

  it('whether it is still kept: said, and after a jar that is known to be, at the same cost', () => {
    const { session, seed } = kept();
    const seedings = [fromJar(seed)];
    const [, b = ''] = batch(session, '2026-05-05', { a: { seedings, outcome: FIRM, onShelf: null }, b: { seedings, outcome: FIRM } }); // prettier-ignore
    expect(places(session)).toEqual(['5 May b', '5 May a']);
    const said = of(session, '5 May a').reasons.join(' ');
    expect(said).toContain('Nobody has noted whether it is still there. It has stood for 15 days');
    expect(said).not.toContain('It has been kept');
    must(session, 'outcome.save', { jar: b, outcome: FIRM, onShelf: false, why: null, draft: null });
    expect(next(session).sentence).toBe('Seed the next batch from 5 May a. Nobody has noted whether it is still there.');
  }); // prettier-ignore

  it('whoever seeds from a jar says that it is there that day', () => {
    const { session, seed } = kept();
    const [a = ''] = batch(session, '2026-05-05', { a: { seedings: [fromJar(seed)], outcome: FIRM, onShelf: null } });
    const unsaid = () => of(session, '5 May a').reasons.join(' ').includes('Nobody has noted whether');
    const answered = () => must(session, 'shelf.get', {}).items.find(({ id }) => id === a)?.asked;
    expect([unsaid(), answered()]).toEqual([true, true]);
    const { act } = must(session, 'batch.record', batchOf('2026-05-20', [plainJar('x', { seedings: [fromJar(a)] })]));
    expect([unsaid(), answered()]).toEqual([false, false]);
    // It is no fact of its own: it goes with the seeding, and with the day.
    session.setNow('2026-05-21T10:00:00+02:00');
    expect(unsaid()).toBe(true);
    session.setNow(NOW);
    must(session, 'act.undo', { act });
    expect(unsaid()).toBe(true);
  }); // prettier-ignore

  it('a jar of which nobody said that it is kept is offered for two months (common practice, no source), one that is kept for good', () => {
    const { session, line } = kept();
    must(session, 'preferences.save', { ...session.ledger.preferences, seedFridgeDays: null });
    const seedings = [fromJar(line[1] ?? '')];
    // Made 59 and 62 days ago.
    for (const [day, letter, onShelf] of [['2026-03-22', 'x', null], ['2026-03-19', 'y', null], ['2026-03-19', 'z', true]] as const)
      batch(session, day, { [letter]: { seedings, outcome: FIRM, onShelf } });
    expect(places(session).filter((label) => /[xyz]$/.test(label)).toSorted()).toEqual(['19 Mar z', '22 Mar x']);
  }); // prettier-ignore

  it('how old is too old, where the keeper set no limit: longer than three weeks is said (common practice, no source)', () => {
    const { session, seed } = kept();
    must(session, 'preferences.save', { ...session.ledger.preferences, seedFridgeDays: null });
    batch(session, '2026-04-08', { a: { seedings: [fromJar(seed)], outcome: FIRM } });
    const look = 'It has stood in the fridge for 42 days; jars are commonly used up within three weeks. Look and smell first, and when in doubt, discard.'; // prettier-ignore
    const old = of(session, '8 Apr a');
    expect(old.looks).toEqual([look]);
    expect(old.reasons.join(' ')).toMatch(
      /kept for 42 days, so the next jar should set about \d+ hours later/,
    );
    expect(next(session).sentence).toContain(`from 8 Apr a. ${look}`);
  });
});
