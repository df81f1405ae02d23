// The code on a label, from a photograph of it. Decoded here, in the sandbox, and bounded: by what the file holds, by what it
// claims, by the pixels that are looked at and by the time that takes.
import { codeInWords } from '../../core/lineage/short-codes';
import { decoded } from '../parts/decoded';
import type { CodeAsked } from './code-reader';

/** A code is looked for in a small picture first, then in a larger one (longest side, px). */
const SIZES = [800, 1600];
const MOST_MS = 2000;

export type ReadCode =
  { readonly ok: true; readonly code: string } | { readonly ok: false; readonly sentence: string };
const no = (sentence: string): ReadCode => ({ ok: false, sentence });

function pixelsOf(picture: ImageBitmap, longest: number): CodeAsked | null {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const [width, height] = [picture.width, picture.height].map((side) =>
    Math.max(1, Math.round(side * scale)),
  );
  if (width === undefined || height === undefined) return null;
  const pen = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (!pen) return null;
  pen.drawImage(picture, 0, 0, width, height);
  return { pixels: pen.getImageData(0, 0, width, height).data as CodeAsked['pixels'], width, height };
}

/** What a square code in the pixels says; null where none is found in time. */
function wordsIn(asked: CodeAsked): Promise<string | null> {
  const thread = new Worker(new URL('code-reader.ts', import.meta.url), { type: 'module' });
  return new Promise<string | null>((done) => {
    const late = setTimeout(() => done(null), MOST_MS);
    const end = (words: string | null): void => {
      clearTimeout(late);
      done(words);
    };
    thread.addEventListener('message', ({ data }: MessageEvent<string | null>) => end(data));
    thread.addEventListener('error', () => end(null));
    thread.postMessage(asked, [asked.pixels.buffer]);
  }).finally(() => thread.terminate());
}

/** The short code on a photographed label. */
export async function readCode(file: File): Promise<ReadCode> {
  const read = await decoded(file);
  if (!read.ok) return no(`${read.sentence} The code under it can be typed, too.`);
  const { picture } = read;
  let other = false;
  try {
    for (const longest of SIZES) {
      const asked = pixelsOf(picture, longest);
      const words = asked && (await wordsIn(asked));
      if (words === null) continue;
      const code = codeInWords(words);
      if (code !== null) return { ok: true, code };
      other = true;
    }
  } finally {
    picture.close();
  }
  return no(
    other
      ? 'The square code in the picture is none of Jarline’s. Photograph the label of the jar, or type the code under it.'
      : 'No square code was found in the picture. Photograph it from straight above and close by, or type the code under it.',
  );
} // prettier-ignore
