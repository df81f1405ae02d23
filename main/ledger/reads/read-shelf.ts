// The shelf: everything that exists, in the order in which it should be eaten. Names and ids round what core says.
import { dayInOrder, latestDay } from '../../../core/lineage/lineage-shapes';
import type { Reply } from '../../../core/contract';
import { printAmount } from '../../../core/quantities/quantities';
import { daysBetween } from '../../../core/quantities/typed-days';
import { answerOf } from '../../../core/safety/answer';
import {
  askedSays,
  belowSays,
  eatBySays,
  eatenSays,
  givenBy,
  givenBySays,
  givenSays,
  leftSays,
  longUnsaidSays,
  openedSays,
  seedBySays,
  shelfHead,
} from '../../../core/says/shelf-says';
import { cautionSentence, eatSentence, quoteSentence } from '../../../core/says/safety-says';
import type { Answer } from '../../../core/shapes/safety-codes';
import type { ShelfGroup, ShelfVerb } from '../../../core/shapes/shelf-calls';
import { eatBy, seedBy } from '../../../core/shelf/by-when';
import { groupOf, inEatingOrder } from '../../../core/shelf/eating-order';
import { shelfDue } from '../../../core/shelf/due';
import { shelfLimits, type ShelfLimits } from '../../../core/shelf/limits';
import { goneInWords } from '../../../core/safety/gone-words';
import type { Ledger } from '../ledger';
import { remarksAbout, type Remarked } from '../derived/unread';
import { dayOf } from '../facts/day-of-row';
import { keptThings, type Thing } from './shelf-things';
import { judgedOf } from '../judged';
import { seedsNow } from './read-judgement';
import { familyNow } from './read-now';
import { reservesDue } from './read-reminders';
import { lineNames } from './read-views';

type Shelf = Reply<'shelf.get'>;
type Item = Shelf['items'][number];

/** Days after coming out of warmth before the keeper is asked whether it is still there (common practice, no source). */
const ASK_AFTER = 5;
/** Days for which it is shown what was given away, or eaten and found out since. */
const SHOWN_DAYS = 60;
const MOST_GIVEN = 24;

function limitsNow({ rows }: Ledger): ShelfLimits {
  const settings = rows.prepare('SELECT name, value FROM setting').raw().all() as [string, number][];
  return shelfLimits(new Map(settings));
}

/** What may be eaten, given and seeded of it. What was parted before a sign is asked for by the day it was parted. */
export const answerFor = ({ index }: Ledger, { jar, portion }: Thing): Answer =>
  answerOf(index.family, jar.key, portion && { on: portion.keptOn });

/** Because of which jar something stands against it, as a sentence; null where nothing does. */
export function cautionFor({ index }: Ledger, { because }: Answer): string | null {
  if (because === null) return null;
  const other = because.relation === 'itself' ? null : index.jar(because.of).label;
  return cautionSentence(because, other);
}

/** What its screen offers; what it does not offer is refused, or asked about. */
function verbsOf(
  { standing, left, portion, reserve }: Thing,
  answer: Answer,
  group: ShelfGroup,
  past: boolean,
): ShelfVerb[] {
  if (group === 'warm') return [];
  if (group === 'aside' || group === 'discard') return ['discard'];
  const { place, opened } = standing;
  const [frozen, pieces] = [place === 'freezer', left.pieces !== null];
  const mayGo = answer.level === null && !answer.looks.includes('slow start');
  const offered: Record<ShelfVerb, boolean> = {
    eat: !frozen && place !== 'dried',
    give: mayGo && !past,
    freeze: place === 'fridge' && !left.thawed && !past,
    thaw: frozen,
    open: place === 'fridge' && opened === null && !pieces,
    keep: !reserve && opened === null && answer.seed && (portion === null || portion.form !== 'jar'),
    discard: true,
  };
  return (Object.keys(offered) as ShelfVerb[]).filter((verb) => offered[verb]);
}

