// Markup arrives as text; a tree of the closed subset with line numbers leaves, or what is foreign in it.
import { Parser } from 'htmlparser2';
import { type Checked, type Problem, faulty, fine } from '../problem.js';
import { lineFinder } from './line-finder.js';
import { faultsOfTag } from './vocabulary.js';

export type Element = {
  readonly tag: string;
  readonly line: number;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
};
export type Node = Element | { readonly text: string; readonly line: number };

type Growing = {
  tag: string;
  line: number;
  attributes: Record<string, string>;
  children: (Growing | { text: string; line: number })[];
};

export function isElement(node: Node): node is Element {
  return 'tag' in node;
}

/** A problem of a template or its markup; `line` and `column` are one-based. */
export function markupProblem(
  file: string,
  line: number,
  cannot: string,
  expected: string | null,
  column: number | null = null,
): Problem {
  return {
    code: 'markup-refused',
    place: { file, row: line, field: column === null ? null : `column ${column}` },
    cannot: `cannot ${cannot}`,
    found: null,
    expected,
    remedy: null,
  };
}

/** Tags without a closing tag. */
export const emptyTags: ReadonlySet<string> = new Set(['hr', 'img']);

/**
 * Reads markup into a tree. Nothing is repaired: an unknown tag, class or attribute, a tag left open or
 * closed twice, a comment with a condition, each is a problem with its line.
 * @example parseMarkup('<p class="loud">Hi</p>', 'letter') // cannot use the class "loud" on <p>
 */
export function parseMarkup(markup: string, file: string): Checked<readonly Node[]> {
  const problems: Problem[] = [];
  const lineOf = lineFinder(markup);
  const root: Growing = { tag: '', line: 1, attributes: {}, children: [] };
  const open: Growing[] = [root];
  const closings = new Set<number>();
  const top = () => open.at(-1) ?? root;
  const complain = (line: number, cannot: string, expected: string | null) =>
    problems.push(markupProblem(file, line, cannot, expected));

  const parser = new Parser(
    {
      onopentag(tag, attributes, implied) {
        const line = lineOf(parser.startIndex);
        if (implied) complain(line, `close <${tag}> here`, `an opening <${tag}> before it`);
        for (const fault of faultsOfTag(tag, attributes))
          complain(line, fault.cannot, fault.expected);
        const element: Growing = { tag, line, attributes, children: [] };
        top().children.push(element);
        open.push(element);
      },
      onclosetag(tag, implied) {
        const element = open.length > 1 ? open.pop() : undefined;
        if (!implied) closings.add(parser.startIndex);
        const selfClosed = implied && markup.startsWith('/>', parser.endIndex - 1);
        if (implied && !selfClosed && !emptyTags.has(tag)) {
          complain(element?.line ?? 1, `find the end of <${tag}>`, `</${tag}>`);
        }
      },
      ontext(text) {
        // The parser hands text over in pieces at every entity; an isolate may span several of them.
        const last = top().children.at(-1);
        if (last !== undefined && 'text' in last) last.text += text;
        else top().children.push({ text, line: lineOf(parser.startIndex) });
      },
      onprocessinginstruction() {
        complain(
          lineOf(parser.startIndex),
          'use a declaration or an instruction',
          'only tags and text',
        );
      },
    },
    { lowerCaseAttributeNames: false, decodeEntities: true, recognizeSelfClosing: false },
  );
  parser.end(markup);

  for (const match of withoutComments(markup).matchAll(/<\/[A-Za-z]/g)) {
    if (!closings.has(match.index))
      complain(lineOf(match.index), 'close a tag that is not open', null);
  }
  return problems.length > 0 ? faulty(problems) : fine(root.children);
}

/** Comments blanked, so that their text keeps its places but says nothing. */
function withoutComments(markup: string): string {
  return markup.replace(/<!--[\s\S]*?-->/g, (comment) => ' '.repeat(comment.length));
}
