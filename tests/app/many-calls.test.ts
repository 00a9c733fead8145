// An evening with more people to phone, or more letters to sign, than one page can hold.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { reportsIn, rowsOf } from './evening.js';
import { openDesk } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

const header = 'id,name,sex,born,collected,language,test,value,unit,low,high\n';
const [people, onPage] = [1200, 500];

it('more people to phone than a page can hold stop no letter: all are in calls.csv, and the page says so', () => {
  const same = Array.from({ length: people - 1 }, (_, at) => rowsOf(10 * at + 1, '75')).join('');
  // The last of the file is the most pressing.
  const path = desk.put('many.csv', header + same + rowsOf(20_004, '55') + rowsOf(20_005));
  const ran = desk.run('mailing', path, '--out', 'many', '--demo', '--format', 'text');
  expect(ran.stderr).toMatch(/1 letters made, 1200 to phone, 0 to fix/);
  expect(ran.status).toBe(1);
  expect(readdirSync(join(desk.folder, 'many/letters'))).toEqual(['SB-25005.en.txt']);
  expect(reportsIn(desk.read('many/calls.csv'), 1)).toHaveLength(people);
  const page = desk.read('many/calls.html');
  expect(page).toContain(`${people - onPage} more must be phoned: calls.csv lists everybody`);
  const shown = [...page.matchAll(/Id: (SB-\d+)/g)].map(([, id]) => id);
  expect(shown).toHaveLength(onPage);
  expect(shown[0]).toBe('SB-25004');
  expect(desk.run('verify', 'many').status).toBe(0);
});

it('more letters than a review page can hold are refused in words, and nothing is signed', () => {
  const rows = Array.from({ length: 1801 }, (_, at) => 30 * at + 1).map((each) => rowsOf(each));
  const path = desk.put('long.csv', header + rows.join(''));
  expect(desk.run('mailing', path, '--out', 'long', '--demo', '--format', 'text').status).toBe(0);
  const { status, stderr } = desk.run('review', 'long');
  expect(status).toBe(65);
  expect(stderr).toMatch(/There are 1801 letters; a review page holds at most 1500\.\n.*parts/);
  expect(readdirSync(join(desk.folder, 'long'))).not.toContain('to-sign.txt');
});
