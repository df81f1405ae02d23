// Every sentence the program says, in one table: what is wrong and what to do. Calm, short, no jargon, no blame.
// Pure: a code and its parameters in, a sentence out.
import type { Refusal } from './contract';
import { joinIssue } from './plain-issue';
import { setAsideSentence } from './says/safety-says';
import { lengthWords } from './says/today-says';
import { daysInWords } from './lineage/labels';
import { shortened } from './says/quoted-end';

type Params = Refusal['params'];
const text = (params: Params, name: string): string => {
  const value = params[name];
  return Array.isArray(value) ? value.join(', ') : String(value ?? '');
};

/** A day; of a jar of which only a range of days is known, the first of these or the last. */
const earliest = (p: Params, name: string): string =>
  `${daysInWords(text(p, name))}${p['earliest'] === true ? ' at the earliest' : ''}`;
const latest = (p: Params, name: string): string =>
  `${daysInWords(text(p, name))}${p['latest'] === true ? ' at the latest' : ''}`;

/** What became of a ledger whose file is no longer where it was. */
const leftAs = (p: Params): string =>
  [
    p['acted'] === 'before' ? 'This was not recorded.' : '',
    p['copy']
      ? `All that was recorded${p['acted'] === 'after' ? ', this too,' : ''} is saved in ${text(p, 'copy')}. Open that, or put the ledger back and open it again.`
    : p['unsaved'] === true
      ? 'What was recorded is still held by this program, but could not be saved elsewhere. Leave it open, make room on the disk and try again.'
    : 'It was the invented ledger, so nothing of yours is lost. Leave it.',
  ].filter((part) => part !== '').join(' '); // prettier-ignore

/** ": it was there from 14 Mar 2026, 18:30, to …" of a stay, as far as it was timed. */
function sinceWords(params: Params): string {
  const at = (name: string): string | null => {
    const value = params[name];
    return typeof value === 'string' ? `${daysInWords(value.slice(0, 10))}, ${value.slice(11, 16)}` : null;
  };
  const [came, went] = [at('came'), at('went')];
  if (came === null) return '';
  return went === null ? `: it came on ${came}, too` : `: it was there from ${came}, to ${went}`;
}

/** What is wrong, as a sentence of its own. */
const sentenceOf = (what: string): string =>
  `${what.slice(0, 1).toUpperCase()}${what.slice(1).replace(/[.]?$/, '.')}`;

/** The words of a remark that stops a jar, after "says". */
const saidInWords = (p: Params): string =>
  p['words'] ? `: “${shortened(text(p, 'words'), 80)}”` : ' that it spoiled';

/** That a jar is known to be neither food nor seed, and since when. */
function discardKnown(p: Params): string {
  const [seed, since] = [text(p, 'seed'), daysInWords(text(p, 'known'))];
  if (p['discard'] === 'remark')
    return `A note of ${seed} says since ${since}${saidInWords(p)}, and nobody has answered it`;
  if (p['discard'] === 'not set') return `${seed} is known since ${since} not to have set`;
  return `${seed} is known to be spoiled since ${since}`;
}

/** Beside a comparison of what was measured with what was weighed. */
const asMl = (p: Params): string => (p['weighed'] === true ? '1 g is taken as 1 mL. ' : '');

