// Sources in, dist/ out: one bundle with lazy chunks, the two WebAssembly files and the fonts beside it.
import {
  chmodSync,
  copyFileSync,
  cpSync,
  mkdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { cutFace } from './cut-face.js';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const dist = join(root, 'dist');
const modules = join(root, 'node_modules');

/** pdfkit opens no font here, since HarfBuzz shapes every letter: four fifths of its chunk stay out. */
const withoutFontkit = {
  name: 'without-fontkit',
  setup(bundle) {
    bundle.onResolve({ filter: /^fontkit$/ }, ({ path }) => ({ path, namespace: 'left-out' }));
    bundle.onLoad({ filter: /./, namespace: 'left-out' }, () => ({
      contents: `export function create() { throw new Error('Fonts are opened by HarfBuzz') }`,
    }));
  },
};

rmSync(dist, { recursive: true, force: true });
mkdirSync(join(dist, 'fonts'), { recursive: true });

await build({
  entryPoints: { ironleaf: join(root, 'src/app/main.ts') },
  outdir: dist,
  bundle: true,
  splitting: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  minify: true,
  keepNames: true,
  legalComments: 'none',
  chunkNames: 'chunks/[name]-[hash]',
  logLevel: 'warning',
  plugins: [withoutFontkit],
  // Bundled CommonJS packages ask for require; ES modules have none.
  banner: {
    js: "import { createRequire as __ironleafRequire } from 'node:module'; const require = __ironleafRequire(import.meta.url);",
  },
});

chmodSync(join(dist, 'ironleaf.js'), 0o755);
for (const wasm of ['harfbuzz.wasm', 'harfbuzz-subset.wasm']) {
  copyFileSync(join(modules, 'harfbuzzjs/dist', wasm), join(dist, 'chunks', wasm));
}

const faces = JSON.parse(readFileSync(join(root, 'src/render/pdf/faces.json'), 'utf8'));
for (const { file, package: name, path, cut } of faces.files) {
  const whole = join(modules, name, path);
  const copy = join(dist, 'fonts', file);
  if (cut === undefined) copyFileSync(whole, copy);
  else
    writeFileSync(copy, await cutFace(readFileSync(whole), cut, join(modules, '.cache/ironleaf')));
  const licence = join(dist, 'fonts', `LICENCE-${name.replace(/[^a-z0-9-]+/g, '-')}.txt`);
  cpSync(join(modules, name, 'LICENSE_FONT'), licence);
}
