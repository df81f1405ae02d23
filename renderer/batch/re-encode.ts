// A photograph drawn anew in the page, so that what travelled in the file with it (place, camera, time) is gone.
import { decoded } from '../parts/decoded';
import { redrawn } from '../parts/redrawn';

/** Longest side kept (px): enough to see the curd, small enough for years of jars. */
const LONGEST = 2400;
const QUALITY = 0.88;

export type ReEncoded =
  | { readonly ok: true; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly ok: false; readonly sentence: string };

/** Re-encodes a picture file as a JPEG with nothing but the picture in it. */
export async function reEncode(file: Blob & { readonly name?: string }): Promise<ReEncoded> {
  const read = await decoded(file);
  if (!read.ok) return read;
  const { picture } = read;
  const { width, height } = picture;
  const scale = Math.min(1, LONGEST / Math.max(width, height));
  const bytes = await redrawn(picture, [width * scale, height * scale], 'image/jpeg', QUALITY);
  picture.close();
  return bytes === null
    ? { ok: false, sentence: 'This machine can’t draw the picture anew, so it was not added.' }
    : { ok: true, bytes };
}
