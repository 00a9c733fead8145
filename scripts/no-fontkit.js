// Nothing arrives; what pdfkit imports from fontkit leaves, unable to open a font: HarfBuzz shapes every letter here.

/** Never called, because no document is given a font; half the program's size stays out of the bundle. */
export function create() {
  throw new Error('Fonts are opened by HarfBuzz, not by fontkit');
}
