// The page's sources in, dist/page/ out: one script and one style sheet, which the program puts together with data.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

/** Half of Handlebars compiles, which the page may not: its templates come as code. */
const alias = {
  handlebars: 'handlebars/runtime',
  'csv-parse/sync': 'csv-parse/browser/esm/sync',
};

/** Emscripten's loader would fetch its WebAssembly file; the page holds it as data. */
const shaperInside = {
  name: 'shaper-inside',
  setup(bundle) {
    bundle.onLoad({ filter: /harfbuzzjs[\\/]dist[\\/]index\.mjs$/ }, ({ path }) => {
      const plain = 'createHarfBuzz()';
      const text = readFileSync(path, 'utf8');
      if (!text.includes(plain)) throw new Error('harfbuzzjs starts in another way than expected');
      const contents = text.replace(
        plain,
        "createHarfBuzz({ wasmBinary: globalThis.ironleafData('harfbuzz.wasm') })",
      );
      return { contents };
    });
  },
};

/** Neither of pdfkit's other halves runs here: fonts are HarfBuzz's, and the browser build needs no streams of Node. */
const leftOut = (root) => ({
  name: 'left-out',
  setup(bundle) {
    bundle.onResolve({ filter: /^fontkit$/ }, ({ path }) => ({ path, namespace: 'left-out' }));
    bundle.onLoad({ filter: /./, namespace: 'left-out' }, () => ({
      contents: `export function create() { throw new Error('Fonts are opened by HarfBuzz') }`,
    }));
    bundle.onLoad({ filter: /zod[\\/]v4[\\/]locales[\\/]index\.js$/ }, () => ({
      contents: `export { default as en } from './en.js'`,
    }));
    // The one thing asked of Node's cryptography is a hash, and a page opened from a disk has none of its own to give.
    bundle.onResolve({ filter: /^node:crypto$/ }, () => ({ path: 'sha256', namespace: 'hash' }));
    bundle.onLoad({ filter: /./, namespace: 'hash' }, () => ({
      contents: `import { sha256 } from '@noble/hashes/sha2';
        import { bytesToHex } from '@noble/hashes/utils';
        export const createHash = () => ({
          update: (content) => ({
            digest: (form) => (form === 'hex' ? bytesToHex(sha256(content)) : sha256(content)),
          }),
        });`,
      resolveDir: root,
    }));
    // Files of a disk are opened by the command line alone; a static import of one would stop the page.
    bundle.onResolve({ filter: /^node:/ }, ({ path, kind, importer }) => {
      if (kind !== 'dynamic-import')
        throw new Error(`${importer} needs ${path}: the page has none`);
      return { path, external: true };
    });
  },
});

/** Builds what `ironleaf page` serves; sizes are said by the program when it writes a copy. */
export async function buildPage(root) {
  const out = join(root, 'dist/page');
  mkdirSync(out, { recursive: true });
  const { metafile } = await build({
    entryPoints: { page: join(root, 'src/page/main.tsx') },
    outdir: out,
    bundle: true,
    format: 'esm',
    platform: 'browser',
    target: ['chrome111', 'firefox114', 'safari16.4'],
    minify: true,
    legalComments: 'none',
    logLevel: 'warning',
    metafile: true,
    jsx: 'automatic',
    jsxImportSource: 'preact',
    alias,
    external: ['fs', 'crypto', 'module'],
    define: {
      'process.env.NODE_ENV': '"production"',
      'globalThis.process': 'undefined',
      process: 'undefined',
      tablesAreRead: 'true',
    },
    plugins: [leftOut(root), shaperInside],
  });
  writeFileSync(join(out, 'made-of.json'), JSON.stringify(madeOf(metafile)));
}

/** Bytes of each package in the script, the largest first, for whoever wonders at its size. */
function madeOf({ outputs }) {
  const [script] = Object.entries(outputs).filter(([name]) => name.endsWith('.js'));
  const sizes = new Map();
  for (const [path, { bytesInOutput }] of Object.entries(script?.[1].inputs ?? {})) {
    const name =
      /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? path.split('/').slice(0, 2).join('/');
    sizes.set(name, (sizes.get(name) ?? 0) + bytesInOutput);
  }
  return Object.fromEntries([...sizes].sort(([, a], [, b]) => b - a));
}
