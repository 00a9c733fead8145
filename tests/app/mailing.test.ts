// An evening's run as an operator meets it: three outcomes, nothing alarming in the post, everything on record.
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { counts, evening, reportsIn, rowsOf } from './evening.js';
import { openDesk, type Ran, report, result } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

const size = 30;
const expected = counts(size);
const file = desk.put('evening.csv', evening(size));
const mailing = (path: string, out: string, ...more: string[]) =>
  desk.run('mailing', path, '--out', out, '--demo', '--format', 'html', ...more);
const letters = (out: string) => readdirSync(join(desk.folder, out, 'letters')).sort();
const day = ['--date', '2026-11-25'] as const;

describe('a run over one evening', () => {
  let ran: Ran;
  beforeAll(() => {
    ran = mailing(file, 'first', ...day);
  }, 120_000);

  it('makes three lists that add up to the reports of the file', () => {
    expect(ran.status).toBe(1);
    expect(letters('first')).toHaveLength(expected.letter);
    expect(reportsIn(desk.read('first/calls.csv'), 1)).toHaveLength(expected.phone);
    expect(reportsIn(desk.read('first/to-fix.csv'), 0)).toHaveLength(expected.fix);
    expect(expected.letter + expected.phone + expected.fix).toBe(size);
  });

  it('names letters by id and leaves nothing of a held one among them', () => {
    for (const name of letters('first')) expect(name).toMatch(/^SB-50\d\d\.en\.html$/);
    for (const id of reportsIn(desk.read('first/calls.csv'), 3))
      expect(letters('first').join()).not.toContain(id);
  });

  it('prints the paths of what it made and talks on stderr, without a name', () => {
    expect(ran.stdout.split('\n')).toContain('first/calls.csv');
    expect(ran.stderr).toMatch(/30 of 30 reports, 25 letters made, 3 to phone, 2 to fix/);
    expect(ran.stdout + ran.stderr).not.toMatch(/Quillfeather|1987-03/);
  });

  it('keeps names, birth dates and results out of manifest, recall, summary and file names', () => {
    for (const name of ['manifest.jsonl', 'recall.csv', 'recall.ics', 'summary.html', 'run.json']) {
      const content = desk.read(`first/${name}`);
      expect(content, name).not.toMatch(/Quillfeather|1987-03|"52"|13O|g\/L/);
    }
  });

  it('sets letters in the type that was asked for', () => {
    const few = desk.put('few.csv', evening(3));
    const typeIn = (out: string) => {
      const [name = ''] = letters(out).filter((each) => each.endsWith('.html'));
      return /@media print\{.*?font-size:(\d+)pt/s.exec(desk.read(`${out}/letters/${name}`))?.[1];
    };
    mailing(few, 'compact', ...day, '--compact');
    expect([typeIn('first'), typeIn('compact')]).toEqual(['14', '12']);
  });

  it('writes files only their owner may read', () => {
    for (const name of ['calls.csv', 'manifest.jsonl', 'to-fix.csv', 'letters/SB-5001.en.html'])
      expect(statSync(join(desk.folder, 'first', name)).mode & 0o077).toBe(0);
  });

  it('writes tables that an independent reader of RFC 4180 takes whole', () => {
    const rows = parse(desk.read('first/calls.csv'), { bom: true, columns: true }) as object[];
    expect(rows).toHaveLength(expected.phone);
    expect(rows[0]).toMatchObject({ tier: 'emergency', id: 'SB-5004', born: '1987-03-05' });
  });

  it('is verified, and every later change to a letter is found', () => {
    expect(desk.run('verify', 'first').status).toBe(0);
    const letter = join(desk.folder, 'first/letters/SB-5001.en.html');
    const content = readFileSync(letter);
    writeFileSync(letter, `${content}x`);
    writeFileSync(join(desk.folder, 'first/letters/SB-5004.en.html'), 'x');
    const found = desk.run('verify', 'first');
    expect(found.status).toBe(65);
    expect(found.stdout).toMatch(/SB-5001\.en\.html: is not as it was written/);
    expect(found.stdout).toMatch(/SB-5004\.en\.html: lies among the letters/);
  });

  it('is put right by running it again, which makes only what is wrong', () => {
    const again = mailing(file, 'first');
    expect(again.stderr).toMatch(/1 letters made, 24 kept as they were/);
    expect(desk.run('verify', 'first').status).toBe(0);
    expect(letters('first')).toHaveLength(expected.letter);
  });

  it('makes again only the letter whose report was corrected, and withdraws one that is now an alarm', () => {
    const corrected = evening(size)
      .replace(rowsOf(1), rowsOf(1, '141'))
      .replace(rowsOf(2), rowsOf(2, '55'))
      .replace(rowsOf(7), rowsOf(7, '127'));
    const again = mailing(desk.put('corrected.csv', corrected), 'first');
    expect(again.stderr).toMatch(/2 letters made, 23 kept as they were, 4 to phone, 1 to fix/);
    expect(letters('first')).not.toContain('SB-5002.en.html');
    expect(letters('first')).toContain('SB-5007.en.html');
  });

  it('sets letters aside that a new file says nothing about: never mailed twice, never lost', () => {
    mailing(desk.put('short.csv', evening(3)), 'first');
    expect(letters('first')).toEqual(
      ['SB-5001', 'SB-5002', 'SB-5003'].map((id) => `${id}.en.html`),
    );
    expect(readdirSync(join(desk.folder, 'first/set-aside')).length).toBeGreaterThan(20);
    expect(desk.run('verify', 'first').status).toBe(0);
  });
});

describe('a patient who comes twice in one file', () => {
  const other = { id: 'SB-2', name: 'Ida Tern', birthDate: '1980-05-06', sex: 'female' };
  const alarm = [result('haemoglobin', '51', 'g/L', '115', '155')];

  it('gets one letter; the second report is a line to fix', () => {
    const all = [report(), report({ patient: other }), report({ collected: '2026-11-17' })];
    const ran = mailing(desk.put('twice.json', all), 'twice', ...day);
    expect(ran.stderr).toMatch(/2 letters made, 0 to phone, 1 to fix/);
    expect(desk.read('twice/to-fix.csv')).toMatch(
      /"3",.*report 1 of this file is of the same patient/,
    );
  });

  it('gets none by post when the other report is an alarm, and is phoned', () => {
    const all = [report(), report({ patient: other }), report({ results: alarm })];
    const ran = mailing(desk.put('alarm.json', all), 'alarm', ...day);
    expect(ran.stderr).toMatch(/1 letters made, 1 to phone, 1 to fix/);
    expect(letters('alarm')).toEqual(['SB-2.en.html']);
  });

  it('is told by name and birth date where there is no id', () => {
    const { id: _id, ...unnumbered } = other;
    const all = [report({ patient: unnumbered }), report({ patient: unnumbered })];
    const ran = mailing(desk.put('unnumbered.json', all), 'unnumbered', ...day);
    expect(ran.stderr).toMatch(/1 letters made, 0 to phone, 1 to fix/);
    expect(letters('unnumbered')).toEqual(['report-1.en.html']);
  });
});

describe('release and review', () => {
  const ids = desk.put('ids.txt', 'SB-5001\nSB-5003\n');
  beforeAll(() => {
    mailing(file, 'checked', ...day);
  }, 120_000);

  it('releases a held letter with a name and what was done, and takes it off the list', () => {
    const words = ['--id', 'SB-5004', '--checked-by', 'Dr Wren Abara', '--done', 'Phoned 10:20.'];
    expect(desk.run('release', 'checked', ...words).status).toBe(0);
    expect(letters('checked')).toContain('SB-5004.en.html');
    expect(desk.read('checked/calls.csv')).not.toMatch(/SB-5004/);
    expect(JSON.parse(desk.read('checked/released/SB-5004.json'))).toMatchObject({
      tier: 'emergency',
      releasedBy: 'Dr Wren Abara',
      done: 'Phoned 10:20.',
    });
    expect(desk.run('release', 'checked', ...words).stderr).toMatch(
      /no letter of this patient is held/,
    );
  });

  it('holds a new alarming result of a released patient again', () => {
    const path = desk.put('worse.csv', evening(size).replace(rowsOf(4), rowsOf(4, '47')));
    mailing(path, 'checked');
    expect(letters('checked')).not.toContain('SB-5004.en.html');
    expect(desk.read('checked/calls.csv')).toMatch(/SB-5004/);
    mailing(file, 'checked');
  });

  it('signs nothing before there is a page to check, nor an id that is not on it', () => {
    const sign = (path: string) =>
      desk.run('review', 'checked', '--sign', path, '--checked-by', 'Dr Wren Abara');
    expect(sign(ids).status).toBe(66);
    expect(desk.run('review', 'checked').status).toBe(0);
    expect(sign(desk.put('wrong.txt', 'SB-5001\nSB-9999\n')).status).toBe(65);
    expect(desk.read('checked/letters/SB-5001.en.html')).toMatch(/No clinician has checked/);
  });

  it('takes the band off signed letters only, and puts it back when the letter changes', () => {
    desk.run('review', 'checked', '--sign', ids, '--checked-by', 'Dr Wren Abara');
    const checked = (id: string) =>
      !/No clinician has checked/.test(desk.read(`checked/letters/${id}.en.html`));
    expect(['SB-5001', 'SB-5002', 'SB-5003'].map(checked)).toEqual([true, false, true]);
    mailing(desk.put('later.csv', evening(size).replace(rowsOf(1), rowsOf(1, '140'))), 'checked');
    expect(['SB-5001', 'SB-5002', 'SB-5003'].map(checked)).toEqual([false, false, true]);
    expect(desk.run('verify', 'checked').status).toBe(0);
  });
});

describe('locked letters', () => {
  const all = [report(), report({ patient: { id: 'SB-2', sex: 'male', birthDate: '1980-01-02' } })];
  const path = desk.put('lock.json', all);
  const run = (locks: string, format = 'pdf') =>
    desk.run(
      'mailing',
      path,
      '--out',
      'locked',
      '--demo',
      '--format',
      format,
      ...day,
      '--passwords',
      locks,
    );

  it('open with the password of their patient only; one without a password is not made', async () => {
    const ran = run(desk.put('locks.csv', 'id,password\nSB-9,tern-quay-41\n'));
    expect(ran.stderr).toMatch(/1 letters made, 0 to phone, 1 to fix/);
    const open = (password?: string) =>
      getDocument({
        data: new Uint8Array(desk.bytes('locked/letters/SB-9.en.pdf')),
        verbosity: 0,
        ...(password === undefined ? {} : { password }),
      }).promise;
    await expect(open()).rejects.toThrow(/password/i);
    await expect(open('tern-quay-42')).rejects.toThrow(/password/i);
    expect((await open('tern-quay-41')).numPages).toBeGreaterThan(0);
    for (const name of ['manifest.jsonl', 'run.json', 'to-fix.csv'])
      expect(desk.read(`locked/${name}`)).not.toContain('tern-quay');
  });

  it('need a password of ASCII, and PDF', () => {
    const unfit = run(desk.put('unfit.csv', 'id,password\nSB-9,köttbullar\n'));
    expect(unfit.status).toBe(65);
    expect(unfit.stderr).not.toMatch(/köttbullar/);
    expect(run(desk.put('locks.csv', 'id,password\nSB-9,tern-quay-41\n'), 'html').status).toBe(64);
  });
});

describe('shards', () => {
  it('divide the file and are joined by one run that makes nothing again', () => {
    for (const share of ['1/3', '2/3', '3/3']) mailing(file, 'shards', ...day, '--shard', share);
    expect(letters('shards')).toHaveLength(expected.letter);
    const joined = mailing(file, 'shards', ...day);
    expect(joined.stderr).toMatch(/0 letters made, 25 kept as they were, 3 to phone, 2 to fix/);
    expect(desk.run('verify', 'shards').status).toBe(0);
    const lists = readdirSync(join(desk.folder, 'shards')).filter((name) => /-of-/.test(name));
    expect(lists.filter((name) => !name.startsWith('manifest.'))).toEqual([]);
    expect(reportsIn(desk.read('shards/calls.csv'), 1)).toHaveLength(expected.phone);
  });
});
