// A ledger as tables, and back: what notes.bringIn makes of jars.csv is the same family.
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { FamilyJarReply, Reply } from '../../core/contract';
import { FACT_KINDS } from '../../core/ledger/facts/all-facts';
import { tableText, withoutApostrophe } from '../../core/tables/table-text';
import type { Ledger } from '../../main/ledger/ledger';
import { askOf, emptyBeside, valueOf } from '../archive/bare-calls';
import { everyKind } from '../archive/every-kind';
import { troubles } from '../facts/facts-in-memory';
import {
  batchOf,
  fromSource,
  must,
  newFolder,
  newSession,
  plainJar,
  plainSource,
  refusalOf,
} from '../ledger/ledger-files';
import { runs } from '../runs';
import { Generated } from '../ledger/generated-ledgers';

const RUNS = runs(6);

const rowsOf = (file: string): string[][] =>
  Papa.parse<string[]>(readFileSync(file, 'utf8').replace(/^\uFEFF/, ''), { skipEmptyLines: true }).data;

const familyOf = (ledger: Ledger): FamilyJarReply[] =>
  (valueOf(askOf(ledger)('family.get', {})) as Reply<'family.get'>).jars;

/** Out as tables, and in again as notes. */
function roundTrip(ledger: Ledger): { back: Ledger; reply: Reply<'notes.bringIn'> } {
  const folder = join(newFolder(), 'tables');
  valueOf(askOf(ledger)('tables.write', { folder: { path: folder } }));
  const back = emptyBeside(ledger);
  const file = { path: join(folder, 'jars.csv') };
  const reply = valueOf(askOf(back)('notes.bringIn', { file })) as Reply<'notes.bringIn'>;
  return { back, reply };
}

/** What the two families must share, jars by their names. */
function told(jars: readonly FamilyJarReply[]): Map<string, object> {
  const nameOf = (id: string): string | null => {
    const found = jars.find((jar) => jar.id === id);
    return found ? `${found.madeOn} ${found.label}` : null;
  };
  return new Map(
    jars.map(({ id, madeOn, label, seeds, generation, setWord, ph, discard }) => [
      `${madeOn} ${label}`,
      {
        // One that had not set at take-out is told by that, whatever it looked like later.
        id: nameOf(id), madeOn, setWord: discard === null ? setWord : null, ph,
        // Shares by count rest on what a product declares, which no row of a jar tells.
        generation: { ...generation, mean: 0 },
        seeds: seeds.map((seed) => [seed.jar === null ? seed.source : nameOf(seed.jar), seed.amount]).toSorted(),
      },
    ]),
  ); // prettier-ignore
}

const GRAVITY = ['look', 'set aside', 'condemned'];
/** The gravest caution but for those that rest on a package, of which no row tells. */
const gravest = ({ cautions }: FamilyJarReply): number =>
  Math.max(-1, ...cautions.map(({ level, how }) => (how.includes('package') ? -1 : GRAVITY.indexOf(level))));

describe('jars.csv', () => {
  it('tells jars of a range of days as such, beside one of the day in their middle', () => {
    const session = newSession();
    const source = must(session, 'source.save', plainSource('Blue Tin')).id;
    const range = { madeFrom: '2026-01-03', madeTo: '2026-01-09' };
    const about = must(
      session,
      'batch.record',
      batchOf(null, [plainJar('a', { seedings: [fromSource(source)] }), plainJar('b')], range),
    );
    must(session, 'batch.record', batchOf('2026-01-06', [plainJar('a', { seedings: [fromSource(source)] })]));
    const seedings = [{ ...fromSource(source), source: null, fromJar: about.jars[1] ?? null, amount: null }];
    must(session, 'batch.record', batchOf('2026-01-20', [plainJar('a', { seedings })]));
    const folder = join(newFolder(), 'tables');
    must(session, 'tables.write', { folder: { path: folder } });
    const back = newSession();
    const reply = must(back, 'notes.bringIn', { file: { path: join(folder, 'jars.csv') } });
    expect(reply.problems).toEqual([]);
    const [ours, theirs] = [session, back].map((one) => must(one, 'family.get', {}).jars);
    expect(told(theirs ?? [])).toEqual(told(ours ?? []));
    expect(theirs?.map(({ madeBetween }) => madeBetween)).toEqual(
      ours?.map(({ madeBetween }) => madeBetween),
    );
  });

  it(`of ${RUNS} generated ledgers comes back as the same family, no jar less careful`, () => {
    const seen = { jars: 0, seeds: 0, cautions: 0 };
    for (let seed = 1; seed <= RUNS; seed += 1) {
      const { ledger } = new Generated(seed * 13 + 5);
      if (familyOf(ledger).length === 0) continue;
      const { back, reply } = roundTrip(ledger);
      expect(reply.problems, `seed ${seed}`).toEqual([]);
      const [ours, theirs] = [familyOf(ledger), familyOf(back)];
      expect(told(theirs), `seed ${seed}`).toEqual(told(ours));
      for (const [at, jar] of ours.entries()) {
        const other = theirs.find(({ label, madeOn }) => label === jar.label && madeOn === jar.madeOn);
        if (!other) throw new Error(`${jar.label} did not come back`);
        if (jar.discard !== null) expect(other.discard, `seed ${seed} jar ${at}`).not.toBeNull();
        expect(gravest(other), `seed ${seed} ${jar.label}`).toBeGreaterThanOrEqual(gravest(jar));
        seen.jars += 1;
        seen.seeds += jar.seeds.length;
        seen.cautions += jar.cautions.length;
      }
      expect(troubles(back.db)).toEqual([]);
    }
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(0);
  }, 240_000);
});

