// Small sound files of every kind that is no report, to be broken.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { encode } from 'fast-png';
import { secret } from '../intake/fuzz-samples.js';
import { openDesk, report, result } from './program.js';

export { secret };

/** What a column map is tried on. */
export const table = {
  name: 'a.csv',
  bytes: new TextEncoder().encode(
    `Pat-Nr;Name;FERR;Hb;Eisen;sex;collected\n7;${secret};9,5;120;11;female;20.11.2026\n`,
  ),
};

export const png = encode({
  width: 6,
  height: 4,
  channels: 3,
  depth: 8,
  data: new Uint8Array(72).map((_, at) => at * 3),
});

/** Every text of a small run's folder by name: a letter that is signed, one that was released. */
export async function runFiles(folder: string): Promise<ReadonlyMap<string, string>> {
  const desk = openDesk();
  const who = { sex: 'female', birthDate: '1990-02-03', name: secret };
  const low = [result('haemoglobin', '52', 'g/L', '115', '155')];
  mkdirSync(folder);
  const file = join(folder, 'evening.ndjson');
  const reports = [
    report({ patient: { ...who, id: 'SB-1' } }),
    report({ patient: { ...who, id: 'SB-2' }, results: low }),
    report({ patient: { ...who, id: 'SB-3' } }),
  ];
  writeFileSync(file, reports.map((each) => JSON.stringify(each)).join('\n'));
  const words = ['--checked-by', 'Dr Wren Abara'];
  desk.run('mailing', file, '--out', folder, '--demo', '--format', 'text', '--date', '2026-11-25');
  desk.run('release', folder, '--id', 'SB-2', ...words, '--done', 'Phoned.');
  desk.run('review', folder);
  desk.run('review', folder, '--sign', join(folder, 'to-sign.txt'), ...words);
  desk.clear();
  const names = (readdirSync(folder, { recursive: true }) as string[]).filter((name) =>
    /\.(?:jsonl?|ndjson|txt|csv)$/.test(name),
  );
  const made = ['manifest.jsonl', 'released/SB-2.json', 'signed.json'];
  const missing = made.filter((name) => !names.includes(name));
  if (missing.length > 0) throw new Error(`the small run made no ${missing.join(', ')}`);
  const dead = JSON.stringify({ pid: 999_999_999, host: hostname(), born: null });
  return new Map([
    ...names.map((name) => [name, readFileSync(join(folder, name), 'utf8')] as const),
    ['lock', dead],
  ]);
}
