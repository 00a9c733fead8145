// The example that splits a file over cores, run as it stands; a few lines stand in for GNU parallel's -q and {}.
import { chmodSync, copyFileSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { counts, evening, reportsIn } from './evening.js';
import { openDesk } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

/** Starts the command once for each line, all at a time, as GNU parallel does (its manual, --quote). */
const standIn = `#!/bin/sh
while [ "$1" != -q ]; do shift; done
shift
failed=0 running=
while read -r line; do
  ( for word do shift; [ "$word" = '{}' ] && word=$line; set -- "$@" "$word"; done; exec "$@" ) &
  running="$running $!"
done
for each in $running; do wait "$each" || failed=1; done
exit $failed
`;

it('the shares of one file, made at the same time, are joined into whole lists and verified', () => {
  mkdirSync(join(desk.folder, 'bin'));
  for (const name of ['clinic.json', 'clinic-logo.svg'])
    copyFileSync(resolve('examples', name), join(desk.folder, name));
  desk.put('bin/parallel', standIn);
  desk.put(
    'bin/ironleaf',
    `#!/bin/sh\nexec "${process.execPath}" "${resolve('dist/ironleaf.cjs')}" "$@"\n`,
  );
  for (const name of ['parallel', 'ironleaf']) chmodSync(join(desk.folder, 'bin', name), 0o700);
  const [rows, expected] = [30, counts(30)];
  const path = desk.put('of this evening.csv', evening(rows));
  const { status, stderr } = spawnSync(
    'sh',
    [resolve('examples/scale/parallel.sh'), path, 'to post', '3'],
    {
      cwd: desk.folder,
      env: { ...process.env, PATH: `${join(desk.folder, 'bin')}:${process.env.PATH}` },
      encoding: 'utf8',
    },
  );
  expect(status, stderr).toBe(0);
  expect(stderr).toMatch(/0 letters made, 25 kept as they were, 3 to phone, 2 to fix/);
  const folder = join(desk.folder, 'to post');
  expect(readdirSync(join(folder, 'letters'))).toHaveLength(expected.letter);
  expect(
    readdirSync(folder).filter((name) => /^manifest\.\d-of-3\.jsonl$/.test(name)),
  ).toHaveLength(3);
  const list = (name: string) => readFileSync(join(folder, name), 'utf8');
  expect(reportsIn(list('calls.csv'), 1)).toHaveLength(expected.phone);
  expect(reportsIn(list('to-fix.csv'), 0)).toHaveLength(expected.fix);
}, 60_000);