/** From 0 to 1 of what it held. */
function shareOf({ held, left }: Thing): number | null {
  const of = (value: number, whole: number | null | undefined): number | null =>
    whole ? Math.min(1, Math.max(0, value / whole)) : null;
  const pieces = held.pieces ?? (held.amount?.unit === 'pieces' ? held.amount.value : null);
  if (left.pieces !== null) return of(left.pieces, pieces);
  return left.amount === null ? null : of(left.amount.value, held.amount?.value);
}

/** Strains that the sources it traces back to declare. */
function strainsOf({ rows, index }: Ledger, jar: number): string[] {
  const found = index.family
    .tracedSharesOf(jar)
    .flatMap(({ source }) =>
      source === null
        ? []
        : rows
            .where('strain', 'source', source)
            .map(({ genus, species, designation }) =>
              [genus, species, designation].filter(Boolean).join(' '),
            ),
    );
  return [...new Set(found)];
}

interface Beside {
  readonly today: string;
  readonly limits: ShelfLimits;
  readonly seeds: ReturnType<typeof seedsNow>;
  readonly outAt: ReadonlyMap<string, string | null>;
  readonly nameOf: (line: number) => string;
  readonly remarks: ReturnType<typeof remarksAbout>;
}

const passed = (on: string | null, today: string): boolean => on !== null && on < today;

function leftOfThing({ preferences }: Ledger, thing: Thing): Item['left'] {
  const { held, left } = thing;
  const print = (of: Pick<NonNullable<typeof left.amount>, 'value' | 'unit'> | null): string | null =>
    of && printAmount({ ...of, typed: null }, preferences);
  const whole =
    held.amount?.unit === 'mL' || held.amount?.unit === 'g'
      ? { value: held.amount.value, unit: held.amount.unit }
      : null;
  const pieces = left.pieces === null ? null : String(Math.round(left.pieces));
  return {
    amount: left.amount,
    pieces: left.pieces,
    share: shareOf(thing),
    says: leftSays(print(left.amount), print(whole), pieces),
  };
}

/** What a remark says became of it; null where none does. */
function suggestedBy(remarks: readonly Remarked[] = []): Item['suggests'] {
  for (const remark of remarks) {
    const what = remark.of === 'jar' || remark.of === 'portion' ? goneInWords(remark.text) : null;
    if (what !== null) return { what, says: quoteSentence(remark) };
  }
  return null;
}

function itemOf(
  ledger: Ledger,
  thing: Thing,
  { today, limits, seeds, outAt, nameOf, remarks }: Beside,
): Omit<Item, 'reserveOf'> {
  const { id, kind, jar, portion, name, standing, reserve } = thing;
  const answer = answerFor(ledger, thing);
  const eat = answer.eat ? eatBy(standing, limits) : null;
  const seed = answer.seed ? seedBy(standing, limits, ledger.preferences) : null;
  const group = groupOf({ ...thing, label: name, madeOn: dayInOrder(jar), eatBy: eat, answer }, today);
  const isThis = (one: { jar: string | null; portion: string | null }): boolean =>
    one.portion === (portion?.uid ?? null) && one.jar === jar.uid;
  const caution = cautionFor(ledger, answer);
  const unseen = !jar.outcomeKnown;
  const generation = ledger.index.family.generationOf(jar.key);
  const nextSeedOf = seeds.next.filter(isThis).map(({ line }) => line);
  const asked =
    thing.unsaid && standing.place !== 'warmth' && daysBetween(standing.coldSince, today) >= ASK_AFTER;
  const out = standing.place === 'warmth' ? (outAt.get(jar.uid) ?? null) : null;
  return {
    id,
    kind,
    jar: jar.uid,
    batch: ledger.rows.uidOf('batch', jar.batch),
    label: jar.label,
    name,
    madeOn: jar.madeOn,
    age: jar.madeOn === null ? null : daysBetween(jar.madeOn, today),
    place: standing.place,
    group,
    form: portion?.form ?? 'jar',
    generation: generation.deepest,
    atLeast: generation.atLeast,
    setWord: jar.setWord,
    opened: standing.opened,
    thawed: standing.thawed,
    reserve,
    left: leftOfThing(ledger, thing),
    eatBy: eat && { ...eat, past: passed(eat.on, today), says: eatBySays(eat, today, unseen) },
    seedBy: seed && { ...seed, past: passed(seed.on, today), says: seedBySays(seed, today) },
    outAt: out,
    lines: ledger.index.family.linesOf(jar.key).map(nameOf),
    strains: strainsOf(ledger, jar.key),
    lastOf: seeds.lastOf.filter(isThis).map(({ says }) => says),
    nextSeedOf,
    asked,
    suggests: asked ? suggestedBy(remarks.get(jar.key)) : null,
    discard: answer.discard,
    caution: answer.level,
    safety: { eat: answer.eat, seed: answer.seed },
    verbs: verbsOf(thing, answer, group, eat !== null && passed(eat.on, today)),
    says: {
      below: belowSays(
        { group, discard: answer.discard, nextSeedOf, eatBy: eat, seedBy: seed, unseen, outAt: out },
        today,
      ),
      eat:
        standing.place === 'warmth'
          ? 'Nothing is tasted before it is taken out, looked at and smelled.'
          : eatSentence(answer),
      opened: openedSays(standing.opened, today),
      caution,
      eaten: thing.eaten && !answer.eat ? eatenSays(name, caution ?? eatSentence(answer)) : null,
    },
  };
}

