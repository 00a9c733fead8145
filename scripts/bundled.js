// A TypeScript file of the tests arrives; it is bundled for this Node and what it exports leaves.
import { mkdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** For scripts that share their work with a test: `await bundled('tests/intake/fuzz.ts')`. */
export async function bundled(path) {
  const outfile = join(root, '.cache', `ironleaf-${basename(path, '.ts')}.js`);
  mkdirSync(dirname(outfile), { recursive: true });
  await build({
    entryPoints: [join(root, path)],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    logLevel: 'warning',
  });
  return import(pathToFileURL(outfile).href);
}
