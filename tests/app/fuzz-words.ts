// A number of runs arrives; odd words on the command line and odd values for the library are tried, and each crash told.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { readClinic } from '../../src/app/config.js';
import * as library from '../../src/library.js';
import { secret } from '../intake/fuzz-samples.js';
import { report } from './program.js';

const commands = [
  ...['letter', 'check', 'columns', 'explain', 'mailing', 'review', 'release', 'print', 'verify'],
  ...['languages', 'schema', 'templates', 'completion', 'quibble'],
];
const options = [
  ...[
    '--demo',
    '--out',
    '--format',
    '--language',
    '--beside',
    '--date',
    '--sex',
    '--born',
    '--age',
  ],
  ...['--collected', '--columns', '--config', '--passwords', '--templates', '--shard', '--id'],
  ...['--checked-by', '--done', '--confirm', '--next-step', '--paper', '--analogy', '--sign'],
  ...['--pregnant-weeks', '--language-column', '--window', '--addresses', '--help', '--json', '-x'],
];
const values = [
  ...[
    'report.json',
    'out',
    'en',
    'ar',
    'html',
    'text',
    'no-such-file',
    '.',
    '..',
    '/',
    '',
    '--',
    '-',
  ],
  ...['=', '0', '-1', '1e9', 'NaN', '1/0', '2026-02-30', '9999-12-31', '__proto__', 'constructor'],
  ...[
    '\u202Eabc',
    'a\nb',
    '\u001B[2J',
    'é'.repeat(300),
    secret,
    '--out=--out',
    '{}',
    'html,html,,',
  ],
];
const word = fc.oneof(
  fc.constantFrom(...options),
  fc.constantFrom(...values),
  fc.string({ maxLength: 8 }).map((text) => text.replaceAll('\0', '')),
);
const line = fc.tuple(fc.constantFrom(...commands), fc.array(word, { maxLength: 7 }));
const statuses = [0, 1, 64, 65, 66, 73];

/** Runs the built program. Throws when it ends in a fault of its own, or repeats a name or the screen's own signs. */
export async function fuzzWords(runs: number, seed?: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'ironleaf-'));
  const sound = JSON.stringify(report({ patient: { id: 'SB-9', name: secret, sex: 'female' } }));
  const holds = fc.property(line, ([command, words]) => {
    writeFileSync(join(folder, 'report.json'), sound);
    const { status, stderr } = spawnSync(
      process.execPath,
      [resolve('dist/ironleaf.cjs'), command, ...words],
      { cwd: folder, encoding: 'utf8', input: '', timeout: 60_000 },
    );
    if (!statuses.includes(status ?? -1)) throw new Error(`ended with ${status}: ${stderr}`);
    // A word of the operator's own may be said back to them; what the file holds may not.
    if (!words.some((each) => each.includes(secret)) && stderr.includes(secret))
      throw new Error(`repeated a name: ${stderr}`);
  });
  try {
    fc.assert(holds, { numRuns: runs, ...(seed === undefined ? {} : { seed }) });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const oddTexts = [
  '',
  ' ',
  '\0',
  '\u202E',
  '<b>',
  '{{x}}',
  '٣',
  '__proto__',
  'x'.repeat(5000),
  '\n\n',
];
const oddNumbers = [0, -1, NaN, Infinity, -Infinity, 1e300, 5e-324, 2 ** 53];

/** Puts odd values into the places of a plain value that hold the same kind. */
function odd<T>(value: T, picks: readonly { readonly at: number; readonly put: number }[]): T {
  const copy = structuredClone(value);
  const places: { readonly in: Record<string, unknown>; readonly key: string }[] = [];
  const walk = (one: unknown) => {
    if (one === null || typeof one !== 'object') return;
    for (const key of Object.keys(one)) {
      const held = one as Record<string, unknown>;
      if (['string', 'number'].includes(typeof held[key])) places.push({ in: held, key });
      walk(held[key]);
    }
  };
  walk(copy);
  for (const { at, put } of picks) {
    const place = places[at % Math.max(1, places.length)];
    if (place === undefined) continue;
    const list = typeof place.in[place.key] === 'number' ? oddNumbers : oddTexts;
    place.in[place.key] = list[put % list.length];
  }
  return copy;
}

/**
 * Calls the library with a clinic and wishes that hold odd texts and numbers, as a caller without types might.
 * Throws when it answers with anything but an outcome or a sentence.
 */
export async function fuzzLibrary(runs: number, seed?: number): Promise<void> {
  const kit = await library.openKit();
  const bytes = new TextEncoder().encode(
    JSON.stringify(
      report({ patient: { id: 'SB-9', name: secret, birthDate: '1990-02-03', sex: 'female' } }),
    ),
  );
  const read = await library.readReport({ name: 'a.json', bytes }, { today: '2026-11-25' });
  const clinic = readClinic(
    'clinic.json',
    new TextEncoder().encode(
      '{"name":"Saltmarsh Bay","addressLines":["1 Quay"],"phone":"555","hours":"9 to 5","emergencyNumber":"the number you set"}',
    ),
    true,
  );
  if (!read.ok || !clinic.ok) throw new Error('the samples are not sound');
  const wishes = { date: '2026-11-25', language: 'en', checkedBy: 'Dr Abara', done: 'Phoned.' };
  const picks = fc.array(fc.record({ at: fc.nat(60), put: fc.nat(30) }), { maxLength: 3 });
  const holds = fc.asyncProperty(picks, picks, async (inClinic, inWishes) => {
    const asked = { ...odd(wishes, inWishes), formats: ['html', 'text'] as const };
    const made = await library
      .makeLetter(read.value, odd(clinic.value, inClinic), asked, kit)
      .catch((fault: unknown) => {
        const plain = fault instanceof Error && fault.constructor === Error;
        if (!plain || fault.message.includes(secret)) throw fault;
        return { kind: 'refused' as const, problems: [] };
      });
    if (made.kind === 'refused' && made.problems.map(library.sayProblem).join().includes(secret))
      throw new Error('repeated a name');
  });
  await fc.assert(holds, { numRuns: runs, ...(seed === undefined ? {} : { seed }) });
}
