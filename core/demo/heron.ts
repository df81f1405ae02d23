// Line "Heron", invented: fourteen generations from October to April, even up to the ninth and slipping after it.
import { from, jar, saw, spoons, timed, usual, type DemoBatch } from './scenario-shapes';

const plainGood = timed('starting', 5.2, 11, 13);

export const heron: readonly DemoBatch[] = [
  {
    day: '2025-10-19',
    word: 'Heron',
    note: 'First batch, capsules emptied into the milk. Uneven, as first batches are.',
    holds: [usual()],
    jars: [
      jar(
        'a',
        [
          { source: 'Blue Tin', pieces: 7 },
          { source: 'Meadow Pot', pieces: 4 },
        ],
        saw('firm', 4.41, { ...timed('starting', 5.9, 18, 24), whey: 'some', texture: 'a few curds' }),
        '2025-11-06',
      ),
      jar(
        'b',
        [
          { source: 'Blue Tin', pieces: 7 },
          { source: 'Meadow Pot', pieces: 4 },
        ],
        saw('spoonable', 4.46, { whey: 'a lot', texture: 'curds and whey' }),
        '2025-10-30',
      ),
      jar(
        'c',
        { source: 'Blue Tin', pieces: 9 },
        saw('soft', 4.49, { whey: 'a lot', texture: 'grainy' }),
        '2025-10-28',
      ),
    ],
  },
  {
    day: '2025-11-02',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2025-10-19 a'), saw('firm', 4.31, plainGood), '2025-11-14'),
      jar('b', from('2025-10-19 a'), saw('very firm', 4.29, plainGood), '2025-11-20'),
      jar('c', from('2025-10-19 a'), saw('firm', 4.32, { texture: 'smooth', tang: 'mild' }), '2025-11-12', {
        additions: [spoons('acacia fibre', 2, 1.5)],
      }),
      jar('d', from('2025-10-19 a'), saw('very firm', null, { texture: 'glossy' }), '2025-11-15', {
        additions: [spoons('potato starch', 2)],
      }),
    ],
  },
  {
    day: '2025-11-16',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2025-11-02 b'), saw('firm', 4.3, timed('starting', 5.25, 11, 13)), '2025-12-04'),
      jar('b', from('2025-11-02 b'), saw('firm', 4.32), '2025-11-28'),
      jar(
        'c',
        from('2025-11-02 b'),
        saw('firm', 4.33, {
          tang: 'mild',
          note: 'Taster A: sweeter than the plain one. Taster B: no difference.',
        }),
        '2025-11-27',
        { additions: [spoons('chicory inulin', 1.5)] },
      ),
    ],
  },
  {
    day: '2025-11-30',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2025-11-16 a'), saw('very firm', 4.28, plainGood), '2025-12-20', {
        note: 'Twelve cubes of this one went into the freezer.',
      }),
      jar('b', from('2025-11-16 a'), saw('firm', 4.31, timed('starting', 5.15, 11, 13)), '2025-12-11'),
      jar('c', from('2025-11-16 a'), saw('very firm', 4.3), '2025-12-13', {
        additions: [spoons('potato starch', 2)],
      }),
    ],
  },
  {
    day: '2025-12-14',
    word: null,
    note: 'Oat bran for the first time. It swelled at once, so less went in than planned.',
    holds: [usual()],
    jars: [
      jar('a', from('2025-11-30 a'), saw('firm', 4.3, plainGood), '2026-01-02'),
      jar('b', from('2025-11-30 a'), saw('firm', 4.32, timed('starting', 5.2, 11, 14)), '2025-12-27'),
      jar(
        'c',
        from('2025-11-30 a'),
        saw('runny', 4.35, { texture: 'thin with bran at the bottom', whey: 'a lot' }),
        '2025-12-18',
        { additions: [spoons('oat bran', 3, 2)] },
      ),
      jar(
        'd',
        from('2025-11-30 a'),
        saw('runny', 4.37, {
          texture: 'thin, gritty',
          whey: 'a lot',
          note: 'Taster C: like drinking porridge.',
        }),
        '2025-12-17',
        { additions: [spoons('oat bran', 3, 2.5)] },
      ),
    ],
  },
  {
    day: '2025-12-28',
    word: null,
    note: 'Holidays: nobody wrote down how these came out.',
    holds: [usual()],
    jars: [
      jar('a', from('2025-12-14 a'), null, '2026-01-09'),
      jar('b', from('2025-12-14 a'), null, '2026-01-14'),
      jar('c', from('2025-12-14 a'), null, '2026-01-10', { additions: [spoons('acacia fibre', 2)] }),
    ],
  },
  {
    day: '2026-01-11',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2025-12-28 b'), saw('firm', 4.3, plainGood), '2026-01-29'),
      jar('b', from('2025-12-28 b'), saw('very firm', 4.29, timed('starting', 5.2, 10, 13)), '2026-01-28'),
      jar('c', from('2025-12-28 b'), saw('very firm', null), '2026-01-22', {
        additions: [spoons('potato starch', 2)],
      }),
    ],
  },
  {
    day: '2026-01-25',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2026-01-11 a'), saw('firm', 4.31, plainGood), '2026-02-12'),
      jar('b', from('2026-01-11 a'), saw('firm', 4.3), '2026-02-05'),
      jar('c', from('2026-01-11 a'), saw('very firm', 4.31), '2026-02-07', {
        additions: [spoons('potato starch', 2)],
      }),
      jar('d', [from('2026-01-11 a', 15), from('2026-01-11 b', 10)], saw('firm', 4.32), '2026-02-03', {
        volumeMl: 500,
        note: 'What was left of two jars, in the short jar.',
      }),
    ],
  },
  {
    day: '2026-02-08',
    word: null,
    note: 'Side by side: nothing, acacia, inulin.',
    holds: [usual()],
    jars: [
      jar('a', from('2026-01-25 a'), saw('firm', 4.32, timed('starting', 5.25, 11, 14)), '2026-02-27'),
      jar('b', from('2026-01-25 a'), saw('firm', 4.31, plainGood), '2026-02-26'),
      jar(
        'c',
        from('2026-01-25 a'),
        saw('firm', 4.33, { texture: 'smooth', note: 'Taster A first, taster D second.' }),
        '2026-02-19',
        {
          additions: [spoons('acacia fibre', 2, 1.5)],
        },
      ),
      jar(
        'd',
        from('2026-01-25 a'),
        saw('firm', 4.33, { tang: 'mild', note: 'Taster D first, taster A third.' }),
        '2026-02-20',
        {
          additions: [spoons('chicory inulin', 1.5)],
        },
      ),
    ],
  },
  {
    day: '2026-02-22',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2026-02-08 a'), saw('firm', 4.38, timed('starting', 5.6, 14, 17)), '2026-03-12'),
      jar('b', from('2026-02-08 a'), saw('spoonable', 4.39, timed('starting', 5.65, 14, 18)), '2026-03-06'),
      jar('c', from('2026-02-08 a'), saw('spoonable', 4.4), '2026-03-05', {
        additions: [spoons('potato starch', 2)],
      }),
      jar('d', [from('2026-02-08 b', 8), from('2026-02-18 a', 6)], null, '2026-03-01', {
        volumeMl: 250,
        note: 'A spoon of each line, for the supper. Gone before anyone wrote a word.',
      }),
    ],
  },
  {
    day: '2026-03-08',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2026-02-22 a'), saw('spoonable', 4.44, timed('starting', 5.8, 16, 20)), '2026-03-20'),
      jar('b', from('2026-02-22 a'), saw('spoonable', 4.43, timed('starting', 5.75, 16, 20)), '2026-03-26'),
      jar('c', from('2026-02-22 a'), saw('spoonable', 4.45), '2026-03-19', {
        additions: [spoons('acacia fibre', 2)],
      }),
    ],
  },
  {
    day: '2026-03-22',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar('a', from('2026-03-08 b'), saw('spoonable', 4.49, timed('starting', 5.95, 19, 23)), '2026-04-03'),
      jar('b', from('2026-03-08 b'), saw('soft', 4.51, { whey: 'a little' }), '2026-04-01'),
      jar('c', from('2026-03-08 b'), saw('spoonable', 4.48, timed('starting', 5.9, 19, 23)), '2026-04-09'),
    ],
  },
  {
    day: '2026-04-05',
    word: null,
    note: null,
    holds: [usual()],
    jars: [
      jar(
        'a',
        from('2026-03-22 c'),
        saw('soft', 4.53, { ...timed('loose', 6.05, 22, 26), whey: 'a little' }),
        '2026-04-22',
      ),
      jar('b', from('2026-03-22 c'), saw('soft', 4.54, timed('loose', 6.1, 22, 27)), '2026-04-16'),
      jar('c', from('2026-03-22 c'), saw('soft', 4.52), '2026-04-15', {
        additions: [spoons('potato starch', 2)],
      }),
    ],
  },
  {
    day: '2026-04-19',
    word: null,
    note: 'Taster B: is it us or is it the culture?',
    holds: [usual()],
    jars: [
      jar(
        'a',
        from('2026-04-05 a'),
        saw('soft', 4.56, { ...timed('loose', 6.2, 26, 30), whey: 'some' }),
        null,
      ),
      jar('b', from('2026-04-05 a'), saw('runny', 4.58, { setAtTakeOut: false, whey: 'some' }), '2026-04-24'),
      jar('c', from('2026-04-05 a'), saw('soft', 4.57, timed('loose', 6.2, 26, 31)), null),
    ],
  },
];
