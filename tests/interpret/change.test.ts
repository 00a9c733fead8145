// Change between two dates: published reference change values, worked examples, the fall that raises a hold, response to iron.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import { changeLimit, changeLimitOf } from '../../src/interpret/variation.js';
import type { VariationRow } from '../../src/knowledge/follow-up.js';
import type { Analyte } from '../../src/terms.js';
import { type Given, panelOf, reportOf, today } from './build.js';

function row(
  within: number,
  analytical: number,
  method: VariationRow['method'] = 'symmetric',
): VariationRow {
  return {
    id: 'test',
    source: 'test',
    at: 'test',
    checked: 'read',
    analyte: 'ferritin',
    method,
    within,
    analytical,
    unit: '%',
  };
}

describe('the reference change value', () => {
  /** Cokluk 2021 (transferrin 10.1, ferritin 18.3) and Macy 1997 (CRP 118), per cent, two-sided 95 %. */
  it.each([
    ['transferrin', 3.6, 0.62, 10.1],
    ['CRP', 42.2, 5.2, 118],
  ])('of %s is the published one', (_, within, analytical, published) => {
    const { up, down } = changeLimitOf(row(within, analytical));
    expect(Math.abs(up - published)).toBeLessThan(0.5);
    expect(down).toBe(up);
  });

  /** Cokluk 2021 prints CVi 6.2 and a change value of 18.3 for ferritin: the assay's own variation must then be 2.3 %. */
  it('of ferritin in Cokluk 2021 needs an analytical variation of 2.3 %', () => {
    expect(changeLimitOf(row(6.2, 2.3)).up).toBeCloseTo(18.3, 1);
  });

  /** Worked out by hand from the published CVs: haemoglobin 8.7, MCV 3.4, MCH 4.0, TIBC 14.4, saturation 78, iron 75.7 %. */
  it.each([
    ['haemoglobin', 8.7],
    ['mcv', 3.4],
    ['mch', 4.0],
    ['tibc', 14.4],
    ['transferrin', 10.1],
    ['transferrin-saturation', 78.1],
    ['serum-iron', 75.7],
  ] as const)('of %s is %d %%', (analyte, percent) => {
    expect(changeLimit(analyte)?.up).toBeCloseTo(percent, 1);
  });

  it('of ferritin is log-normal: up 53 %, down 34 % (CVi 14.5, CVa 5)', () => {
    const found = changeLimit('ferritin');
    expect(Math.round(found?.up ?? 0)).toBe(53);
    expect(Math.round(found?.down ?? 0)).toBe(34);
  });

  it('of a log-normal test undoes itself: the way down is the way up turned round', () => {
    for (const analyte of ['ferritin', 'crp'] as const) {
      const { up, down } = changeLimit(analyte) ?? { up: 0, down: 0 };
      expect((1 + up / 100) * (1 - down / 100)).toBeCloseTo(1, 10);
    }
  });

  it('does not exist for a test without published variation', () => {
    expect(changeLimit('rbc')).toBeNull();
  });
});

function verdict(analyte: Analyte, then: Given, now: Given) {
  const previous = [panelOf({ [analyte]: then }, '2026-08-01')];
  const { changes } = interpret(reportOf({ [analyte]: now }, { previous }), today);
  return changes[0];
}

describe('a change', () => {
  it.each([
    ['haemoglobin', 112, 121, 'about-the-same'],
    ['haemoglobin', 100, 109, 'has-gone-up'],
    ['haemoglobin', 100, 108, 'about-the-same'],
    ['haemoglobin', 100, 91, 'has-gone-down'],
    ['haemoglobin', 100, 92, 'about-the-same'],
    ['ferritin', 20, 28, 'about-the-same'],
    ['ferritin', 20, 35, 'has-gone-up'],
    ['ferritin', 100, 67, 'about-the-same'],
    ['ferritin', 100, 65, 'has-gone-down'],
    ['serum-iron', 10, 17.5, 'about-the-same'],
  ] as const)('of %s from %d to %d is told as %s', (analyte, then, now, told) => {
    expect(verdict(analyte, then, now)?.verdict).toBe(told);
  });

  it('cannot be told with a comparator, a doubt, or no published variation', () => {
    expect(verdict('ferritin', { value: 5, comparator: '<' }, 30)?.verdict).toBe('cannot-tell');
    expect(verdict('ferritin', 30, { value: 5, comparator: '<' })?.verdict).toBe('cannot-tell');
    expect(verdict('ferritin', 30, { value: 300, doubt: 'unit' })?.verdict).toBe('cannot-tell');
    expect(verdict('rbc', 4, 6)).toMatchObject({
      verdict: 'cannot-tell',
      percent: null,
      limitUp: null,
    });
  });

  it('is told against each of up to six earlier dates, newest first', () => {
    const dates = [
      '2026-10-01',
      '2026-08-01',
      '2026-06-01',
      '2026-04-01',
      '2026-02-01',
      '2025-12-01',
    ];
    const previous = dates.map((date) => panelOf({ ferritin: 20, haemoglobin: 130 }, date));
    const { changes } = interpret(reportOf({ ferritin: 50 }, { previous }), today);
    expect(changes.map(({ earlier }) => earlier.collected)).toEqual(dates);
    expect(new Set(changes.map(({ analyte }) => analyte))).toEqual(new Set(['ferritin']));
    expect(changes[0]).toMatchObject({ percent: 150, earlier: { copied: { value: '20' } } });
  });
});

