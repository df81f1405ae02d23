// The words of pages that leave the program: a line told on paper, a sheet that goes with a jar, whom to tell, the whole ledger.
import { dayLabel } from '../lineage/labels';
import type { VerdictReply } from '../shapes/advice-replies';
import type { AboutJar } from '../shapes/hand-over-calls';
import type { Discard } from '../shapes/safety-codes';
import { madeWords } from './hand-over-says';

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

export const DECLARED =
  'As declared on what it was started from, and not tested since: nobody knows which of them are alive in a jar.';
export const NO_SAFETY = 'It says nothing about safety.';
export const TREND_CAPTION =
  'Each dot is a batch: 0 to 100 against the line’s own early batches, whose level is the broken line. A hollow dot is a first batch, or one that can’t be compared.';
export const PICTURE_CAPTION =
  'The number is the generation. The surface shows how it set, runny to very firm; an open outline: not noted. Hatched: spoiled. Black lid with a bar: set aside. Ring: look first. Heavy rim: some is kept.';
export const FROM_A_LEDGER =
  'A keeper’s own notes, as they were written down; drawn and reckoned by Jarline.';

/** "from Blue Tin (2 strains) and Meadow Pot (1 strain)". */
export function startedFrom(
  sources: readonly {
    readonly name: string;
    readonly strains: readonly unknown[];
    readonly culture: boolean;
  }[],
): string {
  const words = sources.map(({ name, strains, culture }) =>
    culture || strains.length === 0 ? name : `${name} (${counted(strains.length, 'strain')})`,
  );
  return words.length === 0 ? '' : `from ${words.join(' and ')}`;
}

/** What stands under the name of a line. */
export const lineFacts = (line: {
  readonly founded: string | null;
  readonly from: string;
  readonly jars: number;
  readonly generation: number;
  readonly atLeast: boolean;
}): string =>
  [
    line.founded === null ? 'founded on a day not known' : `founded ${dayLabel(line.founded, true)}`,
    line.from,
    counted(line.jars, 'jar'),
    `up to generation ${line.atLeast ? 'at least ' : ''}${line.generation}`,
  ]
    .filter(Boolean)
    .join(' · ');

/**
 * The verdict as it may be read by others: where it rests on what a remark says, that something is to be looked at and not what it
 * says.
 */
export function verdictForOthers({ verdict, reason, sentence, seed }: VerdictReply): string {
  if (reason.code !== 'look') return sentence;
  return seed === null ? `${verdict}.` : `Go on from ${seed.label}, but look first.`;
}

/** What a telephone reads from the square code on the sheet: a jar's few essentials as plain words, its code last. */
export function essentials(about: AboutJar, code: string): string {
  const { generation, allergens, eatBy } = about;
  return [
    'Home-made live cultured milk, not inspected',
    `${about.label}, made ${madeWords(about, 'on a day not known')}`,
    `Generation ${generation.atLeast ? 'at least ' : ''}${generation.deepest}`,
    `Contains ${allergens.join(', ')}`,
    eatBy === null ? 'Eat by: not known' : `Eat by ${dayLabel(eatBy, true)}`,
    'Keep at or below 4 °C / 40 °F',
    `Code ${code}`,
  ].join('\n');
}

const DISCARD_WORDS: Readonly<Record<Discard, string>> = {
  spoiled: 'spoiled: discard',
  'not set': 'did not set: discard',
  remark: 'a remark tells of spoilage and nobody has answered it: discard until then',
};
export const discardWords = (discard: Discard): string => DISCARD_WORDS[discard];

export interface ToTell {
  readonly to: string | null;
  readonly label: string;
  readonly on: string | null;
  readonly discard: boolean;
}

/** What somebody who was given a jar is to be told. */
export const tellWords = ({ label, on, discard }: ToTell): string =>
  `${label}${on === null ? '' : `, given on ${dayLabel(on, true)}`}: ${
    discard
      ? 'it is spoiled or did not set. Don’t eat it and don’t seed from it; throw out what is left. What was made of it is set aside.'
      : 'something stands against it. Don’t eat it, nor seed from it or from what was made of it, before it is settled.'
  }`;

export const TELL_INTRO =
  'Whoever was given one of these jars is to be told. The file “what is known now”, received there, sets aside what was made of it, too.';
export const NOBODY_TO_TELL = 'Nothing stands against any jar that was given with a hand-over.';

/** What is left out of the page of a ledger, and what is in it. */
export const pageIntro = (told: number, all: number, privateToo: boolean): string =>
  [
    told === all ? `All ${counted(all, 'jar')}` : `The newest ${told} of ${all} jars`,
    `, the newest first. ${privateToo ? 'Private remarks are in it' : 'Private remarks are left out'}; so are names of tasters, prices and shops.`,
  ].join('');

export const photographsLeftOut = (count: number): string =>
  `${counted(count, 'photograph')} more ${count === 1 ? 'is' : 'are'} beside the ledger and not in this page.`;

/** Which part of a sheet is which. */
export const stripWords = (at: number, of: number): string =>
  of === 1 ? '' : `Part ${at} of ${of}, from left to right`;
