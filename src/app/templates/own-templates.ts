// A folder of a clinic's own templates arrives; their texts leave, checked, or everything that is wrong in them.
import { lstat, open, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type Checked, faulty, fine, type Problem } from '../../problem.js';
import { checkTemplate } from '../../render/check-template.js';
import type { TemplateText } from '../../render/markup.js';
import { readTemplate } from '../assets.js';
import { Stop, status } from '../status.js';
import { ownNames, partNames, shapes } from './shape.js';
import { variableFaults } from './check-variables.js';

/** The largest shipped template has 4 kB. */
const mostBytes = 64 * 1024;

export type OwnTemplates = ReadonlyMap<string, string>;

/**
 * Reads and checks every template of the folder. Other files are left alone; nothing outside the folder is opened:
 * a link is refused, a part can only be one of the known names.
 * Problems, with line and column: unknown names of files, variables, helpers, parts, tags and classes; output
 * without escaping; a file that is too large or is a link; words a letter may not lose.
 * @example await readOwnTemplates('our-templates') // fine(Map { 'letter' → '<article …' })
 */
export async function readOwnTemplates(folder: string): Promise<Checked<OwnTemplates>> {
  const names = await readdir(folder).catch(() => {
    throw new Stop(status.noInput, [
      '--templates: cannot read the folder; expected one with .hbs files.',
    ]);
  });
  const own = new Map<string, string>();
  const problems: Problem[] = [];
  for (const file of names.filter((name) => name.endsWith('.hbs')).sort()) {
    const name = file.replace(/\.hbs$/, '');
    if (!ownNames.includes(name)) {
      problems.push(refused(file, 'use a template of this name', `${ownNames.join('.hbs, ')}.hbs`));
      continue;
    }
    const text = await readBounded(join(folder, file));
    if (text === null)
      problems.push(
        refused(file, 'read the template', `a file of at most ${mostBytes / 1024} kB, no link`),
      );
    else own.set(name, text);
  }
  if (names.length === 0 || (own.size === 0 && problems.length === 0))
    problems.push(refused(null, 'find a template in the folder', `${ownNames.join('.hbs, ')}.hbs`));
  problems.push(...(await faultsIn(own)));
  return problems.length > 0 ? faulty(problems) : fine(own);
}

async function readBounded(path: string): Promise<string | null> {
  if (!(await lstat(path)).isFile()) return null;
  const handle = await open(path, 'r');
  try {
    const { bytesRead, buffer } = await handle.read(
      Buffer.alloc(mostBytes + 1),
      0,
      mostBytes + 1,
      0,
    );
    return bytesRead > mostBytes ? null : buffer.subarray(0, bytesRead).toString('utf8');
  } finally {
    await handle.close();
  }
}

async function faultsIn(own: OwnTemplates): Promise<readonly Problem[]> {
  const text = async (name: string): Promise<TemplateText> => ({
    name,
    file: `${name}.hbs`,
    text: own.get(name) ?? (await readTemplate(name)),
  });
  const parts = new Map(
    await Promise.all(partNames.map(async (name) => [name, await text(name)] as const)),
  );
  const problems: Problem[] = [];
  for (const name of own.keys()) problems.push(...checkTemplate(await text(name), partNames));
  if (problems.length > 0) return problems;
  // A part of one's own is filled by the shipped letter when no letter is brought.
  const wholes = Object.keys(shapes).filter(
    (name) => own.has(name) || (name === 'letter' && own.size > 0),
  );
  for (const name of wholes) {
    const template = await text(name);
    problems.push(...variableFaults(template, shapes[name] ?? null, parts));
    if (name !== 'fridge') problems.push(...lossesIn(template, parts));
  }
  return problems;
}

/** What no letter may leave out: without it a letter can hurt someone. */
const needed = [
  'bands',
  'released',
  'summary',
  'yourSteps',
  'help',
  'contact',
  'cautions',
  'signature',
];

function lossesIn(
  template: TemplateText,
  parts: ReadonlyMap<string, TemplateText>,
): readonly Problem[] {
  const included = [...template.text.matchAll(/\{\{>\s*([\w-]+)/g)].map(
    ([, name]) => parts.get(name ?? '')?.text ?? '',
  );
  const whole = [template.text, ...included]
    .join('\n')
    .replace(/\{\{!--[\s\S]*?--\}\}|\{\{![\s\S]*?\}\}/g, '');
  return needed
    .filter((name) => !new RegExp(`\\{\\{[^}]*\\b${name}\\b`).test(whole))
    .map((name) =>
      refused(template.file, `make a letter without ${JSON.stringify(name)}`, 'it in the template'),
    );
}

function refused(file: string | null, cannot: string, expected: string): Problem {
  return {
    code: 'template-refused',
    place: { file, row: null, field: null },
    cannot: `cannot ${cannot}`,
    found: null,
    expected,
    remedy: null,
  };
}
