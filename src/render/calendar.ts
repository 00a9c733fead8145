// A calendar's words arrive; an iCalendar file leaves (RFC 5545).
import type { Calendar, CalendarEvent } from '../letter/calendar.js';

/** Octets of UTF-8 in one line, without its line break (RFC 5545, 3.1). */
const longest = 75;

/**
 * Writes whole-day events, one for each date (3.6.1). Same calendar, same bytes.
 * @param uidOf What tells one event from every other in the world; must hold no name (3.8.4.7).
 * @example writeCalendar(calendar, (event) => `${event.step}-6b2f@ironleaf.invalid`) // 'BEGIN:VCALENDAR\r\nVERSION:2.0\r\n…'
 */
export function writeCalendar(calendar: Calendar, uidOf: (event: CalendarEvent) => string): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Ironleaf//Letter//EN',
    ...calendar.events.flatMap((event) => eventLines(event, calendar, uidOf(event))),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines(
  { by, summary }: CalendarEvent,
  { lang, made, details }: Calendar,
  uid: string,
): readonly string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${uid}`,
    `DTSTAMP:${compact(made)}T000000Z`,
    `DTSTART;VALUE=DATE:${compact(by)}`,
    `SUMMARY;LANGUAGE=${lang}:${escaped(summary.text)}`,
    `DESCRIPTION;LANGUAGE=${lang}:${escaped(details.join('\n'))}`,
    'CLASS:PRIVATE',
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** '2027-02-20' as '20270220' (3.3.4). */
const compact = (iso: string) => iso.replaceAll('-', '');

/** TEXT (3.3.11); no control character but the line break may stand in it. */
function escaped(text: string): string {
  return text
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replace(/\r\n?|\n/g, '\\n')
    .replace(/\p{Cc}/gu, '');
}

const utf8 = new TextEncoder();

/** A long line goes on after a line break and a space, never inside a character (3.1). */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  for (const character of line) {
    if (utf8.encode(part + character).length > longest) {
      parts.push(part);
      part = ' ';
    }
    part += character;
  }
  return [...parts, part].join('\r\n');
}
