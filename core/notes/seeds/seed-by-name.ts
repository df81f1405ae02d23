// Seeds named without a day: a whole label or name, a number, "same day a", "the previous batch".
import { plain } from '../../quantities/quantities';
import { assumed, problem } from '../notes-says';
import { type KnownJar, NO_JARS, pickAmount, type SeedContext, type Tried } from './seed-index';
import {
  BEFORE_LAST,
  JAR_WORDS,
  PREVIOUS,
  PREVIOUS_WORDS,
  SAME_DAY,
  STOP,
  unused,
  words,
} from '../cells/seed-words';

/** A jar named without a day: a whole label or name, a number, "same day a", "the previous batch". */
export function byName(text: string, context: SeedContext): Tried {
  const exact = context.jars.byAlias.get(words(text).join(' '))?.all ?? [];
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
    NO_JARS;
  if (named.all.length === 1 && named.all[0])
    return { part: { from: { jar: named.all[0] }, amount }, assumptions: [], leftOver: [] };
  const sameDay = SAME_DAY.test(said);
  const previous = !sameDay && (PREVIOUS.test(said) || BEFORE_LAST.test(said));
  if (sameDay || previous) {
    const back = BEFORE_LAST.test(said) ? 2 : 1;
    const day = sameDay ? context.day : context.jars.earlier(context.day, back);
    const jars = (day === undefined ? undefined : context.jars.byDay.get(day)) ?? NO_JARS;
    const left = [...new Set(words(said.replace(PREVIOUS_WORDS, ' ').replace(BEFORE_LAST, ' ')))];
    const ofLetter = (word: string): KnownJar[] => jars.letter(word).filter((jar) => jar.id !== context.self);
    const letters = left.flatMap(ofLetter);
    if (left.some((word) => !STOP.has(word) && ofLetter(word).length === 0))
      return { problem: problem.seedNotFound(text) };
    const fits = letters.length > 0 ? letters : jars.beside(context.self);
    const only =
      letters.length > 0 ? (letters.length === 1 ? letters[0] : null) : jars.onlyBeside(context.self);
    if (only) {
      return {
        part: { from: { jar: only }, amount },
        assumptions: [assumed.previous(text, only.label)],
        leftOver: [],
      };
    }
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
  if (jar) {
    return { part: { from: { jar }, amount }, assumptions: [assumed.onlyJar(text, jar.label)], leftOver: [] };
  }
  if (byLetter.without(context.self) > 1)
    return { problem: problem.seedSeveral(text, byLetter.beside(context.self)) };
  return null;
}
