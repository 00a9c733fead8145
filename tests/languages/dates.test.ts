// The dates of every language beside those of Unicode CLDR 48, which Node 20 carries in its Intl.
import { describe, expect, it } from 'vitest';
import { languageFilesOf, languageOf, translatedTags } from './folders.js';

const everyDay = Array.from({ length: 366 }, (_, day) =>
  new Date(Date.UTC(2028, 0, 1 + day)).toISOString().slice(0, 10),
);

describe.each(['en', ...translatedTags])('dates in %s', (tag) => {
  const { date } = languageOf(tag);

  // Source: Unicode CLDR 48, Gregorian dates with the month in full, in Latin digits. Another release may word a month in another way.
  it.runIf(process.versions.cldr === '48.0')('are those of CLDR, every day of a leap year', () => {
    const { intl = tag } = languageFilesOf(tag).meta as { intl?: string };
    const format = new Intl.DateTimeFormat(`${intl}-u-nu-latn-ca-gregory`, {
      day: 'numeric',
      month: 'long',
      year: 'numeric',
      timeZone: 'UTC',
    });
    const other = everyDay.filter((iso) => date(iso) !== format.format(new Date(iso)));
    expect(other.map((iso) => [date(iso), format.format(new Date(iso))])).toEqual([]);
  });

  it('tell every day from every other', () => {
    expect(new Set(everyDay.map(date)).size).toBe(everyDay.length);
  });

  it('have the year whole and the day without a zero before it', () => {
    expect(date('2026-03-05').match(/\d+/g)).toEqual(expect.arrayContaining(['5', '2026']));
  });
});
