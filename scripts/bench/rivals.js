// Letters as HTML and as text arrive; a way to draw them all with a browser, and one with pdfkit alone, leaves.
import chromium from '@sparticuz/chromium';
import PDFDocument from 'pdfkit';
import { chromium as driver } from 'playwright-core';

/** Headless Chromium printing the same HTML: one browser and one page, kept. */
export async function chromiumPrinter(pages) {
  const browser = await driver.launch({
    executablePath: process.env.CHROMIUM ?? (await chromium.executablePath()),
    args: chromium.args,
  });
  const page = await browser.newPage();
  return {
    drawOne: async (nth) => {
      await page.setContent(pages[nth]);
      await page.pdf({ format: 'A4', tagged: true });
    },
    close: () => browser.close(),
  };
}

/** The same words with pdfkit alone: a font that is not embedded, no tags, no pictures. */
export function barePdfkit(texts) {
  return {
    drawOne: async (nth) => {
      const document = new PDFDocument({ size: 'A4' });
      const ended = new Promise((done) => document.on('data', () => {}).on('end', done));
      document.font('Helvetica').fontSize(11).text(texts[nth]);
      document.end();
      await ended;
    },
  };
}
