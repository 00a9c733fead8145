// Planned steps with a date arrive; a table and a calendar of when to look again leave, without names.
import type { PlannedStep } from '../advise/advice.js';
import type { NextStep } from '../terms.js';
import { csvLine, csvStart } from './csv-line.js';
import { sha256 } from './seal.js';
import words from './words.json' with { type: 'json' };

/** `stem` stands for the patient as in the letters' file names. */
type Recall = { readonly stem: string; readonly step: NextStep; readonly by: string };

export function recallsOf(stem: string, steps: readonly PlannedStep[]): readonly Recall[] {
  return steps.flatMap(({ step, by }) => (by === null ? [] : [{ stem, step, by }]));
}

export const recallStart = csvStart + csvLine(['by', 'letter', 'step']);

export function recallLine({ by, stem, step }: Recall): string {
  return csvLine([by, stem, words.step[step]]);
}

/** First lines of a calendar (RFC 5545, 3.6). */
export const calendarStart = lines([
  'BEGIN:VCALENDAR',
  'VERSION:2.0',
  'PRODID:-//Ironleaf//Recall//EN',
]);
export const calendarEnd = lines(['END:VCALENDAR']);

/**
 * One whole-day event (RFC 5545, 3.6.1); the same recall keeps its UID, so that importing twice doubles nothing.
 * @param stamped ISO date of the letters.
 */
export function calendarEvent({ by, stem, step }: Recall, stamped: string): string {
  const day = (iso: string) => iso.replaceAll('-', '');
  return lines([
    'BEGIN:VEVENT',
    `UID:${sha256(`${stem} ${step} ${by}`).slice(0, 32)}@ironleaf.invalid`,
    `DTSTAMP:${day(stamped)}T000000Z`,
    `DTSTART;VALUE=DATE:${day(by)}`,
    `SUMMARY:${escaped(`${words.step[step]}: ${stem}`)}`,
    'TRANSP:TRANSPARENT',
    'CLASS:PRIVATE',
    'END:VEVENT',
  ]);
}

/** RFC 5545, 3.3.11. */
function escaped(text: string): string {
  return text.replace(/[\\;,]/g, (sign) => `\\${sign}`);
}

/** CRLF, and no line over 75 octets (RFC 5545, 3.1): ours are ASCII, so characters are octets. */
function lines(all: readonly string[]): string {
  return all.map((line) => `${line.replace(/(.{73})(?=.)/g, '$1\r\n ')}\r\n`).join('');
}
