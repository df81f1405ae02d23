// The family's drawing on paper: cut into sheets that lie beside each other, or whole on one as large as it is.
import { escaped } from '../markup';
import { type FamilyPicture, onPaper, strips } from '../pictures/family-picture';
import { PICTURE_CAPTION, stripWords } from '../says/report-says';
import { PAPER_SIZES, type Paper } from '../shapes/report-calls';
import { documentOf, paragraph } from './document';

const MARGIN = 12;
/** Room for the words under a picture (mm). */
const WORDS = 22;

export interface FamilySheets {
  readonly html: string;
  readonly page: { readonly width: number; readonly height: number };
}

/** @param paper its sheets lie on their side; null: one sheet as large as the drawing */
export function familySheets(picture: FamilyPicture, title: string, paper: Paper | null): FamilySheets {
  const upright = paper === null ? null : PAPER_SIZES[paper];
  const page =
    upright === null
      ? {
          width: Math.max(150, Math.ceil(onPaper(picture).width) + 2 * MARGIN),
          height: Math.ceil(onPaper(picture).height) + 2 * MARGIN + WORDS + 14,
        }
      : { width: upright.height, height: upright.width };
  const room = { width: page.width - 2 * MARGIN, height: page.height - 2 * MARGIN - WORDS };
  const cut = strips(picture, room);
  const parts = cut.map(
    ({ svg }, at) =>
      `<figure${at > 0 ? ' style="break-before:page"' : ''}>${svg}<figcaption>${escaped([title, stripWords(at + 1, cut.length)].filter(Boolean).join(' · '))}</figcaption></figure>`,
  );
  const body = parts.join('') + paragraph(PICTURE_CAPTION, 'small keep');
  return { html: documentOf({ title, body, sheet: { ...page, margin: MARGIN } }), page };
}
