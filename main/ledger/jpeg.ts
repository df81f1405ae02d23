// Reads just enough of a JPEG (ITU-T T.81, annex B) to know its size and whether anything besides the picture is in it.

export interface JpegFacts {
  readonly width: number;
  readonly height: number;
  /** Whether it carries text or application data (Exif, XMP, IPTC, comments): there the place it was taken would be. */
  readonly carriesMore: boolean;
}

const START_OF_FRAME = new Set([
  0xc0, 0xc1, 0xc2, 0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf,
]);
/** JFIF (APP0) and Adobe colour (APP14) say how to draw it; ICC profiles (APP2) which colours. */
const HARMLESS = new Set([0xe0, 0xe2, 0xee]);

/** @returns null for bytes that are no JPEG with a frame */
export function readJpeg(bytes: Uint8Array): JpegFacts | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let size: { width: number; height: number } | null = null;
  let carriesMore = false;
  for (let at = 2; at + 4 <= bytes.length;) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1; // fill bytes
      continue;
    }
    const length = view.getUint16(at + 2);
    if (length < 2 || at + 2 + length > bytes.length) return null;
    if (START_OF_FRAME.has(marker) && length >= 8) {
      size = { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    }
    if (marker === 0xfe || (marker >= 0xe0 && marker <= 0xef && !HARMLESS.has(marker))) carriesMore = true;
    if (marker === 0xda) break; // the picture itself begins
    at += 2 + length;
  }
  return size && size.width > 0 && size.height > 0 ? { ...size, carriesMore } : null;
}
