// The calendar file, read back by ical.js: a general reader of RFC 5545 that knows nothing of this project.
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import type { Calendar } from '../../src/letter/index.js';
import { writeCalendar } from '../../src/render/calendar.js';

const said = (text: string) => ({ key: 'step', text });
const calendar: Calendar = {
  lang: 'ar',
  made: '2026-11-25',
  events: [
    {
      step: 'repeat-test',
      by: '2027-02-20',
      summary: said('One more test; call 555-0142, please.'),
    },
    { step: 'referral', by: '2026-12-09', summary: said('سنطلب من اختصاصي أن يراك. '.repeat(9)) },
    { step: 'heard-by', by: '2028-02-29', summary: said('𠮷野屋で\\n会う🩸'.repeat(12)) },
  ],
  details: ['Saltmarsh Bay', 'Line one\r\nline two', 'A\u0007bell; a, comma'],
};
const uidOf = ({ step, by }: { step: string; by: string }) => `${step}-${by}@ironleaf.invalid`;
const file = writeCalendar(calendar, uidOf);
const events = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent');
const readBack = (at: number, name: string) => String(events[at]?.getFirstPropertyValue(name));

describe('a calendar file', () => {
  it('is read by a general reader, with every event once', () => {
    expect(events).toHaveLength(3);
    expect(new Set(events.map((event) => new ICAL.Event(event).uid)).size).toBe(3);
  });

  // RFC 5545, 3.6: VERSION and PRODID are required; 3.6.1: UID and DTSTAMP in every event.
  it('has what the standard requires', () => {
    const root = new ICAL.Component(ICAL.parse(file));
    expect(root.getFirstPropertyValue('version')).toBe('2.0');
    expect(root.getFirstPropertyValue('prodid')).toBe('-//Ironleaf//Letter//EN');
    for (const event of events) {
      for (const name of ['uid', 'dtstamp', 'dtstart', 'summary'])
        expect(event.getAllProperties(name)).toHaveLength(1);
    }
    expect(readBack(0, 'dtstamp')).toBe('2026-11-25T00:00:00Z');
  });

  it('takes whole days, without an hour that would move between time zones', () => {
    const starts = events.map((event) => new ICAL.Event(event).startDate);
    expect(starts.map(({ isDate }) => isDate)).toEqual([true, true, true]);
    expect(starts.map(String)).toEqual(['2027-02-20', '2026-12-09', '2028-02-29']);
  });

  it('gives every text back as it was, whatever its script and signs', () => {
    for (const [at, { summary }] of calendar.events.entries())
      expect(readBack(at, 'summary')).toBe(summary.text);
    expect(readBack(0, 'description')).toBe('Saltmarsh Bay\nLine one\nline two\nAbell; a, comma');
  });

  // RFC 5545, 3.1: lines end in CRLF and should hold at most 75 octets without it.
  it('keeps its lines short, in octets, and never cuts a character', () => {
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(file.endsWith('\r\n')).toBe(true);
    for (const line of file.split('\r\n')) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/\p{Cs}|\uFFFD/u);
    }
    expect(file.split('\r\n').some((line) => Buffer.byteLength(line) > 70)).toBe(true);
  });

  it.each([73, 74, 75, 76])('folds a line of %i octets only when it is too long', (octets) => {
    const summary = 'a'.repeat(octets - 'SUMMARY;LANGUAGE=en:'.length);
    const one = writeCalendar(
      {
        ...calendar,
        lang: 'en',
        events: [{ step: 'referral', by: '2027-01-01', summary: said(summary) }],
      },
      uidOf,
    );
    expect(one.includes(`:${summary}\r\n`)).toBe(octets <= 75);
  });
});
