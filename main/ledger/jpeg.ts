// Reads just enough of a JPEG (ITU-T T.81, annex B) to know its size and whether anything besides the picture is in it.

export interface JpegFacts {
  readonly width: number;
  readonly height: number;
  /** Whether it carries more than the picture (Exif, XMP, IPTC, comments, bytes behind its end): where it was taken, say. */
  readonly carriesMore: boolean;
}

const START_OF_FRAME = new Set([
  0xc0, 0xc1, 0xc2, 0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf,
]);
const START_OF_SCAN = 0xda;
const END = 0xd9;

/** Application segments that say how to draw it, by marker: what each begins with. Any other carries more. */
const DRAWING: Readonly<Record<number, string>> = { 0xe0: 'JFIF\0', 0xe2: 'ICC_PROFILE\0', 0xee: 'Adobe' };

function isMore(marker: number, content: Uint8Array): boolean {
  if (marker === 0xfe) return true; // a comment
  if (marker < 0xe0 || marker > 0xef) return false;
  const start = DRAWING[marker];
  return start === undefined || [...start].some((letter, at) => content[at] !== letter.charCodeAt(0));
}

/** Where the coded picture data that begins there ends: at the next marker that is neither stuffing nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (
    let at = bytes.indexOf(0xff, from);
    at >= 0 && at + 1 < bytes.length;
    at = bytes.indexOf(0xff, at + 1)
  ) {
    const next = bytes[at + 1] ?? 0;
    if (next !== 0 && (next < 0xd0 || next > 0xd7) && next !== 0xff) return at;
  }
  return bytes.length;
}

/** @returns null for bytes that are no whole JPEG with a frame, a scan and an end */
export function readJpeg(bytes: Uint8Array): JpegFacts | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let size: { width: number; height: number } | null = null;
  let scanned = false;
  let carriesMore = false;
  for (let at = 2; at + 2 <= bytes.length;) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1; // fill bytes
      continue;
    }
    if (marker === END) {
      if (!scanned || !size || size.width === 0 || size.height === 0) return null;
      return { ...size, carriesMore: carriesMore || at + 2 < bytes.length };
    }
    if (at + 4 > bytes.length) return null;
    const length = view.getUint16(at + 2);
    if (length < 2 || at + 2 + length > bytes.length) return null;
    if (START_OF_FRAME.has(marker) && length >= 8) {
      size = { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    }
    carriesMore ||= isMore(marker, bytes.subarray(at + 4, at + 2 + length));
    at += 2 + length;
    if (marker === START_OF_SCAN) {
      scanned = true;
      at = endOfScan(bytes, at);
    }
  }
  return null;
}
