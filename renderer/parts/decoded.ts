// A picture file decoded, here in the sandbox and nowhere else: bounded by what it holds and by what it claims.
import { mayDecode } from '../../core/pictures/claimed-size';

/** Largest file taken from the window (bytes). */
const MOST_BYTES = 20 * 1024 * 1024;
/** What a picture says of its size stands within so many bytes, even behind a thumbnail. */
const HEAD_BYTES = 1_000_000;

type Decoded =
  { readonly ok: true; readonly picture: ImageBitmap } | { readonly ok: false; readonly sentence: string };

/** @returns the picture, to be closed by whoever takes it; or why it can't be had */
export async function decoded(file: Blob & { readonly name?: string }): Promise<Decoded> {
  const name = file.name ?? 'This picture';
  if (file.size > MOST_BYTES)
    return { ok: false, sentence: `${name} is larger than 20 MB. Please choose a smaller copy.` };
  const may = mayDecode(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()));
  if (may === 'too large')
    return { ok: false, sentence: `${name} has more pixels than can be looked at. Please choose a smaller copy.` };
  // The only thing a browser says of a file that is no picture is a thrown error without details.
  const picture = may === 'none' ? null : await createImageBitmap(file).catch(() => null);
  return picture === null
    ? { ok: false, sentence: `${name} can’t be read as a picture. Please choose a JPEG, PNG or WebP file.` }
    : { ok: true, picture };
} // prettier-ignore
