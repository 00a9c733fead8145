// Every threat that SECURITY.md tells is held by tests that are there.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const page = readFileSync('SECURITY.md', 'utf8');
const table = page.slice(page.indexOf('## Who could harm'), page.indexOf('## Limits'));
const [head, , ...threats] = table.split('\n').filter((line) => line.startsWith('|'));
const cells = (line: string) => line.slice(1, -1).split('|');

describe('the threats', () => {
  it('are told whole, each with what remains', () => {
    expect(threats.length).toBeGreaterThanOrEqual(10);
    for (const threat of threats) {
      expect(cells(threat)).toHaveLength(cells(head ?? '').length);
      expect(cells(threat).filter((cell) => cell.trim() === '')).toEqual([]);
    }
  });

  it.each(threats)('are held by tests: %s', (threat) => {
    const names = [...(cells(threat).at(-1) ?? '').matchAll(/`([^`]+)`/g)].map(([, name]) => name);
    expect(names.length).toBeGreaterThan(0);
    for (const name of names)
      expect(readFileSync(`tests/${name}.test.ts`, 'utf8')).toMatch(
        /^\s*(?:it|test)(?:\.each|\()/m,
      );
  });
});
