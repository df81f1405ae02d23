// Columns of marks: figures that a taster gave, alone or out of so many. They are no words and no days, and are kept as they stand.
import type { NoteColumn } from '../../contract';
import { plain, tidy } from '../../quantities/quantities';
import { hasTrait } from '../meanings';
import { isNumber, share } from './column-cells';
import { headingUnit } from './headings';

/** What marks are given out of (common practice, no source). */
const SCALES = '(5|6|10|12|15|20|100)';
/** "Taste /10", "out of 10", "(1–10)". */
const SAID_OUT_OF = new RegExp(
  String.raw`(?:/|\b(?:out of|of|von)\s)\s?${SCALES}(?!\d)|[([]\s*[01]\s*(?:-|–|to|bis)\s*${SCALES}\s*[)\]]`,
);
/** "8/10", "7½ / 10", "8 von 10". */
const MARK = new RegExp(
  String.raw`^\d{1,3}(?:[.,]\d+)?\s?[½¼¾+-]?\s?(?:/|out of|of|von)\s?${SCALES}(?![\d/.])`,
);
/** Headings that say no more than that marks were given. */
const MARK_WORD =
  /\b(?:scores?|ratings?|rated|marks?|grades?|points|stars|punkte|punktzahl|bewertung|sterne|schulnote)\b/;

/** Marks, and what they are out of where that is told. */
export interface Marks {
  readonly most: number | null;
}

/** Whether a column holds marks; null where it does not. @param headed what its heading alone means */
export function marksOf(heading: string, cells: readonly string[], headed: NoteColumn | null): Marks | null {
  if (cells.length === 0) return null;
  const figures = (): boolean => share(cells, isNumber) >= 0.6;
  const said = SAID_OUT_OF.exec(plain(heading));
  const told = said ? Number(said[1] ?? said[2]) : null;
  if (
    told !== null &&
    figures() &&
    share(cells, (cell) => Number(tidy(cell).replace(',', '.')) <= told) >= 0.6
  )
    return { most: told };
  // What a heading says otherwise, or the unit it tells, no bare figures outweigh.
  const ofWords = hasTrait(headed, 'words');
  if ((headed !== null && headed !== 'note' && !ofWords) || (told === null && headingUnit(heading) !== null))
    return null;
  const scales = cells.map((cell) => Number(MARK.exec(plain(cell))?.[1] ?? 0));
  const most = scales.find((scale) => scale > 0) ?? 0;
  if (most > 0 && share(scales, (scale) => scale === most) >= 0.6) return { most };
  if (MARK_WORD.test(plain(heading)) && figures()) return { most: null };
  // Figures are no words, whatever they are out of.
  return ofWords && share(cells, (cell) => /\d/.test(cell) && !/\p{L}/u.test(cell)) >= 0.6
    ? { most: null }
    : null;
}
