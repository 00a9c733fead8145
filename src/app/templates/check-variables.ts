// A template's statements and the tree of its variables arrive; every variable that does not exist leaves, with line and column.
import Handlebars from 'handlebars';
import type { Problem } from '../../problem.js';
import type { TemplateText } from '../../render/markup.js';
import { markupProblem } from '../../render/parse-markup.js';
import type { Shape } from './shape.js';

/** Where a statement stands: the things around it, outermost first; `loose` when a helper gave something unknown. */
type Scope = readonly (Shape | 'loose')[];
type Desk = {
  readonly parts: ReadonlyMap<string, TemplateText>;
  readonly problems: Problem[];
  /** Templates that are open now: a part may not include itself. */
  readonly open: readonly string[];
  readonly lists: number;
};

/** Lists within lists of the shipped templates go three deep, parts included. */
const deepest = 4;

/**
 * Follows every path through blocks, lists and parts. A template that cannot be read gives nothing: others say so.
 * @example variableFaults({ name: 'letter', file: 'letter.hbs', text: '{{titel.text}}' }, letterShape, parts)
 */
export function variableFaults(
  template: TemplateText,
  shape: Shape,
  parts: ReadonlyMap<string, TemplateText>,
): readonly Problem[] {
  const problems: Problem[] = [];
  walkTemplate(template, [shape], { parts, problems, open: [], lists: 0 });
  const seen = new Set<string>();
  return problems.filter((problem) => {
    const key = JSON.stringify(problem);
    return !seen.has(key) && seen.add(key);
  });
}

function walkTemplate(template: TemplateText, scope: Scope, desk: Desk) {
  let body: readonly hbs.AST.Statement[];
  try {
    ({ body } = Handlebars.parseWithoutProcessing(template.text));
  } catch {
    return;
  }
  const inside = { ...desk, open: [...desk.open, template.name] };
  for (const statement of body) walk(statement, scope, template, inside);
}

function walk(statement: hbs.AST.Statement, scope: Scope, template: TemplateText, desk: Desk) {
  const refuse = (node: hbs.AST.Node, cannot: string, expected: string) => {
    const { line, column } = node.loc.start;
    desk.problems.push(markupProblem(template.file, line, cannot, expected, column + 1));
  };
  const look = (expression: hbs.AST.Expression): Shape | 'loose' =>
    shapeOf(expression, scope, (path) =>
      refuse(path, `find the variable ${JSON.stringify(path.original)}`, listed),
    );
  if (statement.type === 'MustacheStatement') {
    const { path, params } = statement as hbs.AST.MustacheStatement;
    if (params.length === 0) look(path);
    else params.forEach(look);
  } else if (statement.type === 'BlockStatement') {
    const block = statement as hbs.AST.BlockStatement;
    const [found = 'loose'] = block.params.map(look);
    const name = (block.path as hbs.AST.PathExpression).original;
    const lists = desk.lists + (name === 'each' ? 1 : 0);
    if (lists > deepest)
      return refuse(block, 'go deeper into lists', `at most ${deepest} lists within lists`);
    const inner =
      name === 'each' ? [...scope, rowOf(found)] : name === 'with' ? [...scope, found] : scope;
    for (const one of block.program.body) walk(one, inner, template, { ...desk, lists });
    for (const one of block.inverse?.body ?? []) walk(one, scope, template, desk);
  } else if (statement.type === 'PartialStatement') {
    const partial = statement as hbs.AST.PartialStatement;
    const name = (partial.name as hbs.AST.PathExpression).original;
    const part = desk.parts.get(name);
    if (desk.open.includes(name))
      return refuse(partial, `include ${JSON.stringify(name)} in itself`, 'another part');
    const [given] = partial.params.map(look);
    if (part !== undefined)
      walkTemplate(part, given === undefined ? scope : [...scope, given], desk);
  }
}

const listed = 'a variable listed in templates/README.md';

function rowOf(shape: Shape | 'loose'): Shape | 'loose' {
  return Array.isArray(shape) ? (shape[0] ?? null) : 'loose';
}

type Missing = (path: hbs.AST.PathExpression) => void;

function shapeOf(expression: hbs.AST.Expression, scope: Scope, missing: Missing): Shape | 'loose' {
  if (expression.type === 'SubExpression') {
    const { path, params } = expression as hbs.AST.SubExpression;
    const given = params.map((param) => shapeOf(param, scope, missing));
    const helper = (path as hbs.AST.PathExpression).original;
    // Grouping keeps the rows and puts one more list around them.
    if (helper === 'threes') return [[flatRow(given[0] ?? 'loose')]];
    return helper === 'halves' && given[0] !== undefined && given[0] !== 'loose'
      ? [given[0]]
      : 'loose';
  }
  if (expression.type !== 'PathExpression') return 'loose';
  const path = expression as hbs.AST.PathExpression;
  const [first, ...rest] = path.parts as readonly string[];
  if (path.data) {
    // @first, @last, @index and @key are there in every list; only @root leads on.
    return first === 'root' ? follow(scope[0] ?? 'loose', rest, () => missing(path)) : 'loose';
  }
  const at = scope.at(-1 - path.depth);
  if (at === undefined) {
    missing(path);
    return 'loose';
  }
  return follow(at, path.parts as readonly string[], () => missing(path));
}

function flatRow(shape: Shape | 'loose'): Shape {
  let row: Shape | 'loose' = shape;
  while (Array.isArray(row)) row = row[0] ?? null;
  return row === 'loose' ? null : row;
}

function follow(
  shape: Shape | 'loose',
  parts: readonly string[],
  missing: () => void,
): Shape | 'loose' {
  let at = shape;
  for (const part of parts) {
    if (at === 'loose') return at;
    if (Array.isArray(at) && part === 'length') return null;
    const next: Shape | undefined = isNamed(at) && Object.hasOwn(at, part) ? at[part] : undefined;
    if (next === undefined) {
      missing();
      return 'loose';
    }
    at = next;
  }
  return at;
}

function isNamed(shape: Shape): shape is { readonly [name: string]: Shape } {
  return shape !== null && !Array.isArray(shape);
}
