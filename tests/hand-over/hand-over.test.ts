// One jar's ancestry as a file that goes with it: what it holds, what it never holds, and what the receiver makes of it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import type { FamilyJarReply, Input, Reply } from '../../core/contract';
import { HandOver } from '../../core/hand-over/hand-over-format';
import { handOverRows } from '../../core/says/hand-over-says';
import type { Ledger } from '../../main/ledger/ledger';
import type { Session } from '../../main/session';
import { troubles } from '../facts/facts-in-memory';
import { Generated } from '../ledger/generated-ledgers';
import {
  ask, batchOf, fromJar, fromSource, must, newFolder, newSession, NOW, openSession, newFile, plainJar, plainSource, refusalOf, smallFamily, stateOf, unseen,
} from '../ledger/ledger-files'; // prettier-ignore
import { askOf, emptyBeside, valueOf } from '../archive/bare-calls';
import { seededNumbers } from '../families';
import { runs } from '../runs';

const RUNS = runs(4);

/** Hands a jar from one ledger to another. */
function hand(
  from: Ledger,
  to: Ledger,
  jar: string,
  more: Partial<Input<'handOver.write'>> = {},
): Reply<'handOver.read'> {
  const path = join(newFolder(), 'jar.json');
  valueOf(askOf(from)('handOver.write', { jar, file: { path }, followUp: true, ...more }));
  return valueOf(askOf(to)('handOver.read', { file: { path } })) as Reply<'handOver.read'>;
}

const familyOf = (ledger: Ledger): Reply<'family.get'> =>
  valueOf(askOf(ledger)('family.get', {})) as Reply<'family.get'>;

/** Every remark read as fine, as a keeper may who was asked. */
function readAll(ledger: Ledger): void {
  ledger.acts.run('facts.correct', 'remarks', null, (act) => {
    for (const key of ledger.rows.prepare('SELECT key FROM remark').pluck().all() as number[])
      act.update('remark', key, { readAs: 'fine' });
  });
}

/** What must be the same wherever a jar is told of. */
function told(jar: FamilyJarReply): unknown {
  const rounded = (value: number | null): number | null => value && Number(value.toFixed(9));
  return {
    madeOn: jar.madeOn, madeBetween: jar.madeBetween, letter: jar.letter, setWord: jar.setWord, ph: jar.ph, spoiled: jar.spoiled, discard: jar.discard,
    generation: { ...jar.generation, mean: rounded(jar.generation.mean) },
    doublings: { transfers: rounded(jar.doublings.transfers), start: rounded(jar.doublings.start) },
    basis: jar.shareBasis,
    seeds: jar.seeds.map(({ jar: from, source, share }) => [from, source, rounded(share)]),
    traced: jar.tracedShares.map(({ source, share }) => [source, rounded(share)]).toSorted(),
  }; // prettier-ignore
}

describe('the receiver', () => {
  it(`has the family, generations, doublings, shares and cautions of a jar exact, in ${RUNS} generated ledgers`, () => {
    let cautions = 0;
    for (let seed = 1; seed <= RUNS; seed += 1) {
      const { ledger } = new Generated(seed * 17 + 3);
      readAll(ledger);
      const jars = familyOf(ledger).jars;
      const jar = jars.at(-1 - (seed % 2));
      if (!jar) continue;
      const to = emptyBeside(ledger);
      hand(ledger, to, jar.id);
      expect(troubles(to.db)).toEqual([]);
      const theirs = new Map(familyOf(to).jars.map((one) => [one.id, one]));
      const { family } = ledger.index;
      const behind = [
        ledger.rows.keyOf('jar', jar.id),
        ...family.ancestorsOf(ledger.rows.keyOf('jar', jar.id)),
      ];
      for (const key of behind) {
        const ours = jars.find(({ id }) => id === ledger.rows.uidOf('jar', key));
        if (!ours) throw new Error('an ancestor is not in the family');
        expect(theirs.has(ours.id)).toBe(true);
        const got = theirs.get(ours.id) as FamilyJarReply;
        expect(told(got)).toEqual(told(ours));
        expect(got.cautions).toEqual(ours.cautions);
        cautions += ours.cautions.length;
      }
      // Nothing of it but the jar itself is offered as standing in the receiver's kitchen.
      const { ranking } = valueOf(askOf(to)('advice.next', {})) as Reply<'advice.next'>;
      expect(ranking.flatMap((one) => one.jar ?? []).filter((id) => id !== jar.id)).toEqual([]);
      // The same again brings nothing; undone, nothing of it is left.
      expect(hand(ledger, to, jar.id)).toMatchObject({ act: null, added: 0 });
      valueOf(askOf(to)('act.undo', { act: null }));
      expect(to.rows.count('SELECT count(*) FROM jar')).toBe(0);
      expect(hand(ledger, to, jar.id).added).toBeGreaterThan(0);
    }
    expect(cautions).toBeGreaterThan(0);
  }, 240_000);

  it('of three keepers in any order, twice, has each ancestry as one ledger that saw it all', () => {
    for (let seed = 1; seed <= RUNS; seed += 1) threeKeepers(seed);
  }, 240_000);
});

