// The name of a logo beside the clinic's details arrives; a data: URL fit for a letter leaves, or a problem in words.
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { type Checked, faulty, fine } from '../../problem.js';
import { pngSignature, readLogo, vectorUrl } from '../../render/logo.js';
import { limits } from './limits.js';

/** No way up, no drive, no network share, no address: a configuration from elsewhere opens nothing of this computer. */
const besideIt = /^(?!.*\.\.)[^\\/:\0][^\\:\0]*$/;

/**
 * Reads a clinic's logo, SVG or PNG.
 * @param folder where the configuration lies; `path` starts there.
 * Problems: `logo-refused`: not there, too large, no PNG or SVG, damaged, or with anything but plain shapes.
 * @example await readLogoFile('clinic', 'logo.svg')
 */
export async function readLogoFile(folder: string, path: string): Promise<Checked<string>> {
  const refuse = (cannot: string, expected: string, row: number | null = null): Checked<string> =>
    faulty([
      {
        code: 'logo-refused',
        place: { file: path, row, field: null },
        cannot: `cannot ${cannot}`,
        found: null,
        expected,
        remedy: 'Leave "logo" out to make letters without one.',
      },
    ]);
  if (!besideIt.test(path))
    return refuse('open this logo', 'a file beside the configuration, such as logo.svg');
  const bytes = await readSmall(join(folder, path));
  if (bytes === 'absent')
    return refuse('open this logo', 'a file of this name, readable, beside the configuration');
  if (bytes === 'too large')
    return refuse('read this logo', `a file of at most ${limits.pngBytes / 1024} kB`);
  const isPng = pngSignature.every((byte, at) => bytes[at] === byte);
  if (isPng) {
    const { readPngLogo } = await import('./read-png-logo.js');
    const url = readPngLogo(bytes);
    if (typeof url !== 'string') return refuse(url.cannot, url.expected);
    return shapely(url) ? fine(url) : refuse(...misshapen);
  }
  if (bytes.length > limits.svgBytes)
    return refuse('read this logo', `an SVG of at most ${limits.svgBytes / 1024} kB, or a PNG`);
  const text = textOf(bytes);
  if (text === null || !/<svg[\s>]/.test(text))
    return refuse('tell what this logo is', 'an SVG or a PNG file');
  const { readSvgLogo } = await import('./read-svg-logo.js');
  const logo = readSvgLogo(text);
  if (!('kind' in logo)) return refuse(logo.cannot, logo.expected, logo.line);
  const url = vectorUrl(logo);
  return shapely(url) ? fine(url) : refuse(...misshapen);
}

const misshapen = [
  'fit this logo into a letterhead',
  `a picture ${limits.narrowest} to ${limits.widest} times as wide as it is tall`,
] as const;

function shapely(url: string): boolean {
  const logo = readLogo(url);
  if (logo === null) throw new Error('a logo written by us cannot be read');
  const share = logo.width / logo.height;
  return share >= limits.narrowest && share <= limits.widest;
}

/** No more than the limit is ever read; what is no plain file counts as absent. */
async function readSmall(path: string): Promise<Uint8Array | 'absent' | 'too large'> {
  const handle = await open(path, 'r').catch(() => null);
  if (handle === null) return 'absent';
  try {
    const facts = await handle.stat();
    if (!facts.isFile()) return 'absent';
    if (facts.size > limits.pngBytes) return 'too large';
    const buffer = new Uint8Array(limits.pngBytes + 1);
    const { bytesRead } = await handle.read(buffer, 0, buffer.length, 0);
    return bytesRead > limits.pngBytes ? 'too large' : buffer.slice(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
