// Copies a plot as a picture or as numbers. The picture is the drawing itself with its colours written into it, painted
// on the theme's paper at twice its size.
import { say } from '../state/store';

const WRITTEN = [
  'fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linecap', 'stroke-linejoin', 'opacity',
  'font-family', 'font-size', 'font-weight', 'text-anchor', 'dominant-baseline', 'paint-order', 'visibility', 'display',
] as const; // prettier-ignore
const SHARPNESS = 2;

/** The drawing as it stands in the page, with nothing left to a style sheet. */
function selfContained(svg: SVGSVGElement): {
  readonly source: string;
  readonly width: number;
  readonly height: number;
} {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const from = [svg, ...svg.querySelectorAll<SVGElement>('*')];
  const to = [copy, ...copy.querySelectorAll<SVGElement>('*')];
  for (const [at, element] of from.entries()) {
    const seen = getComputedStyle(element);
    const target = to[at];
    for (const name of WRITTEN) target?.setAttribute(name, seen.getPropertyValue(name));
    target?.removeAttribute('class');
  }
  const { width, height } = svg.getBoundingClientRect();
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  return { source: new XMLSerializer().serializeToString(copy), width, height };
}

/** The drawing as a PNG. */
async function pictureOf(svg: SVGSVGElement): Promise<Blob> {
  const { source, width, height } = selfContained(svg);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(source)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(width * SHARPNESS);
  canvas.height = Math.ceil(height * SHARPNESS);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas to paint on');
  context.fillStyle = getComputedStyle(document.documentElement).getPropertyValue('--paper');
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((done, fail) =>
    canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error('the picture is too large'))), 'image/png'),
  );
}

async function copied(work: () => Promise<void>, what: string): Promise<void> {
  try {
    await work();
    say(`${what} ${what.endsWith('s') ? 'were' : 'was'} copied.`);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    say(`${what} could not be copied (${reason}). Click in the window and try again.`, 'caution');
  }
}

export const copyPicture = (svg: SVGSVGElement): Promise<void> =>
  copied(
    () => navigator.clipboard.write([new ClipboardItem({ 'image/png': pictureOf(svg) })]),
    'The picture',
  );

export const copyNumbers = (text: string): Promise<void> =>
  copied(() => navigator.clipboard.writeText(text), 'The numbers');
