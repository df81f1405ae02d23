// The rules of the ledger: what can't have been, what must be asked, and what a correction may not break.
import { describe, expect, it } from 'vitest';
import {
  ask,
  batchOf,
  fromJar,
  fromSource,
  must,
  newSession,
  plainJar,
  plainSource,
  refusalOf,
  smallFamily,
  stateOf,
  unseen,
} from './ledger-files';

describe('what seeded a jar', () => {
  it('can’t be the jar itself, an ancestor’s descendant, or a jar made later', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const before = stateOf(session);
    const later = refusalOf(session, 'seeding.set', { jar: jars[0], seedings: [fromJar(jars[1])] });
    expect(later.code).toBe('seed made later');
    expect(later.sentence).toContain('5 Mar a');
    expect(later.sentence).toContain('1 Mar a');
    expect(refusalOf(session, 'seeding.set', { jar: jars[0], seedings: [fromJar(jars[0])] }).code).toBe(
      'own ancestor',
    );
    expect(stateOf(session)).toBe(before);
  });

  it('can’t run in a circle within one day, and the sentence names it', () => {
    const session = newSession();
    const { jars } = must(
      session,
      'batch.record',
      batchOf(
        '2026-03-01',
        ['a', 'b', 'c'].map((letter) => plainJar(letter)),
      ),
    );
    const [a = '', b = '', c = ''] = jars;
    must(session, 'seeding.set', { jar: b, seedings: [fromJar(a)] });
    must(session, 'seeding.set', { jar: c, seedings: [fromJar(b)] });
    const refusal = refusalOf(session, 'seeding.set', { jar: a, seedings: [fromJar(c)] });
    expect(refusal.code).toBe('own ancestor');
    expect(refusal.params.loop).toEqual(['1 Mar a', '1 Mar b', '1 Mar c', '1 Mar a']);
  });

  it('holds also against another program writing rows under an act', () => {
    const session = newSession();
    const { acts, db } = session.ledger;
    const { jars } = smallFamily(session);
    const keys = jars.map((uid) => session.ledger.rows.keyOf('jar', uid));
    const seed = (jar: number, from: number): void => {
      acts.run('seeding.set', 'x', null, (act) => {
        const { lastInsertRowid } = db
          .prepare("INSERT INTO record (uid, kind, made_in) VALUES (?, 'seeding', ?)")
          .run(String(jar).repeat(36).slice(0, 36), act.key);
        db.prepare('INSERT INTO seeding (key, jar, from_jar) VALUES (?, ?, ?)').run(
          lastInsertRowid,
          jar,
          from,
        );
        return act;
      });
    };
    expect(() => seed(keys[0] ?? 0, keys[1] ?? 0)).toThrow(/no later than its jar/);
    seed(keys[3] ?? 0, keys[2] ?? 0);
    expect(() => seed(keys[2] ?? 0, keys[3] ?? 0)).toThrow(/own ancestor|UNIQUE/);
    expect(() =>
      acts.run('batch.correct', 'x', null, () =>
        db.exec("UPDATE batch SET made_on = '2026-03-20' WHERE made_on = '2026-03-01'"),
      ),
    ).toThrow(/no later than its jar/);
  });

  it('is checked again when a date is corrected', () => {
    const session = newSession();
    const { batches } = smallFamily(session);
    const before = stateOf(session);
    const [first = '', second = ''] = batches;
    const up = refusalOf(session, 'batch.correct', { id: first, changes: { madeOn: '2026-03-06' } });
    expect(up.code).toBe('seed made later');
    expect(up.sentence).toContain('5 Mar a');
    expect(refusalOf(session, 'batch.correct', { id: second, changes: { madeOn: '2026-02-20' } }).code).toBe(
      'seed made later',
    );
    expect(refusalOf(session, 'batch.correct', { id: second, changes: { madeOn: '2026-03-10' } }).code).toBe(
      'seed made later',
    );
    expect(stateOf(session)).toBe(before);
    must(session, 'batch.correct', { id: second, changes: { madeOn: '2026-03-09', word: 'late' } });
    must(session, 'batch.correct', { id: first, changes: { madeOn: '2026-03-09', word: 'early' } });
  });

  it('is one thing, a made one, and a portion of that jar', () => {
    const session = newSession();
    const { jars, source } = smallFamily(session);
    const portion = must(session, 'portion.save', {
      portion: { id: null, jar: jars[0], part: 'whey', place: 'freezer', pieces: 6, amount: null, keptOn: '2026-03-02', goneOn: null, reserve: true, note: null },
    }).id; // prettier-ignore
    const set = (seeding: ReturnType<typeof fromJar>) =>
      refusalOf(session, 'seeding.set', { jar: jars[2], seedings: [seeding] }).code;
    expect(set({ ...fromJar(jars[1]), source })).toBe('one seed');
    expect(set({ ...fromJar(jars[1]), fromJar: null })).toBe('one seed');
    expect(set({ ...fromJar(jars[1]), portion })).toBe('portion of another jar');
    must(session, 'seeding.set', { jar: jars[2], seedings: [{ ...fromJar(jars[0]), portion }] });
    const planned =
      must(session, 'batch.record', batchOf('2026-03-02', [plainJar('p', { state: 'planned' })])).jars[0] ??
      '';
    expect(set(fromJar(planned))).toBe('seed not made');
    must(session, 'jar.mistake', { id: jars[3] });
    expect(set(fromJar(jars[3]))).toBe('seed not made');
  });
});

