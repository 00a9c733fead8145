// What an evening may have to survive, done to the real program: kills, full and locked folders, two runs at once.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { counts, evening, reportsIn } from './evening.js';
import { openDesk } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

/** A longer trial: 50 kills over 600 rows. */
const kills = Number(process.env.IRONLEAF_KILLS ?? 8);
const rows = Number(process.env.IRONLEAF_ROWS ?? 120);
/** Milliseconds. */
const patience = Math.max(600_000, kills * 60_000);

/** PDF as an operator gets it unasked; HTML is quicker. */
const format = process.env.IRONLEAF_FORMAT ?? 'html';
const wholeFile = format === 'pdf' ? /^%PDF[\s\S]*%%EOF\s*$/ : /<\/html>\n$/;

const words = (path: string, out: string) =>
  ['mailing', path, '--out', out, '--demo', '--format', format, '--date', '2026-11-25'] as const;
const mailing = (path: string, out: string) => desk.run(...words(path, out));
/** Bytes as characters, so that PDF and HTML are compared alike. */
const latin = (name: string) => readFileSync(join(desk.folder, name), 'latin1');
function letters(out: string): string[] {
  const folder = join(desk.folder, out, 'letters');
  return existsSync(folder) ? readdirSync(folder).sort() : [];
}

function start(path: string, out: string): ChildProcess {
  const program = resolve('dist/ironleaf.cjs');
  return spawn(process.execPath, [program, ...words(path, out)], {
    cwd: desk.folder,
    stdio: 'ignore',
  });
}

const ended = (child: ChildProcess) =>
  new Promise<void>((done) => {
    child.once('exit', () => done());
  });

/** Resolves when the run has recorded so many outcomes, so that a kill falls into its work and not its start. */
async function recorded(out: string, lines: number, child: ChildProcess): Promise<void> {
  const manifest = join(desk.folder, out, 'manifest.jsonl');
  while (child.exitCode === null) {
    try {
      if (readFileSync(manifest, 'utf8').split('\n').length > lines) return;
    } catch {
      // Not there yet.
    }
    await new Promise((done) => setTimeout(done, 5));
  }
}

describe('a run that is killed', () => {
  it(
    `${kills} times leaves every letter whole, and in the end nothing lost, doubled or half-written`,
    async () => {
      const path = desk.put('evening.csv', evening(rows));
      mailing(path, 'whole');
      for (let kill = 0; kill < kills; kill += 1) {
        const child = start(path, 'killed');
        await recorded('killed', Math.round((rows * kill) / kills), child);
        await new Promise((done) => setTimeout(done, Math.random() * 60));
        child.kill('SIGKILL');
        await ended(child);
        for (const name of letters('killed').filter((each) => each.endsWith(`.${format}`)))
          expect(wholeFile.test(latin(`killed/letters/${name}`)), name).toBe(true);
      }
      const last = mailing(path, 'killed');
      expect(last.status).toBe(1);
      expect(desk.run('verify', 'killed').status).toBe(0);
      expect(letters('killed')).toEqual(letters('whole'));
      for (const name of letters('whole'))
        expect(latin(`killed/letters/${name}`) === latin(`whole/letters/${name}`), name).toBe(true);
      for (const list of ['calls.csv', 'to-fix.csv', 'recall.csv', 'recall.ics'])
        expect(desk.read(`killed/${list}`), list).toBe(desk.read(`whole/${list}`));
      const expected = counts(rows);
      expect(letters('killed')).toHaveLength(expected.letter);
      expect(reportsIn(desk.read('killed/calls.csv'), 1)).toHaveLength(expected.phone);
      expect(reportsIn(desk.read('killed/to-fix.csv'), 0)).toHaveLength(expected.fix);
    },
    patience,
  );

  it('mends a last record that was torn off, and makes that letter again', () => {
    const path = desk.put('few.csv', evening(3));
    mailing(path, 'torn');
    const manifest = join(desk.folder, 'torn/manifest.jsonl');
    const lines = readFileSync(manifest, 'utf8').split('\n');
    writeFileSync(manifest, `${lines.slice(0, 2).join('\n')}\n${(lines[2] ?? '').slice(0, 40)}`);
    expect(desk.run('verify', 'torn').stdout).toMatch(/a line cannot be read/);
    expect(mailing(path, 'torn').stderr).toMatch(/1 letters made, 2 kept as they were/);
    const records = readFileSync(manifest, 'utf8').split('\n');
    expect(records.filter((line) => line.includes('"about":"SB-5003"')).length).toBeGreaterThan(0);
    expect(letters('torn')).toHaveLength(3);
    expect(desk.run('verify', 'torn').status).toBe(0);
  });
});

