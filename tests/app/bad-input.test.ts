// What the operator hears of a bad file: one clear sentence, the right exit status, and no file.
import { chmodSync, mkdirSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openDesk, report, result } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

const letter = (path: string) =>
  desk.run('letter', path, '--demo', '--out', 'out', '--date', '2026-11-25', '--format', 'html');

const patient = { id: 'SB-9', name: 'Orla Finch', birthDate: '1990-02-03', sex: 'female' };

describe('a bad report', () => {
  const cases: [string, object | string, number, RegExp][] = [
    [
      'a wrong unit',
      report({ results: [result('ferritin', '30', 'parsec')] }),
      65,
      /ferritin|results\[0\].*unit/i,
    ],
    ['a missing unit', report({ results: [result('ferritin', '30', null)] }), 65, /unit/],
    [
      'an unknown analyte',
      report({ results: [result('ferretin', '30', 'ug/L')] }),
      65,
      /analyte.*ferritin/s,
    ],
    [
      'an impossible value',
      report({ results: [result('haemoglobin', '13.2', 'g/L')] }),
      65,
      /13\.2.*g\/dL.*132/s,
    ],
    ['a letter for a digit', report({ results: [result('ferritin', '3O', 'ug/L')] }), 65, /3O/],
    ['a future date', report({ collected: '2031-01-01' }), 65, /collected/],
    ['a day that does not exist', report({ collected: '2026-02-30' }), 65, /collected/],
    ['no sex', report({ patient: { ...patient, sex: undefined } }), 65, /sex/],
    [
      'two values for one test',
      report({ results: [result('ferritin', '30', 'ug/L'), result('ferritin', '60', 'ug/L')] }),
      65,
      /ferritin/,
    ],
    [
      'an interval from zero to zero',
      report({ results: [result('ferritin', '30', 'ug/L', '0', '0')] }),
      65,
      /interval/,
    ],
    ['no results', report({ results: [] }), 65, /results/],
    [
      'a baby under six months',
      report({ patient: { ...patient, birthDate: '2026-08-20' } }),
      65,
      /six months|6 months/,
    ],
    ['text that is not JSON', '{"patient": ', 65, /JSON/],
  ];

  it.each(cases)('with %s is refused in words', (_, content, status, words) => {
    const ran = letter(desk.put('report.json', content));
    expect(ran.stderr).toMatch(words);
    expect(ran.status).toBe(status);
    expect(ran.stdout).toBe('');
    expect(desk.made()).toEqual([]);
    expect(ran.stderr).not.toMatch(/Orla|Finch|1990-02-03|\n\s+at /);
  });

  it('says every problem of a file, not only the first', () => {
    const ran = letter(
      desk.put(
        'report.json',
        report({
          results: [result('ferritin', '3O', 'ug/L'), result('haemoglobin', '131', 'stone')],
        }),
      ),
    );
    expect(ran.stderr).toMatch(/3O/);
    expect(ran.stderr).toMatch(/stone/);
  });
});

describe('what is no report file', () => {
  const binary = new Uint8Array(4096).map((_, index) => (index * 37) % 256);
  const cases: [string, () => string, number, RegExp][] = [
    ['an empty file', () => desk.put('empty.json', ''), 65, /empty/],
    ['a binary file', () => desk.put('picture.json', binary), 65, /text|binary/i],
    ['a directory', () => desk.folder, 66, /directory/],
    ['a missing file', () => join(desk.folder, 'nowhere.json'), 66, /no such file/],
    [
      'a file of 200 MB',
      () => {
        const path = desk.put('huge.csv', 'x');
        truncateSync(path, 200 * 1024 * 1024);
        return path;
      },
      65,
      /200 MB/,
    ],
  ];

  it.each(cases)('%s is refused in one sentence', (_, path, status, words) => {
    const ran = letter(path());
    expect(ran.stderr).toMatch(words);
    expect(ran.stderr.trim().split('\n')).toHaveLength(1);
    expect(ran.status).toBe(status);
    expect(desk.made()).toEqual([]);
  });
});

describe('a folder that cannot be written', () => {
  it('is said with status 73', () => {
    desk.put('file-in-the-way', 'x');
    const path = desk.put('report.json', report());
    const ran = desk.run('letter', path, '--demo', '--out', 'file-in-the-way', '--format', 'html');
    expect(ran.status).toBe(73);
    expect(ran.stderr).toMatch(/--out/);
  });

  it('keeps nothing half-written in a read-only folder', () => {
    const locked = join(desk.folder, 'locked');
    mkdirSync(locked);
    chmodSync(locked, 0o500);
    const path = desk.put('report.json', report());
    const ran = desk.run('letter', path, '--demo', '--out', 'locked', '--format', 'html');
    // The superuser may write anywhere; anybody else is told.
    expect(ran.status).toBe(process.getuid?.() === 0 ? 0 : 73);
  });
});

describe('wrong words on the command line', () => {
  const path = () => desk.put('report.json', report());
  const cases: [string, () => string[], RegExp][] = [
    ['an unknown option', () => ['letter', path(), '--demo', '--colour', 'red'], /colour/i],
    ['an unknown language', () => ['letter', path(), '--demo', '--language', 'xx'], /--language/],
    ['an unknown format', () => ['letter', path(), '--demo', '--format', 'odt'], /--format/],
    ['a wrong date', () => ['letter', path(), '--demo', '--date', '2026-13-01'], /--date/],
    ['no clinic', () => ['letter', path()], /clinic/],
    ['no command', () => [], /command/],
  ];

  it.each(cases)('%s ends with status 64', (_, words, sentence) => {
    const ran = desk.run(...words());
    expect(ran.stderr).toMatch(sentence);
    expect(ran.status).toBe(64);
    expect(ran.stdout).toBe('');
  });
});

describe('a hostile name', () => {
  const names = ['../../x', '<script>alert(1)</script>', '\u202Egnp.exe', '{{title}}', '=1+1'];

  it.each(names)('%j ends in neither a path nor the markup', (name) => {
    const hostile = { ...patient, id: name, name };
    const ran = letter(desk.put('report.json', report({ patient: hostile })));
    expect(ran.status).toBe(0);
    expect(desk.made()).toEqual(['report.en.html']);
    const html = desk.read('out/report.en.html');
    expect(html).not.toMatch(/<script|\u202E/);
    expect(html).toContain('</html>');
  });
});
