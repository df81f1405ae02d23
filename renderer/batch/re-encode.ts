// A photograph drawn anew in the page, so that what travelled in the file with it (place, camera, time) is gone.
import { decoded } from '../parts/decoded';

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
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(picture.width * scale)),
    Math.max(1, Math.round(picture.height * scale)),
  );
  const pen = canvas.getContext('2d');
  if (!pen) return { ok: false, sentence: 'This machine can’t draw the picture anew, so it was not added.' };
  // JPEG has no transparency: a see-through picture stands on white.
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const drawn = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  return { ok: true, bytes: new Uint8Array(await drawn.arrayBuffer()) };
}
