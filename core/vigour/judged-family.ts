// Judgement of a whole family, kept up as it grows: evidence is made again only for jars whose record, counts or seeds
// came out different, and a line is judged again only where its own jars or what is usual of all lines have changed.
import type { Family } from '../lineage/family';
import { heldJars, type Held } from '../safety/set-aside';
import type { FamilyJar, FamilySeeding } from '../lineage/lineage-shapes';
import { evidenceOfJar, type JarRecord } from './evidence';
import { atOnce, earlyOf, judgingLine, type LineJudgement, type Steps } from './line';
import type { JarEvidence } from './jar-evidence';
import { sameUsual, usualOfAll, type Usual } from './usual';

/** What a jar's evidence was made of. Where every part is the very same, so is the evidence. */
interface Made {
  readonly record: JarRecord;
  readonly jar: FamilyJar;
  readonly seedings: readonly FamilySeeding[];
  readonly lines: readonly number[];
  readonly deepest: number;
  readonly held: Held | null;
  readonly seeds: readonly (FamilyJar | readonly number[] | null)[];
  readonly evidence: JarEvidence;
}

const seedsOf = (family: Family, seedings: readonly FamilySeeding[]): Made['seeds'] =>
  seedings.flatMap(({ fromJar }) =>
    fromJar !== null && family.has(fromJar) ? [family.jar(fromJar), family.linesOf(fromJar)] : [null],
  );

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);

/** Evidence of a jar: the one made before where nothing that it rests on has changed, or where it says the same. */
function made(family: Family, record: JarRecord, held: Held | null, before: Made | undefined): Made {
  const jar = family.jar(record.key);
  const seedings = family.seedsOf(record.key);
  const lines = family.linesOf(record.key);
  const { deepest } = family.generationOf(record.key);
  const seeds = seedsOf(family, seedings);
  if (
    before?.record === record &&
    before.jar === jar &&
    before.seedings === seedings &&
    before.lines === lines &&
    before.deepest === deepest &&
    before.held === held &&
    sameList(before.seeds, seeds)
  )
    return before;
  const evidence = evidenceOfJar(family, record, held);
  const same = before && JSON.stringify(before.evidence) === JSON.stringify(evidence);
  return { record, jar, seedings, lines, deepest, held, seeds, evidence: same ? before.evidence : evidence };
}

interface Judged {
  readonly keeper: Usual;
  readonly several: boolean;
  readonly judgement: LineJudgement;
}

/** One version of a family with its judgement. Lines are judged when they are first asked for. */
export class JudgedFamily {
  readonly evidence: readonly JarEvidence[];
  readonly byKey: ReadonlyMap<number, JarEvidence>;
  /** Keys of the founding batches. */
  readonly lines: readonly number[];
  /** Lines that had to be judged anew in this version; the others were carried over. */
  readonly judgedAnew: number[] = [];
  readonly #made = new Map<number, Made>();
  readonly #jars: ReadonlyMap<number, readonly JarEvidence[]>;
  readonly #early = new WeakMap<readonly JarEvidence[], ReturnType<typeof earlyOf>>();
  readonly #judged = new WeakMap<readonly JarEvidence[], Judged>();
  #keeper: Usual | null = null;
  readonly #keeperBefore: Usual | null;

  /** @param records of every jar, lost ones among them; @param before the version that this one follows */
  constructor(
    readonly family: Family,
    records: ReadonlyMap<number, JarRecord>,
    before: JudgedFamily | null = null,
  ) {
    const evidence: JarEvidence[] = [];
    const jars = new Map<number, JarEvidence[]>();
    const held = heldJars(family);
    for (const record of records.values()) {
      // Lost jars have nothing to tell.
      if (!family.has(record.key) || family.jar(record.key).lost) continue;
      const one = made(
        family,
        record,
        held.get(record.key) ?? null,
        before ? before.#made.get(record.key) : undefined,
      );
      this.#made.set(record.key, one);
      evidence.push(one.evidence);
      for (const line of one.evidence.lines) {
        const list = jars.get(line);
        if (list) list.push(one.evidence);
        else jars.set(line, [one.evidence]);
      }
    }
    this.evidence = evidence;
    this.byKey = new Map(evidence.map((jar) => [jar.key, jar]));
    this.lines = family.lines.map(({ batch }) => batch);
    // A line whose jars are the very same keeps its list, and with it all that was made of it.
    this.#jars = new Map(
      this.lines.map((line) => {
        const now = jars.get(line) ?? [];
        const known = before ? before.#jars.get(line) : undefined;
        return [line, known && sameList(known, now) ? known : now];
      }),
    );
    this.#keeperBefore = before && (before.#keeper ?? before.#keeperBefore);
    if (before) {
      this.#early = before.#early;
      this.#judged = before.#judged;
    }
  }

  /** Evidence of a line's jars. The same list as long as none of it changes. */
  jarsOf(line: number): readonly JarEvidence[] {
    return this.#jars.get(line) ?? [];
  }

  /** What is usual of all lines. */
  get keeper(): Usual {
    if (!this.#keeper) {
      const now = usualOfAll(this.lines.flatMap((line) => this.#earlyOf(line)));
      const before = this.#keeperBefore;
      this.#keeper = before && sameUsual(before, now) ? before : now;
    }
    return this.#keeper;
  }

  #earlyOf(line: number): ReturnType<typeof earlyOf> {
    const jars = this.jarsOf(line);
    let early = this.#early.get(jars);
    if (!early) this.#early.set(jars, (early = earlyOf(line, jars)));
    return early;
  }

  line(line: number): LineJudgement {
    return atOnce(this.#judging(line));
  }

  /** Judges the lines that are not judged yet, a batch at a step. What is asked for meanwhile is judged at once. */
  *judging(): Steps<undefined> {
    for (const line of this.lines) yield* this.#judging(line);
    return undefined;
  }

  *#judging(line: number): Steps<LineJudgement> {
    const jars = this.jarsOf(line);
    const { keeper } = this;
    const several = this.lines.length > 1;
    let steps: Steps<LineJudgement> | null = null;
    for (;;) {
      const known = this.#judged.get(jars);
      if (known?.keeper === keeper && known.several === several) return known.judgement;
      steps ??= judgingLine(line, jars, keeper, this.lines.length);
      const step = steps.next();
      if (step.done === true) {
        this.judgedAnew.push(line);
        this.#judged.set(jars, { keeper, several, judgement: step.value });
      } else yield;
    }
  }
}
