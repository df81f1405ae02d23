// Pictures drawn anew in the page, which is sandboxed: photographs made small, and the family's drawing as a PNG.
import { redrawn } from '../parts/redrawn';

/** Longest side of a photograph in a page (px), and of a picture of the family; its area. */
const SMALL = 480;
const QUALITY = 0.7;
const LONGEST = 16_000;
const LARGEST = 120_000_000;

/** Loads what the page may load: its own photographs, or data. @returns null for what is no picture */
function loaded(src: string): Promise<HTMLImageElement | null> {
  return new Promise((done) => {
    const image = new Image();
    image.addEventListener('load', () => done(image));
    image.addEventListener('error', () => done(null));
    image.src = src;
  });
}

/** A photograph of the open ledger, small; null where its file is not there. */
export async function smallPhotograph(sha256: string): Promise<Uint8Array<ArrayBuffer> | null> {
  const image = await loaded(`./photograph/${sha256}.jpg`);
  if (image === null) return null;
  const { naturalWidth: width, naturalHeight: height } = image;
  const scale = Math.min(1, SMALL / Math.max(width, height));
  return redrawn(image, [width * scale, height * scale], 'image/jpeg', QUALITY);
}

/** A drawing as a PNG, twice as fine as on the screen where that is no larger than a canvas may be. */
export async function pngOf(svg: string): Promise<Uint8Array<ArrayBuffer> | null> {
  const image = await loaded(`data:image/svg+xml,${encodeURIComponent(svg)}`);
  if (image === null) return null;
  const { naturalWidth: width, naturalHeight: height } = image;
  const scale = Math.min(2, LONGEST / Math.max(width, height), Math.sqrt(LARGEST / (width * height)));
  return redrawn(image, [width * scale, height * scale], 'image/png');
}
