// The folder of a run arrives; what must hold of it is said, line by line.
import {
  closeSync,
  existsSync,
  fstatSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
} from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { say } from '../disk.js';

/** How the last bytes of a whole letter look. */
export const formats = { html: /<\/html>\n$/, pdf: /%%EOF\s*$/, text: /\S\n$/ };
const endingOf = (format) => (format === 'text' ? '.txt' : `.${format}`);

/** Names of letters that do not end as a whole one does. */
export function halfWritten(out, format) {
  const folder = join(out, 'letters');
  const names = existsSync(folder) ? readdirSync(folder) : [];
  return names.filter(
    (name) => name.endsWith(endingOf(format)) && !formats[format].test(endOf(join(folder, name))),
  );
}

function endOf(path) {
  const handle = openSync(path);
  const { size } = fstatSync(handle);
  const length = Math.min(32, size);
  const buffer = Buffer.alloc(length);
  readSync(handle, buffer, 0, length, size - length);
  closeSync(handle);
  return buffer.toString('latin1');
}

/** The three outcomes, each report once; nothing half-written; no person in what is no list of people. */
export function judgeFolder({ out, rows, format, said, people }) {
  const read = (name) => readFileSync(join(out, name), 'utf8');
  const names = readdirSync(join(out, 'letters'));
  const letters = names.filter((name) => name.endsWith(endingOf(format)));
  say('each letter is whole', halfWritten(out, format).length === 0);
  say('only letters lie among the letters', letters.length === names.length);
  const parts = readdirSync(out, { recursive: true }).filter((name) => name.endsWith('.part'));
  say('nothing half-written lies about', parts.length === 0);

  // Patient SB-6001 is the first of the file, and so on.
  const made = letters.map((name) => Number(/^SB-(\d+)\./.exec(name)?.[1]) - 6000);
  const phone = cells(read('calls.csv'), 1).map(Number);
  const fix = [...new Set(cells(read('to-fix.csv'), 0).map(Number))];
  const all = [...made, ...phone, ...fix].sort((a, b) => a - b);
  say(
    `${made.length} letters, ${phone.length} to phone, ${fix.length} to fix: each of ${rows} reports once`,
    all.length === rows && all.every((number, at) => number === at + 1),
  );
  say(
    'the program counts the same',
    countsIn(said).join() === [made, phone, fix].map((each) => each.length).join(),
  );

  const known = new RegExp([...people].join('|'));
  const silent = [
    'manifest.jsonl',
    'run.json',
    'to-fix.csv',
    'recall.csv',
    'recall.ics',
    'summary.html',
  ];
  for (const name of silent)
    say(`${name} tells no name and no birth date`, !known.test(read(name)));
  say(
    'the output tells no name, no birth date and no result',
    !known.test(said) && !result.test(said),
  );
  const strange = read('manifest.jsonl')
    .split('\n')
    .find((line) => line !== '' && !isPlain(line));
  say('a record holds ids, hashes, versions and times alone', strange === undefined);
}

const cells = (csv, column) => parse(csv, { bom: true, from_line: 2 }).map((line) => line[column]);

function countsIn(said) {
  const last = said.split('\n').findLast((line) => / letters made/.test(line)) ?? '';
  const count = (words) => Number(new RegExp(`(\\d+) ${words}`).exec(last)?.[1] ?? 0);
  return [count('letters made') + count('kept as they were'), count('to phone'), count('to fix')];
}

const result = /\d\s?(?:g\/d?L|ug\/L|ng\/m?L|[um]mol\/L|mg\/L|fL|%)/;

/** Every value of a record is one of a few shapes that leave no room for a person or a result. */
const shapes = [
  /^(?:[0-9a-f]{6,64}|)$/,
  /^(?:made|held|refused|set-aside|list)$/,
  /^(?:(?:SB|report)-\d+(?:-report-\d+)?|(?:calls|to-fix|recall|summary)\.(?:csv|html|pdf|ics))$/,
  /^letters\/SB-\d+\.[A-Za-z-]+\.(?:html|pdf|txt)$/,
  /^[a-z]{2}(?:-[A-Z][a-z]+)?$/,
  /^2\d{3}-\d\d-\d\dT[\d:.]+Z$/,
];

function isPlain(line) {
  const leaves = (value) =>
    value !== null && typeof value === 'object' ? Object.values(value).flatMap(leaves) : [value];
  const { run, files, versions, ...texts } = JSON.parse(line);
  const sizes = files.map(({ bytes }) => bytes);
  const named = files.flatMap(({ name, sha256 }) => [name, sha256]);
  const short = Object.values(versions).every((each) => /^[\w.+-]{0,80}$/.test(each));
  const told = [...leaves(texts), ...named].filter((each) => each !== null);
  return (
    [run, ...sizes].every(Number.isInteger) &&
    short &&
    told.every((each) => shapes.some((shape) => shape.test(each)))
  );
}
