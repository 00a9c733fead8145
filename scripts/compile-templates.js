// The shipped templates in; one module out that holds them as code, each with the seal of its text.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

/** What src/app/shipped-templates.ts says in the built program. Throws the sentence of a template that is faulty. */
export async function compileTemplates(root) {
  const folder = join(root, 'templates');
  const all = readdirSync(folder)
    .filter((file) => file.endsWith('.hbs'))
    .sort()
    .map((file) => ({
      name: file.replace(/\.hbs$/, ''),
      file,
      text: readFileSync(join(folder, file), 'utf8'),
    }));
  const { precompileTemplates } = await roomOf(root);
  const code = precompileTemplates(all);
  if (!code.ok) throw new Error(JSON.stringify(code.problems));
  const seals = all.map(({ name, text }) => [
    name,
    createHash('sha256').update(text, 'utf8').digest('hex'),
  ]);
  return `export const shippedTemplates = {
    ahead: ${code.value},
    seals: ${JSON.stringify(Object.fromEntries(seals))},
  };`;
}

/** The program's own way to compile a template, so that there is one. */
async function roomOf(root) {
  const { outputFiles } = await build({
    entryPoints: [join(root, 'src/render/precompiled.ts')],
    bundle: true,
    format: 'esm',
    platform: 'node',
    mainFields: ['browser', 'module', 'main'],
    write: false,
    logLevel: 'warning',
  });
  const code = Buffer.from(outputFiles[0].contents).toString('base64');
  return import(`data:text/javascript;base64,${code}`);
}
