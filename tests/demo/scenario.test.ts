import { describe, expect, it } from 'vitest';
import { cases } from '../../core/demo/cases';
import { DEMO_NOW } from '../../core/demo/invented-larder';
import { demoWrites, momentAfter } from '../../core/demo/writes';
import { SET_WORDS } from '../../core/ledger/jar-fields';
import { play, type PlayedJar } from './play';

const played = play();
const batchOf = (day: string): readonly PlayedJar[] => played.jars.filter((jar) => jar.day === day);
const firmness = (jar: PlayedJar): number | null =>
  jar.outcome?.setWord == null ? null : SET_WORDS.indexOf(jar.outcome.setWord);
const isPlain = (jar: PlayedJar): boolean => jar.entry.additions.length === 0;
const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((one, other) => one - other);
  return (
    ((sorted[Math.floor((sorted.length - 1) / 2)] ?? NaN) +
      (sorted[Math.ceil((sorted.length - 1) / 2)] ?? NaN)) /
    2
  );
};
const plainPh = (day: string): number =>
  median(
    batchOf(day)
      .filter((jar) => isPlain(jar) && jar.entry.seedings.length === 1)
      .flatMap((jar) => jar.outcome?.ph ?? []),
  );

const seedNames = (name: string): string[] =>
  played
    .named(name)
    .entry.seedings.map(
      (seeding) => played.jars.find((jar) => jar.id === seeding.fromJar)?.name ?? 'a source',
    )
    .toSorted();

describe('the invented scenario as writes', () => {
  it('is the same every time', () => {
    expect(JSON.stringify(play().writes)).toBe(JSON.stringify(played.writes));
  });

  it('has about 60 to 80 jars in about 25 batches, two lines', () => {
    expect(played.jars.length).toBeGreaterThanOrEqual(60);
    expect(played.jars.length).toBeLessThanOrEqual(80);
    const words = played.writes.flatMap((write) =>
      write.call === 'batch.record' ? (write.input.word ?? []) : [],
    );
    expect(words).toEqual(['Heron', 'Lantern']);
    expect(new Set(played.jars.map((jar) => jar.day)).size).toBe(26);
  });

  it('is written in the order in which it happened, and ends before its own last morning', () => {
    const moments = played.writes.map((write) => Date.parse(write.at));
    expect(moments).toEqual(moments.toSorted((one, other) => one - other));
    expect(played.writes.every((write) => write.at < DEMO_NOW)).toBe(true);
  });

  it('seeds each jar from what was made on an earlier day and still there', () => {
    const byId = new Map(played.jars.map((jar) => [jar.id, jar]));
    const gone = new Map(
      played.writes.flatMap((write) =>
        write.call === 'jar.correct' ? [[write.input.id, write.input.changes.goneOn ?? ''] as const] : [],
      ),
    );
    for (const jar of played.jars) {
      expect(jar.entry.seedings.length, jar.name).toBeGreaterThan(0);
      for (const seeding of jar.entry.seedings) {
        if (seeding.fromJar === null) continue;
        const seed = byId.get(seeding.fromJar);
        expect(seed && seed.day < jar.day, jar.name).toBe(true);
        if (seeding.portion === null && gone.has(seeding.fromJar))
          expect((gone.get(seeding.fromJar) ?? '') >= jar.day, `${jar.name} from a jar that was gone`).toBe(
            true,
          );
      }
    }
  });

  it('fills every jar from milk of its own batch, bought that day with a price, enough of it', () => {
    const bought = new Map(
      played.packages.flatMap((one) => (one.of === 'milk' ? [[one.id, one] as const] : [])),
    );
    const used = new Map<string, { days: Set<string>; ml: number }>();
    for (const jar of played.jars) {
      const milk = bought.get(jar.entry.milkPackage ?? '');
      expect(milk?.boughtOn, jar.name).toBe(jar.day);
      expect(milk?.price?.currency, jar.name).toBe('GBP');
      const of = used.get(milk?.id ?? '') ?? { days: new Set(), ml: 0 };
      used.set(milk?.id ?? '', {
        days: of.days.add(jar.day),
        ml: of.ml + (jar.entry.finalVolume?.value ?? NaN),
      });
    }
    expect(used.size).toBe(bought.size);
    for (const [id, { days, ml }] of used) {
      expect(days.size).toBe(1);
      expect(ml).toBeLessThanOrEqual(bought.get(id)?.size?.value ?? 0);
    }
  });

  it('says of every runny jar that its acid was measured: none is food by mistake', () => {
    for (const jar of played.jars.filter((one) => one.outcome?.setWord === 'runny')) {
      expect(jar.outcome?.phHow).toBe('meter');
      expect(jar.outcome?.ph).toBeLessThanOrEqual(4.6);
    }
  });

  it('refuses to go on when a reply lacks the id a later write needs', () => {
    expect(() => {
      const steps = demoWrites();
      let step = steps.next({});
      while (!step.done) step = steps.next({});
    }).toThrow('answered without an id');
  });

  it.each([
    ['2025-10-19', 18.5, 0, '2025-10-19T18:30:00+01:00', 'summer time until 26 October 2025'],
    ['2025-12-31', 18.5, 36, '2026-01-02T06:30:00Z', 'over the year'],
    ['2026-02-27', 20, 4, '2026-02-28T00:00:00Z', 'midnight'],
    ['2026-04-05', 18.5, 36, '2026-04-07T06:30:00+01:00', 'summer time from 29 March 2026'],
  ])('puts %s at %d h plus %d h at %s (%s)', (day, hour, hours, moment) => {
    expect(momentAfter(day, hour, hours)).toBe(moment);
  });
});

