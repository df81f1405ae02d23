// What a JPEG carries besides the picture. Marker values by ITU-T T.81, table B.1, from memory.
import { describe, expect, it } from 'vitest';
import { readJpeg } from '../../main/ledger/jpeg';

const text = (words: string): number[] => [...words].map((letter) => letter.charCodeAt(0));
const segment = (marker: number, content: readonly number[]): number[] => [
  0xff, marker, (content.length + 2) >> 8, (content.length + 2) & 0xff, ...content,
]; // prettier-ignore
const FRAME = segment(0xc0, [8, 0, 30, 0, 40, 1, 1, 0x11, 0]);
/** A scan with stuffing and a restart in its coded data. */
const SCAN = [...segment(0xda, [1, 1, 0, 0, 63, 0]), 1, 0xff, 0, 2, 0xff, 0xd0, 3];
const END = [0xff, 0xd9];
const jpeg = (...parts: readonly number[][]): Uint8Array => Uint8Array.from([0xff, 0xd8, ...parts.flat()]);
const more = (bytes: Uint8Array): boolean | null => readJpeg(bytes)?.carriesMore ?? null;

describe('reading a JPEG', () => {
  it('finds its size, and nothing but the picture', () => {
    expect(readJpeg(jpeg(FRAME, SCAN, END))).toEqual({ width: 40, height: 30, carriesMore: false });
    const drawing = [
      segment(0xe0, text('JFIF\0\x01\x02')),
      segment(0xe2, text('ICC_PROFILE\0\x01')),
      segment(0xee, text('Adobe\0d')),
    ];
    expect(more(jpeg(...drawing, FRAME, SCAN, SCAN, END))).toBe(false);
  });

  it.each<[string, Uint8Array]>([
    ['Exif', jpeg(segment(0xe1, text('Exif\0\0')), FRAME, SCAN, END)],
    ['a comment', jpeg(segment(0xfe, text('at home')), FRAME, SCAN, END)],
    ['IPTC', jpeg(segment(0xed, text('Photoshop 3.0\0')), FRAME, SCAN, END)],
    ['several pictures in one file', jpeg(segment(0xe2, text('MPF\0')), FRAME, SCAN, END)],
    ['a preview', jpeg(segment(0xe0, text('JFXX\0\x10')), FRAME, SCAN, END)],
    ['Exif between two scans', jpeg(FRAME, SCAN, segment(0xe1, text('Exif\0\0')), SCAN, END)],
    ['bytes behind its end', jpeg(FRAME, SCAN, END, text('52.52 N 13.41 E'))],
  ])('notices %s', (_what, bytes) => {
    expect(more(bytes)).toBe(true);
  });

  it.each<[string, Uint8Array]>([
    ['text', Uint8Array.from(text('hello'))],
    ['nothing', new Uint8Array()],
    ['no frame', jpeg(SCAN, END)],
    ['no scan', jpeg(FRAME, END)],
    ['no end', jpeg(FRAME, SCAN)],
    ['a segment longer than the file', jpeg([0xff, 0xe1, 0xff, 0xff, 1])],
    ['no height', jpeg(segment(0xc0, [8, 0, 0, 0, 40, 1, 1, 0x11, 0]), SCAN, END)],
  ])('takes %s for none', (_what, bytes) => {
    expect(readJpeg(bytes)).toBeNull();
  });
});
