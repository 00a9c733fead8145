// A placed logo arrives; operators of a content stream leave, its pixels stored once in each document.
import { readLogo, type Logo } from '../logo.js';
import { packedStream, type Canvas, type Reference } from './canvas.js';
import { outlinePath, shapePaint } from './paint.js';
import type { LogoInk } from './placed.js';
import { storedOnce } from './stored-once.js';
import { short } from './typecase.js';

/** Nothing is drawn outside the logo's own box, whatever its shapes say. */
export function logoOperators(
  canvas: Canvas,
  { src, x, y, width, height, scale }: LogoInk,
): string {
  const logo = readLogo(src);
  if (logo === null) throw new Error('A logo was placed that cannot be drawn');
  const drawn =
    logo.kind === 'vector' ? shapesOf(logo, scale) : pixelsOf(canvas, src, logo, width, height);
  const box = `0 0 ${short(width)} ${short(height)} re W n`;
  return `q 1 0 0 1 ${short(x)} ${short(y)} cm ${box}\n${drawn}\nQ`;
}

function shapesOf({ shapes }: Logo & { readonly kind: 'vector' }, scale: number): string {
  const size = scale.toFixed(4);
  const drawn = shapes.map(({ d, fill, stroke, strokeWidth, evenOdd }) => {
    const paint = { fill, stroke, width: strokeWidth, dash: null };
    const path = outlinePath(d, paint);
    return `${shapePaint(paint)}\n${path}${evenOdd && fill !== null ? '*' : ''}`;
  });
  return `${size} 0 0 ${size} 0 0 cm\n${drawn.join('\n')}`;
}

/** ISO 32000-1, 8.9.5: pictures stand upright in a space that grows upwards, and pdfkit's pages grow downwards. */
function pixelsOf(
  canvas: Canvas,
  src: string,
  logo: Logo & { readonly kind: 'pixels' },
  width: number,
  height: number,
): string {
  const name = storedOnce(canvas, src, () => store(canvas, logo));
  return `${short(width)} 0 0 ${short(-height)} 0 ${short(height)} cm /${name} Do`;
}

/** 7.4.4.4: the rows of a PNG are what predictor 15 reads. */
function store(
  canvas: Canvas,
  { width, height, packed }: Logo & { readonly kind: 'pixels' },
): Reference {
  return packedStream(
    canvas,
    { packed },
    {
      Type: 'XObject',
      Subtype: 'Image',
      Width: width,
      Height: height,
      ColorSpace: 'DeviceRGB',
      BitsPerComponent: 8,
      DecodeParms: { Predictor: 15, Colors: 3, BitsPerComponent: 8, Columns: width },
    },
  );
}
