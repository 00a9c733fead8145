// Records of a run that somebody changed: nothing is done on their word, and the operator is told which.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Desk, openDesk, report } from '../app/program.js';

let desk: Desk;
beforeEach(() => {
  desk = openDesk();
  const patient = { id: 'SB-1', name, sex: 'female', birthDate: '1990-02-03' };
  desk.put('a.ndjson', JSON.stringify(report({ patient })));
  desk.put('outside.txt', 'of somebody else');
  expect(desk.run(...words).status).toBe(0);
});
afterEach(() => desk.clear());

const path = (file: string) => join(desk.folder, file);
const words = ['mailing', 'a.ndjson', '--out', 'run', '--demo', '--format', 'text'];
const name = 'Zephyrine Quillfeather';

it('a record that names a file outside the folder removes nothing and stops the run', () => {
  const manifest = path('run/manifest.jsonl');
  const changed = readFileSync(manifest, 'utf8')
    .replace('letters/SB-1.en.txt', '../outside.txt')
    .replaceAll('"key":"', '"key":"0');
  writeFileSync(manifest, changed);
  const { status, stderr } = desk.run(...words);
  expect(desk.read('outside.txt')).toBe('of somebody else');
  expect(status).toBe(65);
  expect(stderr).toMatch(/^manifest\.jsonl, row 1: cannot read this record; expected/);
  const verified = desk.run('verify', 'run');
  expect(verified.status).toBe(65);
  expect(verified.stdout).toMatch(/manifest\.jsonl, row 1: is no record of this program/);
});

const cases: readonly (readonly [string, string, readonly string[], RegExp])[] = [
  ['run.json', '{"date":"yesterday"}', ['review', 'run'], /^run\.json: cannot read the choices/],
  ['signed.json', '[{"stem":5}]', words, /^signed\.json: cannot read this record/],
  ['signed.json', '[', ['review', 'run'], /^signed\.json: cannot read this record/],
  ['released/SB-1.json', '{', words, /^released\/SB-1\.json: cannot read this record/],
  [
    'review.json',
    'null',
    ['review', 'run', '--sign', 'run/to-sign.txt', '--checked-by', 'Dr Abara'],
    /^review\.json: cannot read this record/,
  ],
];
it.each(cases)('%s changed to %s stops the command with its name', (file, text, command, said) => {
  if (command.includes('--sign')) expect(desk.run('review', 'run').status).toBe(0);
  mkdirSync(path('run/released'), { recursive: true });
  writeFileSync(path(`run/${file}`), text);
  const { status, stderr } = desk.run(...command);
  expect(stderr).toMatch(said);
  expect(status).toBe(65);
});

it('a list of people given to sign by mistake is not repeated on the screen', () => {
  expect(desk.run('review', 'run').status).toBe(0);
  desk.put('wrong.txt', `${name}\nSB-1\n`);
  const wrong = ['review', 'run', '--sign', 'wrong.txt', '--checked-by', 'Dr Abara'];
  const { status, stderr } = desk.run(...wrong);
  expect(status).toBe(65);
  expect(stderr).toMatch(/1 lines name no letter of the review page; nothing was signed/);
  expect(stderr).not.toMatch(/Quillfeather/);
});