/** What was given away lately, the newest first, with what stands on it by now. */
function givenAway(ledger: Ledger, limits: ShelfLimits, today: string): Shelf['given'] {
  const { rows, index } = ledger;
  const found = rows
    .prepare(
      `SELECT m.key, CASE WHEN a.kind IN ('shelf.give', 'handOver.write') THEN a.why END AS why
         FROM movement m JOIN record r ON r.key = m.key JOIN act a ON a.key = r.made_in
        WHERE m.kind = 'given' ORDER BY m.key DESC LIMIT 200`,
    )
    .all() as { key: number; why: string | null }[];
  return found
    .flatMap(({ key, why: to }): Shelf['given'] => {
      const moved = rows.get('movement', key);
      const portion = moved.portion === null ? null : rows.get('portion', moved.portion);
      const jar = index.jar(portion?.jar ?? (moved.jar as number));
      const on = dayOf(moved);
      if (!index.family.has(jar.key) || (on !== null && daysBetween(on, today) > SHOWN_DAYS)) return [];
      const answer = answerOf(index.family, jar.key, portion && { on: portion.keptOn });
      const by = givenBy(on, limits.eatGiven);
      const against = answer.eat ? null : (cautionFor(ledger, answer) ?? eatSentence(answer));
      return [
        {
          id: portion?.uid ?? jar.uid,
          jar: jar.uid,
          label: jar.label,
          name: jar.label,
          on,
          to,
          by,
          discard: answer.discard,
          caution: answer.level,
          says: against === null ? givenBySays(by, today) : givenSays(jar.label, to, against),
        },
      ];
    })
    .slice(0, MOST_GIVEN);
}

/** Jars of which some was eaten lately, and that are no food as is known by now, whether or not any is left. */
function eatenSince(ledger: Ledger, shown: readonly Item[], today: string): Shelf['eaten'] {
  const { rows, index } = ledger;
  const keys = rows
    .prepare(
      `SELECT DISTINCT coalesce(m.jar, p.jar) FROM movement m LEFT JOIN portion p ON p.key = m.portion WHERE m.kind = 'eaten'`,
    )
    .pluck()
    .all() as number[];
  const told = new Set(shown.flatMap(({ jar, says }) => (says.eaten === null ? [] : [jar])));
  return keys.flatMap((key): Shelf['eaten'] => {
    const jar = index.jar(key);
    const last = latestDay(jar);
    const recent = last !== null && daysBetween(last, today) <= SHOWN_DAYS;
    if (!recent || !index.family.has(key) || told.has(jar.uid)) return [];
    const answer = answerOf(index.family, key);
    if (answer.eat) return [];
    return [
      {
        jar: jar.uid,
        label: jar.label,
        says: eatenSays(jar.label, cautionFor(ledger, answer) ?? eatSentence(answer)),
      },
    ];
  });
}

