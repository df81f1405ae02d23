// Sheets of paper about jars that leave the house: what goes with one that is handed over, and whom to tell of those that went.
import makeCode from 'qrcode-generator';
import { escaped } from '../markup';
import type { AboutJar } from '../shapes/hand-over-calls';
import { PAPER_SIZES, type Paper } from '../shapes/report-calls';
import { FOOD_CAUTION } from '../says/food-caution-says';
import { handOverRows } from '../says/hand-over-says';
import { essentials, NOBODY_TO_TELL, TELL_INTRO, tellWords, type ToTell } from '../says/report-says';
import { documentOf, paragraph, table } from './document';

const MARGIN = 15;

/** A square code (ISO/IEC 18004) of words, as a picture of so many millimetres with its quiet zone. */
function squareCode(words: string, size: number): string {
  const made = makeCode(0, 'M');
  // As UTF-8, which telephones take it for: the library would cut each letter to a byte.
  made.addData(String.fromCharCode(...new TextEncoder().encode(words)), 'Byte');
  made.make();
  const count = made.getModuleCount();
  let path = '';
  for (let row = 0; row < count; row += 1)
    for (let column = 0; column < count; column += 1)
      if (made.isDark(row, column)) path += `M${column + 4} ${row + 4}h1v1h-1z`;
  const side = count + 8;
  return `<svg width="${size}mm" height="${size}mm" viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges"><rect width="${side}" height="${side}" fill="#fff"/><path d="${path}"/></svg>`;
}

/** A jar that is handed over, for whoever gets it. @param code its short code */
export function givenSheet(about: AboutJar, code: string, paper: Paper): string {
  const size = PAPER_SIZES[paper];
  const square = squareCode(essentials(about, code), 48);
  const body = [
    `<div class="code">${square}<div>${escaped(code)}</div></div>`,
    `<h1>${escaped(about.label)}</h1>`,
    paragraph('Home-made live cultured milk', 'lead'),
    paragraph('Made at home, not inspected. Keep at or below 4 °C / 40 °F. Once opened: eat within 5 days.'),
    table(handOverRows(about).map((row) => [...row])),
    paragraph(FOOD_CAUTION, 'small keep'),
    paragraph('A small file goes with this jar: with it, its next keeper’s ledger goes on where this one is.', 'small soft'),
  ].join('\n'); // prettier-ignore
  return documentOf({ title: about.label, body, sheet: { ...size, margin: MARGIN } });
}

/** Whom to tell, a box to tick beside each. */
export function tellSheet(given: readonly ToTell[], paper: Paper, today: string): string {
  const size = PAPER_SIZES[paper];
  const rows = given.map((one) => ['☐', one.to ?? 'whoever got it', tellWords(one)]);
  const body = [
    '<h1>Whom to tell</h1>',
    paragraph(`As of ${today}`, 'soft'),
    ...(given.length === 0
      ? [paragraph(NOBODY_TO_TELL)]
      : [paragraph(TELL_INTRO), table(rows, ['Told', 'Who', 'What to tell'])]),
    paragraph(FOOD_CAUTION, 'small keep'),
  ].join('\n');
  return documentOf({ title: 'Whom to tell', body, sheet: { ...size, margin: MARGIN } });
}
