// Breaks every kind of input around an invented name, and looks for the name where it must not be.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Desk, openDesk, report } from '../app/program.js';

const name = 'Zephyrine Quillfeather';
const birth = '1987-06-05';
const program = resolve('dist/ironleaf.cjs');

const patient = { id: 'SB-77', name, birthDate: birth, sex: 'female' };
const sound = JSON.stringify(report({ patient }));
const csv = (...rows: string[]) =>
  ['id,name,sex,born,collected,test,value,unit', ...rows].join('\n');

const broken: Readonly<Record<string, string>> = {
  'cut-off.json': sound.slice(0, -20),
  'wrong-place.json': JSON.stringify(report({ patient, [name]: name })),
  'name-as-sex.json': JSON.stringify(report({ patient: { ...patient, sex: name } })),
  'name-as-birth.json': JSON.stringify(report({ patient: { ...patient, birthDate: name } })),
  'no-results.json': JSON.stringify(report({ patient, results: [] })),
  'future.json': JSON.stringify(report({ patient, collected: '2099-01-01' })),
  'no-sex.csv': csv(`SB-77,${name},,${birth},2026-11-16,Ferritin,9,ug/L`),
  'ragged.csv': csv(`SB-77,${name},female,${birth},2026-11-16,Ferritin,9,ug/L,${name},1`),
  'stray-quote.csv': csv(`SB-77,"${name}" x,female,${birth},2026-11-16,Ferritin,9,ug/L`),
  'broken.hl7': `MSH|^~\\&|LAB|X|Y|Z|20261116||ORU^R01|1|P|2.5\rPID|1||SB-77||${name.replace(' ', '^')}||${birth.replaceAll('-', '')}|Q\rOBX|1|NM|\r`,
  'broken.fhir.json': JSON.stringify({
    resourceType: 'Bundle',
    entry: [{ resource: { resourceType: 'Patient', name: [{ text: name }], gender: name } }],
  }),
  'pasted.txt': `Patient: ${name} ${birth}\nFerritin   ninety   ug/L\n`,
};
const files = Object.keys(broken);

let desk: Desk;
beforeAll(() => {
  desk = openDesk();
  for (const [file, text] of Object.entries(broken)) desk.put(file, text);
  desk.put('sound.json', sound);
  mkdirSync(join(desk.folder, 'temporary'));
});
afterAll(() => desk.clear());

const secrets = [/Zephyrine/i, /Quillfeather/i, /1987-?06-?05/];
const tells = (text: string) => secrets.some((secret) => secret.test(text));

/** With a folder for temporary files of its own, so that whatever is left there is seen. */
function run(...words: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: desk.folder,
    env: { ...process.env, TMPDIR: join(desk.folder, 'temporary'), IRONLEAF_DEBUG: '' },
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

const commands: readonly (readonly [string, ...string[]])[] = [
  ['letter', '--demo', '--out', 'out'],
  ['explain'],
  ['check', '--json'],
];

describe('a broken file', () => {
  it.each(files.flatMap((file) => commands.map((command) => [file, command] as const)))(
    'tells no name and no birth date: %s by %j',
    (file, [command, ...rest]) => {
      const { status, stdout, stderr } = run(command, file, ...rest);
      expect(status).not.toBe(70);
      expect(tells(stderr)).toBe(false);
      // Showing what was read of a person is the work of the other two.
      if (command === 'letter') expect(tells(stdout)).toBe(false);
    },
  );

  it.each(files)('tells no name by a mailing, but in the list to phone: %s', (file) => {
    const out = `evening-${file}`;
    const { stdout, stderr } = run('mailing', file, '--demo', '--out', out);
    expect(tells(stdout + stderr)).toBe(false);
    const open = /^(calls\.(csv|html|pdf)|letters)$/;
    for (const path of filesIn(join(desk.folder, out), open))
      expect([path, tells(readFileSync(path, 'latin1'))]).toEqual([path, false]);
  });
});

describe('a sound file', () => {
  it('leaves no name in file names, nor anything among temporary files', () => {
    expect(run('letter', 'sound.json', '--demo', '--out', 'out').status).toBe(0);
    expect(desk.made().some(tells)).toBe(false);
    expect(readdirSync(join(desk.folder, 'temporary'))).toEqual([]);
  });

  it('leaves no name in the compiled code that is kept', () => {
    const copy = join(desk.folder, 'copy');
    mkdirSync(copy);
    for (const part of ['dist', 'templates', 'locales', 'examples', 'package.json'])
      execFileSync('cp', ['-r', resolve(part), copy]);
    execFileSync('rm', ['-f', join(copy, 'dist/program.cache')]);
    const words = ['letter', 'sound.json', '--demo', '--out', 'out'];
    execFileSync(process.execPath, [join(copy, 'dist/ironleaf.cjs'), ...words], {
      cwd: desk.folder,
    });
    const kept = readFileSync(join(copy, 'dist/program.cache'));
    expect(tells(kept.toString('latin1'))).toBe(false);
    expect(tells(kept.toString('utf16le'))).toBe(false);
  });

  it('shows only the kind of a fault of ours', () => {
    const { stderr } = run('explain', 'sound.json', '--date', name);
    expect(tells(stderr)).toBe(false);
  });
});

function filesIn(folder: string, without: RegExp): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (without.test(entry.name)) return [];
    return statSync(path).isDirectory() ? filesIn(path, without) : [path];
  });
}
