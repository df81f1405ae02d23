// Phrases of an English kitchen in which a word of spoilage says something else: a table a row for each, what it is, what it is
// made of, what it lets pass, and beside that what must stop all the same. Common practice, no source. Such a phrase is taken out
// of a text before it is read, so that whatever else the text says is still heard; the text itself is quoted like any other.

import { items } from './phrases';

const oneOf = (list: string): string => `(?:${items(list).join('|')})`;

/** What goes off without spoiling, and is switched. */
const DEVICES = oneOf('timer, alarm, clock, bell, siren, buzzer, heater, heating, heat, oven, light, lights, lamp, power, electricity, current, cooker, machine, thermostat, heating pad, heat pad, heat mat, mat, bath, water bath, pump, incubator, fridge, freezer, kettle, radio, phone, fuse, breaker'); // prettier-ignore
/** Made of foam, or with a name that begins with it. */
const OF_FOAM = oneOf('strips?, boxe?s?, coolers?, rollers?, mats?, boards?, pads?, sleeves?, inserts?, insulation, packaging, packing, wrap, wrapping, sheets?, cups?, tape, lids?, seals?, lining, liners?, padding, blocks?, rubber, container, stoppers?'); // prettier-ignore
/** What a mould to pour into is made of, or shaped like. */
const SHAPES = oneOf('silicone, silicon, rubber, plastic, metal, tin, glass, wooden, baking, muffin, cupcake, jelly, ice, ice cube, ice lolly, lolly, popsicle, cake, bread, loaf, candy, chocolate, cheese, pudding, blancmange, panna cotta, soap, butter, heart, star, flower, round, square, oblong, tub, cup, egg, gummy, mini, shaped'); // prettier-ignore
/** What the keeper goes off to. */
const AWAY = oneOf('bed, sleep, work, school, church, town, the shops?, the market, holiday, a walk, lunch, dinner, see, buy, fetch, get, visit, meet, catch'); // prettier-ignore
/** Hours in words. */
const HOURS = oneOf('one, two, three, four, five, six, seven, eight, nine, ten, eleven, twelve');
/** A time by the clock, and not one by the day. */
const CLOCK = String.raw`(?:\d{1,2}(?:[:.]\d\d)?(?! ?(?:d|days?|weeks?|months?|degrees|°))\b(?: ?[ap]\.?m\b\.?| o'clock)?|(?:half past |quarter (?:past|to) )?${HOURS}\b(?! (?:days?|weeks?))|noon|midday|midnight|dawn|dusk|bedtime)`;
/** What does spoil: of these, going off is never the clock's. */
const FOOD = oneOf('milk, half-and-half, cream, jar, jars, yoghurt, yogurt, culture, batch, curd, curds, whey, seed, starter, pot, portion, cubes?, contents?, sample'); // prettier-ignore
/** What is put away, and isn't the jar. */
const NO_JAR = oneOf('whey, spoons?, packets?, packages?, boxe?s?, labels?, wrappers?, cartons?, lids?, bags?, filters?, cloths?, old seed, seal, water, rinse water'); // prettier-ignore
/** What a lid is opened for. */
const TO_LOOK = oneOf('look, check, see, peek, peep, smell, sniff, taste, stir, measure, test, probe, read, let'); // prettier-ignore
const WENT_OFF = '(?:went|goes|going|gone|has gone|had gone) off';

export interface Harmless {
  /** What the phrase means. */
  readonly what: string;
  readonly phrase: RegExp;
  readonly fine: readonly string[];
  readonly stops: readonly string[];
}

