// Whether a text says something in words. Figures, units and marks are measured, not said, and how a jar set has a word of its
// own: nobody is asked how they are to be read.
import { plain } from '../quantities/quantities';
import { remembered } from '../quantities/remembered';
import { onlyHowSet } from './set-phrases';

/** "Score: 8": what a cell was kept under, before what stood in it. */
const HEADED = /^[^:\n]{1,120}:\s+(?=\S)/;
/** Units and halves of the day that stand at a figure. */
const MEASURED =
  /[\d½¼¾⅓⅔]\s*(?:°\s*[cf]?|ml|cl|dl|l|mg|g|kg|oz|lb|h|hrs?|hours?|std|min|days?|d|tbsp|tsp|cups?|el|tl|am|pm|a\.m\.?|p\.m\.?|uhr|ph|c|f|x)(?![\p{L}\p{N}])/giu;

/** Whether letters stand in a text that are no heading, no unit and do not merely tell how a jar set. */
export const saysInWords = remembered((text: string): boolean =>
  text.split(/\r?\n/).some((line) => {
    const said = plain(line.replace(HEADED, '')).replace(MEASURED, ' ');
    // "x" marks a box.
    const words = said.replace(/(?<![\p{L}\p{N}])x(?![\p{L}\p{N}])/giu, ' ');
    return /\p{L}/u.test(words) && !onlyHowSet(words);
  }),
);
