// The page of formats keeps its word: every sample on it can be read, and all say the same.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import type { InputFile } from '../../src/intake/written.js';
import { fileOf, reportsOf, resultsOf, said } from './file.js';
import { sheet, zip } from './sheet.js';

const page = readFileSync('docs/formats.md', 'utf8');
const written = [...page.matchAll(/^```\w+ (\S+)\n(.*?)^```$/gms)].map(([, name = '', text = '']) =>
  fileOf(name, text),
);
const table = page
  .split('\n')
  .filter((line) => /^\| (?!-)/.test(line))
  .map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
const workbook: InputFile = { name: 'rows.xlsx', bytes: zip(sheet(table)) };

describe('the page of formats', () => {
  it('has a sample of every format that is read', async () => {
    const formats = await Promise.all(
      [...written, workbook].map(async (file) => (await readInput(file)).format),
    );
    expect(new Set(formats)).toEqual(new Set(['json', 'csv', 'xlsx', 'fhir', 'hl7v2', 'text']));
  });

  it.each([...written, workbook].map((file) => [file.name, file] as const))(
    'holds a sample %s that says what the others say',
    async (_, file) => {
      const intake = await readInput(file);
      expect(said(intake)).toEqual([]);
      expect(intake.ignored).toEqual([]);
      const [report, ...others] = reportsOf(intake);
      expect(others).toEqual([]);
      expect(report?.patient).toMatchObject({
        id: 'SB-3001',
        birthDate: '1987-06-14',
        sex: 'female',
      });
      expect(report?.panel.collected).toBe('2026-11-17');
      expect(report === undefined ? [] : resultsOf(report)).toEqual(['ferritin 9 ug/L 30..400 L']);
    },
  );
});