describe('what is planted in it', () => {
  it('a jar seeded from two jars, and one from both lines of unknown outcome', () => {
    expect(seedNames(cases.twoJars.jar)).toEqual(cases.twoJars.seeds);
    expect(seedNames(cases.bothLines.jar)).toEqual(cases.bothLines.seeds);
    expect(played.named(cases.bothLines.jar).outcome).toBeNull();
  });

  it('a line that slips after its ninth generation', () => {
    const seen = cases.slip.batches
      .filter((day) => !cases.forgotten.batches.some((gap) => gap === day))
      .slice(1);
    const even = seen.filter((day) => day <= cases.slip.lastEven);
    const slipping = seen.filter((day) => day > cases.slip.lastEven);
    const acids = even.map(plainPh);
    expect(Math.max(...acids) - Math.min(...acids)).toBeLessThanOrEqual(0.05);
    const falling = [...even.slice(-1), ...slipping].map(plainPh);
    for (const [at, ph] of falling.entries()) if (at > 0) expect(ph).toBeGreaterThan(falling[at - 1] ?? NaN);
    for (const day of cases.slip.weak)
      for (const jar of batchOf(day)) expect(['soft', 'runny'], jar.name).toContain(jar.outcome?.setWord);
    for (const day of seen.filter((one) => one < cases.slip.weak[0])) {
      const plain = batchOf(day).filter(isPlain);
      expect(median(plain.flatMap((jar) => firmness(jar) ?? [])), day).toBeGreaterThanOrEqual(1.5);
    }
  });

  it('a fibre that wrecks two jars, their siblings of the same seed and hold firm', () => {
    const wrecked = cases.fibre.wrecked.map(played.named);
    const healthy = cases.fibre.healthy.map(played.named);
    for (const jar of wrecked) {
      expect(jar.entry.additions.map((addition) => addition.name)).toEqual([cases.fibre.addition]);
      expect(jar.outcome?.setWord).toBe('runny');
    }
    for (const jar of healthy) expect(['firm', 'very firm']).toContain(jar.outcome?.setWord);
    const all = [...wrecked, ...healthy];
    expect(new Set(all.map((jar) => jar.hold)).size).toBe(1);
    expect(new Set(all.map((jar) => jar.entry.seedings[0]?.fromJar)).size).toBe(1);
    const withIt = played.jars.filter((jar) =>
      jar.entry.additions.some((addition) => addition.name === cases.fibre.addition),
    );
    expect(withIt).toEqual(wrecked);
    const seeded = played.jars.flatMap((jar) => jar.entry.seedings.map((seeding) => seeding.fromJar));
    for (const jar of wrecked) expect(seeded).not.toContain(jar.id);
  });

  it('freezer cubes, some thawed into a jar and some still there', () => {
    const thawed = played.named(cases.cubes.thawedInto).entry.seedings[0];
    expect(thawed?.fromJar).toBe(played.named(cases.cubes.of).id);
    expect(played.portions.find((portion) => portion.id === thawed?.portion)?.jar).toBe(
      played.named(cases.cubes.of).id,
    );
    const reserve = played.writes.filter(
      (write) => write.call === 'portion.save' && write.input.portion.place === 'freezer',
    );
    expect(reserve).toHaveLength(2);
    expect(played.portions.map((portion) => portion.jar)).toContain(played.named(cases.cubes.reserveOf).id);
  });

  it('a cold night: the whole batch soft, its hold measured cold, the next one firm', () => {
    const cold = batchOf(cases.coldNight.batch);
    expect(cold.map((jar) => jar.outcome?.setWord)).toEqual(['soft', 'soft', 'soft']);
    const coldest = Math.min(...(cold[0]?.hold?.readings ?? []).map((reading) => reading.temperature.value));
    expect(coldest).toBeLessThan(25);
    for (const jar of batchOf(cases.coldNight.nextBatch)) {
      expect(['firm', 'very firm']).toContain(jar.outcome?.setWord);
      expect(cold.map((one) => one.id)).toContain(jar.entry.seedings[0]?.fromJar);
    }
    for (const jar of played.jars.filter((one) => one.day !== cases.coldNight.batch))
      expect(
        Math.min(...(jar.hold?.readings ?? []).map((reading) => reading.temperature.value)),
        jar.name,
      ).toBeGreaterThanOrEqual(33);
  });

  it('a gap of forgotten outcomes', () => {
    const without = new Set(
      played.jars
        .filter((jar) => jar.outcome === null && jar.name !== cases.bothLines.jar)
        .map((jar) => jar.day),
    );
    expect([...without].toSorted()).toEqual([...cases.forgotten.batches, cases.inWarmth.batch]);
  });

  it('one spoiled jar, seen only after it had seeded others', () => {
    const spoiled = played.jars.filter((jar) => (jar.outcome?.signs.length ?? 0) > 0);
    expect(spoiled.map((jar) => jar.name)).toEqual([cases.spoiled.jar]);
    expect(spoiled[0]?.onShelf).toBe(false);
    for (const name of cases.spoiled.setAside) expect(played.named(name).onShelf, name).toBe(true);
  });
});
