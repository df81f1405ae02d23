// What a cell says seeded a jar: each part of its text ends as a jar, a source, a problem, or words kept for the note.
import { cutOut, findAmounts, tidy } from '../../quantities/quantities';
import { findDay, likeDay, withoutAmounts } from '../../text/days';
import { assumed, problem, type Wrong } from '../notes-says';
import { byDate } from './seed-by-day';
import { byName } from './seed-by-name';
import { nameOfSeed, type SeedPart } from '../named-seeds';
import { type Resolved, type SeedContext, type Tried, withMore } from './seed-index';
import { saidSource } from './said-source';
import { wholeAmount } from './seed-amounts';
import { bySource, unknownName } from './seed-sources';
import { PARTS_OF_JARS, STRONG, WEAK } from '../cells/seed-words';

export interface SeedsReading {
  readonly parts: readonly SeedPart[];
  readonly problems: readonly Wrong[];
  /** Jars named beside what is a problem, by their id. */
  readonly beside: readonly string[];
  readonly assumptions: readonly string[];
  /** Products that a problem leaves to choose from. */
  readonly choices: readonly string[];
  /** Names that are neither a jar nor a known source. */
  readonly unknown: readonly string[];
  /** A letter alone names several jars. */
  readonly letterAlone: boolean;
  /** What the seeds went into, where it stands beside them: "in 1 L whole milk". */
  readonly milk: string | null;
  /** Words that named no seed: kept in the note. */
  readonly leftOver: readonly string[];
}

const NOTHING_READ: SeedsReading = {
  parts: [], problems: [], beside: [], assumptions: [], choices: [], unknown: [], letterAlone: false, milk: null, leftOver: [],
}; // prettier-ignore

/** "Half a", "1/2 b": a share of the seed, which is kept in words. */
const SHARE =
  /^(?:(?:1\s?\/\s?[234]|[½⅓¼]|half|halb|halbe[rs]?|mitad|moiti[eé]|met[aà]|halva?)(?:\s+(?:of|von|de|di|van))?\s+)(?=\S)/iu;

/** Where a second share of the seed begins: "half a, half b". */
const BEFORE_SHARE =
  /\s*(?:[+;&,/]|\b(?:and|und|plus)\b)?\s+(?=(?:1\s?\/\s?[234]|[½⅓¼]|half|halb|halbe[rs]?)\s+\S)/iu;

function tryPart(text: string, context: SeedContext): Tried {
  const share = SHARE.exec(text.trim());
  const plainly = share ? tryAside(text, context) : null;
  if (!share || (plainly && 'part' in plainly)) return plainly ?? tryAside(text, context);
  const rest = tryAside(text.trim().slice(share[0].length), context);
  if (!rest || !('part' in rest) || !('jar' in rest.part.from)) return plainly;
  const told = share[0].trim();
  return withMore(rest, assumed.seedWords(text, rest.part.from.jar.label, told), told);
}

