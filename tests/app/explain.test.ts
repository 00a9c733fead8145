// The clinician's sheet as an operator asks for it: on stdout, or as a page to print.
import { resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openDesk } from './program.js';

const desk = openDesk();
afterAll(desk.clear);
const example = (name: string) => resolve('examples', name);
const day = ['--date', '2026-11-25'] as const;

describe('ironleaf explain', () => {
  it('prints the sheet on stdout and writes nothing', () => {
    const ran = desk.run('explain', example('heavy-periods.json'), ...day, '--out', 'out');
    expect(ran.stdout).toContain('Haemoglobin is 104 g/L, below 120 g/L (WHO 2024)');
    expect(desk.made()).toEqual([]);
  });

  it('writes HTML and PDF when asked, prints their paths, and the same bytes again', () => {
    const words = ['explain', example('heavy-periods.json'), ...day, '--format', 'html,pdf'];
    const ran = desk.run(...words, '--out', 'out');
    expect(ran.stdout).toBe('out/heavy-periods.reasoning.html\nout/heavy-periods.reasoning.pdf\n');
    desk.run(...words, '--out', 'again');
    for (const ending of ['html', 'pdf'])
      expect(desk.bytes(`again/heavy-periods.reasoning.${ending}`)).toEqual(
        desk.bytes(`out/heavy-periods.reasoning.${ending}`),
      );
  });

  it('refuses a format it does not have', () => {
    const ran = desk.run('explain', example('heavy-periods.json'), ...day, '--format', 'doc');
    expect(ran.status).toBe(64);
  });
});
