// The family on paper and as a picture by itself: the same jars and ribbons as on the screen, in greys that a printer keeps
// apart. Pure: from a drawing to SVG, with nothing from elsewhere in it.
import type { Drawing } from '../contract';
import { escaped } from '../markup';
import { FLAG } from '../shapes/drawing-flags';
import { BODY, CONTENTS, JAR, SURFACE_VERY_FIRM, SURFACES } from './jar-outline';
import type { PaperFamily } from './part-of-family';
import { inletOffsets, ribbonPath, ribbonWidth } from './ribbons';

/** From jar to jar and from row to row, above a lane for its name, and around all of it (drawing pixels). */
const COLUMN = 112;
const ROW = 100;
const HEAD = 42;
const EDGE = 16;
const STUB = 22;
/** A label is cut at so many letters: it has a column's room. */
const MOST_LETTERS = 17;

const INK = '#222';
const EDGE_INK = '#444';
const RIBBON = '#b3aea4';
/** Loosest first. */
const FILLS = ['#f4f1ea', '#e9e4d9', '#dcd5c6', '#cbc2b0', '#b8ad97'] as const;
const NO_WORD = '#f4f1ea';

/** What is written beside the jars. */
export interface PictureWords {
  /** By index in the drawing. */
  readonly jar: (index: number) => string;
  /** By index in the drawing's lanes: its name, and what it began with. */
  readonly lane: (lane: number) => { readonly name: string; readonly began: string };
  /** A jar as a page links to it; null where it links to nothing. */
  readonly href: ((index: number) => string) | null;
}

export interface FamilyPicture {
  /** What stands in the SVG, from 0 0 to width height. */
  readonly body: string;
  readonly width: number;
  readonly height: number;
  /** The upper left of each jar, and of the row that a lane's name stands above. */
  readonly marks: readonly { readonly x: number; readonly y: number }[];
}

const n = (value: number): string => String(Math.round(value * 10) / 10);
const cut = (text: string): string =>
  [...text].length > MOST_LETTERS ? `${[...text].slice(0, MOST_LETTERS - 1).join('')}…` : text;

function lid(flags: number): string {
  if (flags & FLAG.setAside)
    return `<rect x="3" y="-4" width="56" height="16" rx="3" fill="${INK}"/><path d="M15 4H47" stroke="#fff" stroke-width="5.4"/>`;
  const ring =
    flags & FLAG.look
      ? `<circle cx="31" cy="3" r="7" fill="#fff" stroke="${EDGE_INK}" stroke-width="3"/>`
      : '';
  return `<rect x="10" y="1" width="42" height="10" rx="4" fill="#8f8778"/>${ring}`;
}

/** A jar as the screen draws it: contents by set word, hatched where spoiled, its generation inside. */
function jarMarks(drawing: Drawing, index: number): string {
  const [flags, word] = [drawing.flags[index] ?? 0, drawing.setWord[index] ?? 255];
  const [lost, spoiled] = [(flags & FLAG.lost) !== 0, (flags & FLAG.spoiled) !== 0];
  const known = CONTENTS[word];
  const contents = lost ? null : (known ?? (flags & FLAG.outcomeKnown || spoiled ? CONTENTS[3] : null));
  const generation = String(drawing.generation[index] ?? '');
  const size = generation.length > 2 ? 29 : generation.length > 1 ? 40 : 44;
  const body = `<path d="${BODY}" fill="${lost ? 'none' : '#fff'}" stroke="${EDGE_INK}" stroke-width="${flags & FLAG.onShelf ? 4 : 1.8}" stroke-linejoin="round"${lost ? ' stroke-dasharray="6 5"' : ''}/>`;
  const filled = contents === null ? '' : `<path d="${contents}" fill="${known ? FILLS[word] : NO_WORD}"/>`;
  const hatch = spoiled ? `<path d="${BODY}" fill="url(#hatch)"/>` : '';
  const surface =
    known && !spoiled
      ? `<path d="${word === 4 ? SURFACE_VERY_FIRM : SURFACES[word]}" fill="none" stroke="${INK}" stroke-width="${word === 4 ? 3 : 1.8}" stroke-linecap="round"/>`
      : '';
  const numeral = `<text x="31" y="${contents === null ? 54 : 56.5}" font-size="${size}" text-anchor="middle" font-weight="700" paint-order="stroke" stroke="#fff" stroke-width="${spoiled ? 5 : 0}">${generation}</text>`;
  const least = flags & FLAG.atLeast ? '<text x="63" y="65" font-size="22">+</text>' : '';
  return `${body}${filled}${hatch}${surface}${lost ? '' : lid(flags)}${numeral}${least}`;
} // prettier-ignore