function tryAside(text: string, context: SeedContext): Tried {
  // "5 (the firm one)", "8 caps Blue Tin (thanks Mum!)": words in brackets at the end are kept, where the rest is plain.
  const aside = /^(.*[\p{L}\p{N}].*?)\s*\(([^()\d]*\p{L}{3}[^()\d]*|gen\w*\.?\s*#?\d{1,3})\)$/u.exec(
    text.trim(),
  );
  const bare = aside ? tryWords(aside[1] ?? '', context) : null;
  if (
    !aside ||
    !bare ||
    !('part' in bare) ||
    PARTS_OF_JARS.some(([, pattern]) => pattern.test(aside[2] ?? ''))
  )
    return tryWords(text, context);
  const { from } = bare.part;
  if (!('jar' in from) && bare.part.amount === null) return tryWords(text, context);
  const name = nameOfSeed(from);
  return withMore(bare, assumed.aside(text, name, aside[2] ?? ''), aside[2] ?? '');
}

function tryWords(text: string, context: SeedContext): Tried {
  for (const [part, pattern] of PARTS_OF_JARS) {
    const found = pattern.exec(text);
    if (!found) continue;
    const tried = tryJar(
      `${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}`.trim(),
      context,
    );
    if (!tried || !('part' in tried) || !('jar' in tried.part.from)) continue;
    const { jar } = tried.part.from;
    const told = found[0]
      .replace(/[()]/g, '')
      .replace(/\s+(?:from|of|out of|aus|von|vom|de|du|di|van|fr[aå]n|fra|z)\s*$/iu, '')
      .trim();
    return part === 'cubes'
      ? withMore(tried, assumed.seedWords(text, jar.label, told), told)
      : withMore({ ...tried, part: { ...tried.part, part } }, assumed.part(text, part, jar.label));
  }
  return tryJar(text, context);
}

function tryJar(text: string, context: SeedContext): Tried {
  const name = byName(text, context);
  if (name && 'part' in name) return name;
  const date = byDate(text, context);
  if (date) return date;
  if (name) return name;
  return findDay(withoutAmounts(text)) || likeDay(text) ? null : bySource(text, context);
}

/** Pieces of a text, each tried by itself; a bare letter takes the day beside it ("15 Oct a and b", "a and b of 15 Oct"). */
function tryAll(pieces: readonly string[], context: SeedContext): Tried[] {
  const days = pieces.map((piece) => {
    const found = findDay(piece);
    return found ? tidy(piece).slice(found.start, found.end) : null;
  });
  return pieces.map((piece, at) => {
    const day =
      days.slice(0, at).findLast((one) => one !== null) ?? days.slice(at).find((one) => one !== null);
    const share = SHARE.exec(piece.trim())?.[0] ?? '';
    const letter = piece.trim().slice(share.length);
    const isLetter = days[at] === null && /^(?:jar\s*)?[\p{L}\p{N}]{1,3}$/iu.test(letter);
    const beside = isLetter && day ? tryPart(`${share}${day} ${letter}`, context) : null;
    return beside && 'part' in beside ? beside : tryPart(piece, context);
  });
}

/** A piece that is an amount and nothing else belongs to the seed before it, else to the one after. */
function withAmounts(pieces: readonly string[], context: SeedContext): string[] {
  const lone = (text: string): boolean => wholeAmount(text, context.amounts) !== null;
  if (!pieces.some(lone)) return [...pieces];
  const out: string[] = [];
  let ahead = '';
  for (const piece of pieces) {
    const before = out.at(-1);
    if (!lone(piece)) {
      out.push(`${ahead} ${piece}`.trim());
      ahead = '';
    } else if (before !== undefined && findAmounts(before, context.amounts, true).length === 0) {
      out[out.length - 1] = `${before} ${piece}`;
    } else ahead = `${ahead} ${piece}`.trim();
  }
  return ahead === '' ? out : [...out, ahead];
}

const good = (tried: readonly Tried[]): tried is Resolved[] =>
  tried.every((one) => one !== null && 'part' in one);

/** "… in 1 L whole milk": what a seed went into. */
const INTO_MILK =
  /^(.*\S)\s+((?:in|into|to)\s+(?:\d|an?\s|half\s|½|¼)[^+;&]*?(?:milk|milch)\S*|(?:in|into)\s+\d+(?:[.,]\d+)?\s?(?:ml|l|qts?|cups?|lit(?:er|re)s?)\.?)$/iu;
/** What seeds, and what it went into ('': that is not told). */
function beforeMilk(text: string): readonly [string, string] {
  const found = INTO_MILK.exec(text);
  return found ? [found[1] ?? '', found[2] ?? ''] : [text, ''];
}

const EACH =
  /\b(?:each|apiece|je(?:weils)?|chacun\w*|cada uno|ciascuno)\b(?:\s+(?:of|from|von|vom|aus|de|di)\b)?/iu;

/** "2 tbsp each of a and b": one amount, and the seeds that each have it; null where a text says nothing of the kind. */
function eachOf(text: string, context: SeedContext): SeedsReading | null {
  const [amount, second] = EACH.test(text) ? findAmounts(text, context.amounts, true) : [];
  if (!amount || second) return null;
  const reading = readSeeds(cutOut(text, [amount]).replace(EACH, ' ').trim(), context);
  const open = reading.parts.length > 1 && reading.parts.every((part) => part.amount === null);
  return open ? { ...reading, parts: reading.parts.map((part) => ({ ...part, amount })) } : null;
}

/** Reads what seeded a jar. Every part of the text ends as a seed, a problem, or words kept for the note. */
export function readSeeds(text: string, context: SeedContext): SeedsReading {
  const clean = text
    .replace(/[\r\n]+/g, ' ; ')
    .trim()
    .replace(/^(?:seed(?:ed)?(?: from| with| by)?|from|starter|aus|von|inoculum)\s*:\s*/i, '');
  const [before, milk] = beforeMilk(clean);
  if (milk !== '') {
    const reading = readSeeds(before, context);
    return { ...reading, milk };
  }
  const shared = eachOf(clean, context);
  if (shared) return shared;
  const whole = saidSource(clean, context) ?? tryPart(clean, context);
  const pieces = clean
    .split(STRONG)
    .map((piece) => piece.trim())
    .filter(Boolean);
  const finer = pieces
    .flatMap((piece) => piece.split(WEAK))
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
  const shares = clean.split(BEFORE_SHARE).filter((piece) => piece.trim() !== '');
  const halves = shares.length > 1 ? tryAll(shares, context) : [];
  // "Half a half b of 2 May" are two, though the whole names one.
  const tries: Tried[][] = halves.length > 1 && good(halves) ? [halves] : [[whole]];
  if (pieces.length > 1) tries.push(tryAll(withAmounts(pieces, context), context));
  if (finer.length > pieces.length) tries.push(tryAll(withAmounts(finer, context), context));
  const chosen = tries.find(good);
  if (chosen) {
    return {
      ...NOTHING_READ,
      parts: chosen.map(({ part }) => part),
      assumptions: chosen.flatMap(({ assumptions }) => assumptions),
      leftOver: chosen.flatMap(({ leftOver }) => leftOver),
    };
  }
  const either = clean.split(/\s+(?:or|oder|ou|o|of|eller|lub)\s+/i);
  const eitherTried = either.length > 1 ? tryAll(either, context) : [];
  if (eitherTried.length > 1 && good(eitherTried)) {
    const names = eitherTried.map(({ part }) => ({ label: nameOfSeed(part.from) }));
    return { ...NOTHING_READ, problems: [problem.seedSeveral(clean, names)] };
  }
  // Nothing fits whole: say what is missing in the coarsest cut that has a part that does fit, else of the whole text.
  const partly =
    tries.slice(1).find((tried) => tried.some((one) => one !== null && 'part' in one)) ?? tries[0] ?? [];
  const texts = partly === tries[0] ? [clean] : partly.length === pieces.length ? pieces : finer;
  const problems = partly.flatMap((one, at) =>
    one === null ? [problem.seedNotFound(texts[at] ?? clean)] : 'problem' in one ? [one.problem] : [],
  );
  const choices = partly.flatMap((one) => (one && 'problem' in one ? (one.choices ?? []) : []));
  const letterAlone = partly.some((one) => one && 'problem' in one && one.letterAlone === true);
  const unknown = partly.flatMap((one, at) => (one === null ? (unknownName(texts[at] ?? clean) ?? []) : []));
  const beside = partly.flatMap((one) =>
    one && 'part' in one && 'jar' in one.part.from ? [one.part.from.jar.id] : [],
  );
  return { ...NOTHING_READ, problems, beside, choices, unknown, letterAlone };
}