/** A random family made in three kitchens, jars going to and fro, beside one ledger in which all of it was recorded. */
function threeKeepers(seed: number): void {
  const random = seededNumbers(seed);
  const below = (most: number): number => Math.floor(random() * most);
  const sessions = [0, 1, 2, 3].map(() => newSession());
  const [all, ...keepers] = sessions as [Session, Session, Session, Session];
  /** Ids of a jar: in the ledger that saw all, and in the keepers'. */
  const jars: { id: string; inAll: string; at: Set<number>; madeIn: number }[] = [];
  const sources = keepers.map((keeper, at) => {
    const entry = plainSource(`Tin ${at}`);
    return { own: must(keeper, 'source.save', entry).id, inAll: must(all, 'source.save', entry).id };
  });
  for (let day = 1; day <= 12; day += 1) {
    const at = below(3);
    const keeper = keepers[at] as Session;
    const here = jars.filter((one) => one.at.has(at));
    const seeds =
      here.length === 0 || random() < 0.2
        ? []
        : [here[below(here.length)], ...(random() < 0.4 ? [here[below(here.length)]] : [])];
    const chosen = [...new Set(seeds.filter((one) => one !== undefined))];
    const amount = 30 + below(40);
    const onDay = (n: number): string => `2026-02-${String(n).padStart(2, '0')}`;
    // Of one batch in three only a range of days is known.
    const about = random() < 1 / 3 ? { madeFrom: onDay(day), madeTo: onDay(day + below(5)) } : null;
    const entry = (ids: readonly string[], source: string) =>
      batchOf(about ? null : onDay(day), [
        plainJar('abc'[at] ?? 'x', { seedings: ids.length > 0 ? ids.map((id, n) => fromJar(id, amount + n)) : [fromSource(source, amount)] }),
      ], { ...about, sameLabelMeant: true }); // prettier-ignore
    const made =
      must(
        keeper,
        'batch.record',
        entry(
          chosen.map(({ id }) => id),
          sources[at]?.own ?? '',
        ),
      ).jars[0] ?? '';
    const inAll =
      must(
        all,
        'batch.record',
        entry(
          chosen.map((one) => one.inAll),
          sources[at]?.inAll ?? '',
        ),
      ).jars[0] ?? '';
    jars.push({ id: made, inAll, at: new Set([at]), madeIn: at });
    for (let times = below(3); times > 0; times -= 1) {
      const given = jars[below(jars.length)];
      const from = given ? [...given.at][below(given.at.size)] : undefined;
      const to = below(3);
      if (!given || from === undefined || from === to) continue;
      for (let twice = 0; twice < 1 + below(2); twice += 1)
        hand((keepers[from] as Session).ledger, (keepers[to] as Session).ledger, given.id);
      given.at.add(to);
    }
  }
  // Everything goes round once more, in any order.
  const again = jars.flatMap((jar) =>
    [...jar.at].flatMap((from) => [...jar.at].map((to) => ({ jar, from, to, at: random() }))),
  );
  for (const { jar, from, to } of again
    .filter((one) => one.from !== one.to)
    .toSorted((a, b) => a.at - b.at)
    .slice(0, 12))
    hand((keepers[from] as Session).ledger, (keepers[to] as Session).ledger, jar.id);
  const whole = new Map(familyOf(all.ledger).jars.map((one) => [one.id, one]));
  const name = (of: string | null): string | null =>
    jars.find(({ id, inAll }) => of === id || of === inAll)?.inAll ?? null;
  const named = (one: FamilyJarReply): unknown =>
    told({ ...one, seeds: one.seeds.map((from) => ({ ...from, jar: name(from.jar) })) });
  let received = 0;
  for (const [at, keeper] of keepers.entries()) {
    const family = familyOf(keeper.ledger).jars;
    for (const one of family) {
      expect(named(one)).toEqual(named(whole.get(name(one.id) ?? '') as FamilyJarReply));
      if (jars.find(({ id }) => id === one.id)?.madeIn !== at) received += 1;
    }
    expect(must(keeper, 'received.list', {}).received).toEqual([]);
    expect(troubles(keeper.ledger.db)).toEqual([]);
  }
  expect(received).toBeGreaterThan(0);
  expect([...whole.values()].some(({ madeBetween }) => madeBetween !== null)).toBe(true);
  for (const session of sessions) session.close();
}

