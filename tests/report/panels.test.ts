// The sample and the earlier ones: one panel a date, newest first, results in the order of the letter.
import { describe, expect, it } from 'vitest';
import { measured, notesOf, reportOf, written } from './written.js';

const on = (collected: string, value: string) => ({ collected, results: [written({ value })] });

describe('panels', () => {
  it('come newest first', () => {
    const { previous } = measured(
      reportOf([written()], { previous: [on('2024-01-01', '40'), on('2025-01-01', '50')] }),
    );
    expect(previous.map(({ collected }) => collected)).toEqual(['2025-01-01', '2024-01-01']);
  });

  it('are six at most, with a note on what was left out', () => {
    const report = (years: number) =>
      reportOf([written()], {
        previous: Array.from({ length: years }, (_, at) => on(`${2018 + at}-01-01`, '40')),
      });
    expect(measured(report(6)).previous).toHaveLength(6);
    expect(notesOf(report(6))).toEqual([]);
    expect(measured(report(7)).previous.at(-1)?.collected).toBe('2019-01-01');
    expect(notesOf(report(7))).toEqual(['previous-left-out']);
  });

  it('of one date become one', () => {
    const more = {
      collected: '2026-02-20T09:00',
      results: [written({ analyte: 'mcv', value: '85', unit: 'fL' })],
    };
    const { panel, previous } = measured(reportOf([written()], { previous: [more] }));
    expect(panel.results.map(({ analyte }) => analyte)).toEqual(['ferritin', 'mcv']);
    expect(previous).toEqual([]);
  });

  it('keep the corrected value and the final one', () => {
    const first = (results: ReturnType<typeof written>[]) =>
      measured(reportOf(results)).panel.results[0]?.quantity.value;
    expect(first([written(), written({ value: '61', status: 'corrected' })])).toBe(61);
    expect(
      first([written({ value: '61', status: 'P' }), written({ value: '62', status: 'F' })]),
    ).toBe(62);
  });

  it('without a result left are no earlier panel', () => {
    const gone = { collected: '2025-01-01', results: [written({ status: 'cancelled' })] };
    expect(measured(reportOf([written()], { previous: [gone] })).previous).toEqual([]);
  });
});
