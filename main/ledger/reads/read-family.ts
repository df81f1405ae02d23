// Reads of the whole family: as records, as a drawing, as the jars that are mounted, and what it suggests.
import { dayInOrder, earliestDay } from '../../../core/lineage/lineage-shapes';
import { longUnsaid } from '../../../core/safety/still-there';
import { freshStartSays } from '../../../core/says/fresh-start-says';
import { thoughWeak } from '../../../core/says/verdict-says';
import { verdictOf } from './read-judgement';
import { suggestFreshStarts } from '../../../core/advice/two-weak-in-a-row';
import type { FamilyJarReply, Parsed, Reply } from '../../../core/contract';
import { drawFamily } from '../../../core/lineage/drawing';
import { UNKNOWN_PAST_NAME } from '../../../core/lineage/labels';
import { sourceEntries } from '../entries/larder-entries';
import type { Ledger } from '../ledger';
import { seedingAmounts } from '../derived/columns-of-jars';
import { cautionReplies, familyMember, jarViews, lineNames, within } from './read-views';

/** Jars oldest first, and the lines. */
export function getFamily(ledger: Ledger): Reply<'family.get'> {
  const { index, rows } = ledger;
  const { family } = index;
  const amounts = seedingAmounts(rows, null);
  const nameOf = lineNames(ledger);
  const sourceName = (key: number): string => family.source(key)?.name ?? UNKNOWN_PAST_NAME;
  const jars = family.keys
    .map((key) => index.jar(key))
    .toSorted(
      (a, b) =>
        compare(dayInOrder(a) ?? '', dayInOrder(b) ?? '') ||
        a.batch - b.batch ||
        a.letter.length - b.letter.length ||
        compare(a.letter, b.letter) ||
        a.key - b.key,
    )
    .map((jar): FamilyJarReply => {
      const shares = family.sharesOf(jar.key);
      return {
        id: jar.uid,
        label: jar.label,
        madeOn: jar.madeOn,
        madeBetween: jar.madeBetween,
        letter: jar.letter,
        generation: family.generationOf(jar.key),
        doublings: family.doublingsOf(jar.key),
        shareBasis: family.basisOf(jar.key),
        seeds: family.seedsOf(jar.key).map((seeding) => {
          const amount = amounts.get(seeding.key);
          const from = seeding.fromJar !== null && family.has(seeding.fromJar) ? seeding.fromJar : null;
          return {
            jar: from === null ? null : index.jar(from).uid,
            source: seeding.source === null ? null : sourceName(seeding.source),
            amount: amount ? { value: amount.value, unit: amount.unit } : null,
            share: within(shares.get(seeding.key) ?? 0),
          };
        }),
        tracedShares: family.tracedSharesOf(jar.key).map(({ source, share }) => ({
          source: source === null ? UNKNOWN_PAST_NAME : sourceName(source),
          share: within(share),
        })),
        holdHours: jar.holdHours,
        setWord: jar.setWord,
        ph: jar.ph,
        spoiled: jar.spoiled,
        discard: jar.safety.discard,
        cautions: cautionReplies(ledger, jar.key),
      };
    });
  const lines = family.lines.map((line) => ({
    id: rows.uidOf('batch', line.batch),
    name: nameOf(line.batch),
    founded: line.founded,
    jarCount: line.jarCount,
  }));
  return { jars, lines };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

export function drawing(ledger: Ledger, { spacing }: Parsed<'family.drawing'>): Reply<'family.drawing'> {
  const { index, rows } = ledger;
  const strains = new Map<number, string[]>();
  for (const source of sourceEntries(rows)) {
    strains.set(
      source.key,
      source.strains.map((strain) =>
        strain.designation === '' ? `${strain.genus} ${strain.species}`.trim() : strain.designation,
      ),
    );
  }
  const today = ledger.clock.today();
  const apart = new Set(Array.from(rows.all('portion'), ({ jar }) => jar));
  return drawFamily(
    index.family,
    {
      jar: (key) => index.jar(key),
      mayBeThere: (key) => {
        const jar = index.jar(key);
        return apart.has(key) || (jar.onShelf !== false && !longUnsaid(jar.onShelf, earliestDay(jar), today));
      },
      lineName: lineNames(ledger),
      lineId: (batch) => rows.uidOf('batch', batch),
      strainsOf: (source) => strains.get(source) ?? [],
    },
    spacing,
  );
}

export function familyJars(ledger: Ledger, { keys }: Parsed<'family.jars'>): Reply<'family.jars'> {
  return { jars: jarViews(ledger, keys) };
}

export function freshStarts(ledger: Ledger): Reply<'advice.freshStart'> {
  const { index, rows } = ledger;
  const nameOf = lineNames(ledger);
  const found = suggestFreshStarts(index.family, {
    setWord: (key) => index.jars.get(key)?.setWord ?? null,
  });
  return {
    suggestions: found.map((one) => {
      const name = one.line === null ? null : nameOf(one.line);
      const { sentence, reasons } = freshStartSays(one, name);
      return {
        line: name ?? 'no known line',
        jar: rows.uidOf('jar', one.jar),
        weak: one.weak.map((step) => ({
          jar: rows.uidOf('jar', step.jar),
          label: step.label,
          madeOn: step.madeOn,
          setWord: step.setWord,
        })),
        sentence: sentence + (one.line === null ? '' : thoughWeak(verdictOf(ledger, one.line))),
        reasons: [...reasons],
      };
    }),
  };
}

/** Lines in the order of founding; what is newest is the latest day, then what was entered last. */
export function listLines(ledger: Ledger, { jar }: Parsed<'line.list'>): Reply<'line.list'> {
  const { index, rows } = ledger;
  const { family } = index;
  const nameOf = lineNames(ledger);
  const wanted = jar === null ? null : new Set(family.linesOf(familyMember(ledger, jar).key));
  const newest = new Map<number, { readonly day: string; readonly batch: number }>();
  for (const key of family.keys) {
    const { batch } = index.jar(key);
    const day = dayInOrder(index.jar(key));
    if (day === null) continue;
    for (const line of family.linesOf(key)) {
      const before = newest.get(line);
      const by = before === undefined ? 1 : compare(day, before.day) || batch - before.batch;
      if (by > 0) newest.set(line, { day, batch });
    }
  }
  return {
    lines: family.lines
      .filter((line) => wanted === null || wanted.has(line.batch))
      .map((line) => {
        const last = newest.get(line.batch);
        return {
          id: rows.uidOf('batch', line.batch),
          name: nameOf(line.batch),
          founded: line.founded,
          newestBatch: last === undefined ? null : rows.uidOf('batch', last.batch),
        };
      }),
  };
}
