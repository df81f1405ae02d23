// Plays the invented scenario into plain records, without a ledger: each write is parsed by the contract, each id is a
// counted UUIDv7. For tests of what the scenario says; that the ledger takes it is tested in tests/ledger.
import { contract, type BatchEntry, type Parsed } from '../../core/contract';
import { demoWrites, type DemoReply, type DemoWrite } from '../../core/demo/writes';
import { discardOf } from '../../core/safety/take-out';
import { ownSafety } from '../../core/safety/own-safety';
import { looksOf } from '../../core/safety/seen';
import type { Outcome } from '../../core/ledger/records';
import type {
  FamilyJar,
  FamilyRecords,
  FamilySeeding,
  FamilySource,
} from '../../core/lineage/lineage-shapes';

const uid = (count: number): string => `019a0000-0000-7000-8000-${count.toString(16).padStart(12, '0')}`;

export interface PlayedJar {
  readonly id: string;
  readonly name: string;
  readonly day: string;
  readonly batch: number;
  readonly entry: BatchEntry['jars'][number];
  hold: BatchEntry['holds'][number] | null;
  outcome: Omit<Outcome, 'jar'> | null;
  onShelf: boolean | null;
}

export interface Played {
  readonly writes: readonly DemoWrite[];
  readonly jars: readonly PlayedJar[];
  readonly sources: readonly Parsed<'source.save'>['source'][];
  readonly packages: readonly (Parsed<'package.save'>['package'] & { readonly id: string })[];
  readonly portions: readonly { readonly id: string; readonly jar: string; readonly keptOn: string }[];
  readonly named: (name: string) => PlayedJar;
  /** A jar's key in `records`. */
  readonly key: (name: string) => number;
  readonly records: FamilyRecords;
}