describe('labels', () => {
  it('that are equal are asked about, whatever their case', () => {
    const session = newSession();
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    const again = batchOf('2026-03-01', [plainJar('A')]);
    expect(refusalOf(session, 'batch.record', again)).toMatchObject({
      code: 'same label',
      params: { label: '1 Mar a' },
    });
    expect(
      refusalOf(session, 'batch.record', batchOf('2026-03-02', [plainJar('b'), plainJar('B')])).code,
    ).toBe('same label');
    must(session, 'batch.record', { ...again, sameLabelMeant: true });
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')], { word: 'plain' }));
    expect(
      refusalOf(session, 'batch.record', batchOf('2026-03-01', [plainJar('A')], { word: ' Plain ' })).code,
    ).toBe('same label');
  });

  it('are free again once a jar was entered by mistake', () => {
    const session = newSession();
    const { jars } = must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    must(session, 'jar.mistake', { id: jars[0] ?? '' });
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
  });

  it('carry the year where another year has the same', () => {
    const session = newSession();
    must(session, 'batch.record', batchOf('2025-03-14', [plainJar('b')]));
    must(session, 'batch.record', batchOf('2026-03-14', [plainJar('a'), plainJar('b')]));
    const labels = (): string[] => must(session, 'family.get', {}).jars.map(({ label }) => label);
    expect(labels()).toEqual(['14 Mar 2025 b', '14 Mar a', '14 Mar 2026 b']);
    must(session, 'act.undo', { act: null });
    expect(labels()).toEqual(['14 Mar b']);
  });
});

describe('a jar entered by mistake', () => {
  it('leaves the family, and what it seeded has an unknown past', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'jar.mistake', { id: jars[1], why: 'wrong shelf' });
    const family = must(session, 'family.get', {});
    expect(family.jars.map(({ label }) => label)).toEqual(['1 Mar a', '9 Mar a', '9 Mar b']);
    expect(family.jars[1]?.generation).toEqual({ deepest: 2, shallowest: 2, mean: 2, atLeast: true });
    expect(family.jars[1]?.seeds).toEqual([
      { jar: null, source: null, amount: { value: 45, unit: 'mL' }, share: 1 },
    ]);
    expect(refusalOf(session, 'jar.get', { id: jars[1] }).code).toBe('is a mistake');
    expect(refusalOf(session, 'jar.correct', { id: jars[1], changes: { milk: 'whole' } }).code).toBe(
      'is a mistake',
    );
    expect(must(session, 'jar.find', { text: '5 mar', limit: 5, notAfter: null }).jars).toEqual([]);
    expect(must(session, 'batch.list', { before: null, limit: 9 }).batches.length).toBe(2);
    const { acts } = must(session, 'history.list', {
      record: { kind: 'jar', id: jars[1] },
      before: null,
      limit: 9,
    });
    expect(acts[0]).toMatchObject({ says: 'marked 5 Mar a as entered by mistake', why: 'wrong shelf' });
  });
});

