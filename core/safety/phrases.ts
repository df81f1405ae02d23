// Lists of phrases, written as a cook would, made into what finds them in a plain text.

/** The items of a list with commas. */
export const items = (list: string): string[] => list.trim().split(/\s*,\s*/);

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
/** Words of a phrase may be joined by a hyphen, too. */
const GAP = '[ -]';

function wordOf(word: string): string {
  return word.endsWith('*') ? String.raw`${escaped(word.slice(0, -1))}\w*` : escaped(word);
}

/** One phrase: * is any ending, {name} one of a list, {name?} one or none. */
function phraseOf(phrase: string, lists: Readonly<Record<string, string>>): string {
  const last = phrase.split(' ').length - 1;
  return phrase
    .split(' ')
    .map((word, at) => {
      const [, name, optional] = /^\{(\w+)(\??)\}$/.exec(word) ?? [];
      const gap = at < last ? GAP : '';
      if (name === undefined) return wordOf(word) + gap;
      const listed = items(lists[name] ?? '').map((one) => one.split(' ').map(wordOf).join(GAP));
      const any = `(?:${listed.toSorted((a, b) => b.length - a.length).join('|')})`;
      return optional === '?' ? `(?:${any}${gap})?` : any + gap;
    })
    .join('');
}

/** The source of an expression that finds any phrase of a list with commas, as whole words. */
export const phrases = (list: string, lists: Readonly<Record<string, string>> = {}): string => {
  const sources = items(list).map((phrase) => phraseOf(phrase, lists));
  return String.raw`(?<!\w)(?:${sources.toSorted((a, b) => b.length - a.length).join('|')})(?!\w)`;
};
