// A font file and the characters to keep arrive; a smaller font file that still shapes them leaves, kept for next time.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

// hb-subset.h: flags of hb_subset_flags_t and places of hb_subset_sets_t.
const noHinting = 0x1;
const dropTables = 3;
const writable = 2;

/** Vertical setting and alternative shapes: nothing that a letter uses. */
const unused = ['GSUB', 'GPOS', 'GDEF', 'BASE', 'vhea', 'vmtx', 'VORG', 'STAT', 'DSIG', 'meta'];

const characterSets = { gb2312 };

/**
 * Cuts a face down to a named set of characters. The result is kept in `cache` under the hash of what went in.
 * @returns the bytes of a font file.
 * @example await cutFace(readFileSync('NotoSansSC_400Regular.ttf'), 'gb2312', 'node_modules/.cache/ironleaf')
 */
export async function cutFace(font, setName, cache) {
  const hash = createHash('sha256').update(font).update(`${setName} 1`).digest('hex').slice(0, 32);
  const kept = join(cache, `${hash}.ttf`);
  if (existsSync(kept)) return readFileSync(kept);
  const bytes = await subset(font, characterSets[setName]());
  mkdirSync(cache, { recursive: true });
  writeFileSync(kept, bytes);
  return bytes;
}

/** GB/T 2312-1980, 6,763 ideographs with punctuation, read from its place in GBK; and Latin with accents. */
export function gb2312() {
  const decoder = new TextDecoder('gbk');
  const points = new Set();
  for (let point = 0x20; point <= 0x17f; point += 1) points.add(point);
  for (let row = 0xa1; row <= 0xf7; row += 1) {
    for (let cell = 0xa1; cell <= 0xfe; cell += 1) {
      const point = decoder.decode(new Uint8Array([row, cell])).codePointAt(0);
      if (point !== 0xfffd && !(point >= 0xe000 && point <= 0xf8ff)) points.add(point);
    }
  }
  return points;
}

async function subset(font, points) {
  const path = createRequire(import.meta.url).resolve('harfbuzzjs/dist/harfbuzz-subset.wasm');
  const { instance } = await WebAssembly.instantiate(readFileSync(path), {});
  const hb = instance.exports;
  hb._initialize();
  const place = hb.malloc(font.length);
  new Uint8Array(hb.memory.buffer).set(font, place);
  const face = hb.hb_face_create(hb.hb_blob_create(place, font.length, writable, 0, 0), 0);
  const input = hb.hb_subset_input_create_or_fail();
  hb.hb_subset_input_set_flags(input, noHinting);
  const dropped = hb.hb_subset_input_set(input, dropTables);
  for (const tag of unused) hb.hb_set_add(dropped, tagNumber(tag));
  const wanted = hb.hb_subset_input_unicode_set(input);
  for (const point of points) hb.hb_set_add(wanted, point);
  const small = hb.hb_subset_or_fail(face, input);
  if (small === 0) throw new Error('HarfBuzz could not cut the face');
  const blob = hb.hb_face_reference_blob(small);
  const from = hb.hb_blob_get_data(blob, 0);
  return new Uint8Array(hb.memory.buffer).slice(from, from + hb.hb_blob_get_length(blob));
}

function tagNumber(tag) {
  return [...tag].reduce((number, letter) => number * 256 + letter.charCodeAt(0), 0);
}
