// A font file and the glyphs drawn arrive; a small font file with the same glyph numbers leaves.

/** Cuts a font down. Glyph numbers stay, so that codes can be given before the subset is made. */
export type Subsetter = (font: Uint8Array, glyphs: Iterable<number>) => Uint8Array;

// hb-subset.h: flags of hb_subset_flags_t and places of hb_subset_sets_t.
const noHinting = 0x1;
const retainGlyphNumbers = 0x2;
const noLayoutClosure = 0x200;
const dropTables = 3;
const writable = 2;

/** Shaping is done already, and a Type 0 font finds its glyphs by number. */
const unused = ['GSUB', 'GPOS', 'GDEF', 'name', 'OS/2', 'post', 'cmap', 'STAT', 'DSIG', 'meta'];

const needed = [
  '_initialize',
  'malloc',
  'free',
  'hb_blob_create',
  'hb_blob_destroy',
  'hb_blob_get_data',
  'hb_blob_get_length',
  'hb_face_create',
  'hb_face_destroy',
  'hb_face_reference_blob',
  'hb_set_add',
  'hb_subset_input_create_or_fail',
  'hb_subset_input_destroy',
  'hb_subset_input_glyph_set',
  'hb_subset_input_set',
  'hb_subset_input_set_flags',
  'hb_subset_or_fail',
] as const;

type Call = (...values: readonly number[]) => number;
type Calls = Readonly<Record<(typeof needed)[number], Call>>;

/**
 * Opens the subsetting half of HarfBuzz, which comes without a wrapper of its own.
 * @throws when the WebAssembly file lacks one of the functions called here.
 * @example (await openSubsetter(wasm))(notoSans, [3, 36]).length // about 2,000 bytes
 */
export async function openSubsetter(wasm: Uint8Array<ArrayBuffer>): Promise<Subsetter> {
  const { instance } = await WebAssembly.instantiate(wasm, {});
  const memory = instance.exports.memory;
  if (!(memory instanceof WebAssembly.Memory)) throw new Error('The subsetter has no memory');
  const hb = callsOf(instance.exports);
  hb._initialize();
  const faces = new WeakMap<Uint8Array, number>();

  const faceOf = (font: Uint8Array): number => {
    const known = faces.get(font);
    if (known !== undefined) return known;
    const place = hb.malloc(font.length);
    new Uint8Array(memory.buffer).set(font, place);
    const blob = hb.hb_blob_create(place, font.length, writable, 0, 0);
    const face = hb.hb_face_create(blob, 0);
    hb.hb_blob_destroy(blob);
    faces.set(font, face);
    return face;
  };

  return (font, glyphs) => {
    const face = faceOf(font);
    const input = hb.hb_subset_input_create_or_fail();
    hb.hb_subset_input_set_flags(input, noHinting | retainGlyphNumbers | noLayoutClosure);
    const dropped = hb.hb_subset_input_set(input, dropTables);
    for (const tag of unused) hb.hb_set_add(dropped, tagNumber(tag));
    const wanted = hb.hb_subset_input_glyph_set(input);
    for (const glyph of glyphs) hb.hb_set_add(wanted, glyph);
    const small = hb.hb_subset_or_fail(face, input);
    hb.hb_subset_input_destroy(input);
    if (small === 0) throw new Error('HarfBuzz could not make the subset');
    const blob = hb.hb_face_reference_blob(small);
    const from = hb.hb_blob_get_data(blob, 0);
    // Copied out at once: any later call may move the memory.
    const bytes = new Uint8Array(memory.buffer).slice(from, from + hb.hb_blob_get_length(blob));
    hb.hb_blob_destroy(blob);
    hb.hb_face_destroy(small);
    return bytes;
  };
}

function callsOf(exported: WebAssembly.Exports): Calls {
  const calls: Partial<Record<(typeof needed)[number], Call>> = {};
  for (const name of needed) {
    const call = exported[name];
    if (typeof call !== 'function') throw new Error(`The subsetter lacks ${name}`);
    calls[name] = (...values) => Number(call(...values));
  }
  return calls as Calls;
}

function tagNumber(tag: string): number {
  return [...tag].reduce((number, letter) => number * 256 + letter.charCodeAt(0), 0);
}