const NAMES = [
  'Tin & Pot', 'Salt and Sun', 'Mix 12', 'Number 7 Tin', "Anna's Tin", 'Garden, green', 'Blue + Red', 'The Previous', 'a 5 b',
  'Whey Wonder', '=Tin', 'Half Moon', 'Tin “new” (5 pieces)', 'Garden Caps', 'or else', '3 May a',
]; // prettier-ignore

describe('names that mean something else', () => {
  it('products and cultures come back by any name', () => {
    const session = newSession();
    const jars = NAMES.flatMap((name, at) =>
      (['capsules', 'culture'] as const).map((form) => {
        const source = { ...plainSource(`${name}${form === 'culture' ? ' too' : ''}`).source, form };
        const { id } = must(session, 'source.save', { source });
        return plainJar(`${form[1]}${at}`, { seedings: [fromSource(id, 5)] });
      }),
    );
    must(session, 'batch.record', batchOf('2026-03-01', jars));
    const { back, reply } = roundTrip(session.ledger);
    expect(reply.problems).toEqual([]);
    expect(told(familyOf(back))).toEqual(told(familyOf(session.ledger)));
    session.close();
  });
});

describe('the other tables', () => {
  it('hold every fact of every kind, with its id, and none of it as a formula', () => {
    const session = everyKind();
    const folder = join(newFolder(), 'tables');
    const { files, rows } = must(session, 'tables.write', { folder: { path: folder } });
    let found = rowsOf(join(folder, 'jars.csv')).length + rowsOf(join(folder, 'readings.csv')).length - 2;
    for (const kind of FACT_KINDS) {
      const [headings, ...facts] = rowsOf(join(folder, `facts/${kind}.csv`));
      expect(headings?.[0]).toBe('id');
      expect(facts.length, kind).toBeGreaterThan(0);
      expect(new Set(facts.map(([id]) => id)).size).toBe(facts.length);
      found += facts.length;
    }
    expect(found).toBe(rows);
    expect(readdirSync(folder).length + readdirSync(join(folder, 'facts')).length - 1).toBe(files);
    expect(refusalOf(session, 'tables.write', { folder: { path: folder } }).code).toBe('folder not empty');
    expect(refusalOf(session, 'tables.write', { folder: { name: 'tables' } }).code).toBe('not from here');
    const missing = join(folder, 'no', 'folder');
    expect(refusalOf(session, 'tables.write', { folder: missing }).code).toBe('no folder there');
    session.close();
  });

  it('go into an empty folder that is there', () => {
    const session = newSession();
    const folder = join(newFolder(), 'empty');
    mkdirSync(folder);
    must(session, 'tables.write', { folder });
    expect(existsSync(join(folder, 'README.txt'))).toBe(true);
    session.close();
  });

  it.each(['=1+1', '+1', '-1', '@a', '\t=1', ' =1', "'=1", "''+1", '＝1', 'a=1', "it's", '', "'"])(
    'text %j starts no formula, and is the same again', (text) => {
      const [[cell = ''] = []] = Papa.parse<string[]>(tableText([[text, 'x']]), { newline: '\r\n' }).data;
      expect(cell).not.toMatch(/^[\s\0]*[=+\-@＝＋－＠\t\r]/);
      expect(withoutApostrophe(cell)).toBe(text);
    },
  ); // prettier-ignore
});