it('planned jars are never counted, and become made', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const { batch, jars: made } = must(
    session,
    'batch.record',
    batchOf('2026-03-20', [plainJar('a', { state: 'planned', seedings: [fromJar(jars[2])] })]),
  );
  const planned = made[0] ?? '';
  expect(must(session, 'family.get', {}).jars.length).toBe(4);
  expect(refusalOf(session, 'jar.correct', { id: planned, changes: { state: 'made' } }).code).toBe(
    'day to come',
  );
  must(session, 'batch.correct', { id: batch, changes: { madeOn: '2026-03-14' } });
  must(session, 'jar.correct', { id: planned, changes: { state: 'made' } });
  expect(must(session, 'family.get', {}).jars.at(-1)?.generation.deepest).toBe(4);
  expect(refusalOf(session, 'jar.correct', { id: jars[2], changes: { state: 'planned' } }).code).toBe(
    'has descendants',
  );
});

it('a lost jar stands in the family, and may have seeded others', () => {
  const session = newSession();
  const lost = must(session, 'jar.lost', { madeOn: null, label: 'blue lid', note: null }).jar;
  const { jars } = must(
    session,
    'batch.record',
    batchOf('2026-03-05', [plainJar('a', { seedings: [fromJar(lost)] })]),
  );
  const family = must(session, 'family.get', {});
  expect(family.jars[0]).toMatchObject({ id: lost, label: 'lost blue lid a', madeOn: null });
  expect(family.jars[1]).toMatchObject({ id: jars[0], generation: { deepest: 2, atLeast: true } });
  expect(refusalOf(session, 'seeding.set', { jar: lost, seedings: [fromJar(jars[0] ?? '')] }).code).toBe(
    'day not known',
  );
  const second = must(session, 'jar.lost', { madeOn: null, label: 'blue lid', note: null }).jar;
  expect(must(session, 'jar.get', { id: second }).view.label).toBe('lost blue lid b');
});

describe('cautions', () => {
  it('follow what was seen, say how each jar is touched, and are lifted only with a reason', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: { ...unseen, signs: ['pink'] }, onShelf: false });
    const how = (): string[][] =>
      must(session, 'family.get', {}).jars.map(({ cautions }) => cautions.map((one) => one.how));
    expect(how()[0]?.[0]).toMatch(/^look: /);
    expect(how()[1]?.[0]).toMatch(/^condemned: /);
    expect(how()[2]).toEqual(['set aside: seeded by it']);
    const clear = { jar: jars[2], of: jars[1], reason: 'opened, pH 4.2 by meter, looks and smells clean' };
    expect(refusalOf(session, 'caution.clear', { ...clear, jar: jars[1] }).code).toBe('condemned stays');
    expect(refusalOf(session, 'caution.clear', { ...clear, of: jars[0] }).code).toBe('no such caution');
    expect(refusalOf(session, 'caution.clear', { ...clear, reason: '     ' }).code).toBe('invalid');
    must(session, 'caution.clear', clear);
    expect(refusalOf(session, 'caution.clear', clear).code).toBe('already lifted');
    const shown = must(session, 'jar.get', { id: jars[2] });
    expect(shown.cautions).toMatchObject([{ label: '5 Mar a', cleared: true, reason: clear.reason }]);
    expect(shown.view.caution).toBeNull();
    must(session, 'act.undo', { act: null });
    expect(must(session, 'jar.get', { id: jars[2] }).view.caution).toBe('set aside');
  });
});

describe('what is typed', () => {
  it('is trimmed, empty is unknown, and what can’t be kept is refused', () => {
    const session = newSession();
    const { jars } = must(
      session,
      'batch.record',
      batchOf('2026-03-01', [plainJar(' A ', { milk: '  whole  ', note: '   ' })]),
    );
    const { record } = must(session, 'jar.get', { id: jars[0] ?? '' });
    expect(record.jar).toMatchObject({ letter: 'a', milk: 'whole', note: null });
    for (const bad of ['a\u0000b', 'half \ud83d pair']) {
      expect(refusalOf(session, 'jar.correct', { id: jars[0] ?? '', changes: { note: bad } }).code).toBe(
        'unreadable',
      );
    }
    const kept = 'tab\t, “quotes”, ½ cup, ë, 👍 and\na second line';
    must(session, 'jar.correct', { id: jars[0] ?? '', changes: { note: kept } });
    expect(must(session, 'jar.get', { id: jars[0] ?? '' }).record.jar.note).toBe(kept);
    expect(refusalOf(session, 'jar.correct', { id: jars[0] ?? '', changes: { note: kept } }).code).toBe(
      'nothing changed',
    );
  });

  it('must be in order', () => {
    const session = newSession();
    const hold = {
      startedAt: '2026-03-01T18:00:00+01:00',
      endedAt: '2026-03-01T16:30:00Z',
      hours: null,
      planned: null,
      probe: null,
      readings: [],
      note: null,
    };
    expect(
      refusalOf(
        session,
        'batch.record',
        batchOf('2026-03-01', [plainJar('a', { hold: 0 })], { holds: [hold] }),
      ).code,
    ).toBe('times crossed');
    expect(
      refusalOf(
        session,
        'batch.record',
        batchOf('2026-03-01', [plainJar('a', { hold: 1 })], { holds: [{ ...hold, endedAt: null }] }),
      ).code,
    ).toBe('no such hold');
    const good = must(
      session,
      'batch.record',
      batchOf('2026-03-01', [plainJar('a', { hold: 0 })], {
        holds: [{ ...hold, endedAt: '2026-03-03T06:00:00+01:00' }],
      }),
    );
    expect(must(session, 'family.get', {}).jars[0]?.holdHours).toBe(36);
    const other = must(session, 'batch.record', batchOf('2026-03-02', [plainJar('a')]));
    const foreign = must(session, 'batch.get', { id: good.batch }).holds[0]?.id ?? '';
    expect(
      refusalOf(session, 'jar.correct', { id: other.jars[0] ?? '', changes: { hold: foreign } }).code,
    ).toBe('hold of another batch');
    const outcome = { ...unseen, setAfterHours: 12, setByHours: 8 };
    expect(
      refusalOf(session, 'outcome.save', { jar: other.jars[0] ?? '', outcome, onShelf: null }).code,
    ).toBe('times crossed');
  });
});

