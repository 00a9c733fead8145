// Attributes of a drawn element arrive; its paint leaves, or the name of what a letterhead cannot take.

export type Paint = {
  readonly fill: string | null;
  readonly stroke: string | null;
  readonly strokeWidth: number;
  readonly evenOdd: boolean;
};

export class Foreign extends Error {
  constructor(
    readonly cannot: string,
    readonly expected: string,
  ) {
    super();
  }
}

/** SVG 2, 13: what a shape without any paint of its own has. */
export const plainPaint: Paint = {
  fill: '#000000',
  stroke: null,
  strokeWidth: 1,
  evenOdd: false,
};

/** Change nothing that we draw, or say what is so anyway. */
const harmless =
  /^(id|version|role|color|xml:space|xmlns(:.*)?|data-.*|aria-.*|inkscape:.*|sodipodi:.*|-inkscape-.*|preserveAspectRatio|enable-background|stroke-(linecap|linejoin|miterlimit)|clip-rule|font-.*|line-height|isolation)$/;
const neutral: Readonly<Record<string, RegExp>> = {
  opacity: /^1(\.0*)?$/,
  'fill-opacity': /^1(\.0*)?$/,
  'stroke-opacity': /^1(\.0*)?$/,
  display: /^(inline|block)$/,
  visibility: /^visible$/,
  'stroke-dasharray': /^none$/,
  'stroke-dashoffset': /^0(px)?$/,
  overflow: /^(visible|hidden)$/,
  'paint-order': /^normal$/,
};

/**
 * Paint as inherited, then from the attributes, then from the style attribute (SVG 2, 6.1).
 * @param shape names of attributes that give the element its form.
 * @throws Foreign for anything that would draw something else than we do.
 */
export function paintOf(
  attributes: Readonly<Record<string, string>>,
  shape: readonly string[],
  inherited: Paint,
): Paint {
  let paint = inherited;
  for (const [name, value] of [...Object.entries(attributes), ...declarations(attributes.style)]) {
    if (name === 'style' || shape.includes(name) || harmless.test(name)) continue;
    paint = withProperty(paint, name, value.trim());
  }
  return paint;
}

function declarations(style: string | undefined): readonly (readonly [string, string])[] {
  return (style ?? '')
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
      const colon = part.indexOf(':');
      return [part.slice(0, colon).trim(), part.slice(colon + 1).trim()] as const;
    });
}

function withProperty(paint: Paint, name: string, value: string): Paint {
  switch (name) {
    case 'fill':
      return { ...paint, fill: colourOf(value) };
    case 'stroke':
      return { ...paint, stroke: colourOf(value) };
    case 'stroke-width': {
      const width = /^(\d*\.?\d+)(px)?$/.exec(value)?.[1];
      if (width === undefined) throw new Foreign('use this stroke-width', 'a number');
      return { ...paint, strokeWidth: Number(width) };
    }
    case 'fill-rule':
      return { ...paint, evenOdd: value === 'evenodd' };
  }
  if (Object.hasOwn(neutral, name) && neutral[name]?.test(value)) return paint;
  throw new Foreign(
    `draw with ${JSON.stringify(name.slice(0, 30))}`,
    'only fill, stroke, stroke-width, fill-rule and transform',
  );
}

const named: Readonly<Record<string, string | null>> = {
  none: null,
  transparent: null,
  black: '#000000',
  white: '#ffffff',
  currentcolor: '#000000',
};

function colourOf(written: string): string | null {
  const value = written.toLowerCase();
  if (Object.hasOwn(named, value)) return named[value] ?? null;
  if (/^#[0-9a-f]{6}$/.test(value)) return value;
  if (/^#[0-9a-f]{3}$/.test(value)) return value.replace(/[0-9a-f]/g, '$&$&');
  const parts = /^rgb\(\s*(\d{1,3})\s*,\s*(\d{1,3})\s*,\s*(\d{1,3})\s*\)$/.exec(value)?.slice(1);
  if (parts?.every((part) => Number(part) < 256))
    return `#${parts.map((part) => Number(part).toString(16).padStart(2, '0')).join('')}`;
  throw new Foreign('use this colour', 'a colour such as #1d5a3c, black, white or none');
}
