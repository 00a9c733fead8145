// Names that try to be more than names: nothing of them may become a tag, a statement or a change of direction.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Content } from '../../src/letter/content.js';
import { writeHtml } from '../../src/render/html.js';
import { writeText } from '../../src/render/text.js';
import { content, documentOf, said } from './fixture.js';

const form = { paper: 'A4', size: 'standard' } as const;

function named(name: string): Content {
  return {
    ...content,
    greeting: said(`Dear \u2068${name}\u2069`),
    running: {
      ...content.running,
      header: said(`\u2068${name}\u2069`),
      footer: said(`\u2068${name}\u2069`),
    },
  };
}

describe('a hostile name', () => {
  const names = [
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    "' onload='x",
    '</style><script>x</script>',
    '{{sender.name}}',
    '{{{lookup this "constructor"}}}',
    '<!-- x',
    '</article><p>out</p>',
    '&lt;b&gt;',
  ];

  it.each(names)('is printed as it is typed: %s', (name) => {
    const document = documentOf(named(name));
    const greeting = document.blocks
      .flatMap((block) => (block.kind === 'paragraph' ? block.runs : []))
      .map(({ text }) => text);
    expect(greeting).toContain(name);
    const html = writeHtml(document, form);
    expect(html).not.toMatch(/<script|<img|<\/style><|<!--/);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    expect(writeText(document)).toContain(`Dear ${name}`);
  });

  it('cannot turn the text around it', () => {
    const html = writeHtml(documentOf(named('Ana\u202E Duarte\u202A\u202D')), form);
    expect(html).not.toMatch(/[\u202A-\u202E]/u);
    expect(html).toContain('<bdi dir="ltr">Ana Duarte</bdi>');
  });

  it('cannot close the isolate of a number that follows', () => {
    const document = documentOf({
      ...content,
      greeting: said('Dear \u2068Ana\u2069\u2069\u2069 \u2066118 g/L\u2069'),
    });
    const runs = document.blocks.flatMap((block) => (block.kind === 'paragraph' ? block.runs : []));
    expect(runs).toContainEqual(expect.objectContaining({ text: '118 g/L', isolate: 'ltr' }));
  });

  it('of any characters makes a letter that can be read', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (name) => {
        const html = writeHtml(documentOf(named(name)), form);
        expect(html.match(/<article|<script|<iframe/g)).toBeNull();
        expect(html.match(/<main/g)).toHaveLength(1);
      }),
      { numRuns: 40 },
    );
  });
});