/** Code → sentence. A code that is not here can't be sent: `RefusalCode` is its key type. */
export const refusals = {
  invalid: (p) => `${joinIssue(text(p, 'path'), text(p, 'problem'))}. Please correct it and try again.`,
  'unknown call': (p) => `There is no call named “${text(p, 'name')}”.`,
  'unknown schema': (p) => `There is no record and no call named “${text(p, 'name')}”.`,
  'not found': (p) => `There is no ${text(p, 'kind')} with that id in this ledger.`,
  'no ledger': () => 'No ledger is open. Open or start one first.',
  'ledger stopped': () =>
    'The part that keeps the ledger stopped in the middle of this. Nothing unfinished was kept. Please try again.',
  'ledger refused': (p) => text(p, 'sentence'),
  'no demo': () => 'The invented ledger is not open, so there is nothing to leave.',
  forbidden: () => 'That is not allowed from here.',

  // Opening a ledger file.
  'no such file': (p) => `There is no ledger at ${text(p, 'file')}. Check the name, or start a new one.`,
  'empty file': (p) =>
    `The file ${text(p, 'file')} is empty (0 bytes): there is no ledger in it to look at. Check the name; if your ledger was there, put a copy of it back. Recording something makes it a new ledger.`,
  'file exists': (p) => `There is a file at ${text(p, 'file')} already. Open it, or choose another name.`,
  'log without ledger': (p) =>
    `There is no ledger at ${text(p, 'file')}, but the log of one lies beside that place (${text(p, 'log')}). It may hold what was recorded last. Put the ledger back, or move the log elsewhere to start a new one.`,
  'name too long': (p) => `The name ${text(p, 'file')} is too long for its disk. Choose a shorter one.`,
  'is a folder': (p) => `${text(p, 'file')} is a folder. Choose a ledger file in it.`,
  'not a ledger': (p) => `${text(p, 'file')} is not a Jarline ledger. It was left as it is.`,
  'newer ledger': (p) =>
    `${text(p, 'file')} was written by a newer Jarline. Update Jarline to open it. It was left as it is.`,
  'older ledger': (p) =>
    `${text(p, 'file')} was made before the first release. Bring its notes in again. It was left as it is.`,
  damaged: (p) =>
    `The ledger ${text(p, 'file')} is damaged. Open the newest good backup, or save what can be read. It was left as it is.`,
  'log damaged': (p) =>
    `The log beside the ledger (${text(p, 'file')}-wal) is damaged: ${Number(p['lost']) === 1 ? 'the last thing' : `the last ${Number(p['lost'])} things`} recorded can’t be read from it as it stands. Save what can be read, which puts a single lost bit right, or open the newest good backup. Ledger and log were left as they are.`,
  'altered ledger': (p) =>
    `The rules inside ${text(p, 'file')} were altered by another program, so its history can't be relied on. Open the newest good backup. It was left as it is.`,
  'read-only': (p) =>
    `${text(p, 'file') || 'The ledger'} can't be written to. Check the permissions of the file and its folder.`,
  busy: () => 'Another program is using this ledger. Close it there, then try again. Nothing was changed.',
  'disk full': () => 'The disk is full. Make some room, then try again. Nothing was changed.',
  'disk trouble': () =>
    'The disk the ledger lies on did not answer as it should. Keep the ledger on a disk of this computer. Nothing was changed.',
  'ledger gone': (p) =>
    `The ledger was moved or deleted while it was open: it is no longer at ${text(p, 'file')}. ${leftAs(p)}`,
  'ledger replaced': (p) =>
    `Another file took the place of ${text(p, 'file')} while it was open, perhaps through a program that syncs files. ${leftAs(p)}`,
  'kept, no answer': () =>
    'This was recorded and is kept, but something went wrong after it. Look at the history before you record it again.',
  'not closed in order': (p) =>
    `Everything recorded is kept, but ${text(p, 'file')} could not be closed in order${p['full'] === true ? ', since the disk is full' : ''}. Leave the file ${text(p, 'file')}-wal beside it: it is taken in when the ledger is opened again.`,
  'no backup made': (p) =>
    `Everything recorded is kept, but no backup of ${text(p, 'file')} could be made${p['full'] === true ? ', since the disk is full: make some room' : '. Look whether the folder beside it can be written to'}.`,
  'not a backup': (p) =>
    `No whole backup of this ledger lies at “${text(p, 'file')}”. Choose one of those that are listed.`,
  'no backup': () => 'There is no good backup beside this ledger. Save what can be read instead.',
  usage: (p) => `This is how: ${text(p, 'usage')}`,
  'no ledger named': () => 'Say which ledger file with --ledger FILE.',
  'nothing readable': () => 'Nothing in this file can be read any more. It was left as it is.',
  'nothing to recover': () => 'This ledger is in order. There is nothing to recover.',
  'not from here': (p) =>
    `“${text(p, 'name')}” needs the window. Give the ledger file with --ledger instead.`,
  'not among many': (p) =>
    `“${text(p, 'name')}” opens or keeps a ledger, and calls is about the one it was given. Run it by itself with call.`,
  'line too long': () =>
    'That line is longer than 20 MB. Make the call shorter, or name a file in it by its path.',
  'line not text': () => 'That line is not text in UTF-8. Write it in UTF-8 and send it again.',
  cancelled: () => 'Stopped. Nothing was changed.',

  // Bringing in notes.
  ambiguous: (p) =>
    `${text(p, 'question')} Answer with answers: {"${text(p, 'id')}": …}${Array.isArray(p['choices']) && p['choices'].length > 0 ? `, one of: ${text(p, 'choices')}` : ''}. Nothing was changed.`,
  'notes into demo': () =>
    'This is the invented ledger. Leave it and bring your notes into a ledger of your own; nothing was changed.',
  'notes not found': (p) => `There is no file at ${text(p, 'file')} that can be read. Check the name.`,
  'notes too large': (p) => `${text(p, 'file')} is larger than 20 MB. Bring it in in parts.`,
  'notes is a spreadsheet': (p) =>
    `${text(p, 'file')} can’t be opened as a workbook: it is damaged, locked by a password or of an older kind. Save it in its own program as .xlsx or as CSV, then bring that in.`,
  'notes is a document': (p) =>
    `${text(p, 'file')} is a PDF. Open the notes in a spreadsheet program, save them as CSV, then bring that in.`,
  'notes not text': () =>
    'This file is not text. Save the notes as CSV in a spreadsheet program, then bring that in.',
  'notes empty': () => 'There are no rows in this file. Choose the file that holds the notes.',
  'notes not a table': (p) =>
    `${text(p, 'file')} is not a table: its lines don’t fall into columns. Write the notes with one row for each jar and one column each for the day, the jar and its seed, save them as CSV, then bring that in.`,
  'notes without days': (p) =>
    `No column of this file tells on which day a jar was made (columns: ${text(p, 'headings')}). Say which column it is.`,
  'notes without seeds': (p) =>
    `No column of this file tells what seeded a jar (columns: ${text(p, 'headings')}). Say which column it is.`,

  // Recording.
  'same label': (p) =>
    `There is a jar ${text(p, 'label')} already. Choose another letter or word${p['mayMean'] === true ? ', or say that you mean it' : ''}.`,
  'day to come': (p) =>
    `${daysInWords(text(p, 'day'))} is still to come, so no jar is made yet. Mark the jars as planned, or correct the day.`,
  'nothing planned': () =>
    'No jar of this batch is planned any more, so there is nothing left to make. Record a new batch, or add a jar to this one.',
  'not planned': (p) =>
    `${text(p, 'jar')} is no planned jar of this batch. Leave it out, and correct it by itself.`,
  'day long past': (p) =>
    `${daysInWords(text(p, 'day'))} is too long ago for a jar that anyone keeps. Correct the day.`,
  'kept day to come': (p) =>
    `${daysInWords(text(p, 'day'))} is still to come, so nothing is kept yet. Correct the day.`,
  'kept before made': (p) =>
    `${text(p, 'jar')} was made on ${earliest(p, 'madeOn')}, so nothing of it was kept on ${daysInWords(text(p, 'day'))}. Correct one of the days.`,
  'portion kept later': (p) =>
    `That part of ${text(p, 'seed')} was ${p['frozen'] === true ? 'frozen' : 'kept'} on ${daysInWords(text(p, 'keptOn'))}, so ${p['frozen'] === true ? 'its cubes' : 'it'} can’t have seeded ${text(p, 'jar')}, made on ${latest(p, 'day')}. Correct one of the days, or choose another seed.`,
  'seed more than jar': (p) =>
    `${text(p, 'seed')} mL of seed is more than ${text(p, 'jar')} holds (${text(p, 'volume')} mL). ${asMl(p)}Correct the amount or the volume.`,
  'unit impossible': (p) =>
    `What ${p['mayBePieces'] === true ? `is kept or taken of ${text(p, 'jar')}` : `${text(p, 'jar')} holds`} can’t be said in ${text(p, 'unit')}. Say it in mL or g${p['mayBePieces'] === true ? ', or in pieces' : ''}.`,
  'pH impossible': (p) =>
    `${text(p, 'ph')} can’t be the pH of a jar: it lies between 2 and 9. Check the reading, or leave it out.`,
  'portion more than jar': (p) =>
    `${text(p, 'portion')} mL is more than ${text(p, 'jar')} held (${text(p, 'volume')} mL), so it can’t all be kept of it. ${asMl(p)}Correct the amount or the volume.`,
  'portion of nothing': (p) =>
    `0 is nothing to keep of ${text(p, 'jar')}. Leave the amount out where it is not known; where it is used up, say on which day it was gone.`,
  'taken more than jar': (p) =>
    `Together ${text(p, 'taken')} mL would be taken of ${text(p, 'jar')}, which held ${text(p, 'volume')} mL. ${asMl(p)}Correct an amount or the volume.`,
  'more than portion': (p) =>
    `That would be ${text(p, 'taken')} of the ${text(p, 'had')} ${text(p, 'unit')} that were kept of ${text(p, 'jar')}. ${asMl(p)}Correct an amount, or take the rest from another jar.`,
  'seed gone before': (p) =>
    `${p['kept'] === true ? `That part of ${text(p, 'seed')}` : text(p, 'seed')} was gone on ${daysInWords(text(p, 'goneOn'))}, so it can’t have seeded ${text(p, 'jar')}, made on ${earliest(p, 'day')}. Correct one of the days${p['kept'] === true ? '' : ', or say which part that was kept of it'}.`,
  'opened before made': (p) =>
    `${text(p, 'jar')} was made on ${earliest(p, 'madeOn')}, so on ${daysInWords(text(p, 'toldOn'))} it can’t have been open for ${text(p, 'days')} days. Correct the days, or the day it was made.`,
  'warm before made': (p) =>
    `${text(p, 'jar')} was made on ${earliest(p, 'madeOn')}, so it can’t have stood in warmth that ended on ${daysInWords(text(p, 'day'))}. Correct one of the days.`,
  'interruption longer': (p) =>
    `${text(p, 'jar')} stood in warmth for ${text(p, 'warm')} h, so the power can’t have failed for ${text(p, 'hours')} h of it. Correct one of the two.`,
  'planned has facts': (p) =>
    `${text(p, 'jar')} is ${text(p, 'state') || 'only planned'}, so nothing of it can have been ${text(p, 'what')} yet. Say first that it was made.`,
  'stay outside hold': (p) =>
    p['early'] === true
      ? `${text(p, 'jar')} can’t have stood in warmth before it began. Correct when it came or went, or when the hold began.`
      : `${text(p, 'jar')} can’t have stood in warmth after it ended. Correct when it came or went, or when the hold ended.`,
  'stays overlap': (p) =>
    `${text(p, 'jar')} would stand in warmth twice at once${sinceWords(p)}. Correct when it came or when it went.`,
  'interruption outside hold': (p) =>
    `${text(p, 'jar')}: warmth can’t have been missing before it began or after it ended. Correct one of the times.`,
  'gone before made': (p) =>
    `${text(p, 'jar')} was made on ${earliest(p, 'madeOn')}, so it was not ${text(p, 'what') || 'gone'} on ${daysInWords(text(p, 'day'))}. Correct one of the days.`,
  'gone day to come': (p) =>
    `${daysInWords(text(p, 'day'))} is still to come, so nothing is ${text(p, 'what') || 'gone'} by then yet. Correct the day, or leave it out.`,
  'gone already': (p) =>
    `${p['kept'] === true ? `That part of ${text(p, 'jar')}` : text(p, 'jar')} was ${text(p, 'how')} on ${daysInWords(text(p, 'goneOn'))}, so nothing of it was ${text(p, 'what')} on ${daysInWords(text(p, 'day'))}. Correct one of the days, or how much was ${text(p, 'how')}.`,
  'made on no day': () =>
    'A jar that is made is made on a day, or between two days where that is all that is known; one that is planned is planned for a day.',
  'range of days': () =>
    'A range of days needs both its first and its last day, in their order, and no day beside them.',
  'no such reading': (p) => `Nothing was read at ${text(p, 'at')}.`,
  'export without readings': (p) =>
    `No readings were found in ${text(p, 'file')}. Each row needs a time and a temperature: choose the file that the probe’s program exports.`,
  'export without days': (p) =>
    `The times in ${text(p, 'file')} have no day, and it is not noted when this hold began. Note that first.`,
  'not to be tasted': (p) =>
    `${text(p, 'jar')} may not be eaten, so nobody tastes it. Leave it out of the tasting.`,
  'gate not passed': (p) =>
    `It is not noted that ${text(p, 'jar')} smelled sour and clean and that its curd held, so nobody tastes it yet. Look, smell and note that first, or leave it out.`,
  'taster avoids': (p) =>
    `${text(p, 'taster')} avoids ${text(p, 'allergen')}, and ${text(p, 'jar')} may hold it. Leave one of the two out.`,
  'revealed already': () =>
    'This tasting is revealed already: who knows which jar is which no longer marks them. Begin another.',
  'no such code': (p) => `${text(p, 'code')} is no code of this tasting. Read it again from the cup.`,
  'decided already': (p) => `It is decided already: ${text(p, 'decided')}. Undo that first.`,
  'stay not timed': (p) =>
    `Nobody noted when ${text(p, 'jar')} came into the warmth, so it may have stood in two places at once. Say when it came and went, or say in a few words how it was.`,
  'on the shelf and gone': (p) =>
    `${text(p, 'jar')} is said to be on the shelf and to be gone. Take one of the two away.`,
  'taken out before the end': (p) =>
    `The time in warmth ends on ${daysInWords(text(p, 'day'))} at ${text(p, 'time')}, which is still to come, but ${text(p, 'jar')} is said to have been set when it was taken out. Correct the end, or leave it out.`,
  'taken out early': (p) =>
    `${text(p, 'jar')} is in warmth for ${p.atLeast === true ? 'at least' : 'about'} ${text(p, 'hours')} more hours as planned, so how it came out can't be known yet. If it was taken out early, correct when its time in warmth ended, then record this. A look in between goes under the early check. If neither is so, say in a few words why.`,
  'set too soon': (p) =>
    `${text(p, 'jar')} was in warmth for ${lengthWords(Number(p.minutes))} as noted, and no milk sets in so short a time. Correct when it went in and came out, then record this. If it is so all the same, say in a few words why.`,
  'name of a jar': (p) =>
    `“${text(p, 'name')}” is what the jar ${text(p, 'label')} is called. If that jar is meant, pick it as the seed. If it is another one’s, add a word to the name, such as whose it is.`,
  'seed not made': (p) =>
    `${text(p, 'seed')} is ${text(p, 'state')}, so it can't seed a jar. Choose another seed.`,
  'one seed': () =>
    'A seeding comes from one jar, or from one source: name one of the two. A portion is named together with its jar.',
  'portion of another jar': (p) =>
    `That portion is not of ${text(p, 'jar')}. Choose one of its own portions.`,
  'hold of another batch': () => 'That hold belongs to another batch. Choose a hold of this batch.',
  'jar of another batch': (p) => `${text(p, 'jar')} belongs to another batch. Choose jars of this batch.`,
  'no such hold': (p) =>
    `Jar ${text(p, 'jar')} names a hold that is not in the list. Choose one of the holds given.`,
  'day not known': (p) =>
    `The day of ${text(p, 'jar')} is not known, so what seeded it can't be checked. Give it a day first.`,
  'package of something else': (p) =>
    `The package ${text(p, 'name')} is not of that. Choose another package.`,
  'is a mistake': (p) => `${text(p, 'jar')} was entered by mistake, so it can't be changed. Undo that first.`,
  'only planned': (p) =>
    `${text(p, 'jar')} ${p['made'] === 'not made' ? 'was planned and not made, so nothing descends from it' : 'is only planned, so nothing descends from it yet'}. Find it under its batch.`,
  'batch without a day': () =>
    'That stands for a jar nobody can name, and its day is not known. Find it in the family.',
  'has descendants': (p) => `${text(p, 'jar')} seeded ${text(p, 'others')}, so it can't be planned only.`,
  'no such caution': (p) => `There is no caution on ${text(p, 'jar')} because of ${text(p, 'of')}.`,
  'already lifted': () => 'That caution is lifted already.',
  'times crossed': (p) => `${text(p, 'what')}: the end is before the start. Correct one of them.`,
  'nothing left': (p) =>
    `Nothing is left of ${text(p, 'name')}. If some is, say first that it is still there.`,
  'not kept so': (p) => `${text(p, 'name')} ${text(p, 'problem')}.`,
  'in its warmth': (p) =>
    `${text(p, 'name')} is still in warmth. Take it out, look and smell before anything else is done with it.`,
  'not food': (p) => text(p, 'says'),
  'kept for seed': (p) => text(p, 'says'),
  'last of a line': (p) => text(p, 'says'),
  'thawed before': (p) => text(p, 'says'),
  'opened before': (p) => text(p, 'says'),
  'nothing changed': () => 'Nothing is different from what is recorded already.',
  unreadable: (p) => `${text(p, 'path')}: holds a character that can't be kept. Please type it again.`,
  'no re-encoder': () =>
    'Photographs are added in the window, which takes the place they were taken out of them first.',
  'not a photograph': () => 'That is not a JPEG photograph. Choose another file.',
  'photograph too large': () => 'That photograph is larger than 20 MB. Please choose a smaller copy.',
  'not offered': (p) =>
    `${text(p, 'label') || 'That'} is not among what can seed now. Look at the advice again.`,
  'stopped seed': (p) => `${text(p, 'label')} may not be used as seed. ${text(p, 'says')}`,
  rule: (p) => `That would break a rule of the ledger: ${text(p, 'rule')}. Nothing was changed.`,

  // Facts of any kind.
  'no such ref': (p) =>
    `“${text(p, 'ref')}” names no fact of that kind before it in this call. Give an id, or a ref that an earlier fact of the call has.`,
  'ref twice': (p) => `Two facts of this call are called “${text(p, 'ref')}”. Give each a ref of its own.`,
  'nothing to come': () =>
    'Nothing is to come: no hold runs, and nothing on the shelf falls due. Write the calendar once one does.',
  'not in this hold': (p) =>
    `${text(p, 'jar')} does not stand in that hold. Put it in first, or choose another jar.`,
  'hold ended': (p) =>
    `The hold of ${text(p, 'label')} has ended. Correct its end first, if jars still stand in it.`,
  'probe elsewhere': (p) =>
    `${text(p, 'jar')} did not stay in that hold, so no probe sat in it there. Note its stay first, or say where the probe was.`,
  'in the trial already': (p) => `${text(p, 'jar')} is in that trial already. Correct what it is there.`,
  'code twice': (p) =>
    `The code ${text(p, 'code')} is taken in that tasting. Give each serving a code of its own.`,
  'place twice': (p) =>
    `That taster has a serving at place ${text(p, 'place')} already. Give each serving a place of its own.`,
  'marked already': (p) =>
    `That serving has a mark for ${text(p, 'aspect')} already. Correct that one instead.`,
  'hangs on it': (p) =>
    `${text(p, 'other')} hangs on the ${text(p, 'what')}, so it can’t be taken away. Take that away first.`,
  'reading differs': (p) =>
    `At ${text(p, 'at')} this series has ${text(p, 'there')} °C already, not ${text(p, 'c')} °C. Leave that reading out, or begin a new series.`,
  'handed incomplete': () =>
    'What was handed over points at a record that is neither in it nor here, so nothing of it was taken in. Ask for it to be handed over again, whole.',
  'handed unreadable': (p) =>
    `What was handed over holds a ${text(p, 'kind')} that can’t be read, so nothing of it was taken in. Ask for it to be handed over again.`,

  // Out and in again.
  'no file there': (p) => `There is no file at ${text(p, 'file')}. Check the name.`,
  'labels beyond page': (p) =>
    `That many labels are ${p['side'] === 'width' ? 'wider' : 'higher'} than their page. Measure the sheet again: margin, label and gap, and how many there are.`,
  'label too small': (p) =>
    `What has to stand on the label does not fit ${text(p, 'width')} × ${text(p, 'height')} mm. Take a larger label.`,
  'nothing to draw': () => 'No jar is written down yet that could be shown. Record a batch first.',
  'picture too large': (p) =>
    `That would be ${text(p, 'jars')} jars, and a picture shows at most ${text(p, 'most')}. Choose a line, or what one jar comes from.`,
  'not a picture': () => 'What was to be written is no PNG picture of the family. Nothing was written.',
  'folder not empty': (p) =>
    `Something lies at ${text(p, 'folder')} already. Choose a folder that is new or empty.`,
  'no folder there': (p) =>
    `There is no folder for ${text(p, 'file')}. Make it first, or choose another place.`,
  'archive unreadable': (p) =>
    `${text(p, 'file')} can’t be read as an archive of a ledger. ${sentenceOf(text(p, 'what'))} Nothing was changed. Choose another copy of it, or write the archive again.`,
  'archive newer': (p) =>
    `${text(p, 'file')} was written by a newer Jarline. Update Jarline to read it. Nothing was changed.`,
  'remark unread': (p) =>
    `Nobody has said yet how the remark on ${text(p, 'jar')} is meant: “${text(p, 'text')}”. Read it first and mark it as fine, look or discard; then the jar can be handed over.`,
  'remark discards': (p) =>
    `A remark on ${text(p, 'jar')} says to discard it: “${text(p, 'text')}”. It is not handed over. Discard the jar, or correct how the remark is read.`,
  'spoiled not given': (p) =>
    `${text(p, 'jar')} is neither food nor seed, so it is not handed over. Discard it.`,
  'hand-over too large': () =>
    'That hand-over is larger than 20 MB or 200,000 records, and is not read or written. Nothing was changed.',
  'hand-over unreadable': (p) =>
    `${text(p, 'file')} can’t be read as a hand-over of a jar. ${sentenceOf(text(p, 'what'))} Nothing was changed. Ask for it to be handed over again.`,
  'hand-over newer': (p) =>
    `${text(p, 'file')} was written by a newer Jarline. Update Jarline to read it. Nothing was changed.`,
  'hand-over claims ours': () =>
    'That hand-over says that this very ledger wrote it, and holds what this ledger does not know. Nothing was changed. If you went back to a backup, take that back, or read an archive.',
  'hand-over of the demo': () =>
    'That hand-over is of the invented ledger, which never mixes with yours. Nothing was changed.',
  'ledger not empty': () =>
    'An archive is read into an empty ledger only, and something was recorded in this one. Start a new ledger and read it into that. Nothing was changed.',

  // Undo and redo.
  'nothing to undo': () => 'There is nothing to undo.',
  'nothing to redo': () => 'There is nothing to redo.',
  'undone already': (p) => `That was undone already: ${text(p, 'says')}.`,
  'label back': (p) =>
    `That would bring back ${text(p, 'label')}, and another jar has taken that label since. Give that one another letter first.`,
  'stands on it': (p) => `Later records stand on it: ${text(p, 'later')}. Undo or change those first.`,
  'own ancestor': (p) =>
    `${text(p, 'jar')} would descend from itself: ${Array.isArray(p['loop']) ? p['loop'].join(' → ') : ''}. Choose another seed.`,
  'seed made later': (p) =>
    `${text(p, 'seed')} was made on ${earliest(p, 'seedDay')}, after ${text(p, 'jar')} (${latest(p, 'day')}), so it can’t have seeded it${Array.isArray(p['through']) ? `, by way of ${text(p, 'through')}` : ''}. Correct a date or choose another seed.`,
  'condemned stays': (p) =>
    `${text(p, 'jar')} was seen to be spoiled, and that can’t be lifted. If it was not, correct what was seen.`,
  'seed spoiled': (p) =>
    `${discardKnown(p)}: not food and not seed. ${p['discard'] === 'remark' ? 'Answer that note first, or choose another seed.' : 'Choose another seed.'}`,
  'seed found spoiled': (p) =>
    `${discardKnown(p)}. That it seeded ${text(p, 'jar')} before anyone saw that is recorded only once you write down how you know. What it seeded is set aside.`,
  'seed set aside': (p) =>
    `${setAsideSentence(text(p, 'seed'), Array.isArray(p['because']) ? p['because'].map(String) : [])} Nothing is seeded from it unless you write down why it is all right to use. When in doubt, take another jar.`,
  'seed without acid': (p) =>
    `${text(p, 'seed')}: ${text(p, 'says')} Nothing is seeded from it unless you write down why it may be. When in doubt, take another jar.`,
  'seed stopped': (p) =>
    `${text(p, 'seed')}: ${text(p, 'says')} Nothing is seeded from it unless you write down why it may be. When in doubt, take another jar.`,
  'reserve spoiled': (p) =>
    p['discard'] === 'remark'
      ? `A note of ${text(p, 'jar')} says${saidInWords(p)}, and nobody has answered it: until then nothing of it is kept back. Answer that note first.`
      : `${text(p, 'jar')} ${p['discard'] === 'not set' ? 'did not set' : 'is spoiled'}: not food and not seed, so nothing of it is kept back. Discard it.`,
  'reason needed': (p) =>
    `${text(p, 'jar')} is spoiled, and the cautions because of it would fall away. Write a few words on why it was entered by mistake.`,
  unexpected: (p) => `Something went wrong inside the program (${text(p, 'ref')}). Nothing was changed.`,
} as const satisfies Record<string, (params: Params) => string>;
export type RefusalCode = keyof typeof refusals;

/** The sentence for a refusal. */
export function refusalSentence(refusal: Refusal): string {
  const say: ((params: Params) => string) | undefined = refusals[refusal.code as RefusalCode];
  return say ? say(refusal.params) : refusals.unexpected({ ref: refusal.code });
}

/** The same where the one who reads writes calls: what asks for a reason says in which field it goes. */
export const callSentence = (refusal: Refusal): string =>
  `${refusalSentence(refusal)}${ASKS_WHY.has(refusal.code) ? ' In a call that is the field why.' : ''}`;

const ASKS_WHY: ReadonlySet<string> = new Set<RefusalCode>([
  'taken out early', 'set too soon', 'stay not timed', 'seed found spoiled', 'seed without acid', 'seed stopped', 'seed set aside', 'reason needed',
]); // prettier-ignore
