// Permanent ids: UUIDv7 (RFC 9562, section 5.7) from a clock and a source of random bytes that are passed in.

/** Milliseconds since 1970 and `length` random bytes. */
export interface IdSources {
  readonly milliseconds: () => number;
  readonly random: (length: number) => Uint8Array;
}

const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));
/** Bytes, eight for each id. */
const DRAWN_AT_ONCE = 4096;

/**
 * A generator of UUIDv7 texts that rise even within one millisecond: rand_a is a 12-bit counter (RFC 9562,
 * section 6.2, method 1), and where it overflows the time field runs ahead of the clock by a millisecond.
 */
export function idGenerator({ milliseconds, random }: IdSources): () => string {
  let last = -1;
  let counter = 0;
  let time = '';
  // Drawn in bulk: asking the system for each of some hundred thousand ids takes longer than writing their rows.
  let drawn: Uint8Array = new Uint8Array();
  let used = 0;
  return () => {
    // The time field has no room for what was before 1970.
    const now = Math.max(0, Math.floor(milliseconds()));
    const before = last;
    if (now > last) {
      last = now;
      counter = 0;
    } else if (++counter > 0xfff) {
      last += 1;
      counter = 0;
    }
    if (last !== before) {
      const text = last.toString(16).padStart(12, '0');
      time = `${text.slice(0, 8)}-${text.slice(8)}`;
    }
    if (used + 8 > drawn.length) {
      drawn = random(DRAWN_AT_ONCE);
      used = 0;
    }
    let tail = HEX[((drawn[used] ?? 0) & 0x3f) | 0x80] ?? '';
    for (let at = 1; at < 8; at++) tail += (at === 2 ? '-' : '') + (HEX[drawn[used + at] ?? 0] ?? '');
    used += 8;
    return `${time}-7${counter.toString(16).padStart(3, '0')}-${tail}`;
  };
}
