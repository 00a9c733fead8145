// Sources in, dist/ out: the program as one script with its compiled code, the shaper and the fonts beside it.
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
import { buildLibrary } from './build-library.js';
import { buildPage } from './build-page.js';
import { compileTemplates } from './compile-templates.js';
import { cutFace } from './cut-face.js';
import { keepCompiled } from './keep-compiled.js';
import { readTables } from './read-tables.js';
import { noticesOf, thirdParties } from './third-party.js';

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

/** pdfkit makes its tables of ciphers while it loads; a letter without a password has no use for them. */
const ciphersWhenAsked = {
  name: 'ciphers-when-asked',
  setup(bundle) {
    bundle.onLoad({ filter: /pdfkit[\\/]js[\\/]pdfkit\.node\.mjs$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      const early = "import { cbc, ecb } from '@noble/ciphers/aes';";
      if (!text.includes(early)) throw new Error('pdfkit no longer takes its ciphers as expected');
      const late = ['cbc', 'ecb']
        .map((name) => `const ${name} = (...of) => require('@noble/ciphers/aes').${name}(...of);`)
        .join('\n');
      return { contents: text.replace(early, late) };
    });
  },
};

/** zod speaks fifty languages and our problems speak for themselves: its other catalogues stay out. */
const zodInEnglish = {
  name: 'zod-in-english',
  setup(bundle) {
    bundle.onLoad({ filter: /zod[\\/]v4[\\/]locales[\\/]index\.js$/ }, () => ({
      contents: `export { default as en } from './en.js'`,
    }));
  },
};

/** Help is laid out when it is asked for. yargs does so before every command, lest one fail and show it: ours never do. */
const helpWhenAsked = {
  name: 'help-when-asked',
  setup(bundle) {
    bundle.onLoad({ filter: /yargs[\\/]build[\\/]lib[\\/]usage\.js$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      const early = 'cachedHelpMessage = this.help();';
      if (!text.includes(early)) throw new Error('yargs no longer keeps its help as expected');
      return { contents: text.replace(early, '') };
    });
  },
};

const calls = (path, ...names) =>
  names
    .map((name) => `export const ${name} = (...of) => require('${path}').${name}(...of);`)
    .join('\n');
/** A CommonJS package is its own default. */
const callsDefault = (path) => `const own = () => require('${path}').default ?? require('${path}');
  export default function (...of) { return new.target ? new (own())(...of) : own()(...of); }`;

/** What few commands call and what takes longer to load than a report takes to read, as code that loads it when called. */
const late = {
  // Only help needs to know how wide a character is.
  cliui: callsDefault('cliui'),
  'string-width': callsDefault('string-width'),
  linebreak: callsDefault('linebreak'),
  assert: calls('assert', 'notStrictEqual', 'strictEqual'),
  'node:crypto': calls('node:crypto', 'createHash', 'randomUUID'),
  // yargs keeps a way to load configurations, of which there are none.
  'node:module':
    "export const createRequire = (from) => (name) => require('node:module').createRequire(from)(name);",
};

const whenAsked = {
  name: 'when-asked',
  setup(bundle) {
    const filter = new RegExp(`^(?:${Object.keys(late).join('|')})$`);
    bundle.onResolve({ filter }, ({ path, namespace, resolveDir }) =>
      namespace === 'when-asked' ? null : { path, namespace: 'when-asked', pluginData: resolveDir },
    );
    bundle.onLoad({ filter, namespace: 'when-asked' }, ({ path, pluginData: resolveDir }) => ({
      contents: late[path],
      resolveDir,
    }));
  },
};

/** What linebreak knows of every character comes packed twice; the script that unpacks it is slow until it is warm. */
const breaksUnpacked = {
  name: 'breaks-unpacked',
  setup(bundle) {
    bundle.onLoad({ filter: /tiny-inflate[\\/]index\.js$/ }, () => ({
      contents: `module.exports = (packed, room) => {
        room.set(require('node:zlib').inflateRawSync(packed));
        return room;
      };`,
    }));
  },
};

/** Templates are compiled here, where nobody waits. */
const templatesAhead = {
  name: 'templates-ahead',
  setup(bundle) {
    bundle.onLoad({ filter: /app[\\/]shipped-templates\.ts$/ }, async () => ({
      contents: await compileTemplates(root),
    }));
  },
};

/** One script cannot wait while it loads: HarfBuzz says when it is ready, and the faces are opened after. */
const waitForHarfbuzz = {
  name: 'wait-for-harfbuzz',
  setup(bundle) {
    bundle.onLoad({ filter: /harfbuzzjs[\\/]dist[\\/]index\.mjs$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      const waiting = 'init(await createHarfBuzz());';
      if (!text.includes(waiting)) throw new Error('harfbuzzjs no longer starts as expected');
      return {
        contents: text.replace(waiting, 'export const ready = createHarfBuzz().then(init);'),
      };
    });
    bundle.onLoad({ filter: /pdf[\\/]harfbuzz-ready\.ts$/ }, () => ({
      contents: `export { ready as harfbuzzReady } from 'harfbuzzjs'`,
      resolveDir: root,
    }));
  },
};

await readTables(root);
rmSync(dist, { recursive: true, force: true });
mkdirSync(join(dist, 'fonts'), { recursive: true });

const common = {
  bundle: true,
  platform: 'node',
  target: 'node20.19',
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
};

await build({
  ...common,
  entryPoints: [join(root, 'src/app/main.ts')],
  outfile: join(dist, 'program.cjs'),
  format: 'cjs',
  // A script is given no loader of modules: what is imported late is required late.
  supported: { 'dynamic-import': false },
  define: { tablesAreRead: 'true', 'import.meta.url': 'programUrl' },
  // The same code without the threads of Node, which no letter needs.
  alias: { fflate: 'fflate/browser' },
  plugins: [
    withoutFontkit,
    ciphersWhenAsked,
    zodInEnglish,
    helpWhenAsked,
    whenAsked,
    breaksUnpacked,
    templatesAhead,
    waitForHarfbuzz,
  ],
  banner: { js: "const programUrl = require('node:url').pathToFileURL(__filename).href;" },
});
await build({
  ...common,
  entryPoints: [join(root, 'src/app/start.ts')],
  outfile: join(dist, 'ironleaf.cjs'),
  format: 'cjs',
});

if (/[^\0-\x7f]/.test(readFileSync(join(dist, 'program.cjs'), 'latin1')))
  throw new Error(
    'A regular expression or String.raw holds a letter outside ASCII: escape it (\\u2264)',
  );
chmodSync(join(dist, 'ironleaf.cjs'), 0o755);
copyFileSync(join(modules, 'harfbuzzjs/dist/harfbuzz.wasm'), join(dist, 'harfbuzz.wasm'));

const faces = JSON.parse(readFileSync(join(root, 'src/render/pdf/faces.json'), 'utf8'));
for (const { file, package: name, path, cut } of faces.files) {
  const whole = join(modules, name, path);
  const copy = join(dist, 'fonts', file);
  if (cut === undefined) copyFileSync(whole, copy);
  else writeFileSync(copy, await cutFace(readFileSync(whole), cut, join(root, '.cache')));
  const licence = join(dist, 'fonts', `LICENCE-${name.replace(/[^a-z0-9-]+/g, '-')}.txt`);
  cpSync(join(modules, name, 'LICENSE_FONT'), licence);
}

await buildPage(root);
await buildLibrary(root, { ...common, plugins: [withoutFontkit, zodInEnglish] });
writeFileSync(join(dist, 'THIRD-PARTY.txt'), noticesOf(await thirdParties(root)));
keepCompiled(root);
