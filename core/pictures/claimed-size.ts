// How large a picture says it is, before anything decodes it: a few bytes may claim more than a machine can hold. JPEG (ITU-T
// T.81), PNG (ISO/IEC 15948) and WebP (RFC 9649); any other kind is none that is taken. Pure.

export interface ClaimedSize {
  readonly width: number;
  readonly height: number;
}

/** More than any telephone takes: 100 million pixels are 400 MB once decoded. */
const MOST_PIXELS = 100_000_000;

const at = (bytes: Uint8Array, index: number): number => bytes[index] ?? 0;
const begins = (bytes: Uint8Array, from: number, text: string): boolean =>
  [...text].every((letter, i) => at(bytes, from + i) === letter.charCodeAt(0));
const big16 = (bytes: Uint8Array, from: number): number => at(bytes, from) * 256 + at(bytes, from + 1);
const big32 = (bytes: Uint8Array, from: number): number =>
  big16(bytes, from) * 65_536 + big16(bytes, from + 2);
const little16 = (bytes: Uint8Array, from: number): number => at(bytes, from) + at(bytes, from + 1) * 256;
const little24 = (bytes: Uint8Array, from: number): number =>
  little16(bytes, from) + at(bytes, from + 2) * 65_536;

/** Of the first frame; segments before it are stepped over. */
function ofJpeg(bytes: Uint8Array): ClaimedSize | null {
  let from = 2;
  while (from + 9 < bytes.length) {
    if (at(bytes, from) !== 0xff) return null;
    const marker = at(bytes, from + 1);
    if (marker === 0xff) from += 1;
    else if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { width: big16(bytes, from + 7), height: big16(bytes, from + 5) };
    else if (marker === 0xd8 || marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) from += 2;
    else if (big16(bytes, from + 2) < 2) return null;
    else from += 2 + big16(bytes, from + 2);
  }
  return null;
}

function ofWebP(bytes: Uint8Array): ClaimedSize | null {
  if (begins(bytes, 12, 'VP8X')) return { width: little24(bytes, 24) + 1, height: little24(bytes, 27) + 1 };
  if (begins(bytes, 12, 'VP8 '))
    return { width: little16(bytes, 26) & 0x3fff, height: little16(bytes, 28) & 0x3fff };
  if (!begins(bytes, 12, 'VP8L')) return null;
  const [a, b, c, d] = [at(bytes, 21), at(bytes, 22), at(bytes, 23), at(bytes, 24)];
  return { width: 1 + (((b & 0x3f) << 8) | a), height: 1 + (((d & 0x0f) << 10) | (c << 2) | (b >> 6)) };
}

/** @returns null for what is no such picture, or says nothing of its size */
function claimedSize(bytes: Uint8Array): ClaimedSize | null {
  if (at(bytes, 0) === 0xff && at(bytes, 1) === 0xd8) return ofJpeg(bytes);
  if (at(bytes, 0) === 0x89 && begins(bytes, 1, 'PNG\r\n') && begins(bytes, 12, 'IHDR'))
    return { width: big32(bytes, 16), height: big32(bytes, 20) };
  return begins(bytes, 0, 'RIFF') && begins(bytes, 8, 'WEBP') ? ofWebP(bytes) : null;
}

/** Whether a picture may be decoded, by what it claims: 'none' is no picture of a kind that is taken. */
export function mayDecode(bytes: Uint8Array): 'yes' | 'too large' | 'none' {
  const size = claimedSize(bytes);
  if (size === null || size.width < 1 || size.height < 1) return 'none';
  return size.width * size.height > MOST_PIXELS ? 'too large' : 'yes';
}
