// The page's script, the languages wished for and their faces arrive; one HTML file that needs nothing else leaves.
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { readLanguage } from '../../letter/index.js';
import { sayProblem } from '../../problem.js';
import { familiesFor } from '../../render/pdf/faces.js';
import { precompileTemplates } from '../../render/precompiled.js';
import {
  exampleClinic,
  fontFolder,
  programVersion,
  readLanguageFiles,
  readTemplate,
} from '../assets.js';
import { partialNames } from '../kit.js';
import { Stop, status } from '../status.js';

const mainTemplates = ['letter', 'easy-read', 'reasoning', 'fridge'] as const;
const wasms = ['harfbuzz.wasm'] as const;

export type Page = {
  readonly html: string;
  /** The policy the page carries in itself, for a server to say as well. */
  readonly policy: string;
};

/**
 * Puts the whole program into one file that opens from a disk with no network. Stops with status 65 where a language
 * lacks a message.
 * @param languages tags such as ['en', 'ar']; English is always there, for the clinician's sheets.
 * @param clinic parsed details of the one clinic this copy is for, or null.
 * @example (await assemblePage(['en'], null)).html.length // about 2,500,000
 */
export async function assemblePage(
  languages: readonly string[],
  clinic: unknown,
  pageFolder: string = join(dirname(fontFolder), 'page'),
): Promise<Page> {
  const tags = [...new Set(['en', ...languages])];
  const files = new Map<string, Record<string, unknown>>();
  for (const tag of tags) files.set(tag, await readLanguageFiles(tag));
  mustBeWhole(files);
  const script = await readFile(join(pageFolder, 'page.js'), 'utf8');
  const style = await readFile(join(pageFolder, 'page.css'), 'utf8');
  const templates = await templateScript();
  const facts = {
    version: await programVersion(),
    languages: tags,
    exampleClinic: JSON.parse(await readFile(exampleClinic, 'utf8')) as unknown,
    clinic,
  };
  const blocks = [jsonBlock('facts', facts)];
  for (const [tag, catalogue] of files) blocks.push(jsonBlock(`locale:${tag}`, catalogue));
  const faces = tags.flatMap(familiesFor).flatMap(({ regular, bold }) => [regular, bold]);
  for (const file of new Set(faces))
    blocks.push(bytesBlock(file, await readFile(join(fontFolder, file))));
  for (const file of wasms) blocks.push(bytesBlock(file, await readWasm(file)));
  const policy = [
    "default-src 'none'",
    `script-src ${hashOf(templates)} ${hashOf(script)} 'wasm-unsafe-eval'`,
    `style-src ${hashOf(style)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const html = [
    '<!doctype html>',
    '<html lang="en" dir="ltr">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    '<meta name="robots" content="noindex">',
    '<title>Ironleaf</title>',
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    '<div id="page"></div>',
    '<noscript>This page is a program. Please allow scripts for it: it sends nothing anywhere.</noscript>',
    ...blocks,
    `<script>${templates}</script>`,
    `<script type="module">${script}</script>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
  return { html, policy };
}

/** A copy is carried far away: a language that lacks a message is met here, not there. */
function mustBeWhole(files: ReadonlyMap<string, Record<string, unknown>>): void {
  const problems = [...files].flatMap(([tag, catalogue]) => {
    const read = readLanguage(tag, catalogue);
    return read.ok ? [] : read.problems;
  });
  if (problems.length > 0) throw new Stop(status.badData, problems.map(sayProblem));
}

async function templateScript(): Promise<string> {
  const texts = await Promise.all(
    [...mainTemplates, ...partialNames].map(async (name) => ({
      name,
      file: `${name}.hbs`,
      text: await readTemplate(name),
    })),
  );
  const ahead = precompileTemplates(texts);
  if (!ahead.ok) throw new Stop(status.badData, ahead.problems.map(sayProblem));
  const made = `globalThis.ironleafTemplates={ahead:${ahead.value},partials:${JSON.stringify(partialNames)}};`;
  return made.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
}

/** Beside the bundle once built; inside its package before that. */
async function readWasm(file: string): Promise<Uint8Array> {
  const built = await readFile(join(dirname(fontFolder), file)).catch(() => null);
  return (
    built ?? readFile(join(dirname(dirname(fontFolder)), 'node_modules/harfbuzzjs/dist', file))
  );
}

/** CSP Level 3, 6.7.3: the hash of what stands between the tags. */
function hashOf(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

function jsonBlock(name: string, value: unknown): string {
  const text = JSON.stringify(value).replaceAll('<', '\\u003c');
  return `<script type="application/json" id="data:${name}">${text}</script>`;
}

function bytesBlock(name: string, bytes: Uint8Array): string {
  const text = gzipSync(bytes, { level: 9 }).toString('base64');
  return `<script type="text/plain" id="data:${name}">${text}</script>`;
}
