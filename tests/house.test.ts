// Reads the import lines of src/ and holds them to the direction in which a result travels.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const source = resolve('src');

/** Rooms in the order data walks through them; a room imports only from those before it. */
const rooms = [
  'intake',
  'report',
  'interpret',
  'advise',
  'letter',
  'render',
  'mailing',
  'app',
  'library.ts',
  'page',
] as const;
/** Beneath every room. */
const ground = [
  'terms.ts',
  'problem.ts',
  'direction.ts',
  'bounded.ts',
  'when-asked.ts',
  'knowledge',
];

type Import = { readonly from: string; readonly to: string; readonly typeOnly: boolean };

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesBelow(path);
    return /\.tsx?$/.test(path) ? [path] : [];
  });
}

function importsOf(file: string): Import[] {
  const text = readFileSync(file, 'utf8');
  const pattern =
    /(?:^|\n)\s*(import|export)\s+(type\s)?[^;'"]*?from\s+'(\.[^']+)'|import\('(\.[^']+)'\)/g;
  return [...text.matchAll(pattern)].map((match) => ({
    from: relative(source, file),
    to: relative(
      source,
      resolve(dirname(file), (match[3] ?? match[4] ?? '').replace(/\.js$/, '.ts')),
    ),
    typeOnly: match[2] !== undefined,
  }));
}

const roomOf = (path: string) => path.split('/')[0] ?? '';
const everyImport = filesBelow(source).flatMap(importsOf);

describe('the house', () => {
  it('has import lines to read', () => {
    expect(everyImport.length).toBeGreaterThan(50);
  });

  it('lets a room import only from rooms before it', () => {
    const wrong = everyImport.filter(({ from, to }) => {
      if (to.startsWith('..') || ground.includes(roomOf(to))) return false;
      if (ground.includes(roomOf(from))) return true;
      const [here, there] = [roomOf(from), roomOf(to)].map((room) =>
        (rooms as readonly string[]).indexOf(room),
      );
      return here === undefined || there === undefined || here < 0 || there < 0 || there > here;
    });
    expect(wrong).toEqual([]);
  });

  it('keeps cut-offs from the readers, which see only units and what a value can be', () => {
    const seen = everyImport.filter(
      ({ from, to }) => roomOf(from) === 'intake' && roomOf(to) === 'knowledge',
    );
    const allowed = ['row.ts', 'units.ts', 'plausible.ts'].map((name) => `knowledge/${name}`);
    expect(new Set(seen.map(({ to }) => to))).toEqual(new Set(allowed));
  });

  it('lets render see of the earlier rooms only the types of a letter', () => {
    const wrong = everyImport.filter(({ from, to, typeOnly }) => {
      if (roomOf(from) !== 'render' || roomOf(to) === 'render') return false;
      if (['problem.ts', 'direction.ts', 'terms.ts', 'bounded.ts', 'when-asked.ts'].includes(to))
        return false;
      return roomOf(to) !== 'letter' || !typeOnly;
    });
    expect(wrong).toEqual([]);
  });

  it('keeps terms and knowledge free of rooms', () => {
    const wrong = everyImport.filter(
      ({ from, to }) => ground.includes(roomOf(from)) && !ground.includes(roomOf(to)),
    );
    expect(wrong).toEqual([]);
  });
});
