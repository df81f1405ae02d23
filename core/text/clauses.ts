// Where one thing that a text says ends and the next begins: cut in one place, for whoever asks what is read and what is left.

const BETWEEN = /([,;!]\s+|(?<=\p{L}{2})\.\s+)/u;

/** Each thing that a text says, in order. */
export const thingsSaid = (text: string): string[] => text.split(BETWEEN).filter((_, at) => at % 2 === 0);

/** What a text says beside what is read: without the things at its beginning and its end that are; what stands between stays. */
export function leftOf(text: string, isRead: (said: string) => boolean): string {
  const parts = text.trim().split(BETWEEN);
  const more = (part: string, at: number): boolean => at % 2 === 0 && part.trim() !== '' && !isRead(part);
  const first = parts.findIndex(more);
  return first < 0 ? '' : parts.slice(first, parts.findLastIndex(more) + 1).join('');
}
