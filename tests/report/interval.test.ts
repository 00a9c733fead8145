// The laboratory's interval: both ends in our unit, the printed string kept.
import { describe, expect, it } from 'vitest';
import { only } from './written.js';

const mch = (low: string | null, high: string | null, text: string | null) => {
  const interval = { low, high, text };
  const { interval: read, copied } = only({ analyte: 'mch', value: '30', unit: 'pg', interval });
  return { ...read, copied: copied.interval };
};

describe('an interval', () => {
  it.each([
    ['27 - 33', 27, 33],
    ['27–33', 27, 33],
    ['27—33', 27, 33],
    ['27-33', 27, 33],
    ['27 to 33', 27, 33],
    ['10,5 - 20', 10.5, 20],
    ['(27 - 33)', 27, 33],
    ['[27-33]', 27, 33],
    ['27 - 33 pg', 27, 33],
    ['[27-33] PG', 27, 33],
    ['< 33', null, 33],
    ['<=33', null, 33],
    ['≤33', null, 33],
    ['up to 33', null, 33],
    ['>=27', 27, null],
    ['> 27', 27, null],
    ['0 - 33', 0, 33],
  ])('printed as %s is read, and copied as it stands', (text, low, high) => {
    expect(mch(null, null, text)).toEqual({ low, high, copied: text });
  });

  it.each([
    'see note',
    '27 - 33 - 40',
    '27',
    '-5 - 33',
    '27 - 33 g/L',
    '27 - 1,000',
    'women 27 - 33',
    '1e1 - 33',
  ])('printed as %s is copied and compared with nothing', (text) => {
    expect(mch(null, null, text)).toEqual({ copied: text });
  });

  it.each([
    ['27', '33', null, 27, 33, '27–33'],
    ['27,5', '33', null, 27.5, 33, '27,5–33'],
    [null, '33', null, null, 33, '≤ 33'],
    ['27', null, null, 27, null, '≥ 27'],
    ['27', '33', '27 - 33 (adult)', 27, 33, '27 - 33 (adult)'],
    ['27', '33', '', 27, 33, '27–33'],
  ])('in fields %s and %s beside the text %s is joined', (low, high, text, from, to, copied) => {
    expect(mch(low, high, text)).toEqual({ low: from, high: to, copied });
  });

  it.each([
    ['low', '33', 'low–33'],
    ['27', 'high', '27–high'],
    ['<27', '33', '<27–33'],
    ['27', '1,000', '27–1,000'],
  ])('with the ends %s and %s is copied and compared with nothing', (low, high, copied) => {
    expect(mch(low, high, null)).toEqual({ copied });
  });

  it('in another unit is brought into ours', () => {
    const interval = { low: '12', high: '16', text: null };
    const read = only({ analyte: 'haemoglobin', value: '13.2', unit: 'g/dL', interval });
    expect(read.interval).toEqual({ low: 120, high: 160 });
    expect(read.copied).toEqual({ value: '13.2', unit: 'g/dL', interval: '12–16' });
  });

  it.each([
    ['rbc', '5', '10*12/L', '4.0 - 5.5 x10¹²/L', { low: 4, high: 5.5 }],
    ['transferrin-saturation', '35', '%', '16 - 50 %', { low: 16, high: 50 }],
  ] as const)('of %s may end in its unit', (analyte, value, unit, text, expected) => {
    const interval = { low: null, high: null, text };
    expect(only({ analyte, value, unit, interval }).interval).toEqual(expected);
  });

  it('that is absent or blank is no interval', () => {
    expect(only({ interval: null })).toMatchObject({ interval: null, copied: { interval: null } });
    expect(mch(null, ' ', '  ')).toEqual({ copied: null });
  });

  it('cannot steer the page', () => {
    expect(mch(null, null, '27\u202E - x\u0007\n33').copied).toBe('27 - x 33');
    expect(mch(null, null, ' 27  -  33 ').copied).toBe('27  -  33');
    expect(mch(null, null, 'y'.repeat(500)).copied).toHaveLength(60);
  });
});
