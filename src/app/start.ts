#!/usr/bin/env node
// The built program and the code that the build compiled from it arrive; it runs. Node cannot keep compiled ES modules, so the program is one script.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';

const path = fileURLToPath(new URL('./program.cjs', import.meta.url));
const compiled = fileURLToPath(new URL('./program.cache', import.meta.url));

// The bundle is plain ASCII, which is read fastest as such. Another version of Node refuses the compiled code and compiles again: slower, never wrong.
const script = new Script(`(function (require, __filename) {${readFileSync(path, 'latin1')}\n})`, {
  filename: path,
  ...(existsSync(compiled) ? { cachedData: readFileSync(compiled) } : {}),
});
script.runInThisContext()(createRequire(import.meta.url), path);

// Said by the build alone, after a whole letter was made: the functions it needed are kept with the script.
if (process.env.IRONLEAF_KEEP_COMPILED !== undefined) {
  process.on('exit', () => writeFileSync(compiled, script.createCachedData()));
}
