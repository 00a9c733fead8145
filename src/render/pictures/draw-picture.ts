// A picture as numbers and words arrives; a scene leaves.
import type { Picture } from '../../letter/content.js';
import type { Scene } from '../block.js';
import { drawAnalogy } from './analogy.js';
import type { Speech } from './canvas.js';
import { drawNumberLine } from './number-line.js';
import { drawPictogram } from './pictogram.js';
import { drawTrend } from './trend.js';

/**
 * Draws any picture a letter may hold. One unit is one point at the standard size.
 * @example drawPicture(result.line, { lang: 'ar', dir: 'rtl' }).shapes
 */
export function drawPicture(picture: Picture, speech: Speech): Scene {
  switch (picture.kind) {
    case 'number-line':
      return drawNumberLine(picture, speech);
    case 'trend':
      return drawTrend(picture, speech);
    case 'analogy':
      return drawAnalogy(picture, speech);
    case 'pictogram':
      return drawPictogram(picture);
  }
}