it('a draft is gone with the act that records it, and comes back with none', () => {
  const session = newSession();
  must(session, 'draft.save', { key: 'new batch', json: '{"letter":"a"}' });
  must(session, 'draft.save', { key: 'new batch', json: '{"letter":"ab"}' });
  expect(must(session, 'draft.list', {}).drafts.map(({ json }) => json)).toEqual(['{"letter":"ab"}']);
  refusalOf(
    session,
    'batch.record',
    batchOf('2026-03-01', [plainJar('a'), plainJar('a')], { draft: 'new batch' }),
  );
  expect(must(session, 'draft.list', {}).drafts.length).toBe(1);
  must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')], { draft: 'new batch' }));
  expect(must(session, 'draft.list', {}).drafts).toEqual([]);
  expect(refusalOf(session, 'draft.save', { key: 'x', json: '{' }).code).toBe('invalid');
});

/** A JPEG with a frame of 40 by 30 and nothing drawn in it. */
const jpeg = (extra: readonly number[]): Uint8Array<ArrayBuffer> =>
  Uint8Array.from([
    0xff,
    0xd8,
    ...extra,
    0xff,
    0xc0,
    0,
    11,
    8,
    0,
    30,
    0,
    40,
    1,
    1,
    0x11,
    0,
    0xff,
    0xda,
    0,
    2,
    1,
    2,
    0xff,
    0xd9,
  ]);

it('a photograph is kept by its hash, and only when nothing but the picture is in it', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const exif = [0xff, 0xe1, 0, 8, 0x45, 0x78, 0x69, 0x66, 0, 0];
  const add = (bytes: Uint8Array<ArrayBuffer>) =>
    ask(session, 'photograph.add', { jar: jars[0], bytes, caption: ' top ' });
  expect(add(jpeg(exif))).toMatchObject({ ok: false, error: { code: 'no re-encoder' } });
  expect(add(new TextEncoder().encode('hello'))).toMatchObject({
    ok: false,
    error: { code: 'not a photograph' },
  });
  expect(add(jpeg([]))).toMatchObject({
    ok: true,
    value: { photograph: { width: 40, height: 30, caption: 'top' } },
  });
  expect(must(session, 'photograph.list', { jar: jars[0] }).photographs.length).toBe(1);
});

it('seeds of a source follow what the source declares', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin', { blendTotalPerPiece: null }));
  must(
    session,
    'batch.record',
    batchOf('2026-03-01', [plainJar('a', { seedings: [fromSource(source.id)] })]),
  );
  const start = (): number | null => must(session, 'family.get', {}).jars[0]?.doublings.start ?? null;
  expect(start()).toBeNull();
  must(session, 'source.save', {
    source: { ...plainSource('Blue Tin', { blendTotalPerPiece: 1e9 }).source, id: source.id },
  });
  // log2(2e8 per mL × 946 mL / (10 pieces × 1e9)): plain arithmetic.
  expect(start()).toBeCloseTo(Math.log2((2e8 * 946) / 1e10), 12);
});
