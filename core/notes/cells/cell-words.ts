// What cells of a sheet say whatever they are of: yes, no, the same as above; and the names of milks.
import { plain } from '../../quantities/quantities';
import { NO, YES } from '../../text/look-words';

/** A "spoiled?" column: yes, no, or null where it is neither. */
export function readYesNo(text: string): boolean | null {
  const said = plain(text)
    .replace(/[.!]+$/, '')
    .trim();
  return YES.test(said) ? true : NO.test(said) || said === '-' ? false : null;
}

const MILKS: readonly (readonly [RegExp, string])[] = [
  [/^(?:half\s*(?:&|and|n|'n'|\+|-and-)\s*half|h\s?&\s?h)(?: milk)?$/, 'half and half'],
  [/^whole(?: milk)?$|^full[- ](?:fat|cream)(?: milk)?$/, 'whole milk'],
  [/^(?:skim|skimmed|nonfat|fat[- ]free)(?: milk)?$/, 'skim milk'],
  [/^2 ?%(?: milk)?$/, '2% milk'],
  [/^semi[- ]skimmed(?: milk)?$/, 'semi-skimmed milk'],
];

/** A milk's name in one spelling: "half & half" and "half and half" are one milk. */
export function milkName(text: string): string | null {
  const said = plain(text)
    .replace(/^(?:of|de|d'|di|van|von|av|af)\s*/, '')
    .replace(/[,;:()]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (said === '') return null;
  const fat = /^(\d+(?:[.,]\d+)?) ?%(?: (?:milk|fat|fett|milch|lait|leche|latte|melk))*$/.exec(said)?.[1];
  if (fat) return `${fat.replace(',', '.')}% milk`;
  return MILKS.find(([pattern]) => pattern.test(said))?.[1] ?? null;
}

/** Ditto marks and "same": the cell above is meant. */
export const isDitto = (text: string): boolean =>
  /^(?:"+|'{2}|,,|〃|ditto|do\.?|same|same as (?:the )?(?:above|before|last|prev(?:ious)?)(?: (?:one|row|line|time|jar))?|(?:(?:as|see|from|like) )?(?:the (?:row|one|line) )?above|(?:von|wie|siehe) oben|s\.? ?o\.?|dito|siehe oben|wie oben|gleich|idem|id\.?|eadem|igual(?: que arriba)?|come sopra|hetzelfde|zelfde|o mesmo|samma|likadant|samme|to samo|j\.?w\.?|↑)$/.test(
    plain(text),
  );
