// The finished HTML: one file, closed by its own policy, readable by machines that read aloud.
import { createHash } from 'node:crypto';
import { parseDocument } from 'htmlparser2';
import { describe, expect, it } from 'vitest';
import type { Block } from '../../src/render/block.js';
import { writeHtml } from '../../src/render/html.js';
import { pairDocuments } from '../../src/render/pair-documents.js';
import { content, documentOf } from './fixture.js';

const form = { paper: 'A4', size: 'standard' } as const;
const html = writeHtml(documentOf(content), form);

describe('the HTML letter', () => {
  it('refers to nothing outside itself', () => {
    expect(html).not.toMatch(
      /\b(src|srcset|xlink:href|data|action)=|url\(|@import|<link|<base|<iframe|<object/,
    );
    expect(
      [...html.matchAll(/href="([^"]*)"/g)].every((match) => match[1]?.startsWith('tel:')),
    ).toBe(true);
  });

  it('has no script and no inline style', () => {
    expect(html).not.toMatch(/<script|\son\w+=|\sstyle=/);
  });

  it('allows its own style sheet by hash and nothing else', () => {
    const style = /<style>([\s\S]*)<\/style>/.exec(html)?.[1] ?? '';
    const hash = createHash('sha256').update(style).digest('base64');
    expect(html).toContain(
      `content="default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'"`,
    );
  });

  it('says its language, direction and title', () => {
    expect(html).toContain('<html lang="en" dir="ltr">');
    expect(html).toContain('<title>Your iron blood test results</title>');
    expect(html).not.toMatch(/<title>[^<]*Duarte/);
  });

  it('skips no level of heading (WCAG 2.2, 1.3.1)', () => {
    const levels = [...html.matchAll(/<h(\d)>/g)].map((match) => Number(match[1]));
    expect(levels[0]).toBe(1);
    for (const [index, level] of levels.entries()) {
      expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
    }
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
  });

  it('gives every picture a name and a description of its own (WCAG 2.2, 1.1.1)', () => {
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, named] of html.matchAll(/<svg[^>]*role="img"[^>]*aria-labelledby="([^"]+)"/g)) {
      for (const id of named?.split(' ') ?? []) expect(ids).toContain(id);
    }
    const told = html.match(/<svg[^>]* aria-labelledby=/g)?.length ?? 0;
    const hidden = html.match(/<svg[^>]* aria-hidden="true"/g)?.length ?? 0;
    expect(told + hidden).toBe(html.match(/<svg/g)?.length);
  });

  it('lets a sign beside words say nothing of its own (WCAG 2.2, 1.1.1: decoration)', () => {
    const signs = [...html.matchAll(/<svg[^>]*aria-hidden="true"[^>]*>(.*?)<\/svg>/g)];
    expect(signs.length).toBeGreaterThan(2);
    expect(signs.filter(([, inside]) => /<title|<desc|<text|aria-/.test(inside ?? ''))).toEqual([]);
  });

  it('keeps steps a list though boxes take the place of its marks', () => {
    const steps = /<ul class="ticks" role="list">(.*?)<\/ul>/s.exec(html)?.[1] ?? '';
    expect(steps.match(/<li>/g)).toHaveLength(content.yourSteps.steps.length);
  });

  it('isolates numbers and phones', () => {
    expect(html).toContain('<bdi class="together" dir="ltr">118 g/L</bdi>');
    expect(html).toContain(
      '<a href="tel:5550142"><bdi class="together" dir="ltr">555 0142</bdi></a>',
    );
  });

  it('closes every tag it opens', () => {
    const body = html.slice(html.indexOf('<body>'), html.indexOf('</html>'));
    const opened = [...body.matchAll(/<([a-z][a-z0-9]*)\b[^>]*[^/]?>/g)].filter(
      (match) => !match[0].endsWith('/>') && match[1] !== 'hr',
    );
    const closed = [...body.matchAll(/<\/([a-z][a-z0-9]*)>/g)];
    expect(opened).toHaveLength(closed.length);
    expect(parseDocument(html).children.length).toBeGreaterThan(1);
  });

  it('is the same twice', () => {
    expect(writeHtml(documentOf(content), form)).toBe(html);
  });
});

describe('two languages side by side', () => {
  const arabic = documentOf({
    ...content,
    lang: 'ar',
    dir: 'rtl',
    bands: content.bands.slice(0, 1),
  });
  const english = documentOf(content);
  const paired = pairDocuments(arabic, english);

  it('stand block beside block, each with its language and direction', () => {
    expect(paired.ok).toBe(true);
    if (!paired.ok) return;
    const pairs = paired.value.blocks.filter((block) => block.kind === 'pair');
    expect(pairs.length).toBeGreaterThan(10);
    for (const pair of pairs) {
      expect(pair.second).toMatchObject({ kind: 'section', lang: 'en', dir: 'ltr' });
    }
    const both = writeHtml(paired.value, form);
    expect(both).toContain('<html lang="ar" dir="rtl">');
    expect(both).toContain('<div><div lang="en" dir="ltr"><h1>');
  });

  it('never put columns into a column', () => {
    const nested = (blocks: readonly Block[], within: boolean): boolean =>
      blocks.some((block) => {
        if (block.kind === 'pair') return within || nested([block.first, block.second], true);
        return block.kind === 'section' && nested(block.blocks, within);
      });
    expect(paired.ok && nested(paired.value.blocks, false)).toBe(false);
  });

  it('show every picture beside its translation', () => {
    if (!paired.ok) throw new Error('not paired');
    const within = (blocks: readonly Block[]): readonly Block[] =>
      blocks.flatMap((block) => (block.kind === 'section' ? within(block.blocks) : [block]));
    const blocks = within(paired.value.blocks);
    expect(blocks.filter(({ kind }) => kind === 'figure')).toEqual([]);
    const pictures = blocks.filter(
      (block) => block.kind === 'pair' && block.first.kind === 'figure',
    );
    expect(pictures.length).toBeGreaterThan(1);
    for (const picture of pictures)
      expect(picture).toMatchObject({
        second: { kind: 'section', lang: 'en', blocks: [{ kind: 'figure' }] },
      });
  });

  it('open with the stamps of the first, whole width', () => {
    expect(paired.ok && paired.value.blocks.find(({ kind }) => kind === 'notice')).toMatchObject({
      look: 'band',
    });
  });

  it('keep the running lines of the first', () => {
    expect(paired.ok && paired.value.footer).toEqual(arabic.footer);
  });

  it('are refused, with the place, when the shapes differ', () => {
    const shorter = documentOf({ ...content, picture: null });
    const refused = pairDocuments(arabic, shorter);
    expect(refused.ok ? '' : refused.problems[0]?.cannot).toMatch(/they part at letter, block \d+/);
    const fewerSteps = documentOf({
      ...content,
      yourSteps: { ...content.yourSteps, steps: content.yourSteps.steps.slice(1) },
    });
    expect(pairDocuments(arabic, fewerSteps).ok).toBe(false);
  });
});
