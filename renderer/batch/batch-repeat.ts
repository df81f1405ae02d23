// Filling the fields from a recorded batch: for repeating its recipe, and for correcting what is recorded.
// Pure. A value comes back as it was typed; where it wasn't typed, as the keeper prefers to read it.
import type { BatchReply } from '../../core/contract';
import type { Addition, Hold, Jar } from '../../core/ledger/records';
import { JAR_FIELDS } from '../../core/ledger/jar-fields';
import { writeField } from '../parts/field-text';
import type { Writer } from '../parts/reading';
import {
  MILK_FIELDS,
  noAddition,
  noHold,
  noMilk,
  noSeed,
  pickSeed,
  plainJar,
  type AdditionText,
  type BatchText,
  type HoldText,
  type MilkText,
  type SeedText,
} from './batch-text';

type ReplyJar = BatchReply['jars'][number];

export function milkText(jar: Jar, writer: Writer): MilkText {
  const written = [...MILK_FIELDS, 'finalVolumeKnown' as const].map((field) => [
    field,
    writeField(JAR_FIELDS[field].kind, jar[field], writer),
  ]);
  return { ...noMilk, ...Object.fromEntries(written), milkPackage: jar.milkPackage ?? '' };
}

/** A jar's label with what was kept apart of it: "30 Nov a · freezer cubes". */
export const withKept = (label: string, kept: string | null): string =>
  kept === null ? label : `${label}\u00a0· ${kept}`;

export function seedTexts(seedings: ReplyJar['seedings'], writer: Writer): SeedText[] {
  return seedings.map(({ seeding, label, kept }) => ({
    picked:
      seeding.fromJar !== null
        ? {
            kind: 'jar',
            id: seeding.fromJar,
            label: withKept(label, kept),
            ...(seeding.portion !== null && seeding.amount?.unit === 'pieces' ? { pieces: true } : {}),
          }
        : seeding.source !== null
          ? { kind: 'source', id: seeding.source, label }
          : null,
    find: '',
    amount: seeding.amount ? writer.amount(seeding.amount) : '',
    part: seeding.part ?? '',
    portion: seeding.portion ?? '',
    package: seeding.package ?? '',
  }));
}

export function additionTexts(additions: readonly Addition[], writer: Writer): AdditionText[] {
  return additions.map((addition) => ({
    name: addition.name,
    planned: addition.planned ? writer.amount(addition.planned) : '',
    actual: addition.actual ? writer.amount(addition.actual) : '',
    package: addition.package ?? '',
  }));
}

export function holdText(hold: Hold, writer: Writer): HoldText {
  return {
    started: hold.startedAt ? writer.moment(hold.startedAt) : '',
    ended: hold.endedAt ? writer.moment(hold.endedAt) : '',
    hours: hold.hours === null ? '' : writer.number(hold.hours),
    planned: hold.planned ? writer.temperature(hold.planned) : '',
    probe: hold.probe ?? '',
    note: hold.note ?? '',
  };
}

/** The value most jars share (the first of equals), so that only the odd ones differ. */
function commonest<T>(values: readonly T[]): T | undefined {
  const tally = new Map<string, { value: T; times: number }>();
  for (const value of values) {
    const seen = tally.get(JSON.stringify(value));
    if (seen) seen.times += 1;
    else tally.set(JSON.stringify(value), { value, times: 1 });
  }
  return [...tally.values()].toSorted((a, b) => b.times - a.times)[0]?.value;
}
/** At least one row, so that there is a field to type in. */
const rows = <T>(list: readonly T[] | undefined, none: T): readonly T[] =>
  list && list.length > 0 ? list : [none];
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Field by field what most jars share; one none of them has (there are none) is empty. */
function commonestFields<T extends object>(values: readonly T[], none: T): T {
  const keys = Object.keys(none) as (keyof T)[];
  return Object.fromEntries(
    keys.map((key) => [key, commonest(values.map((value) => value[key])) ?? none[key]]),
  ) as T;
}

/** The fields in which one differs from what all share; null where there is none. */
function differing<T extends object>(one: T, all: T): Partial<T> | null {
  const own = (Object.keys(one) as (keyof T)[]).filter((key) => one[key] !== all[key]);
  return own.length === 0 ? null : (Object.fromEntries(own.map((key) => [key, one[key]])) as Partial<T>);
}

/** The rows of one jar over those of all: a row it has nothing in is plain where the others have something. */
function additionsOver(
  own: readonly AdditionText[],
  all: readonly AdditionText[],
): readonly Partial<AdditionText>[] | null {
  const differ = all.map((shared, row): Partial<AdditionText> => {
    const one = own[row] ?? noAddition;
    if (one.name === '' && shared.name !== '') return { name: 'plain' };
    return one.name === '' ? {} : (differing(one, shared) ?? {});
  });
  return differ.every((one) => Object.keys(one).length === 0) ? null : differ;
}

/** What a seed of the recipe is again: pieces of a product as they were; of a jar the amount alone, for the jar is new. */
function seedAgain(seed: SeedText): SeedText {
  return seed.picked?.kind === 'jar'
    ? { ...noSeed, amount: seed.amount, part: seed.part }
    : { ...seed, package: '' };
}

