// Large print has no small print: every word of the page, read back by pdfjs-dist, is 18 points or larger.
import { resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { pdfjsWords } from '../render/pdf/pdfjs-text.js';
import { openDesk } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

// Number lines, a picture in words, a change over time, a held letter that was let go, two languages side by side.
const letters: readonly (readonly [name: string, example: string, ...options: string[]])[] = [
  ['English', 'heavy-periods'],
  ['English on Letter paper', 'too-much-iron', '--paper', 'Letter'],
  ['a change over time', 'getting-better'],
  ['another picture in words', 'inflammation', '--analogy', 'builders-yard'],
  ['a table of meals', 'vegan-low-stores', '--fridge-sheet'],
  ['one idea a line', 'heavy-periods', '--easy-read'],
  ['Arabic', 'heavy-periods', '--language', 'ar'],
  ['Hindi', 'toddler', '--language', 'hi'],
  ['Urdu', 'pregnancy', '--language', 'ur'],
  ['Arabic beside English', 'heavy-periods', '--language', 'ar', '--beside', 'en'],
];

describe('a letter in large print', () => {
  // UK Association for Accessible Formats, large print: 16 to 18 points and above, for all of the text; from memory.
  it.each(letters)('has no word under 18 points: %s', async (_name, example, ...options) => {
    const report = resolve('examples', `${example}.json`);
    const wishes = ['--demo', '--large-print', '--format', 'pdf', ...options];
    const { stdout, stderr } = desk.run('letter', report, ...wishes, '--out', 'out');
    const paths = stdout.split('\n').filter((path) => path.endsWith('.pdf'));
    expect(paths, stderr).not.toEqual([]);
    for (const path of paths) {
      const words = (await pdfjsWords(desk.bytes(path))).flat();
      expect(words.length).toBeGreaterThan(50);
      // Sizes are written to a hundredth of a point.
      expect(words.filter(({ size }) => size < 17.99)).toEqual([]);
    }
  });
});
