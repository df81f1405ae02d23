// One more jar of a recorded batch as it stands in the fields, and what it comes to. Pure.
import { daysOf } from './batch-days';
import type { BatchReply, Input } from '../../core/contract';
import type { Reader } from '../parts/reading';
import { additionEntries, milkEntry, NO_SEED, seedEntries } from './batch-entry';
import { lineOrNull, Taking, type Problems } from '../parts/taking';
import { additionTexts, milkText, seedTexts } from './batch-repeat';
import type { Writer } from '../parts/reading';
import {
  isEmptySeed,
  nextLetter,
  noAddition,
  noMilk,
  noSeed,
  type AdditionText,
  type JarPlaceText,
  type MilkText,
  type SeedText,
} from './batch-text';

export interface AddedJarText extends JarPlaceText {
  readonly shelf: '' | 'kept' | 'gone';
  readonly seeds: readonly SeedText[];
  readonly milk: MilkText;
  readonly additions: readonly AdditionText[];
  readonly note: string;
}

/** As the batch's first jar, with the next letter; what was seen and what went in by measure is its own. */
export function addedJarText({ holds, jars }: BatchReply, writer: Writer): AddedJarText {
  const [like] = jars;
  const seeds = like ? seedTexts(like.seedings, writer) : [];
  const additions = like ? additionTexts(like.additions, writer) : [];
  return {
    letter: nextLetter(jars.map(({ jar }) => jar)),
    state: 'made',
    hold: like?.jar.hold ?? (holds.length === 1 ? (holds[0]?.id ?? '') : ''),
    shelf: 'kept',
    seeds: seeds.length > 0 ? seeds : [noSeed],
    milk: like ? milkText(like.jar, writer) : noMilk,
    additions:
      additions.length > 0
        ? additions.map((one) => ({ ...one, planned: '', actual: one.planned || one.actual }))
        : [noAddition],
    note: '',
  };
}

/** Reads the fields; `jar` holds what could be read. */
export function addedJarEntry(
  text: AddedJarText,
  reply: BatchReply,
  reader: Reader,
): { readonly jar: Input<'batch.addJar'>['jar']; readonly problems: Problems } {
  const taking = new Taking();
  const letter = text.letter.trim().toLowerCase();
  if (letter === '') taking.say('letter', 'Give this jar a letter, such as “a”.');
  else if (letter.length > 20) taking.say('letter', 'Keep the letter short: at most 20 characters.');
  else if (reply.jars.some(({ jar }) => jar.letter.toLowerCase() === letter))
    taking.say('letter', `Another jar of this batch is “${letter}” already. Choose another letter.`);
  const seedings = seedEntries(text.seeds, 'seeds', reader, taking);
  if (text.state === 'made' && text.seeds.every(isEmptySeed)) taking.say('seeds.0.find', NO_SEED);
  if (text.state === 'made' && daysOf(reply.batch).first > reader.today)
    taking.say('letter', 'The day of this batch is still to come. Mark the jar as planned.');
  return {
    jar: {
      letter,
      ...milkEntry(text.milk, 'milk', reader, taking),
      countPerMl: null,
      onShelf: text.state === 'planned' || text.shelf === '' ? null : text.shelf === 'kept',
      goneOn: null,
      note: lineOrNull(text.note),
      state: text.state,
      hold: text.hold === '' ? null : text.hold,
      additions: additionEntries(text.additions, 'additions', reader, taking, text.state === 'planned'),
      seedings,
      outcome: null,
    },
    problems: taking.problems,
  };
}
