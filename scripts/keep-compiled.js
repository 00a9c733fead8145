// The built program makes one letter and leaves beside itself the code that Node compiled on the way.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Writes dist/program.cache: a start then compiles next to nothing. Of use to this version of Node alone. */
export function keepCompiled(root) {
  const out = mkdtempSync(join(tmpdir(), 'ironleaf-build-'));
  const report = join(root, 'examples/heavy-periods.json');
  try {
    execFileSync(
      process.execPath,
      [join(root, 'dist/ironleaf.cjs'), 'letter', report, '--demo', '--out', out],
      {
        env: { ...process.env, IRONLEAF_KEEP_COMPILED: '1' },
        stdio: ['ignore', 'ignore', 'inherit'],
      },
    );
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}
