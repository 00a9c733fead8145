// src/library.ts in; dist/library.js with its late parts and dist/library.d.ts out: what `import 'ironleaf'` gives.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { rollup } from 'rollup';
import { dts } from 'rollup-plugin-dts';

/** Bundles the door for other programs and its types; both stand alone, so that the package depends on nothing. */
export async function buildLibrary(root, { plugins, ...common }) {
  const dist = join(root, 'dist');
  await build({
    ...common,
    entryPoints: { library: join(root, 'src/library.ts') },
    outdir: dist,
    format: 'esm',
    splitting: true,
    // A flat folder: the WebAssembly files are looked for beside the script that opens them.
    chunkNames: 'library-[name]-[hash]',
    define: { tablesAreRead: 'true' },
    plugins,
    // Bundled CommonJS packages ask for require; ES modules have none.
    banner: {
      js: "import { createRequire as ironleafRequire } from 'node:module'; const require = ironleafRequire(import.meta.url);",
    },
  });
  const types = join(dist, 'library.d.ts');
  rmSync(types, { force: true });
  const bundle = await rollup({
    input: join(root, 'src/library.ts'),
    plugins: [dts({ tsconfig: join(root, 'tsconfig.json'), respectExternal: false })],
    external: (name) => !name.startsWith('.') && !name.startsWith('/'),
    onwarn: ({ message }) => {
      throw new Error(`library.d.ts: ${message}`);
    },
  });
  await bundle.write({ file: types, format: 'es' });
  await bundle.close();
}