/** Marks that must be in no file, one for each place in which a keeper may have written what is nobody else's business. */
const SECRET = 'xqz';

/** A ledger with a mark in every private field there is, and the jar to be handed over. */
function secretive(): { session: Session; jar: string } {
  const session = openSession(newFile(), 'create', NOW);
  const { jars, batches, source } = smallFamily(session);
  const secret = (where: string): string => `${SECRET} ${where}`;
  must(session, 'source.save', { source: { ...must(session, 'source.list', {}).sources.map(({ startedJars: _s, lines: _l, ...one }) => one)[0]!, receivedFrom: secret('giver'), note: secret('source note') } }); // prettier-ignore
  const box = must(session, 'package.save', {
    package: {
      id: null, of: 'source', source, name: 'a box', size: null, price: { minor: 1999, currency: 'EUR', typed: secret('price') },
      boughtOn: '2026-02-01', openedOn: null, bestBefore: null, note: secret('shop'),
    },
  }); // prettier-ignore
  const seeding = must(session, 'batch.get', { id: batches[0] ?? '' }).jars[0]?.seedings[0]?.seeding.id ?? '';
  must(session, 'facts.record', {
    why: secret('why'),
    facts: [
      { kind: 'use', package: box.id, seeding },
      { kind: 'appliance', ref: 'box', name: secret('appliance') },
      { kind: 'hold', ref: 'hold', appliance: 'box', began: '2026-02-28T18:00:00+01:00', ended: '2026-03-01T20:00:00Z' },
      { kind: 'stay', jar: jars[0], hold: 'hold' },
      { kind: 'remark', hold: 'hold', text: secret('hold remark'), readAs: 'fine' },
      { kind: 'remark', jar: jars[0], text: secret('remark'), readAs: 'fine' },
      { kind: 'remark', jar: jars[0], text: secret('looked'), readAs: 'look' },
      { kind: 'remark', jar: jars[0], text: 'for whoever gets it', private: false, readAs: 'fine' },
      { kind: 'movement', jar: jars[0], what: 'eaten', day: '2026-03-02', amount: { value: 10, unit: 'g', typed: secret('eaten') } },
      { kind: 'labResult', jar: jars[0], what: 'count', value: 1e9, unit: 'CFU/mL', laboratory: secret('laboratory') },
      { kind: 'trial', ref: 'trial', batch: batches[0] ?? '', differsIn: secret('trial') },
      { kind: 'treatment', trial: 'trial', jar: jars[0], name: secret('treatment') },
      { kind: 'session', ref: 'tasting', trial: 'trial', day: '2026-03-05', task: 'score', draw: secret('draw') },
      { kind: 'taster', ref: 'taster', name: secret('taster') },
      { kind: 'tasterAvoids', taster: 'taster', allergen: secret('health') },
      { kind: 'serving', ref: 'spoon', session: 'tasting', taster: 'taster', place: 1, jar: jars[0], code: 123 },
      { kind: 'mark', serving: 'spoon', aspect: secret('aspect'), word: secret('mark') },
      { kind: 'reminderDone', what: secret('reminder'), about: jars[0], at: '2026-03-01T22:00:00Z' },
    ],
  }); // prettier-ignore
  must(session, 'draft.save', { key: 'a', json: JSON.stringify(secret('draft')) });
  must(session, 'outcome.save', {
    jar: jars[2],
    outcome: { ...unseen, signs: ['pink'], setWord: 'firm' },
    onShelf: false,
  });
  must(session, 'caution.clear', { jar: jars[1], of: jars[2], reason: secret('reason of a lift') });
  must(session, 'jar.correct', { id: jars[3], changes: { note: secret('note of another jar') } });
  session.ledger.db.prepare('UPDATE ledger SET name = ? WHERE key = 1').run(secret('ledger'));
  return { session, jar: jars[1] };
}

