// What is known beside the facts when new ones are asked about: what is spoiled or set aside, who goes by a label.
import { acidNotThere } from '../../../core/safety/doubts';
import { isSpoiled } from '../../../core/safety/take-out';
import type { Circumstances, Fresh } from '../../../core/rules/consents';
import type { Facts, JarFact } from '../../../core/rules/asked-facts';
import { stands } from '../../../core/lineage/lineage-shapes';
import { momentText } from '../../../core/ledger/stored-moments';
import { actsOf, changesOf } from '../facts/act-changes';
import type { Ledger } from '../ledger';
import type { Rows } from '../rows';
import { madeOn, sameLabels, stoodBefore } from './fresh';

/** Whether what was seen of a jar means that it is spoiled. */
function jarSpoiled(rows: Rows, jar: number): boolean {
  const [outcome] = rows.where('outcome', 'jar', jar);
  return outcome !== undefined && isSpoiled(outcome);
}

/** Columns that decide whether what was observed means *spoiled*, by kind of fact. */
const DECIDING: Readonly<Record<string, readonly string[]>> = {
  observation: ['stage', 'set_state'],
  acidity: ['ph', 'how'],
  sign: ['kind', 'answer'],
};

/** Facts that decide it, those that are gone since among them. */
function decidingFacts({ facts }: Rows, jar: number): number[] {
  const observed = JSON.stringify(facts.where('observation', 'jar', jar).map(({ key }) => key));
  return facts
    .prepare(
      `SELECT value FROM json_each(?)
        UNION SELECT key FROM acidity WHERE observation IN (SELECT value FROM json_each(?))
        UNION SELECT key FROM sign WHERE observation IN (SELECT value FROM json_each(?))
        UNION SELECT j.record FROM journal j JOIN record r ON r.key = j.record AND r.kind IN ('acidity', 'sign')
               WHERE j.op = 'take' AND json_extract(j.before, '$.observation') IN (SELECT value FROM json_each(?))`,
    )
    .pluck()
    .all(observed, observed, observed, observed) as number[];
}

/** The act in which the ledger was last told what decides whether a jar is spoiled; 0 where nothing does. */
function toldIn(rows: Rows, jar: number): number {
  const { facts } = rows;
  const acts = decidingFacts(rows, jar).flatMap((fact) =>
    actsOf(facts, fact, Number.MAX_SAFE_INTEGER, -1).filter((act) =>
      [...changesOf(facts, act, { record: fact })].some(({ kind, before, after }) =>
        DECIDING[kind]?.some((column) => (before?.[column] ?? null) !== (after?.[column] ?? null)),
      ),
    ),
  );
  return Math.max(0, ...acts);
}

/** The day of an act, by its own clock. */
function dayOfAct({ facts }: Rows, act: number): string | null {
  const told = facts.prepare('SELECT at, at_off FROM act WHERE key = ?').get(act) as
    { at: number; at_off: number } | undefined;
  return told ? momentText(told.at, told.at_off).slice(0, 10) : null;
}

/** The day on which the ledger was told that a jar is spoiled; null where it is not spoiled. */
export function spoiledSince(rows: Rows, jar: number): string | null {
  const [outcome] = rows.where('outcome', 'jar', jar);
  return outcome !== undefined && isSpoiled(outcome) ? dayOfAct(rows, toldIn(rows, jar)) : null;
}

/** Whether the notes that a jar came from, in one bringing in or another, told that it is spoiled. */
export function toldByFile(rows: Rows, jar: number, file: string): boolean {
  const told = `SELECT EXISTS (SELECT 1 FROM note_row n JOIN note_file f ON f.key = n.file WHERE n.jar = ? AND f.name = ?)
                   AND EXISTS (SELECT 1 FROM act WHERE key = ? AND kind = 'notes.bringIn')`;
  return rows.count(told, jar, file, toldIn(rows, jar)) === 1;
}

/**
 * Why a jar is set aside; null where it is not, or that was lifted.
 * @param counts which spoiled jars to look at
 */
export function setAsideBy(
  { index }: Ledger,
  jar: number,
  counts: (spoiled: number) => boolean = () => true,
): ReturnType<Circumstances['setAsideBy']> {
  const { family } = index;
  if (!family.has(jar) || family.cautionLevelOf(jar) !== 'set aside') return null;
  const of = family
    .cautionsOf(jar)
    .flatMap((caution) => (caution.level === 'set aside' && stands(caution) ? [caution.of] : []))
    .filter(counts);
  if (of.length === 0) return null;
  return { because: of.map((spoiled) => index.jar(spoiled).label) };
}

/** That a jar's acid is not there; null where nothing says so. */
export function withoutAcid(rows: Rows, jar: number): ReturnType<Circumstances['withoutAcid']> {
  const says = acidNotThere(rows.where('outcome', 'jar', jar)[0] ?? null);
  return says === null ? null : { says };
}

/** All jars of the days that newly called ones are of. */
function namesakesOf(rows: Rows, facts: Facts, fresh: Fresh): JarFact[] {
  const days = new Set([...fresh.labels].map((key) => facts.jars.get(key)?.day ?? null));
  const found = rows
    .prepare(
      `SELECT j.key, j.batch, b.made_on AS day, b.word, j.letter, j.state FROM batch b JOIN jar j ON j.batch = b.key
        WHERE b.made_on IN (SELECT value FROM json_each(?)) ORDER BY j.key`,
    )
    .all(JSON.stringify([...days].filter((day) => day !== null)));
  return (found as Pick<JarFact, 'key' | 'batch' | 'day' | 'word' | 'letter' | 'state'>[]).map((row) => ({
    ...row, first: row.day, last: row.day, volume: null, mistakeIn: null,
  })); // prettier-ignore
}

/** The keeper's word for an act. */
export interface Word {
  readonly why: string | null;
  /** Null where the call can't say so. */
  readonly sameLabelMeant: boolean | null;
}

/** @param act key of the open act */
export function circumstances(
  ledger: Ledger,
  act: number,
  facts: Facts,
  fresh: Fresh,
  word: Word,
  undone: boolean,
): Circumstances {
  const { rows, clock } = ledger;
  return {
    today: clock.today(),
    now: clock.milliseconds(),
    ...word,
    undone,
    namesakes: namesakesOf(rows, facts, fresh),
    stood: (jar, other) =>
      other === null
        ? stoodBefore(rows, act, [jar], !undone, madeOn(jar.day ?? ''))
        : stoodBefore(rows, act, [jar, other], !undone, sameLabels),
    isSpoiled: (jar) => jarSpoiled(rows, jar),
    spoiledSince: (jar) => spoiledSince(rows, jar),
    toldHere: (jar) => toldIn(rows, jar) === act,
    setAsideBy: (jar) => setAsideBy(ledger, jar),
    withoutAcid: (jar) => withoutAcid(rows, jar),
    fromNotes: false,
  };
}
