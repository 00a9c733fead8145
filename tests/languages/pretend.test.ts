// A language nobody has yet, in a script that is there: its folder alone makes it whole.
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { expectedMessages, patientNamespaces, readLanguage } from '../../src/letter/index.js';
import { familiesFor } from '../../src/render/pdf/faces.js';

const meta = {
  tag: 'cy',
  name: 'Cymraeg',
  englishName: 'Welsh',
  dir: 'ltr',
  script: 'Latn',
  dates: Array.from({ length: 12 }, (_, month) => `{{day}} [month ${month + 1}] {{year}}`),
  reviewState: 'draft-machine',
};

const files = Object.fromEntries(
  patientNamespaces.map((namespace) => [
    namespace,
    Object.fromEntries(
      [...expectedMessages(namespace, 'cy')].map(([key, text]) => [key, `[${text}]`]),
    ),
  ]),
);

describe('a pretend language', () => {
  // CLDR 48, plural rules: Welsh has all six forms.
  it('is read from its own folder alone, with all plural forms of its own', () => {
    const read = readLanguage('cy', { meta, ...files });
    expect(read.ok ? [] : read.problems).toEqual([]);
    expect(Object.keys(files.letter ?? {}).filter((key) => key.startsWith('gap.zinc_'))).toEqual(
      ['zero', 'one', 'two', 'few', 'many', 'other'].map((form) => `gap.zinc_${form}`),
    );
    if (read.ok) expect(read.value.stateOf('letter', 'title')).toBe('draft-machine');
  });

  it('has faces by its script', () => {
    expect(familiesFor('cy').map(({ name }) => name)).toEqual(['noto-sans']);
  });

  it('is named nowhere in the program: no tag of a shipped language stands in its sources', () => {
    for (const file of ['src/letter/language.ts', 'src/letter/english.ts', 'src/app/kit.ts'])
      expect(readFileSync(file, 'utf8').replace(/^\s*(\/\/|\*).*$/gm, '')).not.toMatch(
        /'(?:ar|bn|fa|fil|hi|pl|ur|zh-Hans)'/,
      );
  });
});

describe('the built program with one more folder', () => {
  // Everything of the install as it is, byte for byte or by a link; only locales/cy is new.
  const install = mkdtempSync(join(tmpdir(), 'ironleaf-cy-'));
  afterAll(() => rmSync(install, { recursive: true, force: true }));
  mkdirSync(join(install, 'dist'));
  for (const name of readdirSync('dist')) {
    const [from, to] = [resolve('dist', name), join(install, 'dist', name)];
    if (statSync(from).isDirectory()) symlinkSync(from, to);
    else copyFileSync(from, to);
  }
  cpSync('locales', join(install, 'locales'), { recursive: true });
  for (const name of ['templates', 'examples']) symlinkSync(resolve(name), join(install, name));
  copyFileSync('package.json', join(install, 'package.json'));
  const folder = join(install, 'locales', 'cy');
  mkdirSync(folder);
  for (const [name, content] of Object.entries({ meta, ...files }))
    writeFileSync(join(folder, `${name}.json`), JSON.stringify(content));
  const run = (...words: string[]) =>
    spawnSync(process.execPath, [join(install, 'dist', 'ironleaf.cjs'), ...words], {
      cwd: install,
      encoding: 'utf8',
    });

  it('lists it, and makes its letter alone and beside English, marked as a draft', () => {
    const rows = JSON.parse(run('languages', '--json').stdout) as { tag: string; state: string }[];
    expect(rows.find(({ tag }) => tag === 'cy')).toMatchObject({ state: 'draft-machine' });
    const letter = ['letter', join('examples', 'heavy-periods.json'), '--demo', '--language', 'cy'];
    for (const more of [['--beside', 'en'], []]) {
      const made = run(...letter, ...more, '--format', 'pdf,html', '--out', 'out');
      expect(made.stderr).toBe('');
      expect(made.status).toBe(0);
    }
    const html = readdirSync(join(install, 'out')).filter((name) => name.endsWith('.cy.html'));
    expect(html.length).toBeGreaterThan(0);
    const text = readFileSync(join(install, 'out', html[0] as string), 'utf8');
    expect(text).toContain('lang="cy"');
    expect(text).toContain('[When to get help]');
    expect(text).toContain('No trained person has checked it yet.');
    expect(existsSync(resolve('locales', 'cy'))).toBe(false);
  });
});
