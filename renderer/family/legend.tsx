// What the drawing's signs mean: opened when wanted.
import { FLAG } from '../../core/shapes/drawing-flags';
import { JarDefs, JarPicture } from '../parts/jar-shape';
import { SET_WORDS } from '../../core/ledger/jar-fields';

const KNOWN = FLAG.outcomeKnown;
const signs: readonly {
  readonly setWord: number;
  readonly flags: number;
  readonly generation: number;
  readonly says: string;
  readonly score?: number;
}[] = [
  ...SET_WORDS.map((word, setWord) => ({ setWord, flags: KNOWN, generation: 3, says: word })),
  { setWord: 255, flags: 0, generation: 3, says: 'outcome unknown' },
  { setWord: 3, flags: KNOWN | FLAG.onShelf, generation: 3, says: 'some is on the shelf' },
  {
    setWord: 3,
    flags: KNOWN | FLAG.atLeast,
    generation: 3,
    says: 'at least this generation: some of its past is unknown',
  },
  { setWord: 3, flags: KNOWN | FLAG.spoiled, generation: 3, says: 'spoiled: discard' },
  {
    setWord: 3,
    flags: KNOWN | FLAG.setAside,
    generation: 3,
    says: 'set aside, because of a spoiled jar: a wide lid with a bar',
  },
  {
    setWord: 3,
    flags: KNOWN | FLAG.look,
    generation: 3,
    says: 'look at it before using it: a ring on the lid',
  },
  {
    setWord: 3,
    flags: KNOWN,
    generation: 3,
    score: 75,
    says: 'the level marked on the walls is vigour, from the foot (0) to the shoulder (100); it says nothing about safety',
  },
  { setWord: 255, flags: FLAG.lost, generation: 3, says: 'a jar nobody can name' },
];

export function Legend() {
  return (
    <section className="family-legend" id="family-legend" aria-label="What the signs mean">
      <svg className="visually-hidden" aria-hidden="true">
        <JarDefs />
      </svg>
      <ul>
        {signs.map((sign) => (
          <li key={sign.says}>
            <JarPicture
              generation={sign.generation}
              setWord={sign.setWord}
              flags={sign.flags}
              score={sign.score ?? null}
            />
            <span>{sign.says}</span>
          </li>
        ))}
      </ul>
      <p className="soft">
        The number is the generation: how many jars deep a jar stands from what its line was started with. A
        line runs level: the jars that lead to its newest one stand in one row, jars made with them above and
        below. A ribbon is a seeding, as wide as its share of the seed. The jar that glows is advised as the
        next seed. The packets at the head of a line are what it was started from, with a cell for each strain
        declared on them: declared at the start, not tested since. A small slip at a jar’s inlet is a product
        it was topped up with.
      </p>
    </section>
  );
}