/**
 * The family, or the part of it that was taken.
 * @param words what stands beside jars and lanes: text, put into the picture as text
 */
export function familyPicture(drawing: Drawing, part: PaperFamily, words: PictureWords): FamilyPicture {
  const above = new Map(part.lanes.map(({ lane }, at) => [lane, (at + 1) * HEAD]));
  const place = new Map(
    part.jars.map(({ index, x, y, lane }) => [
      index,
      { x: EDGE + STUB + x * COLUMN, y: EDGE + y * ROW + (above.get(lane) ?? 0) },
    ]),
  );
  const at = (index: number) => place.get(index) ?? { x: 0, y: 0 };
  const ribbons = part.jars.map(({ index, seeds }) => {
    const to = at(index);
    if (seeds.length === 0)
      return `<path d="M${n(to.x - STUB)} ${n(to.y + JAR.inletY)}H${n(to.x + 4)}" stroke-width="3"/>`;
    const from = seeds.toSorted((a, b) => at(a.index).y - at(b.index).y);
    const offsets = inletOffsets(from.map(({ share }) => share));
    return from
      .map(({ index: seed, share }, i) => {
        const path = ribbonPath(at(seed).x, at(seed).y, to.x, to.y, offsets[i] ?? 0);
        return `<path d="${path}" stroke-width="${n(ribbonWidth(share))}"/>`;
      })
      .join('');
  });
  const jars = part.jars.map(({ index }) => {
    const { x, y } = at(index);
    const drawn = `<g transform="translate(${n(x)} ${n(y)})">${jarMarks(drawing, index)}<text x="31" y="84" font-size="15" text-anchor="middle">${escaped(cut(words.jar(index)))}</text></g>`;
    return words.href === null ? drawn : `<a href="${escaped(words.href(index))}">${drawn}</a>`;
  });
  const heads = part.lanes.map(({ lane, row }) => {
    const { name, began } = words.lane(lane);
    const y = EDGE + row * ROW + (above.get(lane) ?? 0) - 16;
    return `<text x="${EDGE}" y="${n(y)}" font-size="19"><tspan font-weight="700">${escaped(name)}</tspan><tspan font-size="15" dx="10">${escaped(began)}</tspan></text>`;
  });
  const widest = Math.max(0, ...part.lanes.map(({ lane }) => headWidth(words.lane(lane))));
  return {
    body: `<defs><pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M2 0V7" stroke="${INK}" stroke-width="2.4"/></pattern></defs><g fill="none" stroke="${RIBBON}">${ribbons.join('')}</g><g fill="${INK}" stroke="none">${heads.join('')}${jars.join('')}</g>`,
    width: Math.max(2 * EDGE + STUB + Math.max(1, part.columns) * COLUMN, widest + 2 * EDGE),
    height: 2 * EDGE + part.rows * ROW + part.lanes.length * HEAD,
    marks: [
      ...place.values(),
      ...part.lanes.map(({ lane, row }) => ({ x: EDGE, y: EDGE + row * ROW + (above.get(lane) ?? 0) })),
    ],
  };
} // prettier-ignore

/** Wide letters, so that it fits in whatever font. */
const headWidth = ({ name, began }: { readonly name: string; readonly began: string }): number =>
  name.length * 12 + 10 + began.length * 8.5;

