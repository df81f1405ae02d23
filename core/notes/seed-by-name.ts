// Seeds named without a day: a whole label or name, a number, "same day a", "the previous batch".
import { plain } from '../quantities';
import { assumed, problem } from './says';
import { pickAmount, type SeedContext, type Tried } from './seed-index';
import {
  BEFORE_LAST,
  JAR_WORDS,
  PREVIOUS,
  PREVIOUS_WORDS,
  SAME_DAY,
  STOP,
  unused,
  words,
} from './seed-words';

/** A jar named without a day: a whole label or name, a number, "same day a", "the previous batch". */
export function byName(text: string, context: SeedContext): Tried {
  const exact = context.jars.byAlias.get(words(text).join(' ')) ?? [];
  if (exact.length === 1 && exact[0])
    return { part: { from: { jar: exact[0] }, amount: null }, assumptions: [], leftOver: [] };
  const { amount, rest, several } = pickAmount(text, context);
  if (several) return null;
  const said = plain(rest);
  const key = words(rest).join(' ');
  const bare = words(rest).filter((word) => !JAR_WORDS.has(word));
  const named =
    context.jars.byAlias.get(key) ??
    context.jars.byAlias.get(bare.join(' ')) ??
    context.jars.byAlias.get(unused(rest).join(' ')) ??
    [];
  if (named.length === 1 && named[0])
    return { part: { from: { jar: named[0] }, amount }, assumptions: [], leftOver: [] };
  const sameDay = SAME_DAY.test(said);
  const previous = !sameDay && (PREVIOUS.test(said) || BEFORE_LAST.test(said));
  if (sameDay || previous) {
    const back = BEFORE_LAST.test(said) ? 2 : 1;
    const day = sameDay ? context.day : context.jars.earlier(context.day, back);
    const jars = (day === undefined ? [] : (context.jars.byDay.get(day) ?? [])).filter(
      (jar) => jar.id !== context.self,
    );
    const left = words(said.replace(PREVIOUS_WORDS, ' ').replace(BEFORE_LAST, ' '));
    const letters = jars.filter((jar) => left.includes(jar.letter));
    const over = left.filter((word) => !STOP.has(word) && !jars.some((jar) => jar.letter === word));
    const fits = letters.length > 0 ? letters : jars;
    if (over.length > 0) return { problem: problem.seedNotFound(text) };
    if (fits.length === 1 && fits[0]) {
      return {
        part: { from: { jar: fits[0] }, amount },
        assumptions: [assumed.previous(text, fits[0].label)],
        leftOver: [],
      };
    }
    return {
      problem:
        jars.length === 0
          ? problem.seedNotFound(text)
          : problem.seedSeveral(
              text,
              fits.map((jar) => jar.label),
            ),
    };
  }
  if (named.length > 1)
    return {
      problem: problem.seedSeveral(
        text,
        named.map((jar) => jar.label),
      ),
    };
  const single = words(rest).filter((word) => word === words(rest).at(-1) || !STOP.has(word));
  const byLetter =
    single.length === 1
      ? (context.jars.byLetter.get(single[0] ?? '') ?? []).filter((jar) => jar.id !== context.self)
      : [];
  if (byLetter.length === 1 && byLetter[0]) {
    const jar = byLetter[0];
    return { part: { from: { jar }, amount }, assumptions: [assumed.onlyJar(text, jar.label)], leftOver: [] };
  }
  if (byLetter.length > 1)
    return {
      problem: problem.seedSeveral(
        text,
        byLetter.map((jar) => jar.label),
      ),
    };
  return null;
}
