// Packs the built program, installs it where nothing else is, and uses it as a stranger would.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const facts = JSON.parse(readFileSync('package.json', 'utf8')) as {
  version: string;
  dependencies?: object;
  scripts: Record<string, string>;
};

let folder: string;
let packed: readonly { readonly path: string }[];
let installed: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ironleaf-package-'));
  const words = ['pack', '--ignore-scripts', '--json', '--pack-destination', folder];
  const [made] = JSON.parse(execFileSync('npm', words, { encoding: 'utf8' }));
  packed = made.files;
  const prefix = join(folder, 'prefix');
  execFileSync(
    'npm',
    ['install', '--global', '--offline', '--prefix', prefix, join(folder, made.filename)],
    { stdio: 'ignore', env: { ...process.env, npm_config_cache: join(folder, 'cache') } },
  );
  installed = join(prefix, 'lib/node_modules/ironleaf');
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the installed command with nothing around but Node. */
function ironleaf(...words: string[]) {
  const path = [join(folder, 'prefix/bin'), dirname(process.execPath)].join(delimiter);
  return spawnSync('ironleaf', words, {
    cwd: folder,
    env: { PATH: path, HOME: folder },
    encoding: 'utf8',
  });
}

describe('the package', () => {
  it('holds what it needs and nothing of how it was made', () => {
    const needed = [
      /^(README|SECURITY|CHANGELOG)\.md$|^LICENSE$|^package\.json$/,
      /^dist\/(ironleaf\.cjs|program\.cjs|library[\w-]*\.js|library\.d\.ts|THIRD-PARTY\.txt)$/,
      /^dist\/[\w-]+\.wasm$/,
      /^dist\/fonts\/[\w-]+\.(ttf|txt)$/,
      /^dist\/page\/[\w.-]+\.(js|css|wasm)$/,
      /^templates\/[\w-]+\.(hbs|md)$/,
      /^locales\/[\w-]+\/[\w-]+\.json$/,
      /^examples\//,
      /^docs\/[\w-]+\.md$/,
    ];
    const strange = packed.filter(({ path }) => !needed.some((kind) => kind.test(path)));
    expect(strange).toEqual([]);
    for (const one of ['dist/library.d.ts', 'dist/program.cjs', 'SECURITY.md', 'CHANGELOG.md'])
      expect(packed.map(({ path }) => path)).toContain(one);
  });

  it('depends on no other package, so that installing it fetches nothing', () => {
    expect(facts.dependencies ?? {}).toEqual({});
    expect(readdirSync(join(folder, 'prefix/lib/node_modules'))).toEqual(['ironleaf']);
    expect(readdirSync(installed)).not.toContain('node_modules');
  });

  it('runs no script where it is installed', () => {
    const atInstall = ['preinstall', 'install', 'postinstall'];
    expect(Object.keys(facts.scripts).filter((name) => atInstall.includes(name))).toEqual([]);
  });

  it('brings the notice of every package that it bundles', () => {
    const notices = readFileSync(join(installed, 'dist/THIRD-PARTY.txt'), 'utf8');
    for (const name of ['handlebars', 'harfbuzzjs', 'i18next', 'pdfkit', 'yargs', 'zod'])
      expect(notices).toMatch(new RegExp(`^${name} \\d.*\\((MIT|ISC)\\)$`, 'm'));
  });
});

