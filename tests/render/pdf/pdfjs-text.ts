// A PDF arrives; its words as pdfjs-dist, a reader that is not ours, extracts them leave.
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Points; x from the left and y from the top of the page to where the word stands. */
export type PdfjsWord = {
  readonly text: string;
  readonly size: number;
  readonly x: number;
  readonly y: number;
};

/** Page by page, in the order of the file; what is only space is left out. */
export async function pdfjsWords(bytes: Uint8Array): Promise<readonly (readonly PdfjsWord[])[]> {
  const file = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: PdfjsWord[][] = [];
  for (let nth = 1; nth <= file.numPages; nth += 1) {
    const page = await file.getPage(nth);
    const { height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    pages.push(
      items.flatMap((item) => {
        if (!('str' in item) || item.str.trim() === '') return [];
        const [, , across = 0, up = 0, x = 0, y = 0] = item.transform as readonly number[];
        return [{ text: item.str, size: Math.hypot(across, up), x, y: height - y }];
      }),
    );
  }
  return pages;
}

export async function pdfjsText(bytes: Uint8Array): Promise<string> {
  const file = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let nth = 1; nth <= file.numPages; nth += 1) {
    const content = await (await file.getPage(nth)).getTextContent();
    pages.push(content.items.map((item) => ('str' in item ? item.str : '')).join(''));
  }
  return pages.join('');
}
