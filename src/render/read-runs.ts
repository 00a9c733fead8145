// Inline nodes of the markup arrive; runs of text with one look each leave, numbers isolated.
import type { Problem } from '../problem.js';
import type { Direction, Run } from './block.js';
import { type Node, isElement, markupProblem } from './parse-markup.js';

type Look = Omit<Run, 'text'>;

const plainLook: Look = { strong: false, lang: null, isolate: null, href: null };

/**
 * Reads inline nodes: text, strong, bdi, span and a; anything else becomes a problem.
 * White space is folded as in HTML. Isolate characters become isolated runs; the older embedding and
 * override controls (U+202A to U+202E) and other control characters are dropped, so a name cannot turn
 * the text around it.
 * @example readRuns(nodes of 'Iron <strong>low</strong>', 'letter', problems) // two runs, the second strong
 */
export function readRuns(
  nodes: readonly Node[],
  file: string,
  problems: Problem[],
): readonly Run[] {
  return foldSpace(nodes.flatMap((node) => runsOf(node, plainLook, file, problems)));
}

function runsOf(node: Node, look: Look, file: string, problems: Problem[]): Run[] {
  if (!isElement(node)) return splitIsolates(node.text, look);
  const within = (inner: Look) =>
    node.children.flatMap((child) => runsOf(child, inner, file, problems));
  switch (node.tag) {
    case 'strong':
      return within({ ...look, strong: true });
    case 'span':
      return within({ ...look, lang: node.attributes.lang ?? look.lang });
    case 'a':
      return within({ ...look, href: node.attributes.href ?? look.href });
    case 'bdi':
      return within({ ...look, isolate: directionOfBdi(node.attributes.dir, textOf(node)) });
    default:
      problems.push(
        markupProblem(
          file,
          node.line,
          `put <${node.tag}> inside a line of text`,
          'strong, bdi, span or a',
        ),
      );
      return [];
  }
}

/** The text of a node and of everything in it. */
export function textOf(node: Node): string {
  return isElement(node) ? node.children.map(textOf).join('') : node.text;
}

const firstStrong = /[\p{L}]/u;
const rightToLeft =
  /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** True when the text holds a letter of a right-to-left script. */
export function hasRightToLeft(text: string): boolean {
  return rightToLeft.test(text);
}

/** Direction of the first letter: what U+2068 and dir="auto" ask for (UAX 9, rules P2 and P3). */
function firstStrongDirection(text: string): Direction {
  const letter = firstStrong.exec(text)?.[0];
  return letter !== undefined && rightToLeft.test(letter) ? 'rtl' : 'ltr';
}

function directionOfBdi(dir: string | undefined, text: string): Direction {
  return dir === 'ltr' || dir === 'rtl' ? dir : firstStrongDirection(text);
}

const overrides = /[\u202A-\u202E]/gu;
const controls = /[^\P{Cc}\t\n\r]/gu;

/** Splits at U+2066 (left to right), U+2067 (right to left), U+2068 (first strong) and U+2069 (end). */
function splitIsolates(text: string, look: Look): Run[] {
  const clean = text.replace(overrides, '').replace(controls, '');
  const runs: Run[] = [];
  const open: Direction[] = [];
  const parts = clean.split(/([\u2066-\u2069])/u);
  parts.forEach((part, at) => {
    if (part === '\u2066') open.push('ltr');
    else if (part === '\u2067') open.push('rtl');
    else if (part === '\u2068') open.push(firstStrongDirection(parts[at + 1] ?? ''));
    else if (part === '\u2069') open.pop();
    else if (part !== '') runs.push({ ...look, text: part, isolate: open.at(-1) ?? look.isolate });
  });
  return runs;
}

/** Runs of white space become one space; none stands at either end of the line of text. */
function foldSpace(runs: readonly Run[]): readonly Run[] {
  const folded: Run[] = [];
  let afterSpace = true;
  for (const run of runs) {
    let text = run.text.replace(/[ \t\r\n\f]+/g, ' ');
    if (afterSpace) text = text.replace(/^ /, '');
    if (text === '') continue;
    afterSpace = text.endsWith(' ');
    const last = folded.at(-1);
    if (last !== undefined && last.isolate === null && sameLook(last, run)) {
      folded[folded.length - 1] = { ...last, text: last.text + text };
    } else folded.push({ ...run, text });
  }
  const last = folded.at(-1);
  if (last === undefined) return folded;
  const trimmed = last.text.replace(/ $/, '');
  return trimmed === ''
    ? folded.slice(0, -1)
    : [...folded.slice(0, -1), { ...last, text: trimmed }];
}

function sameLook(a: Run, b: Run): boolean {
  return a.strong === b.strong && a.lang === b.lang && a.isolate === b.isolate && a.href === b.href;
}
