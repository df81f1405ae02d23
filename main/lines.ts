// Bytes in pieces of any size to lines of text, in bounded memory.

/** A line of text, blank ones included; or what is wrong with one that can't be text. */
export type Line = { readonly text: string } | { readonly problem: 'too long' | 'not UTF-8' };

const LINE_FEED = 0x0a;

/** Collects one line; holds at most `most` bytes of it, in a buffer that grows by doubling. */
class Collected {
  #bytes = Buffer.alloc(1024);
  #used = 0;
  #tooLong = false;
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get isEmpty(): boolean {
    return this.#used === 0 && !this.#tooLong;
  }

  add(piece: Uint8Array): void {
    const needed = this.#used + piece.length;
    if (needed > this.#most) this.#tooLong = true;
    if (this.#tooLong) return;
    if (needed > this.#bytes.length) {
      const grown = Buffer.alloc(Math.max(needed, Math.min(this.#most, 2 * this.#bytes.length)));
      this.#bytes.copy(grown, 0, 0, this.#used);
      this.#bytes = grown;
    }
    this.#bytes.set(piece, this.#used);
    this.#used = needed;
  }

  /** The line, a byte order mark before it and a carriage return behind it left out; and begins anew. */
  take(): Line {
    const bytes = this.#bytes.subarray(0, this.#used);
    const tooLong = this.#tooLong;
    this.#used = 0;
    this.#tooLong = false;
    if (this.#bytes.length > 1e6) this.#bytes = Buffer.alloc(1024);
    if (tooLong) return { problem: 'too long' };
    try {
      return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes).replace(/\r$/, '') };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ERR_ENCODING_INVALID_ENCODED_DATA') throw error;
      return { problem: 'not UTF-8' };
    }
  }
}

const isBlank = (line: Line): boolean => 'text' in line && line.text.trim() === '';

/**
 * The lines of a stream, the last one also without a line break behind it. Blank lines at the very end are left out;
 * others are lines. The next piece is asked for only when the lines of the one before have been taken.
 * @param most bytes of a line that is still given out; of a longer one nothing is held
 */
export async function* linesOf(pieces: AsyncIterable<Uint8Array>, most: number): AsyncGenerator<Line> {
  const collected = new Collected(most);
  let blank = 0;
  function* ended(): Generator<Line> {
    const line = collected.take();
    if (isBlank(line)) blank++;
    else {
      for (; blank > 0; blank--) yield { text: '' };
      yield line;
    }
  }
  for await (const piece of pieces) {
    let from = 0;
    for (let at = piece.indexOf(LINE_FEED); at >= 0; at = piece.indexOf(LINE_FEED, from)) {
      collected.add(piece.subarray(from, at));
      from = at + 1;
      yield* ended();
    }
    collected.add(piece.subarray(from));
  }
  if (!collected.isEmpty) yield* ended();
}
