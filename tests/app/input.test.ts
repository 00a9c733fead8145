// A file read piece by piece is one file from beginning to end, or the run stops.
import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openInputFile } from '../../src/app/input.js';

const folder = mkdtempSync(join(tmpdir(), 'ironleaf-input-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe('a file read piece by piece', () => {
  it('gives any piece of it', () => {
    const file = openInputFile(put('a.csv', 'id,sex\n7,F\n'));
    expect([file.size, Buffer.from(file.read(3, 6)).toString()]).toEqual([11, 'sex']);
  });

  it.each([
    ['grows', (path: string) => appendFileSync(path, '8,M\n')],
    ['is written anew', (path: string) => writeFileSync(path, 'id,sex\n7,M\n')],
    ['is cut short', (path: string) => writeFileSync(path, 'id')],
  ])('is given up when it %s meanwhile', (name, change) => {
    const path = put(`${name}.csv`, 'id,sex\n7,F\n');
    const file = openInputFile(path);
    change(path);
    expect(() => file.read(0, 6)).toThrow(expect.objectContaining({ status: 65 }));
  });

  it.each([
    ['there is none', join(folder, 'none.csv'), 66],
    ['it is a directory', folder, 66],
    ['it is empty', put('empty.csv', ''), 65],
  ])('is refused when %s', (_, path, status) => {
    expect(() => openInputFile(path)).toThrow(expect.objectContaining({ status }));
  });
});