const FONT = 'font-family="Atkinson Hyperlegible Next, Arial, Liberation Sans, sans-serif"';

/** A text in lines of at most so many letters. */
function inLines(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line === undefined || line.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = `${line} ${word}`;
  }
  return lines;
}

/** The picture by itself, as a file. @param below words under it */
export function pictureFile({ body, width, height }: FamilyPicture, title: string, below: string): string {
  const wide = Math.max(width, below === '' ? 0 : 560);
  const lines = inLines(below, Math.floor((wide - 2 * EDGE) / 8)).filter((line) => line !== '');
  const high = height + (lines.length === 0 ? 0 : 20 * lines.length + EDGE);
  const words = lines.map((line, at) => `<text x="${EDGE}" y="${n(height + 12 + 20 * at)}" font-size="15" fill="${INK}">${escaped(line)}</text>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${n(wide)}" height="${n(high)}" viewBox="0 0 ${n(wide)} ${n(high)}" ${FONT}><title>${escaped(title)}</title><rect width="100%" height="100%" fill="#fff"/>${body}${words.join('')}</svg>\n`;
} // prettier-ignore

/** A window on the picture, as large as it is printed (mm). */
export interface Strip {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

interface Window {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The fewest that hold all of them, each about as much. */
const each = (all: number, most: number): number =>
  Math.ceil(all / Math.max(1, Math.ceil(all / Math.max(1, most))));

/** Windows that fit so many pixels, from left to right and from the top down: jars whole, and no more height than has jars. */
function windowsOn({ width, height, marks }: FamilyPicture, wide: number, high: number): Window[] {
  const lead = EDGE + STUB;
  const columns = Math.max(1, Math.ceil((width - lead - EDGE) / COLUMN));
  const across = each(columns, Math.floor((wide - lead) / COLUMN)) * COLUMN;
  const down = Math.max(1, Math.floor((high - HEAD) / ROW)) * ROW;
  const found: Window[] = [];
  for (let top = 0; top < height - 2 * EDGE; top += down)
    for (let left = 0; left < columns * COLUMN; left += across) {
      // What stands left of the first column belongs to the first window.
      const from = left === 0 ? 0 : left + lead - 1;
      const seen = marks.filter(({ x, y }) => x >= from && x < left + across + lead - 1 && y >= top && y < top + down);
      if (seen.length === 0) continue;
      const first = Math.max(0, Math.min(...seen.map(({ y }) => y)) - HEAD);
      const last = Math.max(...seen.map(({ y }) => y)) + ROW;
      found.push({ x: left, y: first, width: Math.min(across + lead, width - left), height: Math.min(height, last) - first });
    }
  return found;
} // prettier-ignore

/** Millimetres of a drawing pixel: a jar of 62 is 11 mm wide. What is a little too wide is drawn a little smaller. */
const SCALE = 0.18;
const SMALLEST = 0.135;

/** The picture cut into windows that fit a page of that size (mm). */
export function strips(picture: FamilyPicture, page: { width: number; height: number }): Strip[] {
  const fits = page.width / picture.width;
  const scale = fits < SMALLEST ? SCALE : Math.min(SCALE, fits);
  const whole = `<svg width="0" height="0" style="position:absolute"><symbol id="all" viewBox="0 0 ${n(picture.width)} ${n(picture.height)}">${picture.body}</symbol></svg>`;
  return windowsOn(picture, page.width / scale + 1, page.height / scale).map(({ x, y, width, height }, at) => {
    const view = `<svg class="strip" width="${n(width * scale)}mm" height="${n(height * scale)}mm" viewBox="${n(x)} ${n(y)} ${n(width)} ${n(height)}" ${FONT}><use href="#all" width="${n(picture.width)}" height="${n(picture.height)}"/></svg>`;
    return { svg: at === 0 ? whole + view : view, width: width * scale, height: height * scale };
  });
} // prettier-ignore

/** How large the whole of it is on paper (mm). */
export const onPaper = ({ width, height }: FamilyPicture) => ({
  width: width * SCALE,
  height: height * SCALE,
});
