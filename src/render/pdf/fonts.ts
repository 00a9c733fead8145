// Font files arrive through a reader; opened faces that shape text and can be cut down leave.
import { bounded, type Bounded } from '../../bounded.js';
import type { Block } from '../block.js';
import { familiesFor, latin, lendersFor, type Family } from './faces.js';
import type { Measured } from './measure-once.js';
import type { Paragraph } from './paragraph.js';
import { harfbuzzReady } from './harfbuzz-ready.js';
import { openFace, shapeText, type OpenFace, type Shaped } from './shape.js';

export type ReadFile = (file: string) => Promise<Uint8Array>;

/** Faces of one process: each file is opened once, when a language first needs it. */
export type Fonts = {
  /** Opens what these languages need; called before any text of theirs is laid out. */
  readonly load: (languages: Iterable<string>) => Promise<void>;
  /** Opens faces of other languages for characters that a letter's own lack; false when that brings no new one. */
  readonly borrow: (points: readonly number[]) => Promise<boolean>;
  readonly families: (lang: string) => readonly Family[];
  readonly face: (family: Family, strong: boolean) => OpenFace;
  readonly faceOfFile: (file: string) => OpenFace;
  readonly shape: (face: OpenFace, text: string, rtl: boolean, lang: string) => Shaped;
  readonly paragraphs: Bounded<Paragraph>;
  /** Blocks measured in these faces, by their places; they live as long as their blocks. */
  readonly measured: WeakMap<Block, Map<string, Measured>>;
};

const wordsKept = 20_000;
const paragraphsKept = 400;

/**
 * Waits for the shaper and prepares to read faces.
 * @param source folder with the files of the table of faces, or a function that gives the bytes of one of them.
 * @throws when a file cannot be read.
 * @example const fonts = await openFonts('dist/fonts');
 */
export async function openFonts(source: string | ReadFile): Promise<Fonts> {
  await harfbuzzReady;
  const read = typeof source === 'string' ? await folderReader(source) : source;
  const faces = new Map<string, OpenFace>();
  const words = bounded<Shaped>(wordsKept);

  const open = async (file: string) => {
    if (!faces.has(file)) faces.set(file, openFace(file, await read(file)));
  };
  const openFamily = async ({ regular, bold }: Family) => {
    await open(regular);
    await open(bold);
  };
  const borrowed = new Set<Family>();
  const faceOfFile = (file: string): OpenFace => {
    const face = faces.get(file);
    if (face === undefined) throw new Error(`The face ${file} was not loaded`);
    return face;
  };

  return {
    load: async (languages) => {
      const wanted = new Set([latin, ...[...languages].flatMap(familiesFor)]);
      for (const family of wanted) await openFamily(family);
    },
    borrow: async (points) => {
      const before = borrowed.size;
      for (const family of points.flatMap(lendersFor)) {
        await openFamily(family);
        borrowed.add(family);
      }
      return borrowed.size > before;
    },
    // Each script has its own lenders, so that what was borrowed for one letter changes no other.
    families: (lang) =>
      borrowed.size === 0 ? familiesFor(lang) : [...new Set([...familiesFor(lang), ...borrowed])],
    face: (family, strong) => faceOfFile(strong ? family.bold : family.regular),
    faceOfFile,
    shape: (face, text, rtl, lang) => {
      const key = `${face.file} ${rtl ? 'r' : 'l'} ${lang} ${text}`;
      const known = words.get(key);
      if (known !== undefined) return known;
      const shaped = shapeText(face, text, rtl, lang);
      words.set(key, shaped);
      return shaped;
    },
    paragraphs: bounded<Paragraph>(paragraphsKept),
    measured: new WeakMap(),
  };
}

async function folderReader(folder: string): Promise<ReadFile> {
  const { readFile } = await import('node:fs/promises');
  const { join } = await import('node:path');
  return (file) => readFile(join(folder, file));
}
