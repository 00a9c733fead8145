// The bytes of a clinic's PNG arrive; a PNG of plain pixels on white leaves, or one sentence on what is wrong with it.
import { convertIndexedToRgb, decode, encode, type DecodedPng } from 'fast-png';
import { Unzlib } from 'fflate';
import { chunksOf, pixelsUrl, readLogo } from '../../render/logo.js';
import { limits } from './limits.js';

/** `expected` says what would be right. */
export type Refused = { readonly cannot: string; readonly expected: string };

const kept = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND']);

/**
 * Nothing but pixels is kept: notes, places and profiles in the file are dropped before it is decoded, and what is
 * see-through becomes white, as paper is.
 * @example readPngLogo(bytes) // 'data:image/png;base64,…'
 */
export function readPngLogo(png: Uint8Array): string | Refused {
  const chunks = chunksOf(png);
  const [header] = chunks ?? [];
  if (chunks === null || header?.type !== 'IHDR' || header.to - header.from !== 13)
    return { cannot: 'read it as a PNG', expected: 'a whole PNG file' };
  const view = new DataView(png.buffer, png.byteOffset + header.from, 13);
  const [width, height] = [view.getUint32(0), view.getUint32(4)];
  if (width < 1 || height < 1 || width > limits.pixels || height > limits.pixels)
    return {
      cannot: `use a PNG of ${width} by ${height} pixels`,
      expected: `1 to ${limits.pixels} pixels a side`,
    };
  // 13.3: eight bytes a pixel at most, one for the filter of each row, seven rows more where it is interlaced.
  const most = (width * 8 + 1) * (height + 7) * 2;
  const data = chunks.filter(({ type }) => type === 'IDAT');
  if (
    !fits(
      data.map(({ from, to }) => png.subarray(from, to)),
      most,
    )
  )
    return { cannot: 'unpack its pixels', expected: 'as many pixels as its size says' };
  try {
    const bare = join([
      png.subarray(0, 8),
      ...chunks
        .filter(({ type }) => kept.has(type))
        .map(({ from, to }) => png.subarray(from - 8, to + 4)),
    ]);
    const rgb = onWhite(decode(bare, { checkCrc: true }));
    if (rgb === null)
      return { cannot: 'use its kind of pixels', expected: 'eight or sixteen bits, or a palette' };
    const packed = encode({ width, height, data: rgb, channels: 3, depth: 8 });
    if (packed.length > limits.packedBytes)
      return {
        cannot: 'keep a picture with so many colours',
        expected: 'a logo of few plain colours, or fewer pixels',
      };
    const url = pixelsUrl(packed);
    if (readLogo(url) === null) throw new Error('a logo packed again cannot be read');
    return url;
  } catch {
    return { cannot: 'read it as a PNG', expected: 'a PNG that is not damaged' };
  }
}

/** Unpacks piece by piece and stops where more comes out than the picture can hold. */
function fits(pieces: readonly Uint8Array[], most: number): boolean {
  let length = 0;
  const unpack = new Unzlib((chunk) => {
    length += chunk.length;
    if (length > most) throw new RangeError();
  });
  try {
    for (const piece of pieces)
      for (let at = 0; at < piece.length; at += 512) unpack.push(piece.subarray(at, at + 512));
    return length > 0;
  } catch {
    return false;
  }
}

function onWhite(png: DecodedPng): Uint8Array | null {
  const { width, height, depth, palette } = png;
  if (palette === undefined && depth < 8) return null;
  const data = palette === undefined ? png.data : convertIndexedToRgb(png);
  const channels = data.length / (width * height);
  const grey = channels < 3;
  const alphaAt = channels === 2 || channels === 4 ? channels - 1 : null;
  const byte = (at: number) => (depth === 16 ? (data[at] ?? 0) >> 8 : (data[at] ?? 0));
  const rgb = new Uint8Array(width * height * 3);
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    const at = pixel * channels;
    const alpha = alphaAt === null ? 255 : byte(at + alphaAt);
    for (let part = 0; part < 3; part += 1)
      rgb[pixel * 3 + part] = Math.round(
        (byte(at + (grey ? 0 : part)) * alpha + 255 * (255 - alpha)) / 255,
      );
  }
  return rgb;
}

function join(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
