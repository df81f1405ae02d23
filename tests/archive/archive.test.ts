// A whole ledger out as an archive and in again: nothing is lost, and written again it is the same, byte for byte.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { CFB } from '@e965/xlsx';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACT_KINDS } from '../../core/ledger/facts/all-facts';
import { archiveSchema, handOverSchema } from '../../core/schemas/json-schemas';
import { handlers } from '../../main/calls';
import type { Ledger } from '../../main/ledger/ledger';
import { photographFolder } from '../../main/ledger/worker-protocol';
import type { Session } from '../../main/session';
import { troubles } from '../facts/facts-in-memory';
import {
  ask,
  must,
  newFile,
  newFolder,
  newSession,
  openSession,
  refusalOf,
  stateOf,
} from '../ledger/ledger-files';
import { Generated } from '../ledger/generated-ledgers';
import { RandomKeeper, KINDS } from '../rules/random-keeper';
import { seededNumbers } from '../families';
import { askOf, emptyBeside, valueOf } from './bare-calls';
import { everyKind, kindsMissing } from './every-kind';
import { everyRead } from './every-read';
import { ranged, TOLD, tellMore } from './told-more';
import { runs } from '../runs';

const RUNS = runs(2);

/** Out, in, and out again. */
function roundTrip(ledger: Ledger): { back: Ledger; first: Buffer; second: Buffer } {
  const folder = newFolder();
  const [one, two] = [join(folder, 'one.zip'), join(folder, 'two.zip')];
  valueOf(askOf(ledger)('archive.write', { file: { path: one } }));
  const back = emptyBeside(ledger);
  valueOf(askOf(back)('archive.read', { file: { path: one } }));
  valueOf(askOf(back)('archive.write', { file: { path: two } }));
  return { back, first: readFileSync(one), second: readFileSync(two) };
}

function expectTheSame(ledger: Ledger): void {
  const { back, first, second } = roundTrip(ledger);
  expect(second.equals(first)).toBe(true);
  expect(troubles(back.db)).toEqual([]);
  expect(everyRead(askOf(back))).toEqual(everyRead(askOf(ledger)));
  // Undo goes on where it was: the same act is taken back, or refused for the same reason.
  for (let step = 0; step < 3; step += 1) {
    const [ours, theirs] = [ledger, back].map((one) => {
      const undone = askOf(one)('act.undo', { act: null });
      return undone.ok ? (undone.value as { says: string }).says : undone.error;
    });
    expect(theirs).toEqual(ours);
  }
  expect(everyRead(askOf(back))['family.get {}']).toEqual(everyRead(askOf(ledger))['family.get {}']);
}

describe('any ledger', () => {
  it(`of ${RUNS} generated ones comes back as it was`, () => {
    for (let seed = 1; seed <= RUNS; seed += 1) expectTheSame(new Generated(seed * 31).ledger);
  }, 240_000);

  it('of a keeper who writes down anything comes back as it was', () => {
    for (let seed = 1; seed <= RUNS; seed += 1) {
      const random = seededNumbers(seed);
      const keeper = new RandomKeeper();
      const number = (): number => Math.floor(random() * 1000);
      for (let move = 0; move < 40; move += 1)
        keeper.make([Math.floor(random() * KINDS), number(), number(), number()]);
      for (let more = 0; more < 3; more += 1) tellMore(keeper, number);
      // Some of it taken back, and one of that done again.
      for (const name of ['act.undo', 'act.undo', 'act.redo'] as const)
        keeper.ask(name, name === 'act.redo' ? {} : { act: null });
      for (const [kind, enough] of Object.entries(TOLD))
        expect([kind, keeper.ids(kind).length >= enough]).toEqual([kind, true]);
      expect(ranged(keeper)).toBeGreaterThan(0);
      expectTheSame(keeper.ledger);
    }
  }, 240_000);
});

