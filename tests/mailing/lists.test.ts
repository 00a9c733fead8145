// Tables, calendars and file names of a run, held to the standards of the programs that open them.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvLine } from '../../src/mailing/csv-line.js';
import { calendarEnd, calendarEvent, calendarStart, recallsOf } from '../../src/mailing/recall.js';
import { isNameOfShare, isOurs, readShard, shardName } from '../../src/mailing/shard.js';
import { stemOf } from '../../src/mailing/stem.js';

describe('a line of a table', () => {
  // OWASP, "CSV Injection": cells that begin with these signs are run by spreadsheets.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1'])('disarms %j', (cell) => {
    expect(csvLine([cell])).toMatch(/^"'/);
  });

  it('is one quoted record with CRLF, whatever is in its cells (RFC 4180, read back by a general reader)', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 5 }), (cells) => {
        const line = csvLine(cells);
        expect(line.endsWith('\r\n')).toBe(true);
        const rows = parse(line, { record_delimiter: '\r\n' }) as string[][];
        expect(rows).toHaveLength(1);
        expect(rows[0]).toHaveLength(cells.length);
      }),
    );
  });
});

describe('a name of a letter', () => {
  it.each([
    ['SB-1001', 'SB-1001'],
    [null, 'report-4'],
    ['', 'report-4'],
    ['???', 'report-4'],
  ])('of id %j is %s', (id, stem) => {
    expect(stemOf(id, 4)).toBe(stem);
  });

  it('keeps apart ids that only differ in signs that file names cannot hold', () => {
    const ids = ['SB 1', 'SB/1', 'SB-1', 'SB_1', 'SB.1', '../SB-1', 'SB-1-', 'report-4', 'NUL'];
    const stems = ids.map((id) => stemOf(id, 9).toLowerCase());
    expect(new Set(stems).size).toBe(ids.length);
    for (const stem of stems) expect(stem).toMatch(/^[a-z0-9-]+$/);
    expect(stems).not.toContain('nul');
    expect(stems).not.toContain(stemOf(null, 4));
  });
});

describe('a share of the reports', () => {
  it.each(['', '0/3', '4/3', '1/0', '1', 'a/b', '1/3/5', '-1/3'])('is not %j', (text) => {
    expect(readShard(text)).toBeNull();
  });

  it('gives every report to exactly one shard', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 900 }),
        (count, number) => {
          const takers = Array.from({ length: count }, (_, at) => readShard(`${at + 1}/${count}`));
          expect(takers.filter((shard) => shard !== null && isOurs(shard, number))).toHaveLength(1);
        },
      ),
    );
  });

  it('is part of the names of its files, and a whole run has plain names', () => {
    expect(shardName('calls.csv', { index: 2, count: 8 })).toBe('calls.2-of-8.csv');
    expect(shardName('lock', { index: 2, count: 8 })).toBe('lock.2-of-8');
    expect(shardName('calls.csv', { index: 1, count: 1 })).toBe('calls.csv');
  });

  it('is told from a file’s name, and other files are left to whoever put them there', () => {
    const names = ['calls.2-of-8.csv', 'calls.csv', 'old-calls.2-of-8.csv', 'calls.2-of-8.pdf'];
    expect(names.filter((name) => isNameOfShare(name, 'calls.csv'))).toEqual(['calls.2-of-8.csv']);
  });
});

describe('the calendar of recalls', () => {
  const recall = { stem: `SB-${'1'.repeat(60)}`, step: 'repeat-test', by: '2027-02-17' } as const;
  const calendar = calendarStart + calendarEvent(recall, '2026-11-25') + calendarEnd;

  it('has lines of at most 75 octets that end in CRLF (RFC 5545, 3.1)', () => {
    const lines = calendar.split('\r\n');
    expect(lines.pop()).toBe('');
    for (const line of lines) {
      expect(line).not.toMatch(/[\r\n]/);
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    }
  });

  it('has what an event must have (RFC 5545, 3.4, 3.6, 3.6.1) and no more than the letter’s name', () => {
    const unfolded = calendar.replace(/\r\n /g, '');
    expect(unfolded).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:/);
    for (const needed of ['UID:', 'DTSTAMP:20261125T000000Z', 'DTSTART;VALUE=DATE:20270217'])
      expect(unfolded).toContain(`\r\n${needed}`);
    expect(unfolded).toContain(`SUMMARY:Repeat the test: ${recall.stem}\r\n`);
  });

  it('gives the same recall the same UID, and another one another', () => {
    const uid = (by: string) =>
      /UID:(.*)\r/.exec(calendarEvent({ ...recall, by }, '2026-11-25'))?.[1];
    expect(uid('2027-02-17')).toBe(uid('2027-02-17'));
    expect(uid('2027-02-17')).not.toBe(uid('2027-02-18'));
  });

  it('leaves out steps without a date', () => {
    const step = { who: 'patient', suggested: true, rules: [], words: null } as const;
    const steps = [
      { ...step, step: 'repeat-test', by: '2027-02-17' },
      { ...step, step: 'eat-for-iron', by: null },
    ] as const;
    expect(recallsOf('SB-1', steps)).toEqual([
      { stem: 'SB-1', step: 'repeat-test', by: '2027-02-17' },
    ]);
  });
});
