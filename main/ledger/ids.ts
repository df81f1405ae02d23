// Permanent ids: UUIDv7 (RFC 9562, section 5.7) from a clock and a source of random bytes that are passed in.

/** Milliseconds since 1970 and `length` random bytes. */
export interface IdSources {
  readonly milliseconds: () => number;
  readonly random: (length: number) => Uint8Array;
}

/**
 * A generator of UUIDv7 texts that rise even within one millisecond: rand_a is a 12-bit counter (RFC 9562,
 * section 6.2, method 1), and where it overflows the time field runs ahead of the clock by a millisecond.
 */
export function idGenerator({ milliseconds, random }: IdSources): () => string {
  let last = -1;
  let counter = 0;
  return () => {
    const now = Math.floor(milliseconds());
    if (now > last) {
      last = now;
      counter = 0;
    } else if (++counter > 0xfff) {
      last += 1;
      counter = 0;
    }
    const bytes = random(8);
    bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x80;
    const time = last.toString(16).padStart(12, '0');
    const tail = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
    const count = counter.toString(16).padStart(3, '0');
    return `${time.slice(0, 8)}-${time.slice(8)}-7${count}-${tail.slice(0, 4)}-${tail.slice(4)}`;
  };
}
