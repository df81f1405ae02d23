// A calendar file of what is to come (RFC 5545): events at moments in UTC, each with a lasting id, so that bringing the file
// in again moves what is there instead of doubling it.
export interface CalendarEvent {
  readonly uid: string;
  /** Seconds since 1970. */
  readonly at: number;
  readonly minutes: number;
  readonly summary: string;
  readonly description: string;
}

/** RFC 5545, 3.3.11: backslash, semicolon, comma and line end are escaped; a colon is not. */
export const calendarText = (text: string): string =>
  text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replace(/\r\n|\r|\n/g, '\\n');

const MOST_OCTETS = 75;
const octets = (text: string): number => {
  let sum = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    sum += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return sum;
};

/** RFC 5545, 3.1: no line is longer than 75 octets; what goes on begins with a space. No character is parted. */
export function folded(line: string): string {
  const lines: string[] = [];
  let now = '';
  for (const character of line) {
    if (octets(now) + octets(character) > MOST_OCTETS) {
      lines.push(now);
      now = ' ';
    }
    now += character;
  }
  return [...lines, now].join('\r\n');
}

/** The line by which a calendar of ours is known. */
export const OWN_CALENDAR = 'PRODID:-//Jarline//Jarline//EN';

const two = (value: number): string => String(value).padStart(2, '0');
/** 20260314T173000Z. */
function stamp(seconds: number): string {
  const at = new Date(seconds * 1000);
  return `${at.getUTCFullYear()}${two(at.getUTCMonth() + 1)}${two(at.getUTCDate())}T${two(at.getUTCHours())}${two(at.getUTCMinutes())}${two(at.getUTCSeconds())}Z`;
}

/** @param now seconds since 1970: when the file was made */
export function calendarFile(events: readonly CalendarEvent[], now: number): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    OWN_CALENDAR,
    ...events.flatMap(({ uid, at, minutes, summary, description }) => [
      'BEGIN:VEVENT',
      `UID:${uid}`,
      `DTSTAMP:${stamp(now)}`,
      `DTSTART:${stamp(at)}`,
      `DTEND:${stamp(at + minutes * 60)}`,
      `SUMMARY:${calendarText(summary)}`,
      `DESCRIPTION:${calendarText(description)}`,
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}
