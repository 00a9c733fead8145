// The program's sources and node_modules/ in; every package whose code or faces are shipped, with its licence, out.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const doors = ['src/app/main.ts', 'src/library.ts', 'src/page/main.tsx'];

/**
 * Packages that end in dist/, sorted by name: those with at least one byte in a bundle, and those with a face.
 * Their licences ask that their notices travel with them.
 */
export async function thirdParties(root) {
  const paths = new Set([...(await bundled(root)), ...faces(root)]);
  const parties = [...paths].map((path) => describe(root, path));
  const once = new Map(parties.map((party) => [`${party.name}@${party.version}`, party]));
  return [...once.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

async function bundled(root) {
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: doors.filter((door) => existsSync(join(root, door))),
    outdir: 'dist',
    bundle: true,
    write: false,
    metafile: true,
    platform: 'node',
    format: 'esm',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    logLevel: 'error',
    plugins: [{ name: 'without-fontkit', setup: leaveFontkitOut }],
  });
  return Object.values(metafile.outputs)
    .flatMap(({ inputs }) => Object.entries(inputs))
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .flatMap(([path]) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0] ?? []);
}

function leaveFontkitOut(bundle) {
  bundle.onResolve({ filter: /^fontkit$/ }, ({ path }) => ({ path, external: true }));
}

function faces(root) {
  const { files } = JSON.parse(readFileSync(join(root, 'src/render/pdf/faces.json'), 'utf8'));
  return files.map((file) => `node_modules/${file.package}`);
}

function describe(root, path) {
  const { name, version, license, author } = JSON.parse(
    readFileSync(join(root, path, 'package.json'), 'utf8'),
  );
  const notices = readdirSync(join(root, path)).filter((file) => /^LICEN[CS]E/i.test(file));
  // Of a package with a face, the face alone is shipped.
  const notice = notices.find((file) => file === 'LICENSE_FONT') ?? notices[0];
  const holder = typeof author === 'string' ? author : author?.name;
  return {
    name,
    version,
    licence: license ?? 'see its notice',
    notice:
      notice === undefined
        ? `${license}, ${holder ?? `the authors of ${name}`}`
        : readFileSync(join(root, path, notice), 'utf8').trim(),
  };
}

/** One text to ship beside the bundles. */
export function noticesOf(parties) {
  const rule = '-'.repeat(72);
  return parties
    .map(
      ({ name, version, licence, notice }) =>
        `${rule}\n${name} ${version} (${licence})\n\n${notice}\n`,
    )
    .join('\n');
}