describe('the file', () => {
  it('holds nothing private, of people, shops, prices, places, or of other jars', () => {
    const { session, jar } = secretive();
    const path = join(newFolder(), 'jar.json');
    const written = must(session, 'handOver.write', { jar, file: { path }, to: `${SECRET} receiver` });
    const text = readFileSync(path, 'utf8');
    expect(text.match(new RegExp(`${SECRET}[^"]*`, 'g'))).toBeNull();
    expect(text).not.toMatch(/1999|EUR/);
    expect(text).toContain('for whoever gets it');
    const file = HandOver.parse(JSON.parse(text));
    // By the checked-in schema, to another library.
    const schema = JSON.parse(
      readFileSync(join(import.meta.dirname, '../../core/schemas/hand-over-1.json'), 'utf8'),
    ) as object;
    const validate = new Ajv2020({ strict: true, strictTypes: false, formats: { date: true } }).compile(
      schema,
    );
    expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...file, records: [{ ...file.records[0], kind: 'taster' }] })).toBe(false);
    // The ancestry, and the spoiled jar that a caution rests on; its mate is no one's business.
    expect(file.records.filter(({ kind }) => kind === 'jar')).toHaveLength(3);
    expect(file.about.cautions).toEqual([expect.objectContaining({ lifted: true, liftedOn: '2026-03-14' })]);
    // It is kept here whom it went to.
    expect(must(session, 'handOver.list', {}).handOvers).toEqual([expect.objectContaining({ id: written.id, to: `${SECRET} receiver`, on: '2026-03-14' })]); // prettier-ignore
    // Asked for, private remarks go; nothing else does.
    const other = join(newFolder(), 'jar.json');
    must(session, 'handOver.write', { jar, file: { path: other }, include: ['private remarks'] });
    const asked = new Set(readFileSync(other, 'utf8').match(new RegExp(`${SECRET}[^"]*`, 'g')));
    expect(asked).toEqual(
      new Set(
        ['hold remark', 'remark', 'looked', 'reason of a lift', 'source note'].map(
          (where) => `${SECRET} ${where}`,
        ),
      ),
    );
    session.close();
  });

  it('tells allergens of the jar and three generations before it, older ones as traces', () => {
    const session = newSession();
    const tin = must(session, 'source.save', plainSource('Blue Tin')).id;
    let seed: string | null = null;
    for (const [at, name] of ['almond flour', 'soy flour', 'oat bran', 'inulin', 'potato starch'].entries()) {
      const seedings: Input<'batch.record'>['jars'][number]['seedings'] =
        seed === null ? [fromSource(tin)] : [fromJar(seed)];
      const additions = [{ name, planned: null, actual: null, package: null }];
      seed =
        must(session, 'batch.record', batchOf(`2026-03-0${at + 1}`, [plainJar('a', { seedings, additions })]))
          .jars[0] ?? null;
    }
    must(session, 'facts.record', { facts: [['almond flour', 'almonds'], ['Soy flour', 'soy'], ['oat bran', 'oats'], ['rye', 'rye']].map(([name = '', allergen = '']) => ({ kind: 'carries', name, allergen })) }); // prettier-ignore
    const { about } = must(session, 'handOver.write', {
      jar: seed ?? '',
      file: { path: join(newFolder(), 'a.json') },
    });
    expect(about.allergens).toEqual(['milk', 'oats', 'soy']);
    expect(about.traces).toEqual(['almonds']);
    expect(about.gate).toMatchObject({ jar: 'not noted', seeds: [{ gate: 'not noted' }] });
    session.close();
  });

  it.each([
    [null, 'not noted, nor whether it was raw', 'nothing'],
    ['half-and-half', 'half-and-half (raw or heated: not noted)', 'nothing'],
    ['Whole milk, ultra-pasteurised', 'Whole milk, ultra-pasteurised', 'nothing'],
    ['unpasteurized, from the farm', 'unpasteurized, from the farm; RAW', 'raw'],
    ['Rohmilch', 'Rohmilch; RAW', 'raw'],
    ['strawberry milk', 'strawberry milk (raw or heated: not noted)', 'nothing'],
  ])('tells of milk noted as %s: %s; how cold it stood, and for how long not, is said to be not noted', (milk, words, raw) => {
    const session = newSession();
    const tin = must(session, 'source.save', plainSource('Blue Tin')).id;
    const [jar = ''] = must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a', { milk, seedings: [fromSource(tin)] })])).jars;
    const rows = new Map(handOverRows(must(session, 'handOver.about', { jar }).about));
    expect(rows.get('Milk')?.startsWith(words), rows.get('Milk')).toBe(true);
    expect(rows.get('Stored')).toContain('how cold, and how many hours out of it: not noted');
    expect(session.ledger.index.family.jar(session.ledger.rows.keyOf('jar', jar)).rawMilk).toBe(raw === 'raw');
    session.close();
  }); // prettier-ignore

  it.each([[null, 'remark unread'], ['discard', 'remark discards'], ['look', null], ['fine', null]] as const)(
    'with a remark read as %s: %s', (readAs, code) => {
      const session = newSession();
      const { jars } = smallFamily(session);
      must(session, 'facts.record', { facts: [{ kind: 'remark', jar: jars[1], text: 'smells of the cellar', readAs }] });
      const result = ask(session, 'handOver.write', { jar: jars[1], file: { path: join(newFolder(), 'a.json') } });
      expect(result.ok ? null : result.error.code).toBe(code);
      session.close();
    },
  ); // prettier-ignore

  it('is stopped by a plain word of spoilage that nobody has read further up, and by a jar that is spoiled itself', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const file = { path: join(newFolder(), 'a.json') };
    must(session, 'facts.record', { facts: [{ kind: 'remark', jar: jars[0], text: 'pink spots on top' }] });
    expect(refusalOf(session, 'handOver.write', { jar: jars[1], file }).sentence).toContain(
      '“pink spots on top”',
    );
    must(session, 'act.undo', { act: null });
    must(session, 'outcome.save', { jar: jars[1], outcome: { ...unseen, signs: ['fuzz'] }, onShelf: null });
    expect(refusalOf(session, 'handOver.write', { jar: jars[1], file }).code).toBe('spoiled not given');
    must(session, 'handOver.write', { jar: jars[1], file, followUp: true });
    session.close();
  });
});

