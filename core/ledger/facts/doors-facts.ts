// What came in from outside, and what the keeper prefers.
import { z } from 'zod';
import { Preferences } from '../records';
import { cells, type Field, list, maybe, moment, oneOf, ref, whole, words } from './fact-fields';

const preferred = Preferences.shape;
const plain = <T>(zod: z.ZodType<T>): Field<T, 'plain'> => ({
  zod,
  as: 'plain',
  nullable: zod.safeParse(null).success,
});

export const doors = {
  /** A file of notes: what makes it the same file, and its headings in order. */
  noteFile: { name: words(1, 500), headings: list(z.string().max(500)) },
  /** A row of it: found again by its cells when the same file, or a longer one, is brought in later. */
  noteRow: {
    file: ref('noteFile'),
    /** Line in the file when it came in, header 1. */
    line: whole(1, 10_000_000),
    /** 1 for the first row with these cells, 2 for the second, … */
    occurrence: whole(1, 10_000_000),
    /** Cell by heading, as JSON. */
    cells: maybe(cells()),
    /** What makes it the same row: a hash of its cells; at most 200 characters. */
    cellsSha: words(1, 200),
    /** A hash of what was read of it: written otherwise and read the same, it is the same. */
    readSha: maybe(words(1, 200)),
    /** The jar it became; null where it became none. */
    jar: maybe(ref('jar')),
  },
  /** What the keeper answered about a row. */
  noteAnswer: { noteRow: ref('noteRow'), question: words(1, 500), answer: words(1, 10_000) },
  /** A reminder that was done, of what and when. */
  reminderDone: { kind: words(1, 100), about: maybe(ref('record')), at: moment() },
  /** A form of a record that came in and says otherwise than ours: it waits here, never in the row. */
  received: {
    about: ref('record'),
    fromLedger: ref('ledger'),
    formNo: whole(1, 1_000_000_000),
    form: cells(),
    decided: maybe(oneOf(['kept own', 'took received'])),
  },
  preferences: {
    theme: plain(preferred.theme),
    temperatures: plain(preferred.temperatures),
    volumes: plain(preferred.volumes),
    spoons: plain(preferred.spoons),
    dates: plain(preferred.dates),
    currency: plain(preferred.currency),
    seedFridgeDays: plain(preferred.seedFridgeDays),
    seedFreezerDays: plain(preferred.seedFreezerDays),
    mostGenerations: plain(preferred.mostGenerations),
    jarFollowsHours: plain(preferred.jarFollowsHours),
  },
} as const;
