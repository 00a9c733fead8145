// The main job as an operator meets it: files made, held, released, repeated byte for byte.
import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openDesk, report, result } from './program.js';

const desk = openDesk();
afterAll(desk.clear);
const example = (name: string) => resolve('examples', name);
const day = ['--demo', '--date', '2026-11-25'] as const;

describe('ironleaf letter', () => {
  it('makes HTML and PDF, prints their paths and nothing else', () => {
    const ran = desk.run('letter', example('heavy-periods.json'), ...day, '--out', 'first');
    expect(ran.stderr).toBe('');
    expect(ran.stdout).toBe('first/heavy-periods.en.html\nfirst/heavy-periods.en.pdf\n');
    expect(ran.status).toBe(0);
  });

  it('makes the same bytes from the same report on the same date', () => {
    desk.run('letter', example('heavy-periods.json'), ...day, '--out', 'again');
    for (const ending of ['html', 'pdf'])
      expect(desk.bytes(`again/heavy-periods.en.${ending}`)).toEqual(
        desk.bytes(`first/heavy-periods.en.${ending}`),
      );
  });

  it('stamps a letter nobody has checked, and not one that a clinician has', () => {
    const unchecked = desk.read('first/heavy-periods.en.html');
    desk.run(
      'letter',
      example('heavy-periods.json'),
      ...day,
      '--out',
      'checked',
      '--checked-by',
      'Dr Wren Abara, general practitioner',
    );
    const checked = desk.read('checked/heavy-periods.en.html');
    expect(unchecked).toMatch(/No clinician has checked this letter yet/);
    expect(checked).not.toMatch(/No clinician has checked/);
    expect(checked).toMatch(/Wren Abara/);
  });

  it('refuses a letter without the clinic’s emergency number', () => {
    const config = desk.put('clinic.json', {
      name: 'Quay',
      addressLines: ['1 Quay'],
      phone: '555-0100',
      hours: 'weekdays',
    });
    const ran = desk.run(
      'letter',
      example('all-in-range.json'),
      '--config',
      config,
      '--out',
      'none',
    );
    expect(ran.status).toBe(65);
    expect(ran.stderr).toMatch(/clinic\.json, emergencyNumber/);
  });
});

describe('a held letter', () => {
  const held = () =>
    desk.run('letter', example('very-low-haemoglobin.json'), ...day, '--out', 'held');

  it('leaves nothing that could be mailed, only a call sheet', () => {
    const ran = held();
    expect(ran.status).toBe(1);
    expect(readdirSync(`${desk.folder}/held`).sort()).toEqual([
      'very-low-haemoglobin.call-sheet.html',
      'very-low-haemoglobin.call-sheet.pdf',
      'very-low-haemoglobin.call-sheet.txt',
    ]);
    expect(ran.stderr).toMatch(/EMERGENCY/);
  });

  it('is not released by a name alone', () => {
    const ran = desk.run(
      'letter',
      example('very-low-haemoglobin.json'),
      ...day,
      '--out',
      'held',
      '--checked-by',
      'Dr Wren Abara',
    );
    expect(ran.status).toBe(1);
    expect(ran.stdout).not.toMatch(/very-low-haemoglobin\.en\./);
  });

  it('is released by a named clinician who says what was done, and that is recorded', () => {
    const ran = desk.run(
      'letter',
      example('very-low-haemoglobin.json'),
      ...day,
      '--out',
      'released',
      '--checked-by',
      'Dr Wren Abara',
      '--done',
      'Phoned at 10:20, sent to hospital.',
    );
    expect(ran.status).toBe(0);
    expect(ran.stdout).toMatch(/very-low-haemoglobin\.en\.release\.json/);
    const record = JSON.parse(desk.read('released/very-low-haemoglobin.en.release.json'));
    expect(record).toMatchObject({
      tier: 'emergency',
      releasedBy: 'Dr Wren Abara',
      done: 'Phoned at 10:20, sent to hospital.',
    });
    const text = desk
      .read('released/very-low-haemoglobin.en.html')
      .replace(/<style>[\s\S]*?<\/style>|<[^>]+>/g, ' ');
    expect(text.indexOf('When to get help')).toBeLessThan(text.indexOf('Your results'));
  });
});

describe('a doubtful result', () => {
  it('is a question, not a letter, until somebody confirms it', () => {
    const path = desk.put(
      'doubt.json',
      report({ results: [result('haemoglobin', '131', 'g/L'), result('ferritin', '58', 'ng/dL')] }),
    );
    const asked = desk.run('letter', path, ...day, '--out', 'doubt');
    expect(asked.status).toBe(1);
    expect(asked.stderr).toMatch(/did the sheet say ng\/mL/);
    expect(asked.stdout).toBe('');
  });
});

describe('every example', () => {
  const files = readdirSync('examples').filter(
    (name) => /\.(?:json|csv)$/.test(name) && name !== 'clinic.json',
  );

  it.each(files)('%s is explained and gives a letter, a call sheet or a question', (name) => {
    const explained = desk.run('explain', example(name), '--json', '--date', '2026-11-25');
    expect(explained.stderr).toBe('');
    expect(explained.status).toBe(0);
    const made = desk.run('letter', example(name), ...day, '--out', 'all');
    expect([0, 1]).toContain(made.status);
    expect(made.stdout + made.stderr).not.toBe('');
  });

  it('is about one pattern or trap each, and no pattern is left out', () => {
    const seen = files
      .filter((name) => name.endsWith('.json'))
      .map((name) => JSON.parse(desk.run('explain', example(name), '--json').stdout).pattern);
    expect(new Set(seen).size).toBeGreaterThanOrEqual(15);
  });
});