describe('a clock that is wrong', () => {
  it('moves no date and makes no letter again: the first run’s date holds, and records count runs, not hours', () => {
    const path = desk.put('few.csv', evening(12));
    const clock = desk.put(
      'clock.mjs',
      `const shift = Number(process.env.SHIFT_DAYS) * 86_400_000;
       const RealDate = Date;
       globalThis.Date = class extends RealDate {
         constructor(...given) { super(...(given.length > 0 ? given : [RealDate.now() + shift])); }
         static now() { return RealDate.now() + shift; }
       };`,
    );
    const run = (days: number) =>
      spawnSync(
        process.execPath,
        [
          '--import',
          clock,
          resolve('dist/ironleaf.cjs'),
          'mailing',
          path,
          '--out',
          'clock',
          '--demo',
        ],
        { cwd: desk.folder, encoding: 'utf8', env: { ...process.env, SHIFT_DAYS: String(days) } },
      );
    expect(run(0).stderr).toMatch(/10 letters made/);
    const date = () => JSON.parse(desk.read('clock/run.json')).date;
    const [first, [letter = '']] = [date(), letters('clock')];
    const before = latin(`clock/letters/${letter}`);
    for (const days of [-3, 400]) {
      writeFileSync(join(desk.folder, 'clock/letters', letter), 'damaged');
      expect(run(days).stderr).toMatch(/1 letters made, 9 kept as they were, 1 to phone, 1 to fix/);
      expect(latin(`clock/letters/${letter}`) === before).toBe(true);
      expect(date()).toBe(first);
    }
    expect(desk.run('verify', 'clock').status).toBe(0);
  });
});

describe('a run that is given too little memory', () => {
  it('ends early with whole letters, and goes on where there is enough', () => {
    const path = desk.put('few.csv', evening(20));
    const program = resolve('dist/ironleaf.cjs');
    const ends = [16, 24, 32].map((megabytes) => {
      const { status, signal } = spawnSync(
        process.execPath,
        [`--max-old-space-size=${megabytes}`, program, ...words(path, 'small')],
        { cwd: desk.folder, stdio: 'ignore' },
      );
      for (const name of letters('small').filter((each) => each.endsWith(`.${format}`)))
        expect(wholeFile.test(latin(`small/letters/${name}`)), name).toBe(true);
      return signal ?? status;
    });
    expect(ends.some((end) => end !== 0 && end !== 1)).toBe(true);
    expect(mailing(path, 'small').status).toBe(1);
    expect(letters('small')).toHaveLength(counts(20).letter);
    expect(desk.run('verify', 'small').status).toBe(0);
  });
});

describe('two runs on one folder at once', () => {
  it('are refused the second time, in words, and the first goes on', async () => {
    // Long enough that the first is still at work when the second has started.
    const path = desk.put('busy.csv', evening(400));
    const first = start(path, 'busy');
    await recorded('busy', 3, first);
    const second = mailing(path, 'busy');
    await ended(first);
    expect(second.status).toBe(73);
    expect(second.stderr).toMatch(/another run is at work on this folder/);
    expect(letters('busy')).toHaveLength(counts(400).letter);
    expect(desk.run('verify', 'busy').status).toBe(0);
  });

  it('are refused for a shard beside a whole run, and for a lock of another computer', () => {
    const path = desk.put('few.csv', evening(3));
    mkdirSync(join(desk.folder, 'far'));
    writeFileSync(
      join(desk.folder, 'far/lock'),
      JSON.stringify({ pid: 1, host: 'elsewhere', born: null }),
    );
    expect(mailing(path, 'far').status).toBe(73);
    const shard = desk.run(...words(path, 'far'), '--shard', '1/2');
    expect(shard.stderr).toMatch(/process 1 on elsewhere/);
  });
});

