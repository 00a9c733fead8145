#!/usr/bin/env node
// The built program and the code compiled from it arrive; it runs. Node cannot keep compiled ES modules, so the program is one script.
// This file is built as CommonJS, since Node starts sooner without its loader of modules.
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Script } from 'node:vm';

const path = join(__dirname, 'program.cjs');
const compiled = join(__dirname, 'program.cache');

const kept = existsSync(compiled) ? readFileSync(compiled) : undefined;
// The build sees to it that the bundle is plain ASCII, which is read and kept at a byte a letter. Another version of Node refuses the compiled code and compiles again: slower, never wrong.
const script = new Script(`(function (require, __filename) {${readFileSync(path, 'latin1')}\n})`, {
  filename: path,
  ...(kept === undefined ? {} : { cachedData: kept }),
});

// The package brings no compiled code, which nobody could read and which suits one version of Node alone:
// the first letter made leaves it beside the program. It holds functions, no values.
const isWanted = kept === undefined || script.cachedDataRejected === true;
if (isWanted && process.argv[2] === 'letter') {
  process.env.IRONLEAF_KEEP_COMPILED = '1';
  process.on('exit', (status) => {
    if (status === 0) keep(script.createCachedData());
  });
}
script.runInThisContext()(require, path);

/** A folder that may not be written is no fault: the next start is a little slower. */
function keep(code: Uint8Array): void {
  const part = `${compiled}.${process.pid}.part`;
  try {
    writeFileSync(part, code, { flag: 'wx' });
    renameSync(part, compiled);
  } catch {
    rmSync(part, { force: true });
  }
}
