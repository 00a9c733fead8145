// Markup arrives; the letter as a document of blocks leaves, or everything the subset refuses.
import { bounded } from '../bounded.js';
import { type Checked, faulty, fine } from '../problem.js';
import type { Block, LetterDocument, Running } from './block.js';
import { meetAgain } from './met-before.js';
import { type Node, isElement, parseMarkup } from './parse-markup.js';
import { cutPieces, openPiece } from './pieces.js';
import {
  type Desk,
  directionOf,
  readBlocks,
  readSection,
  refuse,
  withoutSpace,
} from './read-blocks.js';
import { readRuns } from './read-runs.js';

/**
 * Reads the markup of one letter: one `<article lang dir title>` with everything in it.
 * Problems: unknown tags, classes and attributes; text outside a paragraph; tags in the wrong place.
 * `file` names the template in the problems' places; the row is the line of the markup.
 * @example readMarkup('<article lang="en" dir="ltr" title="T"><p>Hi</p></article>', 'letter')
 */
export function readMarkup(markup: string, file: string): Checked<LetterDocument> {
  const known = readInPieces(markup, file);
  return known === null ? readWhole(markup, file) : fine(known);
}

function readWhole(markup: string, file: string): Checked<LetterDocument> {
  const tree = parseMarkup(markup, file);
  if (!tree.ok) return tree;
  const desk: Desk = { file, problems: [] };
  const document = readArticle(tree.value, desk);
  return document === null || desk.problems.length > 0 ? faulty(desk.problems) : fine(document);
}

/**
 * Parts that an earlier letter had are not read again. Null where anything is amiss: reading the whole then tells
 * the places.
 */
function readInPieces(markup: string, file: string): LetterDocument | null {
  const article = openPiece(markup, 'article');
  const pieces = article === null ? null : cutPieces(article.inner);
  if (article === null || pieces === null) return null;
  const isRunning = (piece: string) => /^<(?:header|footer)\b/.test(piece);
  const running = pieces.filter(isRunning).join('');
  const around = readWhole(`${article.tag}${running}</article>`, file);
  const blocks = readPieces(
    pieces.filter((piece) => !isRunning(piece)),
    file,
  );
  return around.ok && blocks !== null ? { ...around.value, blocks } : null;
}

function readPieces(pieces: readonly string[], file: string): readonly Block[] | null {
  const blocks: Block[] = [];
  for (const piece of pieces) {
    const read = readPiece(piece, file);
    if (read === null) return null;
    blocks.push(...read);
  }
  return blocks;
}

/** What a hundred letters hold: parts they share stay; names and rare results go. */
const readBefore = bounded<readonly Block[]>(3000);

function readPiece(piece: string, file: string): readonly Block[] | null {
  const known = readBefore.get(piece);
  if (known !== undefined) {
    known.forEach(meetAgain);
    return known;
  }
  const blocks = readNewPiece(piece, file);
  if (blocks !== null) readBefore.set(piece, blocks);
  return blocks;
}

/** A section that is new as a whole may hold parts that are not. */
function readNewPiece(piece: string, file: string): readonly Block[] | null {
  const section = openPiece(piece, 'section');
  const pieces = section === null ? null : cutPieces(section.inner);
  if (section === null || pieces === null) return readNodes(piece, file, readBlocks);
  const within = readPieces(pieces, file);
  if (within === null) return null;
  return readNodes(`${section.tag}</section>`, file, (nodes) =>
    nodes.filter(isElement).map((element) => readSection(element, within)),
  );
}

/** Null when anything in them is refused. */
function readNodes(
  markup: string,
  file: string,
  read: (nodes: readonly Node[], desk: Desk) => readonly Block[],
): readonly Block[] | null {
  const tree = parseMarkup(markup, file);
  if (!tree.ok) return null;
  const desk: Desk = { file, problems: [] };
  const blocks = read(tree.value, desk);
  return desk.problems.length > 0 ? null : blocks;
}

function readArticle(nodes: readonly Node[], desk: Desk): LetterDocument | null {
  const [article, ...more] = withoutSpace(nodes);
  if (
    article === undefined ||
    !isElement(article) ||
    article.tag !== 'article' ||
    more.length > 0
  ) {
    refuse(desk, article?.line ?? 1, 'read the letter', 'one <article> and nothing beside it');
    return null;
  }
  const { lang, title } = article.attributes;
  if (lang === undefined || title === undefined || article.attributes.dir === undefined) {
    refuse(desk, article.line, 'read <article>', 'lang, dir and title');
    return null;
  }
  const children = withoutSpace(article.children);
  const running = (tag: string) => children.find((node) => isElement(node) && node.tag === tag);
  return {
    lang,
    dir: directionOf(article) ?? 'ltr',
    title: cleanTitle(title),
    header: readRunning(running('header'), desk),
    footer: readRunning(running('footer'), desk),
    blocks: readBlocks(
      children.filter((node) => !isElement(node) || !['header', 'footer'].includes(node.tag)),
      desk,
    ),
  };
}

function readRunning(node: Node | undefined, desk: Desk): Running | null {
  if (node === undefined || !isElement(node)) return null;
  const [paragraph, ...more] = withoutSpace(node.children);
  if (
    paragraph === undefined ||
    !isElement(paragraph) ||
    paragraph.tag !== 'p' ||
    more.length > 0
  ) {
    refuse(desk, node.line, `read <${node.tag}>`, 'one <p> in it');
    return null;
  }
  return {
    runs: readRuns(paragraph.children, desk.file, desk.problems),
    pageOf: node.attributes['data-page-of'] ?? null,
  };
}

/** Titles go into metadata, where direction controls have no business. */
function cleanTitle(title: string): string {
  return title.replace(/[\p{Cc}\u2066-\u2069\u202A-\u202E]/gu, '').trim();
}
