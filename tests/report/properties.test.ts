// What must hold for every report: the same quantity in another unit is the same, and nothing is changed or lost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { units } from '../../src/knowledge/units.js';
import { checkReport, convert, express } from '../../src/report/index.js';
import { analytes } from '../../src/terms.js';
import { measured, reportOf, today, written } from './written.js';

const anyUnit = fc.constantFrom(...units);
const anyValue = fc.double({ min: 1e-3, max: 1e5, noNaN: true, noDefaultInfinity: true });

describe('every quantity', () => {
  it('survives the way to another unit and back', () => {
    fc.assert(
      fc.property(anyUnit, anyUnit, anyValue, (one, other, value) => {
        fc.pre(one.analyte === other.analyte);
        const ours = convert(one.analyte, value, one.code);
        const again = convert(one.analyte, express(one.analyte, ours, other.code), other.code);
        expect(Math.abs(again / ours - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it('grows with the written value', () => {
    fc.assert(
      fc.property(anyUnit, anyValue, anyValue, (row, one, other) => {
        fc.pre(one < other);
        const [small, large] = [one, other].map((value) => convert(row.analyte, value, row.code));
        expect(small).toBeLessThanOrEqual(large ?? Number.NaN);
      }),
    );
  });
});

describe('every report', () => {
  it('gives equal quantities for one amount written in two units', () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 2000 }), (tenths) => {
        const inGrams = String(tenths / 10);
        const inDecilitres = String(Number((tenths / 100).toFixed(2)));
        const one = written({ analyte: 'haemoglobin', value: inGrams, unit: 'g/L' });
        const other = written({ analyte: 'haemoglobin', value: inDecilitres, unit: 'g/dL' });
        expect(measured(reportOf([one])).panel.results[0]?.quantity).toEqual(
          measured(reportOf([other])).panel.results[0]?.quantity,
        );
      }),
    );
  });

  it('is the same in any order of its results', () => {
    const results = [
      written(),
      written({ analyte: 'haemoglobin', value: '121', unit: 'g/L' }),
      written({ analyte: 'crp', value: '2', unit: 'mg/L' }),
      written({ analyte: 'mcv', value: '85', unit: 'fL' }),
    ];
    const straight = measured(reportOf(results));
    fc.assert(
      fc.property(fc.shuffledSubarray(results, { minLength: 4 }), (shuffled) => {
        expect(measured(reportOf(shuffled))).toEqual(straight);
      }),
    );
  });

  it('is measured or refused, and never throws, whatever its strings hold', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('', '5', '<5', '1e9', 'NaN'),
    );
    const maybe = fc.option(text);
    fc.assert(
      fc.property(
        fc.record({
          analyte: fc.constantFrom(...analytes),
          value: text,
          comparator: maybe,
          unit: fc.oneof(maybe, fc.constantFrom(...units.map(({ code }) => code))),
          interval: fc.option(fc.record({ low: maybe, high: maybe, text: maybe })),
          labFlag: maybe,
          status: maybe,
        }),
        text,
        (over, date) => {
          const result = written(over);
          const panel = { collected: date, results: [result] };
          const checked = checkReport(reportOf([result], { panel, previous: [panel] }), today);
          expect(checked.ok || checked.problems.length > 0).toBe(true);
        },
      ),
      { numRuns: 120 },
    );
  }, 30_000);
});