describe('the installed command', () => {
  it('says its version', () => {
    expect(ironleaf('--version').stdout.trim()).toBe(facts.version);
  });

  it('makes a letter as HTML and PDF, a second time from the code it compiled', () => {
    const report = join(installed, 'examples/heavy-periods.json');
    const words = ['letter', report, '--demo', '--date', '2026-11-25', '--out'];
    expect(ironleaf(...words, 'first')).toMatchObject({ status: 0, stderr: '' });
    expect(readdirSync(join(installed, 'dist'))).toContain('program.cache');
    expect(ironleaf(...words, 'second')).toMatchObject({ status: 0, stderr: '' });
    const files = readdirSync(join(folder, 'first'));
    expect(files).toEqual(['heavy-periods.en.html', 'heavy-periods.en.pdf']);
    for (const file of files)
      expect(readFileSync(join(folder, 'second', file))).toEqual(
        readFileSync(join(folder, 'first', file)),
      );
  });

  it('works with compiled code that is broken, and puts it right', () => {
    const cache = join(installed, 'dist/program.cache');
    writeFileSync(cache, 'not compiled code');
    const report = join(installed, 'examples/all-in-range.json');
    expect(ironleaf('letter', report, '--demo', '--out', 'third').status).toBe(0);
    expect(readFileSync(cache).byteLength).toBeGreaterThan(100_000);
  });

  const commands = [
    'letter',
    'check',
    'columns',
    'explain',
    'mailing',
    'review',
    'release',
    'page',
    'print',
    'verify',
    'languages',
    'templates',
    'schema',
    'completion',
  ];
  const further = [
    'languages export',
    'languages import',
    'languages proof',
    'languages back-translation',
    'languages record',
    'templates check',
  ];
  it('names every command in its help', () => {
    const help = ironleaf('--help').stdout;
    const named = [...help.matchAll(/^ {2}ironleaf (\w+)/gm)].map((match) => match[1]);
    expect(new Set(named)).toEqual(new Set(commands));
  });

  it('names every command of a command in its help', () => {
    const help = ['languages', 'templates'].map((name) => ironleaf(name, '--help').stdout).join('');
    const named = [...help.matchAll(/^ {2}ironleaf (\w+ [\w-]+) +[<W]/gm)].map((match) => match[1]);
    expect(new Set(named)).toEqual(new Set(further));
  });

  it.each([...commands, ...further])('shows an example in the help of %s', (command) => {
    const { stdout } = ironleaf(...command.split(' '), '--help');
    expect(stdout).toMatch(new RegExp(`^Examples:\\n\\s+ironleaf ${command}\\b`, 'm'));
    expect(stdout).not.toContain('$0');
  });

  it('prints a script that bash can read, and completes commands', () => {
    const script = ironleaf('completion').stdout;
    expect(script).toContain('complete -o bashdefault');
    expect(execFileSync('bash', ['-n'], { input: script, encoding: 'utf8' })).toBe('');
    const completed = ironleaf('--get-yargs-completions', 'ironleaf', 'letter', '--be').stdout;
    expect(completed).toContain('--beside');
  });
});

describe('the library', () => {
  it('has types that stand alone and pass the strictest reading', () => {
    const types = readFileSync(join(installed, 'dist/library.d.ts'), 'utf8');
    expect(types).not.toMatch(/^import |\bany\b(?=[;,)])/m);
    const modules = join(folder, 'prefix/lib/node_modules');
    const user = join(modules, 'user.mts');
    writeFileSync(
      user,
      `import { makeLetter, type Clinic, type Report, type LetterOutcome, openKit } from 'ironleaf';
       export const made = async (report: Report, clinic: Clinic): Promise<LetterOutcome> =>
         makeLetter(report, clinic, { date: '2026-11-25', formats: ['pdf'] }, await openKit());
       // @ts-expect-error: a letter has a date
       export const undated = async (report: Report, clinic: Clinic) => makeLetter(report, clinic, {}, await openKit());`,
    );
    const compiler = resolve('node_modules/typescript/bin/tsc');
    const words = [
      '--ignoreConfig',
      '--noEmit',
      '--strict',
      '--module',
      'nodenext',
      '--target',
      'es2022',
      user,
    ];
    const { status, stdout } = spawnSync(process.execPath, [compiler, ...words], {
      encoding: 'utf8',
    });
    expect(stdout).toBe('');
    expect(status).toBe(0);
  }, 60_000);
});
