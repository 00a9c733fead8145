// A PDF arrives; its text as pdfjs-dist, a reader that is not ours, extracts it leaves.
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export async function pdfjsText(bytes: Uint8Array): Promise<string> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let nth = 1; nth <= file.numPages; nth += 1) {
    const content = await (await file.getPage(nth)).getTextContent();
    pages.push(content.items.map((item) => ('str' in item ? item.str : '')).join(''));
  }
  return pages.join('');
}