describe('a folder that cannot be written', () => {
  it('read-only: is said with status 73, and the superuser is let through', () => {
    const locked = join(desk.folder, 'locked');
    mkdirSync(locked);
    chmodSync(locked, 0o500);
    const ran = mailing(desk.put('few.csv', evening(3)), 'locked');
    expect(ran.status).toBe(process.getuid?.() === 0 ? 0 : 73);
  });

  it('in the way of a file: is said with status 73', () => {
    desk.put('in-the-way', 'x');
    const ran = mailing(desk.put('few.csv', evening(3)), 'in-the-way');
    expect(ran.status).toBe(73);
    expect(ran.stderr).toMatch(/--out: cannot write/);
  });

  it('out of space: stops with status 73, keeps what is whole and goes on when there is room', () => {
    const path = desk.put('room.csv', evening(20));
    // A limit on the size of files stands in for a full disk: both end a write with an error (EFBIG, ENOSPC).
    const limited = spawnSync(
      'bash',
      [
        '-c',
        `trap '' XFSZ; ulimit -f 16; exec "$0" "$@"`,
        process.execPath,
        resolve('dist/ironleaf.cjs'),
        ...words(path, 'full'),
      ],
      { cwd: desk.folder, encoding: 'utf8' },
    );
    expect(limited.status).toBe(73);
    expect(limited.stderr).toMatch(/cannot write into the folder/);
    expect(
      readdirSync(join(desk.folder, 'full'), { recursive: true }).filter((name) =>
        String(name).endsWith('.part'),
      ),
    ).toEqual([]);
    expect(mailing(path, 'full').status).toBe(1);
    expect(letters('full')).toHaveLength(counts(20).letter);
    expect(desk.run('verify', 'full').status).toBe(0);
  });
});

describe('a template that fails for some patients', () => {
  it('costs those patients a line to fix and nobody else a letter; corrected, only theirs are made', () => {
    const copy = join(desk.folder, 'program');
    for (const part of ['dist', 'templates', 'locales', 'examples', 'package.json'])
      cpSync(resolve(part), join(copy, part), { recursive: true });
    symlinkSync(resolve('node_modules'), join(copy, 'node_modules'));
    const template = join(copy, 'templates/letter.hbs');
    const sound = readFileSync(template, 'utf8');
    const run = (path: string) =>
      spawnSync(process.execPath, [join(copy, 'dist/ironleaf.cjs'), ...words(path, 'template')], {
        cwd: desk.folder,
        encoding: 'utf8',
      });
    const path = desk.put('few.csv', evening(12));
    // Patient 5 has a haemoglobin of 125: a picture of a text is a fault no one foresaw. Patient 6 has 126.
    const crash = '{{#if (eq value "125")}}<figure>{{picture value}}</figure>{{/if}}';
    const absent = '{{#if (eq value "126")}}<p>{{nothing.here}}</p>{{/if}}';
    const broken5and6 = `{{#each results.rows}}${crash}${absent}{{/each}}</article>`;
    writeFileSync(template, sound.replace('</article>', broken5and6));
    const broken = run(path);
    expect(broken.stderr).toMatch(/8 letters made, 1 to phone, 3 to fix/);
    expect(reportsIn(desk.read('template/to-fix.csv'), 0)).toEqual(['5', '6', '7']);
    expect(desk.read('template/to-fix.csv')).toMatch(/a fault of the program or of a template/);
    writeFileSync(template, sound);
    const mended = run(path);
    expect(mended.status).toBe(1);
    expect(letters('template')).toHaveLength(counts(12).letter);
    appendFileSync(template, '\n{{!-- a remark --}}\n');
    expect(run(path).stderr).toMatch(/10 letters made/);
  });
});

describe('a file that somebody still writes into', () => {
  it('leaves whole letters, and the next run makes three lists that add up', async () => {
    const path = desk.put('growing.csv', evening(40));
    const child = start(path, 'growing');
    await recorded('growing', 3, child);
    appendFileSync(path, evening(45).slice(evening(40).length));
    await ended(child);
    // A file this short is read before it grows; a longer one stops the run with 65.
    expect([1, 65]).toContain(child.exitCode);
    expect(letters('growing').some((name) => name.endsWith('.part'))).toBe(false);
    expect(mailing(path, 'growing').status).toBe(1);
    const expected = counts(45);
    expect(letters('growing')).toHaveLength(expected.letter);
    expect(reportsIn(desk.read('growing/calls.csv'), 1)).toHaveLength(expected.phone);
    expect(reportsIn(desk.read('growing/to-fix.csv'), 0)).toHaveLength(expected.fix);
  });
});
