// Line "Lantern", invented: received from a neighbouring club, its past unknown. Steady, with one cold night and one
// spoiled jar on a side branch.
import { from, jar, saw, spoons, timed, usual, type DemoBatch, type DemoHold } from './scenario-shapes';

const plainGood = timed('starting', 5.3, 12, 15);

/** The heater's plug worked loose in the evening and was found in the morning. */
const coldNight: DemoHold = {
  hours: 32,
  planned: 37,
  readings: [
    [0, 33],
    [2, 35.8],
    [3, 34.3],
    [5, 30.6],
    [7, 27.6],
    [9, 25.3],
    [11, 23.6],
    [13, 22.5],
    [14, 24.6],
    [16, 29.1],
    [18, 32.7],
    [20, 35],
    [24, 36.8],
    [28, 37],
    [32, 37],
  ],
  note: 'The plug had worked loose: cold from about nine in the evening until half past eight.',
};

export const lantern: readonly DemoBatch[] = [
  {
    day: '2025-11-05',
    word: 'Lantern',
    note: 'A pot from the hillside club; nobody there knows how long they have kept it.',
    holds: [usual()],
    jars: [
      jar(
        'a',
        { source: 'Hillside pot', ml: 45 },
        saw('firm', 4.37, timed('starting', 5.45, 13, 17)),
        '2025-11-30',
      ),
      jar('b', { source: 'Hillside pot', ml: 45 }, saw('spoonable', 4.4, { whey: 'a little' }), '2025-11-15'),
      jar('c', { source: 'Hillside pot', ml: 45 }, saw('firm', null), '2025-11-18', {
        additions: [spoons('potato starch', 2)],
      }),
    ],
  },
  {
    day: '2025-11-26',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2025-11-05 a'), saw('firm', 4.35, plainGood), '2025-12-20', {
        note: 'Eight cubes of this one went into the freezer.',
      }),
      jar('b', from('2025-11-05 a'), saw('firm', 4.36), '2025-12-06'),
      jar('c', from('2025-11-05 a'), saw('firm', 4.36), '2025-12-08', {
        additions: [spoons('chicory inulin', 1.5)],
      }),
    ],
  },
  {
    day: '2025-12-17',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2025-11-26 a'), saw('firm', 4.36, plainGood), '2026-01-10'),
      jar('b', from('2025-11-26 a'), saw('firm', 4.35, timed('starting', 5.3, 12, 16)), '2025-12-30'),
      jar('c', from('2025-11-26 a'), saw('very firm', 4.34), '2025-12-29', {
        additions: [spoons('potato starch', 2)],
      }),
    ],
  },
  {
    day: '2026-01-07',
    word: null,
    note: 'Not written down either.',
    holds: [usual()],
    jars: [
      jar('a', from('2025-12-17 a'), null, '2026-01-31'),
      jar('b', from('2025-12-17 a'), null, '2026-01-20'),
    ],
  },
  {
    day: '2026-01-28',
    word: null,
    note: 'A cold night for the bath. Everything came out softer.',
    holds: [coldNight],
    jars: [
      jar(
        'a',
        from('2026-01-07 a'),
        saw('soft', 4.51, { ...timed('loose', 6.3, 27, 31), whey: 'a little' }),
        '2026-02-10',
      ),
      jar('b', from('2026-01-07 a'), saw('soft', 4.5, timed('loose', 6.3, 27, 31)), '2026-02-21'),
      jar('c', from('2026-01-07 a'), saw('soft', 4.52), '2026-02-11', {
        additions: [spoons('acacia fibre', 2, 1.5)],
      }),
    ],
  },
  {
    day: '2026-02-18',
    word: null,
    note: 'Firm again.',
    holds: [usual()],
    jars: [
      jar('a', from('2026-01-28 b'), saw('firm', 4.35, plainGood), '2026-03-14'),
      jar('b', from('2026-01-28 b'), saw('firm', 4.36, plainGood), '2026-03-02'),
      jar('c', from('2026-01-28 b'), saw('very firm', 4.35), '2026-03-03', {
        additions: [spoons('potato starch', 2)],
      }),
    ],
  },
  {
    day: '2026-03-11',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2026-02-18 a'), saw('firm', 4.36, plainGood), '2026-04-04'),
      jar('b', from('2026-02-18 a'), saw('firm', 4.35), '2026-03-24'),
      jar(
        'c',
        { jar: '2025-11-26 a', ml: 45, portion: 'Lantern cubes' },
        saw('firm', 4.37, timed('starting', 5.6, 14, 18)),
        '2026-03-25',
        { note: 'Three cubes, thawed overnight. Slower to start, just as firm.' },
      ),
    ],
  },
  {
    day: '2026-04-01',
    word: null,
    note: null,
    holds: [
      usual(),
      { ...usual(38), note: 'The odd jar did not fit the bath and went into the insulated box.' },
    ],
    jars: [
      jar('a', from('2026-03-11 a'), saw('firm', 4.35, plainGood), '2026-04-25'),
      jar('b', from('2026-03-11 a'), saw('firm', 4.36, plainGood), '2026-04-14'),
      jar('c', from('2026-03-11 a'), saw('firm', 4.38), '2026-04-16', {
        hold: 1,
        volumeMl: 500,
        ownCarton: true,
        note: 'Seed was spooned out on 8 Apr and the lid closed again; opened for eating on 15 Apr.',
      }),
    ],
  },
  {
    day: '2026-04-08',
    word: null,
    note: 'Two small jars for the seedling sale.',
    holds: [usual()],
    jars: [
      jar('a', from('2026-04-01 c', 25), saw('firm', 4.37), null, { volumeMl: 500 }),
      jar('b', from('2026-04-01 c', 25), saw('firm', 4.37), null, { volumeMl: 500 }),
    ],
  },
  {
    day: '2026-04-15',
    word: null,
    note: null,
    why: 'It was seeded the evening before 1 Apr c was seen to be pink. Nothing of it is eaten.',
    holds: [usual()],
    jars: [jar('a', from('2026-04-08 a', 25), saw('firm', 4.36), null, { volumeMl: 500 })],
  },
  {
    day: '2026-04-22',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2026-04-01 a'), saw('firm', 4.36, plainGood), null),
      jar('b', from('2026-04-01 a'), saw('firm', 4.35), null),
    ],
  },
];
