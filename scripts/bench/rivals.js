// Letters as HTML and as text arrive; how many a second other ways of making a PDF manage leaves.
import chromium from '@sparticuz/chromium';
import PDFDocument from 'pdfkit';
import { chromium as driver } from 'playwright-core';

/** Headless Chromium printing the same HTML: one browser and one page, kept. Its start is not counted. */
export async function chromiumRate(pages) {
  const browser = await driver.launch({
    executablePath: process.env.CHROMIUM ?? (await chromium.executablePath()),
    args: chromium.args,
  });
  try {
    const page = await browser.newPage();
    await page.setContent(pages[0]);
    await page.pdf({ format: 'A4' });
    const began = performance.now();
    for (const html of pages) {
      await page.setContent(html);
      await page.pdf({ format: 'A4', tagged: true });
    }
    return (1000 * pages.length) / (performance.now() - began);
  } finally {
    await browser.close();
  }
}

/** The floor: the same words with pdfkit alone, a font that is not embedded, no tags, no pictures. */
export async function pdfkitRate(texts) {
  const began = performance.now();
  for (const text of texts) {
    const document = new PDFDocument({ size: 'A4' });
    const ended = new Promise((done) => document.on('data', () => {}).on('end', done));
    document.font('Helvetica').fontSize(11).text(text);
    document.end();
    await ended;
  }
  return (1000 * texts.length) / (performance.now() - began);
}
