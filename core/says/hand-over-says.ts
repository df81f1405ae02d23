// What a hand-over tells of its jar, in words: for its preview, on the screen and on paper. None of it says that it may be eaten.
import { dayLabel } from '../lineage/labels';
import { heatingOf } from '../safety/milk-words';
import type { AboutJar } from '../shapes/hand-over-calls';

const listed = (names: readonly string[]): string => names.join(', ');
const figure = (value: number): string => String(Number(value.toFixed(1)));
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const day = (on: string | null): string => (on === null ? 'on a day not noted' : dayLabel(on, true));

/** When a jar was made, as far as that is known. */
export const madeWords = (
  { madeOn, madeBetween }: Pick<AboutJar, 'madeOn' | 'madeBetween'>,
  unknown = day(null),
): string =>
  madeBetween === null
    ? madeOn === null
      ? unknown
      : dayLabel(madeOn, true)
    : `between ${dayLabel(madeBetween.from, true)} and ${dayLabel(madeBetween.to, true)}`;

function generation({
  generation: { deepest, shallowest, atLeast },
  doublings: { transfers },
}: AboutJar): string {
  const counted = `${atLeast ? 'at least ' : ''}${deepest}`;
  const other = shallowest === deepest ? '' : `, by the shortest way ${shallowest}`;
  return `${counted}${other}${transfers === null ? '' : `; about ${figure(transfers)} doublings`}`;
}

/** What is written down of a jar on its way here. */
export const onItsWay = (hoursOut: number | null): string =>
  hoursOut === null
    ? 'It is not known how long it was out of the cold on its way here.'
    : `${figure(hoursOut)} ${hoursOut === 1 ? 'hour' : 'hours'} out of the cold on its way here.`;

const gateWord = (word: string): string => (word === 'thickened' ? 'thickened, how sour not noted' : word);

function gate({ gate: { jar, seeds } }: AboutJar): string {
  const own = `this jar: ${gateWord(jar)}`;
  return [own, ...seeds.map((seed) => `${seed.label}: ${gateWord(seed.gate)}`)].join('; ');
}

function caution(one: AboutJar['cautions'][number]): string {
  const end = one.lifted ? ` (lifted${one.liftedOn === null ? '' : ` on ${dayLabel(one.liftedOn, true)}`})`
    : one.ended ? ' (ended by itself)'
    : ''; // prettier-ignore
  return `${one.level} because of ${one.label}${end}`;
}

/** Milk by name, and its heat treatment as far as that tells: what nobody noted is said to be so. */
function milkWords({ milk, rawMilk }: AboutJar): string {
  if (milk.length === 0) return 'not noted, nor whether it was raw';
  const told = milk.map((name) => (heatingOf(name) === null ? `${name} (raw or heated: not noted)` : name));
  return `${listed(told)}${rawMilk === true ? '; RAW: not for babies, in pregnancy, or for the old or ill' : ''}`;
}

/** Where it stood since it was taken out. How cold that was, and how long it was out of it, nobody writes down: that is said. */
function storedWords({ storage }: AboutJar): string {
  const stood = storage.map(({ what, on }) => `${what} ${day(on)}`);
  return `${stood.length === 0 ? 'not noted' : stood.join(', ')}; how cold, and how many hours out of it: not noted`;
}

/** Rows of a table: what it is, and what is known of it. What nobody noted is said to be so. */
export function handOverRows(about: AboutJar): (readonly [name: string, words: string])[] {
  const { additions, allergens, traces, cautions, tracedShares, eatBy, seedBy, unreadBefore } = about;
  return [
    ['Made', madeWords(about)],
    ['Generation', generation(about)],
    ['How its line did that day (no word on safety)', about.verdict ?? 'not told'],
    ['Traces back to', listed(tracedShares.map(({ source, share }) => `${source} ${percent(share)}`)) || 'not known'],
    ['Milk', milkWords(about)],
    ['Stirred in', listed(additions.map(({ name, amount }) => (amount === null ? name : `${figure(amount.value)} ${amount.unit} ${name}`))) || 'nothing noted'],
    ['Contains', [listed(allergens), traces.length === 0 ? '' : `traces of ${listed(traces)}`].filter(Boolean).join('; ')],
    ['Checked at take-out', gate(about)],
    ['To be careful of', cautions.length === 0 ? 'nothing known' : cautions.map(caution).join('; ')],
    ['Stored', storedWords(about)],
    ['Eat by', eatBy === null ? 'its day is not known' : day(eatBy)],
    ['Seed from it by', seedBy === null ? 'its day is not known' : day(seedBy)],
    ...(unreadBefore > 0 ? [['Further up', `${unreadBefore} ${unreadBefore === 1 ? 'remark' : 'remarks'} that nobody has read`] as const] : []),
  ]; // prettier-ignore
}
