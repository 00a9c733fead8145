// Languages arrive; where this device has no letters for one, the page's own face for it is lent to a document.
import { familiesFor } from '../render/pdf/faces.js';
import { embeddedBytes } from './embedded.js';

/** Stands last in the lists of faces, so that the device's own come first. */
export const lentFamily = 'Ironleaf script';

/** A letter of the script, and its blocks (Unicode 16, Blocks.txt). */
const scripts: Readonly<Record<string, { readonly sample: string; readonly range: string }>> = {
  Arab: { sample: 'ع', range: 'U+600-6FF, U+750-77F, U+8A0-8FF, U+FB50-FDFF, U+FE70-FEFC' },
  Beng: { sample: 'ক', range: 'U+980-9FF' },
  Deva: { sample: 'क', range: 'U+900-97F, U+A8E0-A8FF' },
  Ethi: { sample: 'አ', range: 'U+1200-139F, U+2D80-2DDF' },
  Guru: { sample: 'ਕ', range: 'U+A00-A7F' },
  Hans: { sample: '的', range: 'U+3000-303F, U+4E00-9FFF, U+FF00-FFEF' },
};

const lentTo = new WeakMap<Document, Set<string>>();

/**
 * Lends what is missing, each face once. To be awaited before a text is shown: browsers keep some of the empty boxes
 * that they drew without the face.
 * Costs nothing where the device has its own. No face is fetched: its bytes lie in the page.
 * @param view The window of the document: the page's own, or a frame's.
 */
export async function lendFaces(
  view: Window & typeof globalThis,
  languages: readonly string[],
): Promise<void> {
  const lent: FontFace[] = [];
  const before = lentTo.get(view.document) ?? new Set();
  lentTo.set(view.document, before);
  for (const language of languages) {
    const script = scripts[new Intl.Locale(language).maximize().script ?? ''];
    const [family] = familiesFor(language);
    if (script === undefined || family === undefined || !isMissing(script.sample)) continue;
    if (before.has(family.name)) continue;
    before.add(family.name);
    for (const [file, weight] of [
      [family.regular, '400'],
      [family.bold, '700'],
    ] as const) {
      const bytes = new Uint8Array(embeddedBytes(file));
      const face = new view.FontFace(lentFamily, bytes, { weight, unicodeRange: script.range });
      lent.push(await face.load());
    }
  }
  if (lent.length === 0) return;
  for (const face of lent) view.document.fonts.add(face);
}

const missing = new Map<string, boolean>();

/** A letter without a face is drawn as wide as a code point that has no letter at all (U+0378). */
function isMissing(sample: string): boolean {
  const known = missing.get(sample);
  if (known !== undefined) return known;
  const pen = document.createElement('canvas').getContext('2d');
  if (pen === null) return false;
  pen.font = '200px serif';
  const found = pen.measureText(sample).width === pen.measureText('\u0378').width;
  missing.set(sample, found);
  return found;
}