export const HARMLESS: readonly Harmless[] = [
  {
    what: 'a device went off',
    phrase: new RegExp(String.raw`(?<!\b(?:in|from|inside|of|with) (?:the |my |a )?)\b${DEVICES} (?:had |has )?${WENT_OFF}\b`, 'g'),
    fine: ['timer went off', 'the oven light went off after 3 h', 'power had gone off'],
    stops: ['milk went off', 'went off', 'the jar in the bath went off'],
  },
  {
    what: 'something was switched, or the keeper left, at a time by the clock',
    phrase: new RegExp(String.raw`(?<!\b${FOOD} (?:had |has )?)\b${WENT_OFF} (?:again )?(?:(?:at|about|around|by|before|after|since) (?:about |around )?${CLOCK}|\d{1,2}[:.]\d\d\b|\d{1,2} ?[ap]\.?m\b\.?)`, 'g'), // prettier-ignore
    fine: ['Went off at 9 pm', 'went off 9pm', 'goes off at half past nine', 'went off by 21:00', 'gone off at six', 'went off at 21:00', 'went off around noon'],
    stops: ['the milk went off at 9 pm', 'went off after 9 days', 'went off after six days', 'went off at 9 days', 'went off at some point', 'went off after opening'],
  },
  {
    what: 'the keeper left',
    phrase: new RegExp(String.raw`\b${WENT_OFF} (?:to|for|on) (?:a |my |our )?${AWAY}\b`, 'g'),
    fine: ['went off to bed', 'went off on holiday', 'went off to the market'],
    stops: ['went off on day 5', 'went off for good'],
  },
  {
    what: 'a thing made of foam',
    phrase: new RegExp(String.raw`\bfoam[- ]${OF_FOAM}\b(?! of)`, 'g'),
    fine: ['foam strip', 'a foam strip under the lid', 'kept in the foam box'],
    stops: ['foam', 'foam on top', 'foam under the lid', 'foamy', 'foam box, foam on top'],
  },
  {
    what: 'a mould to pour into',
    phrase: new RegExp(String.raw`\b${SHAPES}[- ]mou?lds?\b(?! (?:spots?|growth|on|patch\w*))|\bmou?ld tins?\b|\b(?:in|into|from|out of|fills?|filled|lined|greased|used) (?:the |a |my |one |two |three )?mou?lds?\b(?! (?:spots?|growth|on|patch\w*))|\bthe shape of (?:a|the) mou?ld\b|\bmou?lds? (?:no\.? ?|nr\.? ?|number |# ?)\d+\b|\bmou?ld (?:[a-h]|\d{1,2})(?=$|[,;.)])`, 'g'), // prettier-ignore
    fine: ['silicone mould', 'a tub mold', 'set in a mold', 'tub-shaped mold', 'bread mould tin', 'mold no. 3', 'mould #2', 'mold 4, firm', 'mould nr. 1'],
    stops: ['mould', 'some mold on top', 'mold: 3 spots', 'mold 3 days after opening', 'mold in the jar', 'silicone lid had mould', 'plastic tub with mold', 'set in a mold, mould on top'],
  },
  {
    what: 'spoiled by too much of something good, or bad luck',
    phrase: /\bspoil(?:ed|t) (?:for choice|rotten by)\b|\brotten luck\b/g,
    fine: ['spoilt for choice', 'rotten luck with the weather'],
    stops: ['spoiled', 'smells rotten'],
  },
  {
    what: 'something other than the jar was put away, or nothing was',
    phrase: new RegExp(String.raw`\b(?:threw (?:out|away)|tossed|discard(?:ed)?|binned|dumped) (?:the |all the |some )?${NO_JAR}\b|\b${NO_JAR} (?:was |were )?(?:thrown (?:out|away)|tossed|discarded|binned|dumped|poured down the (?:sink|drain))\b|\btossed (?:it )?(?:in|into|with) (?!(?:the |a |my )?(?:bin|trash|rubbish|garbage|compost|sink|drain))`, 'g'), // prettier-ignore
    fine: ['discarded the whey', 'whey poured down the sink', 'tossed in the fridge', 'tossed with oats'],
    stops: ['threw it out', 'discarded', 'tossed in the bin', 'discarded the jar'],
  },
  {
    what: 'the keeper opened or closed a lid',
    phrase: new RegExp(String.raw`\b(?:lifted|raised|popped) (?:the |its |a )?lids? (?:to ${TO_LOOK}|for a look|back on|on\b|and (?:looked|checked|smelled|smelt|stirred))|\blids? (?:was |were )?(?:lifted|raised|popped) (?:to ${TO_LOOK}|back on|on\b(?! its own))`, 'g'), // prettier-ignore
    fine: ['lifted the lid to look', 'lids lifted to check', 'popped the lid on'],
    stops: ['lifted lid', 'lid lifted', 'lid popped', 'lid lifted on its own'],
  },
  {
    what: 'fluff of a cloth',
    phrase: /\bfluff (?:from|off|of) (?:the |a |my )?(?:towel|cloth|tea towel|jumper|blanket|dryer)\b/g,
    fine: ['fluff from the towel'],
    stops: ['white fluff on top'],
  },
]; // prettier-ignore

/** A text, plain and in lower case, without such phrases. */
export const withoutHarmless = (said: string): string =>
  HARMLESS.reduce((text, { phrase }) => text.replaceAll(phrase, ' … '), said);
