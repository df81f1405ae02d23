// What is known beside the facts when new ones are asked about: what is spoiled or set aside, who goes by a label.
import { answerOf, discardOfPart, ownStops } from '../../../core/safety/answer';
import { stopsSaid } from '../../../core/says/safety-says';
import { STOPPED_BY, type Circumstances, type Fresh, type StoppedBy } from '../../../core/rules/consents';
import { aboutDay, type Facts, type JarFact } from '../../../core/rules/asked-facts';
import { dayBegan, momentText } from '../../../core/ledger/stored-moments';
import { actsOf, changesOf } from '../facts/act-changes';
import type { AskedLedger } from './asked-ledger';
import { readFacts } from '../derived/family-of-rows';
import { REMARKS_OF } from '../entries/outcome-of-jar';
import { Touched } from '../derived/touched';
import { remarksAbout } from '../derived/unread';
import type { Rows } from '../facts/fact-rows';
import { madeFrom, sameLabels, stoodBefore } from './fresh';
import { UNSEEN, type Discard, type JarSafety } from '../../../core/shapes/safety-codes';
import { stands } from '../../../core/shapes/caution-codes';

const NONE: ReadonlySet<number> = new Set();

/** How jars stand once an act is kept: by the family in memory, those that the act touched by what stands in the rows now. */
export class SafetyNow {
  readonly #ledger: AskedLedger;
  readonly #act: number | null;
  #touched: ReadonlySet<number> | null = null;

  /** @param act key of the open act; null where none is open */
  constructor(ledger: AskedLedger, act: number | null) {
    this.#ledger = ledger;
    this.#act = act;
  }

  #isTouched(jar: number): boolean {
    const { rows } = this.#ledger;
    this.#touched ??= this.#act === null ? NONE : new Touched(rows, changesOf(rows, this.#act)).jarKeys();
    return this.#touched.has(jar);
  }

  own(jar: number): JarSafety {
    const { rows, index, behind } = this.#ledger;
    const known = index.jars.get(jar);
    if (known && !behind && !this.#isTouched(jar)) return known.safety;
    const [now] = readFacts(rows, [jar]);
    return now?.safety ?? UNSEEN;
  }

  /** Why it is neither food nor seed. @param partedOn the day it was parted of the jar; null: the jar itself */
  discard(jar: number, partedOn: string | null): Discard | null {
    return discardOfPart(this.own(jar), partedOn);
  }

  /** In words, what stops it as seed beside that it is discarded or set aside. */
  stopped(jar: number, partedOn: string | null): { readonly stop: StoppedBy; readonly says: string } | null {
    const { family } = this.#ledger.index;
    const own = this.own(jar);
    const mates =
      family.has(jar) && !own.metered
        ? answerOf(family, jar).stops.filter((stop) => stop === 'needs the meter')
        : [];
    const stops = [...mates, ...ownStops(own, discardOfPart(own, partedOn))];
    const stop = stops.find((one): one is StoppedBy => (STOPPED_BY as readonly string[]).includes(one));
    const [says] = stop === undefined ? [] : stopsSaid({ stops: [stop], noAcid: own.noAcid });
    return stop === undefined || says === undefined ? null : { stop, says };
  }
}

/** Columns that decide whether what was observed means *spoiled*, by kind of fact. */
const DECIDING: Readonly<Record<string, readonly string[]>> = {
  observation: ['stage', 'set_state', 'sour', 'hours_in'],
  acidity: ['ph', 'how', 'checked'],
  sign: ['kind', 'answer'],
  remark: ['read_as'],
};

/** Facts that decide it, those that are gone since among them. */
function decidingFacts(rows: Rows, jar: number): number[] {
  const observed = JSON.stringify(rows.where('observation', 'jar', jar).map(({ key }) => key));
  return rows
    .prepare(
      `SELECT value FROM json_each(@observed)
        UNION SELECT key FROM acidity WHERE observation IN (SELECT value FROM json_each(@observed))
        UNION SELECT key FROM sign WHERE observation IN (SELECT value FROM json_each(@observed))
        UNION SELECT j.record FROM journal j JOIN record r ON r.key = j.record AND r.kind IN ('acidity', 'sign')
               WHERE j.op = 'take' AND json_extract(j.before, '$.observation') IN (SELECT value FROM json_each(@observed))
        UNION SELECT remark FROM (${REMARKS_OF})
        UNION SELECT s.key FROM (${REMARKS_OF}) about CROSS JOIN sign s ON s.remark = about.remark`,
    )
    .pluck()
    .all({ observed, jars: JSON.stringify([jar]) }) as number[];
}

