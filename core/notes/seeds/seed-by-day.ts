// Seeds named by their day: "15 Oct b", "a of 10/15", "2025-10-15".
import { plain, tidy, type FoundAmount } from '../../quantities/quantities';
import { dayIn, dayText, findDay, withoutAmounts, type FoundDay } from '../../text/days';
import { withoutWeekdayLast } from '../../text/weekdays';
import { assumed, problem } from '../notes-says';
import type { KnownJar } from '../named-seeds';
import {
  Jars,
  MOST_NAMED,
  NO_JARS,
  pickAmount,
  type Resolved,
  seedOf,
  type SeedContext,
  type Tried,
} from './seed-index';
import { STOP, unused, words } from '../cells/seed-words';

/** A jar's letter or number right after its day: " b", ", jar 2", "#3". */
const NAMED_NEXT = new RegExp(
  [
    /^(?:['’]s\b)?[\s\-_/.,:#(]*/,
    /(?:(?:jar|glas|glass|pot|batch|bocal|frasco|tarro|vasetto|burk|sloik)\s*)?(?:(?:no|nr|number|n°)\.?\s*(?=\d))?/,
    /[#(]?\s*([\p{L}\p{N}]{1,20})(?![\p{L}\p{N}])[)]?/u,
  ]
    .map(({ source }) => source)
    .join(''),
  'iu',
);
/** Or right before it: "b of ", "2 (from ". */
const NAMED_LAST = new RegExp(
  /(?:^|[^\p{L}\p{N}])([\p{L}\p{N}]{1,20})[\s,(:\-/]*/u.source +
    /(?:(?:of|from|on|made|made on|batch|lid|deckel|vom|von|aus|du|de|del|di|da|dal|van|do|fra|fran|från|z|ze|the|am|le)[\s,(:]+)*$/
      .source,
  'iu',
);

/** Whether plain words, a space before and after each, hold the word of a jar's line or batch. */
const saysWordOf = ({ word }: KnownJar, said: string): boolean =>
  word !== null && said.includes(` ${words(word).join(' ')} `);

/** The jar of a set whose letter stands next to a date: right after it, else right before it. */
function letterBeside(
  before: string,
  after: string,
  jars: Jars,
): { jar: KnownJar; before: string; after: string } | null {
  const oneOf = (letter: string, context: string): KnownJar | null => {
    const there = jars.letter(plain(letter));
    if (there.length < 2) return there[0] ?? null;
    const said = ` ${words(context).join(' ')} `;
    const byWord = there.slice(0, MOST_NAMED).filter((jar) => saysWordOf(jar, said));
    return byWord.length === 1 ? (byWord[0] ?? null) : null;
  };
  const next = NAMED_NEXT.exec(after);
  if (next) {
    const jar = oneOf(next[1] ?? '', `${before} ${after}`);
    if (jar) return { jar, before, after: after.slice(next[0].length) };
  }
  const said = ` ${words(after).join(' ')} `;
  for (const jar of jars.named) {
    // A batch word between the day and the letter: "15 Oct plain b"; a name of several words.
    const phrase = ` ${words([jar.word, jar.letter].filter(Boolean).join(' ')).join(' ')} `;
    if (said.includes(phrase)) return { jar, before, after: said.replace(phrase, ' ') };
  }
  const last = NAMED_LAST.exec(before);
  if (last) {
    const jar = oneOf(last[1] ?? '', before);
    if (jar) return { jar, before: before.slice(0, last.index), after };
  }
  return null;
}

/** A day of an untold year that some figures are. */
function dayFound({ index: start, 0: text }: RegExpExecArray, month: number, day: number): FoundDay {
  const read = { year: null, month, day };
  return { start, end: start + text.length, dayFirst: read, monthFirst: read, sure: false };
}

/** "09.05 A", "17/5 c": two figures and a point, or what may be cups, are a day only where a jar was made on it. */
function likelyDay(text: string, context: SeedContext): FoundDay | null {
  const found =
    /(?<![\d.,])(\d{1,2})\.(\d{1,2})(?![\d.,])/.exec(text) ??
    /(?<![\d.,/])(\d{1,2})\/(\d{1,2})(?=\s*c(?![\p{L}\p{N}]))/iu.exec(text);
  if (!found || context.order === 'year first') return null;
  const [month, day] = context.order === 'day first' ? [found[2], found[1]] : [found[1], found[2]];
  if (!context.jars.byMonthDay.has(`${month?.padStart(2, '0')}-${day?.padStart(2, '0')}`)) return null;
  return dayFound(found, Number(month), Number(day));
}

/** "The 8th": the last such day with jars within a month before. */
function ordinalDay(text: string, { jars, day }: SeedContext): FoundDay | null {
  const found = /(?<![\d.,/-])(\d{1,2})(?:st|nd|rd|th)(?!\p{L})/u.exec(text);
  const month = Date.parse(day) - 31 * 86_400_000;
  const known = jars.days.findLast(
    (one) => one < day && Number(one.slice(8)) === Number(found?.[1]) && Date.parse(one) >= month,
  );
  if (!found || known === undefined) return null;
  return dayFound(found, Number(known.slice(5, 7)), Number(known.slice(8)));
}

/**
 * Of the jars of a day those of the row's own line or batch, where its word sets them apart from others and the seed names
 * none of these words itself; else null.
 */
function ofOwnLine(jars: Jars, word: string | null, text: string): Jars | null {
  if (word === null) return null;
  const said = ` ${words(text).join(' ')} `;
  const named = jars.named.some((jar) => saysWordOf(jar, said));
  const own = named ? [] : jars.all.filter((jar) => plain(jar.word ?? '') === plain(word));
  if (own.length === 0 || own.length === jars.all.length) return null;
  const found = new Jars();
  for (const jar of own) found.add(jar);
  return found;
}

/** A seed named by its day, or null where the text holds no day. */
export function byDate(text: string, context: SeedContext): Tried {
  const clean = tidy(text);
  const found = findDay(withoutAmounts(clean)) ?? likelyDay(clean, context) ?? ordinalDay(clean, context);
  if (!found) return null;
  const read =
    dayIn(found, context.order) ??
    (context.order === 'year first' ? null : (found.dayFirst ?? found.monthFirst));
  if (!read) return { problem: problem.seedNotFound(text) };
  const assumptions: string[] = [];
  const monthDay = `${String(read.month).padStart(2, '0')}-${String(read.day).padStart(2, '0')}`;
  let day = read.year === null ? null : dayText(read, read.year);
  if (read.year === null) {
    const days = context.jars.byMonthDay.get(monthDay) ?? [];
    day = days.findLast((known) => known <= context.day) ?? days.at(-1) ?? null;
  }
  const jars = day === null ? NO_JARS : (context.jars.byDay.get(day) ?? NO_JARS);
  const before = withoutWeekdayLast(clean.slice(0, found.start));
  const after = clean.slice(found.end);
  const own = ofOwnLine(jars, context.word ?? null, clean);
  const within = own && letterBeside(before, after, own);
  const beside = within ?? letterBeside(before, after, jars);
  if (within && jars.letter(within.jar.letter).length > 1)
    assumptions.push(assumed.ownLine(text, within.jar.label));
  const shown = clean.slice(found.start, found.end);
  const finish = (jar: KnownJar, rest: string, amount: FoundAmount | null): Resolved => {
    if (read.year === null) assumptions.push(assumed.seedYear(text, jar.label));
    const over = unused(rest);
    const leftOver = over.length > 0 ? [rest.replace(/\s+/g, ' ').replace(/^[\s;,()]+|[\s;,(]+$/g, '')] : [];
    if (over.length > 0) assumptions.push(assumed.seedWords(text, jar.label, leftOver[0] ?? ''));
    return seedOf({ jar }, amount, assumptions, leftOver);
  };
  if (beside) {
    const { amount, rest, several } = pickAmount(`${beside.before} ; ${beside.after}`, context);
    // A second day, or a second letter of that day, is a second seed: the splitter takes this apart.
    if (
      several ||
      findDay(rest) ||
      words(rest).some((word) => word !== 'a' && jars.letter(word).some((jar) => jar !== beside.jar))
    )
      return null;
    const joined = /[+;&,/]|\b(?:and|und|et|plus)\b/i.test(rest.replace(' ; ', ' '));
    if (joined && words(rest).some((word) => !STOP.has(word) || jars.letter(word).length > 0)) return null;
    return finish(beside.jar, rest, amount);
  }
  const { amount, rest } = pickAmount(`${before} ; ${after}`, context);
  if (findDay(rest)) return null;
  const over = unused(rest);
  // A letter that no jar of that day has.
  const lettered = /^[\s\-_/.,:#(]*\p{L}(?![\p{L}\p{N}'])/u.test(after);
  if (jars.all.length === 0 || lettered || (over.length === 1 && (over[0]?.length ?? 0) <= 3))
    return { problem: problem.seedNotFound(text) };
  const only = jars.onlyBeside(context.self) ?? own?.onlyBeside(context.self) ?? null;
  if (only) {
    assumptions.push(assumed.onlyJar(shown === text ? text : clean, only.label));
    return finish(only, rest, amount);
  }
  return { problem: problem.seedSeveral(text, jars.all) };
}