/** The first words: what decides, and the one reason. */
function headOf(ledger: Ledger, items: readonly Item[], things: ReadonlyMap<string, Thing>, today: string) {
  const of = (group: ShelfGroup): readonly Item[] => items.filter((one) => one.group === group);
  const [first] = of('eat');
  const [discard] = of('discard');
  const past = of('past');
  const thing = first && things.get(first.id);
  const answer = thing && answerFor(ledger, thing);
  return shelfHead(
    {
      discard: discard?.discard ? { name: discard.name, discard: discard.discard } : null,
      first: first?.eatBy
        ? {
            name: first.name,
            eatBy: first.eatBy,
            opened: thing?.standing.opened ?? null,
            unseen: thing?.jar.outcomeKnown === false,
            look: answer && answer.looks.length > 0 ? eatSentence(answer) : null,
            seed: first.nextSeedOf.length > 0 || first.lastOf.length > 0,
          }
        : null,
      past: past[0] ? { name: past[0].name, count: past.length } : null,
      kept: items.length,
      warm: of('warm').length,
    },
    today,
  );
}

const kept = new WeakMap<Ledger, { readonly state: string; readonly shelf: Shelf }>();

/**
 * Everything that exists. Today's list, the shelf and the plan ask for it one after another: within a minute in which
 * nothing is recorded it is the same.
 */
export function getShelf(ledger: Ledger): Shelf {
  const state = ledger.state && `${ledger.state} ${ledger.clock.now().slice(0, '2026-05-20T09:00'.length)}`;
  const known = kept.get(ledger);
  if (known && known.state === state) return known.shelf;
  const shelf = shelfNow(ledger);
  if (state) kept.set(ledger, { state, shelf });
  return shelf;
}

function shelfNow(ledger: Ledger): Shelf {
  const today = ledger.clock.today();
  const limits = limitsNow(ledger);
  const { things, longUnsaid } = keptThings(ledger);
  const beside: Beside = {
    today,
    limits,
    seeds: seedsNow(ledger),
    outAt: new Map(
      familyNow(ledger).holds.flatMap(({ ends, jars }) => jars.map(({ id }) => [id, ends] as const)),
    ),
    nameOf: lineNames(ledger),
    remarks: remarksAbout(
      ledger.rows,
      things.map(({ jar }) => jar.key),
      false,
    ),
  };
  const inOrder = inEatingOrder(
    things.map((thing) => {
      const item = itemOf(ledger, thing, beside);
      const answer = { eat: item.safety.eat, discard: item.discard };
      return { ...thing, item, label: item.name, madeOn: dayInOrder(thing.jar), eatBy: item.eatBy, answer };
    }),
    today,
  ).map(({ item }) => item);
  const lacking = reservesDue(judgedOf(ledger), beside.nameOf, inOrder, today);
  const items = inOrder.map((item): Item => ({
    ...item,
    reserveOf: lacking.flatMap(({ line, jar }) => (jar.id === item.id ? [line] : [])),
  }));
  const asked = items.filter((item) => item.asked);
  const due = shelfDue(
    items.map((item) => ({ ...item, forSeed: item.reserve || item.nextSeedOf.length > 0 })),
    today,
  );
  return {
    today,
    ...headOf(ledger, items, new Map(things.map((thing) => [thing.id, thing])), today),
    items,
    given: givenAway(ledger, limits, today),
    eaten: eatenSince(ledger, items, today),
    asked:
      asked.length === 0
        ? null
        : { ids: asked.map(({ id }) => id), ...askedSays(asked.map(({ name }) => name)) },
    longUnsaid:
      longUnsaid.length === 0
        ? null
        : {
            count: longUnsaid.length,
            ids: longUnsaid.slice(0, 1000).map(({ uid }) => uid),
            sentence: longUnsaidSays(longUnsaid.length),
          },
    due,
    limits,
  };
}
