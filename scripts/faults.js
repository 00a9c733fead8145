// npm run faults [-- KILLS ROWS]: the fault tests of mailing with 50 kills over 600 rows, or as many as asked for.
import { spawnSync } from 'node:child_process';

const [kills = '50', rows = '600'] = process.argv.slice(2);
const { status } = spawnSync(
  'npx',
  ['vitest', 'run', 'tests/app/mailing-faults.test.ts', '--test-timeout=1800000'],
  { stdio: 'inherit', env: { ...process.env, IRONLEAF_KILLS: kills, IRONLEAF_ROWS: rows } },
);
process.exitCode = status ?? 1;
