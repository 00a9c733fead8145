// The text of a template arrives; everything a template may not do leaves, with file and line.
import Handlebars from 'handlebars';
import type { Problem } from '../problem.js';
import { helperNames } from './helpers.js';
import type { TemplateText } from './markup.js';
import { markupProblem } from './parse-markup.js';
import { faultsInTags } from './parse-tags.js';
import { filler, unknownValue } from './vocabulary.js';

type Statement = hbs.AST.Statement;
type Check = {
  readonly template: TemplateText;
  readonly partials: readonly string[];
  readonly problems: Problem[];
};

/**
 * Checks a template before anything is filled in: its Handlebars statements, then the tags around them.
 * @example checkTemplate({ name: 'a', file: 'a.hbs', text: '{{{x}}}' }, []) // cannot print without escaping
 */
export function checkTemplate(
  template: TemplateText,
  partials: readonly string[],
): readonly Problem[] {
  const check: Check = { template, partials, problems: [] };
  try {
    checkAll(Handlebars.parseWithoutProcessing(template.text).body, check);
  } catch (error) {
    const line = error instanceof Error ? /line (\d+)/.exec(error.message)?.[1] : undefined;
    return [
      markupProblem(
        template.file,
        Number(line ?? 1),
        'read the template',
        'Handlebars as in templates/README.md',
      ),
    ];
  }
  return [...check.problems, ...faultsInTags(withoutStatements(template.text), template.file)];
}

function checkAll(statements: readonly Statement[], check: Check) {
  for (const statement of statements) checkStatement(statement, check);
}

function checkStatement(statement: Statement, check: Check) {
  const refuse = (cannot: string, expected: string | null) =>
    check.problems.push(
      markupProblem(
        check.template.file,
        statement.loc.start.line,
        cannot,
        expected,
        statement.loc.start.column + 1,
      ),
    );
  switch (statement.type) {
    case 'MustacheStatement': {
      const mustache = statement as hbs.AST.MustacheStatement;
      if (!mustache.escaped) refuse('print without escaping', '{{two braces}}');
      if (mustache.params.length > 0) checkCall(mustache.path, refuse);
      for (const param of mustache.params) checkExpression(param, refuse);
      break;
    }
    case 'BlockStatement': {
      const block = statement as hbs.AST.BlockStatement;
      checkCall(block.path, refuse);
      for (const param of block.params) checkExpression(param, refuse);
      checkAll(block.program.body, check);
      if (block.inverse !== undefined && block.inverse !== null)
        checkAll(block.inverse.body, check);
      break;
    }
    case 'PartialStatement': {
      const { name } = statement as hbs.AST.PartialStatement;
      const called =
        name.type === 'PathExpression' ? (name as hbs.AST.PathExpression).original : null;
      if (called === null || !check.partials.includes(called)) {
        refuse(
          `include ${called === null ? 'a computed partial' : JSON.stringify(called)}`,
          check.partials.join(', ') || 'no partial',
        );
      }
      break;
    }
    case 'ContentStatement':
    case 'CommentStatement':
      break;
    default:
      refuse('use this Handlebars statement', 'variables, helpers, blocks and partials');
  }
}

type Refuse = (cannot: string, expected: string | null) => void;

function checkExpression(expression: hbs.AST.Expression, refuse: Refuse) {
  if (expression.type !== 'SubExpression') return;
  const call = expression as hbs.AST.SubExpression;
  checkCall(call.path, refuse);
  for (const param of call.params) checkExpression(param, refuse);
}

function checkCall(path: hbs.AST.Expression, refuse: Refuse) {
  const name = path.type === 'PathExpression' ? (path as hbs.AST.PathExpression).original : '';
  if (!helperNames.includes(name)) {
    refuse(`use the helper ${JSON.stringify(name)}`, helperNames.join(', '));
  }
}

/** Statements give way to a mark that stands for any value, and to filler: lines and columns keep their numbers. */
function withoutStatements(text: string): string {
  return text.replace(/\{\{!--[\s\S]*?--\}\}|\{\{[\s\S]*?\}\}/g, (statement) => {
    const room = statement.replace(/[^\n]/g, filler);
    return /^\{\{~?[#/!^>]|^\{\{~?else/.test(statement) ? room : unknownValue + room.slice(1);
  });
}
