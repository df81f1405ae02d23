// Judgement is kept up as a ledger grows: whatever was recorded, corrected or undone, it is what judging all from scratch
// gives, and lines that an act can't have changed are not judged again.
import * as fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { judgedOf, judgeMore } from '../../main/ledger/judged';
import type { Session } from '../../main/session';
import {
  ask,
  batchOf,
  fromJar,
  fromSource,
  must,
  newSession,
  openSession,
  plainJar,
  plainSource,
  unseen,
} from '../ledger/ledger-files';
import { runs } from '../runs';

const WORDS = ['runny', 'soft', 'spoonable', 'firm', 'very firm', null] as const;
type Word = (typeof WORDS)[number];
const seen = (setWord: Word, ph: number | null = null) => ({ ...unseen, setWord, ph });
const day = (index: number): string =>
  new Date(Date.parse('2025-10-01') + index * 4 * 86_400_000).toISOString().slice(0, 10);

interface Kitchen {
  readonly session: Session;
  readonly jars: string[];
  /** Founding batches, by line. */
  readonly lines: string[];
}

/** That many lines of that many batches of two jars. */
function kitchen(lines: number, batches: number): Kitchen {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const jars: string[] = [];
  const founding: string[] = [];
  for (let line = 0; line < lines; line++) {
    let seed: string | null = null;
    for (let index = 0; index < batches; index++) {
      const seedings = [seed === null ? fromSource(source) : fromJar(seed)];
      const made: { batch: string; jars: string[] } = must(
        session,
        'batch.record',
        batchOf(day(index), ['a', 'b'].map((letter) => plainJar(letter, { seedings, outcome: seen('firm') })), { word: `line ${line}` }),
      ); // prettier-ignore
      if (index === 0) founding.push(made.batch);
      jars.push(...made.jars);
      seed = made.jars[0] ?? null;
    }
  }
  return { session, jars, lines: founding };
}

const judgeAll = ({ session }: Kitchen) => {
  const { all } = judgedOf(session.ledger);
  return all.lines.map((line) => all.line(line));
};
/** The same file opened anew: every row is read and every line judged again. */
const fromScratch = ({ session }: Kitchen) => {
  const again = openSession(session.ledger.file);
  const { all } = judgedOf(again.ledger);
  const judged = all.lines.map((line) => all.line(line));
  again.close();
  return judged;
};
const judgedAnew = ({ session, lines }: Kitchen): number[] =>
  judgedOf(session.ledger).all.judgedAnew.map((key) =>
    lines.indexOf(session.ledger.rows.uidOf('batch', key)),
  );

describe('after recording one jar', () => {
  let kept: Kitchen;
  beforeEach(() => {
    kept = kitchen(3, 6);
    judgeAll(kept);
  });
  const recordIn = (line: number) => {
    const seed = kept.jars[line * 12 + 10] ?? '';
    must(kept.session, 'batch.record', batchOf(day(7), [plainJar('a', { seedings: [fromJar(seed)], outcome: seen('soft') })])); // prettier-ignore
    return judgeAll(kept);
  };

  it('only its own line is judged again', () => {
    const before = judgeAll(kept);
    const after = recordIn(1);
    expect(judgedAnew(kept)).toEqual([1]);
    expect(after[0]).toBe(before[0]);
    expect(after[2]).toBe(before[2]);
    expect(after[1]?.batches).toHaveLength(7);
  });
  it('no line is judged again for what no judgement rests on', () => {
    must(kept.session, 'source.save', plainSource('Meadow Pot'));
    judgeAll(kept);
    expect(judgedAnew(kept)).toEqual([]);
  });
  it('every line is judged again where what is usual of all lines has changed', () => {
    must(kept.session, 'outcome.save', {
      jar: kept.jars[2] ?? '',
      outcome: seen('firm', 4.1),
      onShelf: null,
    });
    judgeAll(kept);
    expect(judgedAnew(kept).toSorted()).toEqual([0, 1, 2]);
  });
  it('a jar of two lines has both judged again', () => {
    const [one, two] = [kept.jars[10] ?? '', kept.jars[22] ?? ''];
    must(kept.session, 'batch.record', batchOf(day(7), [plainJar('a', { seedings: [fromJar(one), fromJar(two)], outcome: seen('firm') })])); // prettier-ignore
    judgeAll(kept);
    expect(judgedAnew(kept).toSorted()).toEqual([0, 1]);
  });
});

const anyAct = fc.oneof(
  fc.record({ act: fc.constant('outcome' as const), jar: fc.nat(), word: fc.constantFrom(...WORDS), spoiled: fc.boolean() }),
  fc.record({ act: fc.constant('batch' as const), jar: fc.nat(), word: fc.constantFrom(...WORDS), other: fc.option(fc.nat()) }),
  fc.record({ act: fc.constant('undo' as const) }),
); // prettier-ignore

it('is what judging all from scratch gives, begun in steps or not (property: any outcomes, batches, mixtures, undone acts)', () => {
  fc.assert(
    fc.property(
      fc.array(anyAct, { minLength: 1, maxLength: 8 }),
      fc.infiniteStream(fc.nat(3)),
      (acts, begun) => {
        const kept = kitchen(2, 5);
        judgeAll(kept);
        let made = 0;
        for (const one of acts) {
          const jar = 'jar' in one ? (kept.jars[one.jar % kept.jars.length] ?? '') : '';
          if (one.act === 'undo') ask(kept.session, 'act.undo', { act: null });
          else if (one.act === 'outcome') {
            const outcome = { ...seen(one.word), spoiledSaid: one.spoiled };
            ask(kept.session, 'outcome.save', { jar, outcome, onShelf: null });
          } else {
            const other = one.other === null ? [] : [fromJar(kept.jars[one.other % kept.jars.length] ?? '')];
            const seedings = [fromJar(jar), ...other];
            ask(kept.session, 'batch.record', batchOf(day(10 + made++), [plainJar('a', { seedings, outcome: seen(one.word) })])); // prettier-ignore
          }
          // Some of it may have been judged in steps, and the rest is asked for at once.
          for (let steps = Number(begun.next().value); steps > 0 && judgeMore(kept.session.ledger); steps--);
          expect(judgeAll(kept)).toEqual(fromScratch(kept));
        }
      },
    ),
    { numRuns: runs(6) },
  );
}, 60_000);
