// Nothing arrives; how large and how long a clinic's logo may be leaves.

/** Our own limits: what a quiet letterhead of about 12 mm can show, and what a mailing of thousands can carry. */
export const limits = {
  /** Bytes of the file. */
  svgBytes: 32 * 1024,
  pngBytes: 64 * 1024,
  /** Bytes of its pixels, packed again. */
  packedBytes: 64 * 1024,
  /** Pixels a side. */
  pixels: 1200,
  /** Least and most width for each unit of height. */
  narrowest: 0.3,
  widest: 6,
  shapes: 300,
  /** Lines and curves of all shapes together. */
  segments: 4000,
} as const;
