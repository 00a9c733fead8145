// A document of blocks arrives; one HTML file leaves that needs nothing else: no script, no picture, no font to fetch.
import { createHash } from 'node:crypto';
import { base64 } from './base64.js';
import type { Block, Cell, LetterDocument, PageForm, Run, Running } from './block.js';
import { escapeHtml } from './escape.js';
import { look, pictureScale } from './look.js';
import { readLogo } from './logo.js';
import { drawSign } from './pictures/pictogram.js';
import { writeSign, writeSvg } from './pictures/write-svg.js';
import { styleSheet } from './style-sheet.js';

/** Numbers the pictures of one file, so that each can name its own title and description. */
type Counter = { pictures: number };

/**
 * Writes the letter as one file. Its content security policy allows its own style sheet, by hash, and nothing else.
 * Printed, it follows the form's paper; on a narrow screen it flows in one column.
 * @example writeHtml(document, { paper: 'A4', size: 'standard' }) // '<!doctype html>…'
 */
export function writeHtml(document: LetterDocument, form: PageForm): string {
  const style = styleSheet(form, {
    header: plainText(document.header),
    footer: plainText(document.footer),
    pageOf: document.footer?.pageOf ?? '',
  });
  const hash = base64(createHash('sha256').update(style).digest());
  const counter: Counter = { pictures: 0 };
  const beside = document.blocks.some(isTwoLanguages);
  const main = blocksOf(document.blocks, counter);
  const images = main.includes('<img ') ? ' img-src data:;' : '';
  return [
    '<!doctype html>',
    `<html lang="${escapeHtml(document.lang)}" dir="${document.dir}">`,
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none';${images} style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    '<meta name="robots" content="noindex">',
    '<meta name="format-detection" content="telephone=no">',
    `<title>${escapeHtml(document.title)}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    document.header === null
      ? ''
      : `<header class="running">${runsOf(document.header.runs)}</header>`,
    `<main${beside ? ' class="beside"' : ''}>`,
    main,
    '</main>',
    document.footer === null
      ? ''
      : `<footer class="running">${runsOf(document.footer.runs)}</footer>`,
    '</body>',
    '</html>',
    '',
  ]
    .filter((line, index, lines) => line !== '' || index === lines.length - 1)
    .join('\n');
}

/** Two languages need a wider page than two columns of one. */
function isTwoLanguages(block: Block): boolean {
  return block.kind === 'pair' && block.second.kind === 'section' && block.second.lang !== null;
}

function blocksOf(blocks: readonly Block[], counter: Counter): string {
  return blocks.map((block) => blockOf(block, counter)).join('\n');
}

function blockOf(block: Block, counter: Counter): string {
  switch (block.kind) {
    case 'heading':
      return `<h${block.level}>${runsOf(block.runs)}</h${block.level}>`;
    case 'paragraph':
      return `<p class="${block.look}">${runsOf(block.runs)}</p>`;
    case 'list': {
      const tag = block.ordered ? 'ol' : 'ul';
      // A list without marks is read as none by some browsers unless it says its role.
      const ticks = block.ticks ? ' class="ticks" role="list"' : '';
      return `<${tag}${ticks}>${block.items.map((item) => `<li>${flowOf(item, counter)}</li>`).join('')}</${tag}>`;
    }
    case 'table':
      return tableOf(block, counter);
    case 'notice':
      return `<div class="notice ${block.look}">${blocksOf(block.blocks, counter)}</div>`;
    case 'figure':
      return figureOf(block, counter);
    case 'section':
      return sectionOf(block, counter);
    case 'pair':
      return `<div class="pair${block.wide ? ' wide' : ''}"><div>${blockOf(block.first, counter)}</div><div>${blockOf(block.second, counter)}</div></div>`;
    case 'logo':
      return logoOf(block);
    case 'page-break':
      return '<div class="page-break"></div>';
    case 'rule':
      return '<hr>';
  }
}

/** A logo and a sign stand where reading begins, and the rest beside them. */
function sectionOf(section: Block & { readonly kind: 'section' }, counter: Counter): string {
  const lang = section.lang === null ? '' : ` lang="${escapeHtml(section.lang)}"`;
  const dir = section.dir === null ? '' : ` dir="${section.dir}"`;
  const [logo, ...others] = section.blocks;
  const names = [
    section.keep ? 'keep' : '',
    logo?.kind === 'logo' ? 'letterhead' : '',
    section.sign === undefined ? '' : 'signed',
  ]
    .filter((name) => name !== '')
    .join(' ');
  const beside = section.sign === undefined ? '' : writeSign(drawSign(section.sign), 'shape-');
  const held =
    logo?.kind === 'logo'
      ? `${blockOf(logo, counter)}<div>${blocksOf(others, counter)}</div>`
      : blocksOf(section.blocks, counter);
  const body = beside === '' ? held : `${beside}<div>${held}</div>`;
  return `<div${names === '' ? '' : ` class="${names}"`}${lang}${dir}>${body}</div>`;
}

/** A single paragraph in an item or a cell needs no tag of its own. */
function flowOf(blocks: readonly Block[], counter: Counter): string {
  const [only, ...more] = blocks;
  if (only?.kind === 'paragraph' && only.look === 'body' && more.length === 0)
    return runsOf(only.runs);
  return blocksOf(blocks, counter);
}

/** A wide table scrolls inside its own box, by keyboard too. */
function tableOf(table: Block & { readonly kind: 'table' }, counter: Counter): string {
  const rows = (list: readonly (readonly Cell[])[]) =>
    list.map((row) => `<tr>${row.map((cell) => cellOf(cell, counter)).join('')}</tr>`).join('');
  const caption = table.caption === null ? '' : `<caption>${runsOf(table.caption)}</caption>`;
  const label = table.caption?.map(({ text }) => text).join('') ?? '';
  const region = label === '' ? '' : ` role="region" aria-label="${escapeHtml(bare(label))}"`;
  const head = table.head.length === 0 ? '' : `<thead>${rows(table.head)}</thead>`;
  return `<div class="table" tabindex="0"${region}><table class="${table.look}">${caption}${head}<tbody>${rows(table.rows)}</tbody></table></div>`;
}

function cellOf(cell: Cell, counter: Counter): string {
  const tag = cell.header ? 'th' : 'td';
  const scope = cell.header && cell.scope !== null ? ` scope="${cell.scope}"` : '';
  const span = cell.span === 1 ? '' : ` colspan="${cell.span}"`;
  return `<${tag}${scope}${span}>${flowOf(cell.blocks, counter)}</${tag}>`;
}

function figureOf(figure: Block & { readonly kind: 'figure' }, counter: Counter): string {
  counter.pictures += 1;
  const { scene } = figure;
  // Natural size at the standard form; the style sheet lets it shrink with a narrow column.
  const scale = pictureScale(scene, Number.POSITIVE_INFINITY, look.sizes.standard);
  const size = ` width="${Math.round((scene.width * scale * 4) / 3)}" height="${Math.round((scene.height * scale * 4) / 3)}"`;
  const svg = writeSvg(scene, { id: `picture-${counter.pictures}`, classes: 'shape-' });
  const caption =
    figure.caption === null
      ? ''
      : `<figcaption class="caption">${runsOf(figure.caption)}</figcaption>`;
  return `<figure>${svg.replace('<svg', `<svg${size}`)}${caption}</figure>`;
}

/** CSS pixels at the standard size. */
function logoOf({ src, name }: Block & { readonly kind: 'logo' }): string {
  const logo = readLogo(src);
  if (logo === null) return '';
  const height = (look.logo.height * look.sizes.standard * 4) / 3;
  const width = (height * logo.width) / logo.height;
  return `<img class="logo" src="${src}" alt="${escapeHtml(name)}" width="${Math.round(width)}" height="${Math.round(height)}">`;
}

function runsOf(runs: readonly Run[]): string {
  return runs.map(runOf).join('');
}

function runOf(run: Run): string {
  let html = escapeHtml(run.text);
  if (run.isolate !== null) {
    const together = isFigure(run.text) ? ' class="together"' : '';
    html = `<bdi${together} dir="${run.isolate}">${html}</bdi>`;
  }
  if (run.lang !== null) html = `<span lang="${escapeHtml(run.lang)}">${html}</span>`;
  if (run.strong) html = `<strong>${html}</strong>`;
  return run.href === null ? html : `<a href="${escapeHtml(run.href)}">${html}</a>`;
}

const longestTogether = 20;

/** A value with its unit, a range or a phone number reads wrong when a line ends inside it. */
function isFigure(text: string): boolean {
  return text.length <= longestTogether && /^[<>=+(]*\s?\d/.test(text);
}

function plainText(running: Running | null): string {
  return running === null ? '' : running.runs.map(isolatedText).join('');
}

/** In a style sheet there are no tags, so isolates are characters again. */
function isolatedText({ text, isolate }: Run): string {
  if (isolate === null) return text;
  return `${isolate === 'ltr' ? '\u2066' : '\u2067'}${text}\u2069`;
}

function bare(text: string): string {
  return text.replace(/[\u2066-\u2069]/g, '');
}
