// The limits that SECURITY.md tells are those of the code, each in the file it names.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const units: Readonly<Record<string, number>> = { KiB: 1024, MiB: 1024 * 1024 };

type Row = {
  readonly what: string;
  readonly told: readonly number[];
  readonly held: readonly number[];
};

const rows: readonly Row[] = readFileSync('SECURITY.md', 'utf8')
  .split('\n')
  .flatMap((line): Row[] => {
    const [, what = '', most = '', where = ''] = line.split('|').map((cell) => cell.trim());
    const words = [...where.matchAll(/`([^`]+)`/g)].map(([, word = '']) => word);
    const files = words.filter((word) => word.endsWith('.ts'));
    const names = words.filter((word) => !word.endsWith('.ts'));
    if (files.length === 0 || names.length === 0) return [];
    const told = [...most.matchAll(/([\d,]+)(?: (KiB|MiB))?/g)].map(
      ([, digits = '', unit = '']) => Number(digits.replaceAll(',', '')) * (units[unit] ?? 1),
    );
    const held = names.flatMap((name) =>
      files.flatMap((file) => constantOf(`src/intake/${file}`, name) ?? []),
    );
    return [{ what, told, held }];
  });

/** The number a file gives a name; null where it gives none. */
function constantOf(path: string, name: string): number | null {
  const shape = new RegExp(`^(?:export )?const ${name} = ([\\d_]+(?: \\* [\\d_]+)*);`, 'm');
  const product = shape.exec(readFileSync(path, 'utf8'))?.[1];
  if (product === undefined) return null;
  return product
    .replaceAll('_', '')
    .split(' * ')
    .reduce((all, factor) => all * Number(factor), 1);
}

it('names every limit of every reader', () => {
  expect(rows.length).toBeGreaterThan(20);
});

it.each(rows)('tells the limit that the code holds: $what', ({ told, held }) => {
  expect(held.length).toBeGreaterThan(0);
  expect(told).toEqual(held);
});
