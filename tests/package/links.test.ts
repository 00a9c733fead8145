// Every link from one of our pages to another file leads somewhere.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

describe('a link from one of our pages to another file', () => {
  const pages = [
    ...readdirSync('.').filter((name) => name.endsWith('.md')),
    ...['docs', 'templates', 'examples/scale', 'examples/formats'].flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => name.endsWith('.md'))
        .map((name) => join(folder, name)),
    ),
  ];
  const links = pages.flatMap((path) =>
    [...readFileSync(path, 'utf8').matchAll(/\]\(([^)#\s]+)/g)]
      .map(([, to = '']) => ({ path, to }))
      .filter(({ to }) => !/^[a-z]+:/.test(to)),
  );

  it('is looked for', () => {
    expect(links.length).toBeGreaterThan(10);
  });

  it.each(links)('leads somewhere: $path to $to', ({ path, to }) => {
    expect(existsSync(join(dirname(path), to))).toBe(true);
  });
});
