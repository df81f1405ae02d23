// Seeds named without a day: a whole label or name, a number, "same day a", "the previous batch".
import { plain } from '../../quantities/quantities';
import { findDay } from '../../text/days';
import { WEEKDAYS, weekdaysInFull } from '../../text/weekdays';
import { assumed, problem } from '../notes-says';
import type { KnownJar } from '../named-seeds';
import { NO_JARS, pickAmount, seedOf, type SeedContext, type Tried } from './seed-index';
import {
  AGO,
  BEFORE_LAST,
  COUNTS,
  JAR_WORDS,
  PREVIOUS,
  PREVIOUS_WORDS,
  SAME_DAY,
  STOP,
  unused,
  words,
} from '../cells/seed-words';

/** "Row 2", "see line 14": a jar by the line of the file that it stands on. */
const ROW =
  /^(?:(?:see|from|of|siehe|aus|von) )?(?:the )?(?:row|line|zeile|reihe)\s*(?:no\.?|nr\.?|#)?\s*(\d{1,5})$/;

/** A jar named without a day: a whole label or name, a number, "same day a", "the previous batch". */
export function byName(text: string, context: SeedContext): Tried {
  const line = ROW.exec(plain(text))?.[1];
  const inRow = line === undefined ? [] : (context.jars.byRow.get(Number(line)) ?? []);
  if (inRow.length === 1 && inRow[0])
    return seedOf({ jar: inRow[0] }, null, [assumed.previous(text, inRow[0].label)]);
  if (inRow.length > 1) return { problem: problem.seedSeveral(text, inRow) };
  const exact = context.jars.byAlias.get(words(text).join(' '))?.all ?? [];
  if (exact.length === 1 && exact[0]) return seedOf({ jar: exact[0] }, null);
  const { amount, rest, several } = pickAmount(text, context);
  if (several) return null;
  const said = weekdaysInFull(plain(rest));
  const key = words(rest).join(' ');
  const bare = words(rest).filter((word) => !JAR_WORDS.has(word));
  const named =
    context.jars.byAlias.get(key) ??
    context.jars.byAlias.get(bare.join(' ')) ??
    context.jars.byAlias.get(unused(rest).join(' ')) ??
    context.jars.byAlias.get(unused(rest.replace(/['’]s\b/g, '')).join(' ')) ??
    NO_JARS;
  if (named.all.length === 1 && named.all[0]) return seedOf({ jar: named.all[0] }, amount);
  const day = dayMeant(said, context);
  if (day !== null) {
    const jars = context.jars.byDay.get(day) ?? NO_JARS;
    const bareOfTime = [AGO, BEFORE_LAST, PREVIOUS_WORDS, ...WEEKDAYS].reduce(
      (left, told) => left.replace(told, ' '),
      said.replace(/'s\b/g, ''),
    );
    const left = [...new Set(words(bareOfTime))];
    const ofLetter = (word: string): KnownJar[] => jars.letter(word).filter((jar) => jar.id !== context.self);
    const letters = left.flatMap(ofLetter);
    if (left.some((word) => !STOP.has(word) && ofLetter(word).length === 0))
      return { problem: problem.seedNotFound(text) };
    const fits = letters.length > 0 ? letters : jars.beside(context.self);
    const only =
      letters.length > 0 ? (letters.length === 1 ? letters[0] : null) : jars.onlyBeside(context.self);
    if (only) return seedOf({ jar: only }, amount, [assumed.previous(text, only.label)]);
    return {
      problem:
        jars.without(context.self) === 0 ? problem.seedNotFound(text) : problem.seedSeveral(text, fits),
    };
  }
  if (named.all.length > 1) return { problem: problem.seedSeveral(text, named.all) };
  // "a/b" are two.
  if (/[/,;&+]/.test(rest) && words(rest).length > 1) return null;
  const single = words(rest).filter((word) => word === words(rest).at(-1) || !STOP.has(word));
  const byLetter = (single.length === 1 && context.jars.byLetter.get(single[0] ?? '')) || NO_JARS;
  // What was made later can't have seeded it.
  const before = byLetter.upTo(context.day, context.self);
  const jar = before.length === 1 ? before[0] : byLetter.onlyBeside(context.self);
  if (jar) return seedOf({ jar }, amount, [assumed.onlyJar(text, jar.label)]);
  if (byLetter.without(context.self) < 2) return null;
  if (context.letterAlone === LAST_BEFORE) {
    const [last, other] = byLetter.lastBefore(context.day);
    if (last && !other) return seedOf({ jar: last }, amount, [assumed.lastBefore(text, last.label)]);
  }
  return { problem: problem.seedSeveral(text, byLetter.beside(context.self)), letterAlone: true };
}

/** Answer: a letter alone always names the jar of that letter made last before. */
export const LAST_BEFORE = 'last before';

/** The day with jars that "same day", "the one before last" or "two weeks ago" mean; '' where there is none, null where nothing says so. */
function dayMeant(said: string, { day, jars }: SeedContext): string | null {
  const ago = AGO.exec(said);
  if (ago) {
    const [count = '', unit = ''] = [ago[1] ?? ago[3], ago[2] ?? ago[4]];
    const weeks = /^[ww]/.test(unit);
    const target = Date.parse(day) / 86_400_000 - (COUNTS[count] ?? Number(count)) * (weeks ? 7 : 1);
    // A week is roughly one.
    const near = jars.days.filter(
      (one) => one < day && Math.abs(Date.parse(one) / 86_400_000 - target) <= (weeks ? 2 : 0),
    );
    return near.length === 1 ? (near[0] ?? '') : '';
  }
  if (SAME_DAY.test(said)) return day;
  const weekday = findDay(said) === null ? WEEKDAYS.findIndex((names) => names.test(said)) : -1;
  if (weekday >= 0) {
    const week = Date.parse(day) - 7 * 86_400_000;
    return (
      jars.days.findLast(
        (one) => one < day && Date.parse(one) >= week && new Date(one).getUTCDay() === weekday,
      ) ?? ''
    );
  }
  const back = BEFORE_LAST.test(said) ? 2 : PREVIOUS.test(said) ? 1 : 0;
  return back === 0 ? null : (jars.earlier(day, back) ?? '');
}
