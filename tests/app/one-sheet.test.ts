// The usual letter: one sheet of paper, both sides, at 14 points.
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, describe, expect, it } from 'vitest';
import { openDesk } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

type Example = { previous?: unknown[]; context?: { bleeding?: string[] } };
/** Letters that also show a change over time take what room they need; held ones are no letters. */
const usual = readdirSync('examples').filter((name) => {
  if (!name.endsWith('.json') || name === 'clinic.json') return false;
  const example = JSON.parse(readFileSync(resolve('examples', name), 'utf8')) as Example;
  return example.previous === undefined;
});

describe('the usual letter', () => {
  it('fits on both sides of one sheet', async () => {
    const longer: string[] = [];
    for (const name of usual) {
      desk.run('letter', resolve('examples', name), '--demo', '--format', 'pdf', '--out', 'out');
    }
    const letters = desk.made().filter((name) => name.endsWith('.pdf'));
    for (const name of letters) {
      const data = new Uint8Array(desk.bytes(`out/${name}`));
      const { numPages } = await getDocument({ data, verbosity: 0 }).promise;
      if (numPages > 2) longer.push(name);
    }
    expect(letters.length).toBeGreaterThan(15);
    expect(longer).toEqual([]);
  });
});