/** The act in which the ledger was last told what decides whether a jar is spoiled; 0 where nothing does. */
function toldIn(rows: Rows, jar: number): number {
  const acts = decidingFacts(rows, jar).flatMap((fact) =>
    actsOf(rows, fact, Number.MAX_SAFE_INTEGER, -1).filter((act) =>
      [...changesOf(rows, act, { record: fact })].some(({ kind, before, after }) =>
        DECIDING[kind]?.some((column) => (before?.[column] ?? null) !== (after?.[column] ?? null)),
      ),
    ),
  );
  return Math.max(0, ...acts);
}

/** The day of an act, by its own clock. */
function dayOfAct(rows: Rows, act: number): string | null {
  const told = rows.prepare('SELECT at, at_off FROM act WHERE key = ?').get(act) as
    { at: number; at_off: number } | undefined;
  return told ? momentText(told.at, told.at_off).slice(0, 10) : null;
}

/** The words of the remark that stops a jar until it is answered; null where none does. */
export const stoppingWords = (rows: Rows, jar: number): string | null =>
  remarksAbout(rows, [jar], false)
    .get(jar)
    ?.find(({ stops }) => stops)?.text ?? null;

/** The day on which the ledger was told what makes a jar neither food nor seed. */
export const toldOn = (rows: Rows, jar: number): string | null => dayOfAct(rows, toldIn(rows, jar));

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
  { index }: AskedLedger,
  jar: number,
  counts: (spoiled: number) => boolean = () => true,
): ReturnType<Circumstances['setAsideBy']> {
  const { family } = index;
  // Of a condemned jar a part may be no more than set aside.
  const level = family.has(jar) ? family.cautionLevelOf(jar) : null;
  if (level !== 'set aside' && level !== 'condemned') return null;
  const of = family
    .cautionsOf(jar)
    .flatMap((caution) => (caution.level === 'set aside' && stands(caution) ? [caution.of] : []))
    .filter(counts);
  if (of.length === 0) return null;
  return { because: of.map((spoiled) => index.jar(spoiled).label) };
}

/** All jars of the days that newly called ones are of. */
function namesakesOf(rows: Rows, facts: Facts, fresh: Fresh): JarFact[] {
  const called = [...fresh.labels].flatMap((key) => facts.jars.get(key) ?? []);
  type Found = Pick<JarFact, 'key' | 'batch' | 'day' | 'first' | 'last' | 'word' | 'letter' | 'state'>;
  const ofDays = (where: string, days: Iterable<string>): Found[] =>
    rows
      .prepare(
        `SELECT j.key, j.batch, b.made_on AS day, coalesce(b.made_on, b.made_from) AS first,
                coalesce(b.made_on, b.made_to) AS last, b.word, j.letter, j.state
           FROM batch b JOIN jar j ON j.batch = b.key WHERE ${where} ORDER BY j.key`,
      )
      .all(JSON.stringify([...new Set(days)])) as Found[];
  const found = ofDays(
    'b.made_on IN (SELECT value FROM json_each(?))',
    called.flatMap(({ day }) => day ?? []),
  );
  const about = called.flatMap((jar) => aboutDay(jar) ?? []);
  // All ranges that such a day lies in; whose middle it is, the rule looks itself.
  if (about.length > 0)
    found.push(...ofDays('b.key IN (SELECT o.key FROM json_each(?) d CROSS JOIN batch o ON o.made_from <= d.value AND o.made_to >= d.value)', about)); // prettier-ignore
  return found.map((row) => ({ ...row, volume: null, mistakeIn: null }));
}

/** The keeper's word for an act. */
export interface Word {
  readonly why: string | null;
  /** Null where the call can't say so. */
  readonly sameLabelMeant: boolean | null;
}

/** @param act key of the open act */
export function circumstances(
  ledger: AskedLedger,
  act: number,
  facts: Facts,
  fresh: Fresh,
  word: Word,
  undone: boolean,
): Circumstances {
  const { rows, clock } = ledger;
  const safety = new SafetyNow(ledger, act);
  return {
    today: clock.today(),
    now: clock.milliseconds(),
    dayBegan: (day) => dayBegan(day, clock.now()),
    ...word,
    undone,
    namesakes: namesakesOf(rows, facts, fresh),
    stood: (jar, other) =>
      other === null
        ? stoodBefore(rows, act, [jar], !undone, madeFrom(jar.first ?? ''))
        : stoodBefore(rows, act, [jar, other], !undone, sameLabels),
    discard: (jar, partedOn) => safety.discard(jar, partedOn),
    stoppingWords: (jar) => stoppingWords(rows, jar),
    discardKnown: (jar) => toldOn(rows, jar) ?? clock.today(),
    toldHere: (jar) => toldIn(rows, jar) === act,
    setAsideBy: (jar) => setAsideBy(ledger, jar),
    stopped: (jar, partedOn) => safety.stopped(jar, partedOn),
    fromNotes: false,
  };
}
