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

const characterSets = { gb2312, big5, ksx1001, 'rare-han': rareHan };

/**
 * Cuts a face down to a named set of characters. The result is kept in `cache` under the hash of what went in.
 * @returns the bytes of a font file.
 * @example await cutFace(readFileSync('NotoSansSC_400Regular.ttf'), 'gb2312', '.cache')
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
  return encoded('gbk', [0xa1, 0xf7], [[0xa1, 0xfe]]);
}

/** Big5, level 1: 5,401 common ideographs with punctuation; and Latin with accents. */
function big5() {
  const cells = [
    [0x40, 0x7e],
    [0xa1, 0xfe],
  ];
  return encoded('big5', [0xa1, 0xc6], cells);
}

/** KS X 1001: 2,350 syllables with punctuation, read from its place in EUC-KR, no ideographs; and Latin. */
function ksx1001() {
  return encoded('euc-kr', [0xa1, 0xc8], [[0xa1, 0xfe]]);
}

/** Every ideograph of Unicode 1.1 that GB/T 2312 lacks: for names of people and places. */
function rareHan() {
  const common = gb2312();
  const points = new Set();
  for (let point = 0x4e00; point <= 0x9fa5; point += 1) if (!common.has(point)) points.add(point);
  return points;
}

/** Latin with accents, and what an encoding of two bytes holds in these rows and cells. */
function encoded(encoding, [firstRow, lastRow], cells) {
  const decoder = new TextDecoder(encoding);
  const points = new Set();
  for (let point = 0x20; point <= 0x17f; point += 1) points.add(point);
  for (let row = firstRow; row <= lastRow; row += 1) {
    for (const [first, last] of cells) {
      for (let cell = first; cell <= last; cell += 1) {
        const text = decoder.decode(new Uint8Array([row, cell]));
        const point = text.codePointAt(0);
        if ([...text].length === 1 && point !== 0xfffd && !(point >= 0xe000 && point <= 0xf8ff))
          points.add(point);
      }
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
