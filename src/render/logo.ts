// A clinic's logo between its file and the page: a data: URL of one of two plain forms, and what it draws.
import { bounded } from '../bounded.js';
import { base64 } from './base64.js';

/** A closed path of absolute M, L, C and Z in units of the picture; colours as #rrggbb. */
export type LogoShape = {
  readonly d: string;
  readonly fill: string | null;
  readonly evenOdd: boolean;
  readonly stroke: string | null;
  readonly strokeWidth: number;
};

export type Logo =
  | {
      readonly kind: 'vector';
      readonly width: number;
      readonly height: number;
      readonly shapes: readonly LogoShape[];
    }
  /** `packed` is the zlib stream of filtered rows of red, green and blue, as in a PNG and in a PDF. */
  | {
      readonly kind: 'pixels';
      readonly width: number;
      readonly height: number;
      readonly packed: Uint8Array;
    };

const svgStart = 'data:image/svg+xml;base64,';
const pngStart = 'data:image/png;base64,';

/** The one way a logo of shapes is written: `readLogo` knows no other, so nothing else can hide in it. */
export function vectorUrl(logo: Logo & { readonly kind: 'vector' }): string {
  const shapes = logo.shapes.map(
    ({ d, fill, evenOdd, stroke, strokeWidth }) =>
      `<path fill="${fill ?? 'none'}" fill-rule="${evenOdd ? 'evenodd' : 'nonzero'}" stroke="${stroke ?? 'none'}" stroke-width="${strokeWidth}" stroke-linecap="round" stroke-linejoin="round" d="${d}"/>`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${logo.width} ${logo.height}">${shapes.join('')}</svg>`;
  return svgStart + base64(new TextEncoder().encode(svg));
}

/** A PNG of eight bits each of red, green and blue, without anything but its pixels. */
export function pixelsUrl(png: Uint8Array): string {
  return pngStart + base64(png);
}

const known = bounded<Logo | 'foreign'>(16);

/**
 * Reads a logo back. Null for anything that `vectorUrl` and `pixelsUrl` do not write.
 * @example readLogo('data:image/svg+xml;base64,PHN2ZyBvbmxvYWQ9…') // null
 */
export function readLogo(url: string): Logo | null {
  const found = known.get(url) ?? parse(url) ?? 'foreign';
  known.set(url, found);
  return found === 'foreign' ? null : found;
}

function parse(url: string): Logo | null {
  if (url.startsWith(svgStart)) return parseVector(decode(url.slice(svgStart.length)));
  if (url.startsWith(pngStart)) return parsePixels(decode(url.slice(pngStart.length)));
  return null;
}

function decode(text: string): Uint8Array {
  if (!/^[A-Za-z0-9+/]+=*$/.test(text)) return new Uint8Array(0);
  const packed = atob(text);
  return Uint8Array.from(packed, (sign) => sign.charCodeAt(0));
}

const numeral = '-?\\d+(?:\\.\\d+)?';
const command = `(?:[ML]${numeral} ${numeral}|C${numeral}(?: ${numeral}){5}|Z)`;
const whole = new RegExp(
  `^<svg xmlns="http://www\\.w3\\.org/2000/svg" viewBox="0 0 (${numeral}) (${numeral})">(.*)</svg>$`,
);
const colour = '#[0-9a-f]{6}|none';
const shapePattern = new RegExp(
  `<path fill="(${colour})" fill-rule="(evenodd|nonzero)" stroke="(${colour})" stroke-width="(${numeral})" stroke-linecap="round" stroke-linejoin="round" d="(${command}(?: ${command})*)"/>`,
  'g',
);

function parseVector(bytes: Uint8Array): Logo | null {
  const parts = whole.exec(new TextDecoder().decode(bytes));
  if (parts === null) return null;
  const [, width, height, inner = ''] = parts;
  const shapes = [...inner.matchAll(shapePattern)].map(
    ([, fill, rule, stroke, strokeWidth, d = '']): LogoShape => ({
      d,
      fill: fill === 'none' ? null : (fill ?? null),
      evenOdd: rule === 'evenodd',
      stroke: stroke === 'none' ? null : (stroke ?? null),
      strokeWidth: Number(strokeWidth),
    }),
  );
  if (inner.replace(shapePattern, '') !== '') return null;
  return { kind: 'vector', width: Number(width), height: Number(height), shapes };
}

/** PNG, third edition, 5.2: what every file begins with. */
export const pngSignature = [137, 80, 78, 71, 13, 10, 26, 10] as const;

/** The parts of a PNG in order (5.3); null when one runs past the end of the file. */
export function chunksOf(
  png: Uint8Array,
): readonly { readonly type: string; readonly from: number; readonly to: number }[] | null {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const chunks: { type: string; from: number; to: number }[] = [];
  if (pngSignature.some((byte, at) => png[at] !== byte)) return null;
  for (let at = pngSignature.length; at + 12 <= png.length; ) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...png.subarray(at + 4, at + 8));
    const to = at + 8 + length;
    if (to + 4 > png.length) return null;
    chunks.push({ type, from: at + 8, to });
    if (type === 'IEND') return chunks;
    at = to + 4;
  }
  return null;
}

function parsePixels(png: Uint8Array): Logo | null {
  const chunks = chunksOf(png);
  const [header, data, end, ...more] = chunks ?? [];
  if (header?.type !== 'IHDR' || data?.type !== 'IDAT' || end?.type !== 'IEND' || more.length > 0)
    return null;
  const view = new DataView(png.buffer, png.byteOffset + header.from, 13);
  // 11.2.1: eight bits, red green blue, no interlacing.
  if (view.getUint8(8) !== 8 || view.getUint8(9) !== 2 || view.getUint8(12) !== 0) return null;
  return {
    kind: 'pixels',
    width: view.getUint32(0),
    height: view.getUint32(4),
    packed: png.slice(data.from, data.to),
  };
}
