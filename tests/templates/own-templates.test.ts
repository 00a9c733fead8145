// A clinic's own templates: what they may not do is found before a letter is made, with line and column.
import { mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { readOwnTemplates } from '../../src/app/templates/own-templates.js';
import { partNames, type Shape, shapes } from '../../src/app/templates/shape.js';
import { composeFridgeSheet } from '../../src/letter/index.js';
import { sayProblem } from '../../src/problem.js';
import { openTemplate, renderMarkup } from '../../src/render/markup.js';
import { casesOf } from '../letter/cases.js';
import { examples } from '../letter/examples.js';
import { compose } from '../letter/read-content.js';
import { joined, shapeOf } from './shape.js';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'own-templates-'));
  folders.push(folder);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

const shipped = (name: string) => readFileSync(`templates/${name}.hbs`, 'utf8');

async function faultsOf(files: Readonly<Record<string, string>>): Promise<readonly string[]> {
  const read = await readOwnTemplates(folderWith(files));
  return read.ok ? [] : read.problems.map(sayProblem);
}

/** The shipped letter with one line put in as its third. */
const withLine = (line: string) => {
  const lines = shipped('letter').split('\n');
  return [...lines.slice(0, 2), line, ...lines.slice(2)].join('\n');
};

describe("a clinic's own letter", () => {
  it('is sound as shipped, in every design and part', async () => {
    const names = [...Object.keys(shapes), ...partNames];
    expect(
      await faultsOf(Object.fromEntries(names.map((name) => [`${name}.hbs`, shipped(name)]))),
    ).toEqual([]);
  });

  const cases: readonly (readonly [name: string, line: string, says: string])[] = [
    [
      'an unknown variable',
      '<p>{{titel.text}}</p>',
      'row 3, column 6: cannot find the variable "titel.text"',
    ],
    [
      'a variable that a list does not have',
      '{{#each about}}<p>{{name}}</p>{{/each}}',
      'row 3, column 21: cannot find the variable "name"',
    ],
    [
      'a variable misspelt above its list',
      '{{#each about}}<p>{{../titel.text}}</p>{{/each}}',
      'row 3, column 21: cannot find the variable "../titel.text"',
    ],
    [
      'an unknown helper',
      '<p>{{shout title.text}}</p>',
      'row 3, column 4: cannot use the helper "shout"',
    ],
    [
      'an unknown tag',
      '<p>{{title.text}}</p><video src="x">',
      'row 3, column 22: cannot use the tag <video>',
    ],
    [
      'a picture from elsewhere',
      '<p>{{title.text}}</p><img src="x">',
      'row 3, column 22: cannot use this src on <img>',
    ],
    ['a script', '  <script>', 'row 3, column 3: cannot use the tag <script>'],
    [
      'an unknown class',
      '<p class="loud">a</p>',
      'row 3, column 1: cannot use the class "loud" on <p>',
    ],
    [
      'a style of its own',
      '<p style="color:red">a</p>',
      'row 3, column 1: cannot use the attribute style on <p>',
    ],
    ['raw output', '<p>{{{title.text}}}</p>', 'row 3, column 4: cannot print without escaping'],
    [
      'a part from elsewhere',
      '{{> ../../etc/passwd}}',
      'row 3, column 1: cannot include "../../etc/passwd"',
    ],
    [
      'the inside of the program',
      '<p>{{title.constructor}}</p>',
      'row 3, column 6: cannot find the variable "title.constructor"',
    ],
  ];
  it.each(cases)('is refused for %s, with line and column', async (_, line, says) => {
    const [first] = await faultsOf({ 'letter.hbs': withLine(line) });
    expect(first).toContain(`letter.hbs, ${says}`);
  });

  it.each([
    ['a tag', '<p\u000e\u202e>x</p>'],
    ['a class', '<p class="small\u202e\u0007">x</p>'],
    ['an attribute', '<p da\u0008ta>x</p>'],
    ['a helper', '{{> [\u202epart]}}'],
  ])('cannot rewrite the screen with %s', async (_, line) => {
    const faults = await faultsOf({ 'letter.hbs': withLine(line) });
    expect(faults).not.toEqual([]);
    expect(faults.join('')).not.toMatch(/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u);
  });

  it('is refused when it loses what keeps a patient safe', async () => {
    const faults = await faultsOf({
      'letter.hbs': shipped('letter').replaceAll(/cautions|released/g, 'bands'),
    });
    expect(faults.map((fault) => /without "(\w+)"/.exec(fault)?.[1])).toEqual([
      'released',
      'cautions',
    ]);
  });

  it('is not kept safe by a comment', async () => {
    const text = shipped('letter').replaceAll('cautions', 'bands');
    expect(await faultsOf({ 'letter.hbs': `${text}{{!-- {{cautions}} --}}` })).toHaveLength(1);
  });

  it('may not be larger than 64 kB', async () => {
    const text = shipped('letter');
    const room = 64 * 1024 - Buffer.byteLength(text);
    expect(await faultsOf({ 'letter.hbs': text + ' '.repeat(room) })).toEqual([]);
    expect((await faultsOf({ 'letter.hbs': text + ' '.repeat(room + 1) }))[0]).toContain(
      'at most 64 kB',
    );
  });

  it('may not be a link to another file', async () => {
    const folder = folderWith({});
    symlinkSync(join(process.cwd(), 'package.json'), join(folder, 'letter.hbs'));
    const read = await readOwnTemplates(folder);
    expect(read.ok ? '' : read.problems.map(sayProblem).join()).toContain('no link');
  });

  it('must have a name that is known', async () => {
    expect((await faultsOf({ 'leter.hbs': 'x' }))[0]).toContain(
      'cannot use a template of this name',
    );
  });

  it('may not include a part in itself', async () => {
    const text = `${shipped('step')}\n{{> step}}`;
    const [first] = await faultsOf({ 'step.hbs': text });
    const row = text.split('\n').length;
    expect(first).toContain(`step.hbs, row ${row}, column 1: cannot include "step" in itself`);
  });

  it('may not put lists into lists without end', async () => {
    const deep = `${'{{#each @root.about}}'.repeat(5)}<p>a</p>${'{{/each}}'.repeat(5)}`;
    const [first] = await faultsOf({ 'letter.hbs': withLine(deep) });
    expect(first).toContain('cannot go deeper into lists');
  });

  it('stops when its lists would multiply, and soon', () => {
    const list = Array.from({ length: 100 }, (_, nth) => nth);
    const text = `${'{{#each @root.list}}'.repeat(4)}${'{{/each}}'.repeat(4)}`;
    const opened = openTemplate({ name: 'own', file: 'own.hbs', text });
    const started = performance.now();
    const made = opened.ok ? renderMarkup(opened.value, { list }) : opened;
    expect(made.ok ? '' : made.problems.map(sayProblem).join()).toContain(
      'repeats lists within lists',
    );
    expect(performance.now() - started).toBeLessThan(5_000);
  });
});

describe('the documented variables', () => {
  const paths = (shape: Shape, at = ''): readonly string[] => {
    if (shape === null) return [at];
    if (Array.isArray(shape)) return paths(shape[0] ?? null, `${at}[]`);
    return Object.entries(shape).flatMap(([name, own]) => paths(own, `${at}.${name}`));
  };

  it('are those that letters and sheets have', async () => {
    const inputs = [...casesOf(), ...(await examples())].map(({ input }) => input);
    const letter = inputs.map((input) => shapeOf(compose(input))).reduce(joined, null);
    expect(paths(shapes.letter ?? null).toSorted()).toEqual(paths(letter).toSorted());
    const sheets = inputs.flatMap((input) => {
      const sheet = composeFridgeSheet(input);
      return sheet.ok && sheet.value !== null ? [shapeOf(sheet.value)] : [];
    });
    expect(paths(shapes.fridge ?? null).toSorted()).toEqual(
      paths(sheets.reduce(joined, null)).toSorted(),
    );
  });
});