describe('taken in', () => {
  it('is shown before, with nothing kept; a later caution follows and sets aside what was made of it', () => {
    const giver = newSession();
    const { jars } = smallFamily(giver);
    const receiver = newSession();
    const file = { path: join(newFolder(), 'a.json') };
    must(giver, 'handOver.write', { jar: jars[1], file, to: 'the neighbours' });
    const empty = stateOf(receiver);
    const seen = must(receiver, 'handOver.preview', { file });
    expect(seen).toMatchObject({
      jar: jars[1],
      known: false,
      jars: 2,
      about: { generation: { deepest: 2 } },
    });
    expect(stateOf(receiver)).toBe(empty);
    expect(must(receiver, 'handOver.read', { file })).toMatchObject({ added: seen.added });
    const child = must(receiver, 'batch.record', batchOf('2026-03-12', [plainJar('n', { seedings: [fromJar(jars[1])] })])).jars[0] ?? ''; // prettier-ignore
    must(giver, 'outcome.save', {
      jar: jars[1],
      outcome: { ...unseen, signs: ['fuzz'], setWord: 'firm' },
      onShelf: null,
    });
    expect(must(giver, 'handOver.list', {}).handOvers).toMatchObject([
      { to: 'the neighbours', discard: 'spoiled' },
    ]);
    const later = { path: join(newFolder(), 'b.json') };
    must(giver, 'handOver.write', { jar: jars[1], file: later, followUp: true });
    must(receiver, 'handOver.read', { file: later });
    const made = must(receiver, 'family.get', {}).jars.find(({ id }) => id === child);
    expect(made?.cautions).toMatchObject([{ of: jars[1], level: 'set aside', cleared: false }]);
    must(receiver, 'act.undo', { act: null });
    expect(must(receiver, 'family.get', {}).jars.find(({ id }) => id === child)?.cautions).toEqual([]);
    giver.close();
    receiver.close();
  });

  it.each([[null, 'look'], [2.5, 'look'], [1, 'fine']] as const)(
    'after %s hours out of the cold on its way it is read as %s, once', (hoursOut, readAs) => {
      const [giver, receiver] = [newSession(), newSession()];
      const { jars } = smallFamily(giver);
      const file = { path: join(newFolder(), 'a.json') };
      must(giver, 'handOver.write', { jar: jars[1], file });
      must(receiver, 'handOver.read', { file, hoursOut });
      const told = () => must(receiver, 'remarks.list', { jar: jars[1], unread: false }).remarks;
      expect(told()).toMatchObject([{ readAs, of: 'jar' }]);
      const { safety } = must(receiver, 'jar.get', { id: jars[1] }).record;
      expect(safety?.looks.length ?? 0).toBeGreaterThanOrEqual(readAs === 'look' ? 1 : 0);
      expect(must(receiver, 'handOver.read', { file, hoursOut }).act).toBeNull();
      expect(told()).toHaveLength(1);
      giver.close();
      receiver.close();
    },
  ); // prettier-ignore

  it('waits where both sides changed it; of the invented ledger nothing comes into a keeper’s', () => {
    const giver = newSession();
    const { jars } = smallFamily(giver);
    const receiver = newSession();
    const path = join(newFolder(), 'a.json');
    must(giver, 'handOver.write', { jar: jars[1], file: { path } });
    must(receiver, 'handOver.read', { file: { path } });
    must(giver, 'jar.correct', { id: jars[1], changes: { vessel: 'quart jar' } });
    must(receiver, 'jar.correct', { id: jars[1], changes: { vessel: 'a crock' } });
    const later = join(newFolder(), 'b.json');
    must(giver, 'handOver.write', { jar: jars[1], file: { path: later } });
    expect(must(receiver, 'handOver.read', { file: { path: later } })).toMatchObject({
      waiting: 1,
      renewed: 0,
    });
    expect(must(receiver, 'received.list', {}).received).toMatchObject([{ record: jars[1], differs: ['vessel'], ours: { vessel: 'a crock' }, theirs: { vessel: 'quart jar' } }]); // prettier-ignore
    const demo = {
      ...(JSON.parse(readFileSync(path, 'utf8')) as object),
      ledger: { id: giver.ledger.about.uid, demo: true },
    };
    writeFileSync(path, JSON.stringify(demo));
    expect(refusalOf(receiver, 'handOver.read', { file: { path } }).code).toBe('hand-over of the demo');
    giver.close();
    receiver.close();
  });
});