/** Seeds of a jar again, with this one in place of the jar it was seeded from: as much of it, and the same products. */
function seedsAgain(seeds: readonly SeedText[], seed: SeedText | null): SeedText[] {
  if (seed === null) return seeds.map(seedAgain);
  const before = seeds.find(({ picked }) => picked?.kind === 'jar');
  if (!before) return [seed];
  const portion = seed.portion === '' ? null : { id: seed.portion, part: seed.part };
  const products = seeds.filter(({ picked }) => picked !== null && picked.kind !== 'jar');
  return [pickSeed(before, seed.picked, portion), ...products.map(seedAgain)];
}

/** Holds that differ by no more than a thermometer and a clock read in passing do were one plan (common practice, no source). */
const AS_PLANNED = { celsius: 1, hours: 2 } as const;

const near = (a: number | null | undefined, b: number | null | undefined, within: number): boolean =>
  (a ?? null) === null || (b ?? null) === null
    ? (a ?? null) === (b ?? null)
    : Math.abs((a ?? 0) - (b ?? 0)) <= within;

/** The holds of a batch as they were planned: those that are nearly alike are the one that most of its jars had. */
function holdsAlike(holds: BatchReply['holds'], ofJars: readonly (string | null)[]) {
  const most = holds.find(({ id }) => id === commonest(ofJars));
  const isMost = (hold: Hold): boolean =>
    most !== undefined &&
    near(hold.planned?.value, most.planned?.value, AS_PLANNED.celsius) &&
    near(hold.hours, most.hours, AS_PLANNED.hours);
  const kept = holds.filter((hold) => hold === most || !isMost(hold));
  return {
    kept,
    /** The place among them of a hold of the batch; -1 where a jar had none. */
    of: (id: string | null): number => {
      const own = holds.find((hold) => hold.id === id);
      return own === undefined ? -1 : kept.indexOf(isMost(own) && most ? most : own);
    },
  };
}

/**
 * The recipe of a batch, ready to be made again on `date`: milk, vessels, amounts, additions as planned, hold length
 * and warmth. What belongs to that day alone is left out: seed jars, packages, times, actual amounts, outcomes, notes.
 * @param seed the jar that is to seed it, in place of those of that day; null: it is left open
 */
export function repeatBatch(
  reply: BatchReply,
  date: string,
  writer: Writer,
  seed: SeedText | null = null,
): BatchText {
  const made = reply.jars.filter(({ jar }) => jar.state === 'made' || jar.state === 'planned');
  const alike = holdsAlike(reply.holds, made.map(({ jar }) => jar.hold)); // prettier-ignore
  const holds = alike.kept.map((hold): HoldText => {
    const { hours, planned, probe } = holdText(hold, writer);
    const held =
      hold.startedAt !== null && hold.endedAt !== null
        ? (Date.parse(hold.endedAt) - Date.parse(hold.startedAt)) / 3_600_000
        : null;
    return {
      ...noHold,
      hours: hours !== '' || held === null ? hours : writer.number(Math.round(held * 10) / 10),
      planned,
      probe,
    };
  });
  const each = made.map((one) => ({
    letter: one.jar.letter,
    milk: { ...milkText(one.jar, writer), milkPackage: '' },
    seeds: seedsAgain(seedTexts(one.seedings, writer), seed),
    additions: additionTexts(one.additions, writer).map((addition) => ({
      ...addition,
      planned: addition.planned || addition.actual,
      actual: '',
      package: '',
    })),
    hold: Math.max(0, alike.of(one.jar.hold)),
  }));
  const milk = commonestFields(
    each.map((jar) => jar.milk),
    noMilk,
  );
  const seeds = commonest(each.map((jar) => jar.seeds));
  const most = Math.max(1, ...each.map((jar) => jar.additions.length));
  const additions = Array.from({ length: most }, (_, row) => {
    const names = each.map((jar) => jar.additions[row]?.name ?? '');
    const stirred = each.flatMap((jar) => jar.additions[row] ?? []);
    // Where they differ each jar has its own, and a further jar is plain: it gets nothing that the keeper did not choose for it.
    const shared = names.every((name) => name === names[0]);
    return { ...commonestFields(stirred, noAddition), name: shared ? (names[0] ?? '') : '' };
  });
  const hold = commonest(each.map((jar) => jar.hold)) ?? 0;
  return {
    date,
    word: reply.batch.word ?? '',
    note: '',
    holds: rows(holds, noHold),
    all: {
      milk,
      seeds: rows(seeds, noSeed),
      additions,
      hold,
      state: 'made',
      shelf: 'kept',
    },
    count: String(Math.max(1, each.length)),
    jars:
      each.length === 0
        ? [plainJar('a')]
        : each.map((jar) => ({
            ...plainJar(jar.letter),
            milk: differing(jar.milk, milk),
            seeds: same(jar.seeds, seeds) ? null : rows(jar.seeds, noSeed),
            additions: additionsOver(jar.additions, additions),
            hold: jar.hold === hold ? null : jar.hold,
          })),
  };
}