describe('a falling haemoglobin', () => {
  /** Fall of 20 g/L or more within three months: a clinician the same day (proposal). */
  it.each([
    [140, 120, '2026-08-16', 'same-day'],
    [140, 120.1, '2026-08-16', 'routine'],
    [140, 120, '2026-08-15', 'routine'],
    [140, 119, '2026-11-15', 'same-day'],
    [120, 140, '2026-11-01', 'routine'],
  ])('from %d to %d since %s holds the letter: %s', (then, now, date, tier) => {
    const previous = [panelOf({ haemoglobin: then }, date)];
    const patient = { sex: 'female', ageMonths: 360 } as const;
    const { hold } = interpret(
      reportOf({ haemoglobin: now, ferritin: 100 }, { previous, patient }),
      today,
    );
    expect(hold.tier).toBe(tier);
  });

  it('looks at every date of the last three months, not only the newest', () => {
    const previous = [
      panelOf({ haemoglobin: 122 }, '2026-11-01'),
      panelOf({ haemoglobin: 145 }, '2026-09-01'),
    ];
    const { hold } = interpret(reportOf({ haemoglobin: 121, ferritin: 100 }, { previous }), today);
    expect(hold.reasons.find(({ code }) => code === 'haemoglobin-fell')?.facts).toMatchObject({
      from: 145,
      to: 121,
      collected: '2026-09-01',
    });
  });

  it('counts as a sign of blood loss only when chance cannot explain it (8.7 %)', () => {
    const main = (then: number) => {
      const previous = [panelOf({ haemoglobin: then }, '2026-10-01')];
      const values = {
        haemoglobin: 120,
        ferritin: 100,
        crp: 1,
        'transferrin-saturation': 30,
        mcv: 90,
      };
      return interpret(reportOf(values, { previous }), today).pattern.main;
    };
    expect(main(131)).toBe('anaemia-not-explained-by-iron');
    expect(main(132)).toBe('possible-recent-blood-loss');
  });
});

describe('response to iron', () => {
  /** Okam 2016 and BSG 2021: 10 g/L at 2 weeks; World J Gastroenterol 2016: 20 g/L at 4 weeks. */
  it.each([
    ['2026-11-03', 100, 115, 'response-too-early'],
    ['2026-11-02', 100, 110, 'response-good'],
    ['2026-11-02', 100, 109.9, 'response-poor'],
    ['2026-10-20', 100, 110, 'response-good'],
    ['2026-10-19', 100, 119.9, 'response-poor'],
    ['2026-10-19', 100, 120, 'response-good'],
  ])('since %s, from %d to %d g/L: %s', (date, then, now, code) => {
    const previous = [panelOf({ haemoglobin: then, ferritin: 8 }, date)];
    const patient = { medicines: ['iron-tablets'] } as const;
    const { clinicianNotes } = interpret(
      reportOf({ haemoglobin: now, ferritin: 20 }, { previous, patient }),
      today,
    );
    expect(
      clinicianNotes.map((note) => note.code).filter((one) => one.startsWith('response')),
    ).toEqual([code]);
  });

  it('is not spoken of without iron, or where haemoglobin was not low before', () => {
    const noted = (then: number, medicines: readonly ('iron-tablets' | 'zinc')[]) => {
      const previous = [panelOf({ haemoglobin: then }, '2026-11-01')];
      const { clinicianNotes } = interpret(
        reportOf({ haemoglobin: 140 }, { previous, patient: { medicines } }),
        today,
      );
      return clinicianNotes.some(({ code }) => code.startsWith('response'));
    };
    expect(noted(129, ['iron-tablets'])).toBe(true);
    expect(noted(130, ['iron-tablets'])).toBe(false);
    expect(noted(129, ['zinc'])).toBe(false);
  });
});
