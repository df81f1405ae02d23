// Where a sentence names jars: cut into plain words and names. The names are given, nothing is understood of the rest. Pure.

export interface NamedJar {
  readonly jar: string;
  readonly label: string;
}

export interface LinkedPart {
  readonly words: string;
  /** The jar that these words name. */
  readonly jar: string | null;
}

const WORD = /[\p{L}\p{N}]/u;

/** Whether a name found there stands by itself: "1 Apr a" is none in "11 Apr a", nor in "1 Apr ab". */
const standsAlone = (text: string, from: number, to: number): boolean =>
  !WORD.test(text.charAt(from - 1)) && !WORD.test(text.charAt(to));

/** The earliest name from a place on; of names that begin together the longest. */
function nextName(
  text: string,
  from: number,
  jars: readonly NamedJar[],
): { at: number; named: NamedJar } | null {
  let best: { at: number; named: NamedJar } | null = null;
  for (const named of jars) {
    const { label } = named;
    let at = label === '' ? -1 : text.indexOf(label, from);
    while (at >= 0 && !standsAlone(text, at, at + label.length)) at = text.indexOf(label, at + 1);
    if (at < 0) continue;
    if (best === null || at < best.at || (at === best.at && label.length > best.named.label.length))
      best = { at, named };
  }
  return best;
}

/** The parts of a sentence, in order; together they are the sentence. */
export function linkedParts(text: string, jars: readonly NamedJar[]): LinkedPart[] {
  const parts: LinkedPart[] = [];
  let from = 0;
  for (let next = nextName(text, 0, jars); next !== null; next = nextName(text, from, jars)) {
    const { at, named } = next;
    if (at > from) parts.push({ words: text.slice(from, at), jar: null });
    parts.push({ words: named.label, jar: named.jar });
    from = at + named.label.length;
  }
  return from < text.length ? [...parts, { words: text.slice(from), jar: null }] : parts;
}