describe('a ledger with every kind of record', () => {
  let session: Session;
  let archive: string;
  beforeAll(() => {
    session = everyKind();
    archive = join(newFolder(), 'all.zip');
    must(session, 'archive.write', { file: { path: archive } });
  });
  afterAll(() => session.close());

  it('has them', () => expect(kindsMissing(session)).toEqual([]));

  it('comes back into a file that is not there yet, photographs too, and is the same when written again', () => {
    const file = newFile();
    const back = openSession(file, 'open or begin');
    expect(must(back, 'archive.read', { file: { path: archive } })).toMatchObject({ photographs: 2 });
    expect(stateOf(back)).toBe(stateOf(session));
    const again = join(newFolder(), 'again.zip');
    expect(must(back, 'archive.write', { file: { path: again } })).toMatchObject({
      photographs: 2,
      missing: 0,
    });
    expect(readFileSync(again).equals(readFileSync(archive))).toBe(true);
    back.close();
    expect(readdirSync(photographFolder(file))).toEqual(readdirSync(photographFolder(session.ledger.file)));
    const opened = openSession(file);
    expect(everyRead((name, input) => ask(opened, name, input as never))).toEqual(
      everyRead((name, input) => ask(session, name, input as never)),
    );
    opened.close();
  });

  it('comes back from bytes, as from the window, and goes on from there', () => {
    const back = newSession();
    const bytes = Uint8Array.from(readFileSync(archive));
    must(back, 'archive.read', { file: { name: 'all.zip', bytes } });
    // The triggers are back: a new act is written down, and taken back whole.
    const before = stateOf(back);
    const [jar] = must(back, 'family.get', {}).jars;
    must(back, 'jar.correct', { id: jar?.id ?? '', changes: { vessel: 'a crock' } });
    expect(troubles(back.ledger.db)).toEqual([]);
    must(back, 'act.undo', { act: null });
    expect(stateOf(back)).toBe(before);
    back.close();
  });

  it('lies in a zip that another library reads, each line as the schema in it says', () => {
    const zip = CFB.read(readFileSync(archive), { type: 'buffer' });
    const text = (name: string): string => {
      const found = CFB.find(zip, `Root Entry/${name}`);
      return found ? Buffer.from(found.content as Uint8Array).toString('utf8') : '';
    };
    const schema = JSON.parse(text('schema.json')) as { $defs: Record<string, object> };
    expect(schema).toEqual(JSON.parse(JSON.stringify(archiveSchema())));
    const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, formats: { date: true } });
    const of = new Set(Object.keys(schema.$defs));
    let lines = 0;
    for (const name of of) {
      const validate = ajv.compile(schema.$defs[name] ?? {});
      if (name === 'archive.json') {
        expect(validate(JSON.parse(text(name)))).toBe(true);
        continue;
      }
      for (const line of text(`${name}.jsonl`)
        .split('\n')
        .filter((one) => one !== '')) {
        expect(validate(JSON.parse(line)), `${name}: ${line}: ${JSON.stringify(validate.errors)}`).toBe(true);
        lines += 1;
      }
    }
    expect(lines).toBeGreaterThan(100);
    expect([...of].filter((name) => name.startsWith('facts/'))).toHaveLength(FACT_KINDS.length);
    expect(text('README.txt')).toContain('facts/KIND.jsonl');
  });

  it('lies in a zip that the unzip of the system takes, where there is one', ({ skip }) => {
    const tested = spawnSync('unzip', ['-tq', archive], { encoding: 'utf8' });
    if (tested.error) skip('no unzip on this machine');
    expect(tested.stdout).toContain('No errors detected');
  });

  it('is never written over, nor half written', () => {
    const place = join(newFolder(), 'here.zip');
    writeFileSync(place, 'something of the keeper’s');
    expect(refusalOf(session, 'archive.write', { file: { path: place } }).code).toBe('file exists');
    const nowhere = join(newFolder(), 'no', 'such', 'folder.zip');
    expect(refusalOf(session, 'archive.write', { file: { path: nowhere } }).code).toBe('no folder there');
    for (const after of [0, 1, 5]) {
      const folder = newFolder();
      let steps = 0;
      const step = (): void => {
        if (steps++ === after) throw Object.assign(new Error('the disk is gone'), { code: 'EIO' });
      };
      const handler = handlers['archive.write'];
      expect(() =>
        handler(session, { file: { path: join(folder, 'a.zip') } }, { step, look: step }),
      ).toThrow();
      expect([after, readdirSync(folder)]).toEqual([after, []]);
      expect(session.ledger.db.inTransaction).toBe(false);
    }
  });

  it('is read into an empty ledger only, and stopping leaves it empty', () => {
    const full = newSession();
    must(full, 'draft.save', { key: 'a', json: '{}' });
    expect(refusalOf(full, 'archive.read', { file: { path: archive } }).code).toBe('ledger not empty');
    full.close();
    const empty = newSession();
    const before = stateOf(empty);
    for (const after of [0, 1, 2]) {
      let steps = 0;
      const step = (): void => {
        if (steps++ === after) throw new Error('stopped');
      };
      expect(() =>
        handlers['archive.read'](empty, { file: { path: archive } }, { step, look: step }),
      ).toThrow('stopped');
      expect(stateOf(empty)).toBe(before);
      expect(troubles(empty.ledger.db)).toEqual([]);
    }
    expect(existsSync(photographFolder(empty.ledger.file))).toBe(false);
    must(empty, 'archive.read', { file: { path: archive } });
    empty.close();
  });

  it('says how many photographs are not beside the ledger', () => {
    const folder = newFolder();
    const lost = everyKind(join(folder, 'ledger.sqlite'));
    const [first = ''] = readdirSync(photographFolder(lost.ledger.file));
    rmSync(join(photographFolder(lost.ledger.file), first));
    const reply = must(lost, 'archive.write', { file: { path: join(folder, 'a.zip') } });
    expect(reply).toMatchObject({ photographs: 1, missing: 1 });
    lost.close();
  });
});

it.each([
  ['archive-1.json', archiveSchema],
  ['hand-over-1.json', handOverSchema],
] as const)('the schema that is checked in as %s is the one that is written', (name, schema) => {
  const file = join(import.meta.dirname, '../../core/schemas', name);
  const made = schema();
  if (process.env.JARLINE_KEEP_SCHEMA !== undefined) writeFileSync(file, JSON.stringify(made, null, 2));
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(JSON.parse(JSON.stringify(made)));
});

it('what is not there, or no file, is said', () => {
  const session = newSession();
  const folder = newFolder();
  expect(refusalOf(session, 'archive.read', { file: { path: join(folder, 'none.zip') } }).sentence).toMatch(
    /^There is no file at .*none\.zip\. Check the name\.$/,
  );
  expect(refusalOf(session, 'archive.read', { file: { path: folder } }).code).toBe('archive unreadable');
  expect(refusalOf(session, 'archive.read', { file: { path: '/dev/zero' } }).code).toBe('archive unreadable');
  session.close();
});