/** All writes, parsed, and what they add up to. */
export function play(): Played {
  let count = 0;
  const writes: DemoWrite[] = [];
  const jars: PlayedJar[] = [];
  const sources: (Parsed<'source.save'>['source'] & { id: string })[] = [];
  const packages: (Parsed<'package.save'>['package'] & { id: string })[] = [];
  const portions: { id: string; jar: string; keptOn: string }[] = [];
  let batches = 0;
  const tasterNames = new Map<string, string>();
  let bowls: NonNullable<DemoReply['bowls']> = [];
  let holds = 0;

  function take(write: DemoWrite): DemoReply {
    contract[write.call].input.parse(write.input);
    switch (write.call) {
      case 'preferences.save':
        return {};
      case 'source.save': {
        const id = uid((count += 1));
        sources.push({ ...write.input.source, id });
        return { id };
      }
      case 'package.save': {
        const id = uid((count += 1));
        packages.push({ ...write.input.package, id });
        return { id };
      }
      case 'portion.save': {
        const id = uid((count += 1));
        portions.push({ id, jar: write.input.portion.jar, keptOn: write.input.portion.keptOn });
        return { id };
      }
      case 'batch.record': {
        batches += 1;
        const { input } = write;
        const made = input.jars.map((entry): PlayedJar => {
          const hold = entry.hold === null ? null : input.holds[entry.hold];
          if (hold === undefined) throw new Error(`${input.madeOn} ${entry.letter} points at no hold`);
          return {
            id: uid((count += 1)),
            name: `${input.madeOn} ${entry.letter}`,
            day: input.madeOn ?? '',
            batch: batches,
            entry,
            hold,
            outcome: entry.outcome,
            onShelf: entry.onShelf,
          };
        });
        jars.push(...made);
        return { batch: uid((count += 1)), jars: made.map((jar) => jar.id) };
      }
      case 'batch.addHold': {
        const { hold, jars: inside } = write.input;
        for (const jar of jars) if (inside.includes(jar.id)) jar.hold = hold;
        holds += 1;
        return { hold: uid((count += 1)) };
      }
      case 'facts.record':
        return { ids: write.input.facts.map(() => uid((count += 1))) };
      case 'trial.save':
        return { trial: uid((count += 1)) };
      case 'session.start': {
        const served = write.input.jars ?? [];
        const tasters = write.input.tasters.map((one) =>
          'id' in one
            ? { taster: one.id, name: tasterNames.get(one.id) ?? '' }
            : { taster: uid((count += 1)), name: one.name },
        );
        for (const { taster, name } of tasters) tasterNames.set(taster, name);
        let code = 99;
        bowls = served.map((jar) => ({
          jar,
          codes: tasters.map(({ name: taster }) => ({ taster, code: (code += 1) })),
        }));
        return { session: uid((count += 1)), tasters };
      }
      case 'session.pour':
        return { bowls };
      case 'mark.record': {
        const codes = bowls.flatMap((bowl) => bowl.codes.map(({ code }) => code));
        for (const { code } of write.input.marks)
          if (!codes.includes(code)) throw new Error(`no bowl ${code}`);
        return {};
      }
      case 'session.reveal':
        return {};
      case 'readings.add':
      case 'hold.interrupt':
        if (holds === 0) throw new Error('nothing is in warmth');
        return {};
      case 'outcome.save': {
        for (const { jar: id, outcome, onShelf } of 'outcomes' in write.input
          ? write.input.outcomes
          : [write.input]) {
          const jar = jars.find((one) => one.id === id);
          if (!jar) throw new Error('an outcome of no jar');
          jar.outcome = outcome;
          jar.onShelf = onShelf;
        }
        return {};
      }
      case 'jar.correct': {
        const { id, changes } = write.input;
        const jar = jars.find((one) => one.id === id);
        if (!jar) throw new Error('a correction of no jar');
        if (changes.onShelf !== undefined) jar.onShelf = changes.onShelf;
        return {};
      }
    }
  }

  const steps = demoWrites();
  let step = steps.next({});
  while (!step.done) {
    writes.push(step.value);
    step = steps.next(take(step.value));
  }

  const byName = new Map(jars.map((jar) => [jar.name, jar]));
  const byId = new Map(jars.map((jar, index) => [jar.id, index + 1]));
  const named = (name: string): PlayedJar => {
    const jar = byName.get(name);
    if (!jar) throw new Error(`no jar ${name}`);
    return jar;
  };
  const holdsOf = new Map<unknown, number>();
  const holdKey = (hold: unknown): number => {
    const known = holdsOf.get(hold);
    if (known !== undefined) return known;
    holdsOf.set(hold, holdsOf.size + 1);
    return holdsOf.size;
  };
  const packageKey = (id: string | null): number[] =>
    id === null ? [] : [packages.findIndex((one) => one.id === id) + 1];

  const familyJars = jars.map((jar, index): FamilyJar => {
    const { outcome } = jar;
    return {
      key: index + 1,
      madeOn: jar.day,
      batch: jar.batch,
      hold: holdKey(jar.hold),
      letter: jar.entry.letter,
      label: jar.name,
      lost: false,
      finalVolumeMl: jar.entry.finalVolume?.value ?? null,
      countPerMl: null,
      spoiled: outcome !== null && discardOf(outcome) !== null,
      ...(outcome === null
        ? {}
        : { safety: ownSafety({ looks: looksOf(outcome), additions: [], openedOn: null }, null, jar.day) }),
      packages: [
        ...packageKey(jar.entry.milkPackage),
        ...jar.entry.seedings.flatMap((seeding) => packageKey(seeding.package)),
        ...jar.entry.additions.flatMap((addition) => packageKey(addition.package)),
      ],
    };
  });
  const familySources = sources.map((source, index): FamilySource => ({
    key: index + 1,
    name: source.name,
    culture: source.form === 'culture',
    knownGenerations: source.knownGenerations,
  }));
  let seedings = 0;
  const familySeedings = jars.flatMap((jar, index) =>
    jar.entry.seedings.map((seeding): FamilySeeding => {
      seedings += 1;
      const source = sources.find((one) => one.id === seeding.source);
      const counts = source?.strains.map((strain) => strain.countPerPiece) ?? [];
      const declared = counts.reduce<number | null>(
        (sum, one) => (sum === null || one === null ? null : sum + one),
        0,
      );
      return {
        key: seedings,
        jar: index + 1,
        fromJar: seeding.fromJar === null ? null : (byId.get(seeding.fromJar) ?? null),
        source: source ? sources.indexOf(source) + 1 : null,
        volumeMl: seeding.amount?.unit === 'mL' ? seeding.amount.value : null,
        pieces: seeding.amount?.unit === 'pieces' ? seeding.amount.value : null,
        countPerPiece: source ? (source.blendTotalPerPiece ?? (declared || null)) : null,
        countDirect: null,
      };
    }),
  );
  return {
    writes,
    jars,
    sources,
    packages,
    portions,
    named,
    key: (name) => jars.indexOf(named(name)) + 1,
    records: { jars: familyJars, seedings: familySeedings, sources: familySources, clearings: [] },
  };
}
