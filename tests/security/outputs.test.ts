// What is written on disk: who may read it, and whether a spreadsheet would run it.
import { readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { csvLine } from '../../src/mailing/csv-line.js';
import { type Desk, openDesk, report, result } from '../app/program.js';

let desk: Desk;
beforeAll(() => {
  desk = openDesk();
});
afterAll(() => desk.clear());

function everything(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? everything(path) : [path];
  });
}

const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);

describe('files of a letter and of a mailing', () => {
  it('can be read by their owner alone, whatever the umask', () => {
    const before = process.umask(0);
    try {
      const words = ['--format', 'html,pdf,text,note,fhir', '--fridge-sheet', '--calendar'];
      const sample = resolve('examples/heavy-periods.json');
      expect(desk.run('letter', sample, '--demo', '--out', 'out', ...words).status).toBe(0);
      const held = resolve('examples/very-low-haemoglobin.json');
      expect(desk.run('letter', held, '--demo', '--out', 'out').status).toBe(1);
      const run = resolve('examples/evening-run.csv');
      desk.run('mailing', run, '--demo', '--out', 'evening');
      desk.run('review', 'evening');
      desk.run('print', 'evening');
    } finally {
      process.umask(before);
    }
    const files = [
      ...everything(join(desk.folder, 'out')),
      ...everything(join(desk.folder, 'evening')),
    ];
    expect(files.length).toBeGreaterThan(15);
    expect(files.filter((path) => modeOf(path) !== '600')).toEqual([]);
    expect(modeOf(join(desk.folder, 'evening'))).toBe('700');
  });
});

/** OWASP, "CSV Injection": characters with which a spreadsheet takes a cell for a formula. */
const openings = ['=', '+', '-', '@', '\t', ' =', '\r=', '\n='];

describe('a list for a spreadsheet', () => {
  it.each(openings)('gives a cell that starts with %j as text', (opening) => {
    const line = csvLine([`${opening}HYPERLINK("x")`, '"=1', 'a,b']);
    const [cells = []] = parse(line) as string[][];
    expect(cells).toHaveLength(3);
    expect(cells[0]).toMatch(/^'/);
    expect(line.trimEnd()).not.toMatch(/[\r\n]/);
  });

  it('runs nothing that a report brought into calls.csv, to-fix.csv and recall.csv', () => {
    const formula = '=HYPERLINK("http://x.example","y")';
    const low = [result('haemoglobin', '52', 'g/L', '115', '155')];
    const patient = { birthDate: '1990-02-03', sex: 'female' };
    const reports = [
      report({ patient: { ...patient, id: formula, name: formula }, results: low }),
      report({
        patient: { ...patient, id: '+SB-2', name: '@SUM(A1)' },
        results: [result('ferritin', formula, formula)],
      }),
      report({ patient: { ...patient, id: '-SB-3', name: '-2+3' } }),
    ];
    desk.put('run.ndjson', reports.map((each) => JSON.stringify(each)).join('\n'));
    const made = desk.run('mailing', 'run.ndjson', '--demo', '--out', 'formulas');
    expect(made.status).toBe(1);
    for (const list of ['calls.csv', 'to-fix.csv', 'recall.csv']) {
      const rows = parse(desk.read(`formulas/${list}`), { bom: true }) as string[][];
      const cells = rows.flat();
      expect(cells.filter((cell) => /^\s*[=+\-@\t\r]/.test(cell))).toEqual([]);
    }
    expect(desk.read('formulas/calls.csv')).toContain("'=HYPERLINK");
    expect(desk.read('formulas/to-fix.csv')).toContain("'+SB-2");
  });
});
