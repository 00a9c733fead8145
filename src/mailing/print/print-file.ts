// Letters arrive one by one; one tagged PDF of all of them goes to disk as it grows, for a print house.
import { createWriteStream } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { type Checked, fine } from '../../problem.js';
import type { LetterDocument, PageForm } from '../../render/block.js';
import { look } from '../../render/look.js';
import { type Fonts, layOut, openSheets } from '../../render/pdf/index.js';
import { drawLetter } from '../../render/pdf/draw.js';
import { languagesOf } from '../../render/pdf/languages.js';
import type { PlacedLetter } from '../../render/pdf/placed.js';
import { ownerOnly, partOf } from '../whole-file.js';
import { placeAddress, placeBox, placeFolds } from './place-address.js';
import { points, type WindowPreset } from './windows.js';

type PrintJob = {
  readonly path: string;
  readonly form: PageForm;
  readonly fonts: Fonts;
  readonly window: WindowPreset | null;
  readonly folds: boolean;
  /** The window's box is drawn: for a test page, never for a letter. */
  readonly box: boolean;
  /** Every letter begins on a new sheet. */
  readonly duplex: boolean;
  readonly facts: {
    readonly title: string;
    readonly created: string;
    readonly producerVersion: string;
  };
};

export type PrintFile = {
  /** Problems as `layOut` and `placeAddress`; then nothing was added. @returns sheets of paper used. */
  readonly add: (
    letter: LetterDocument,
    address: readonly string[] | null,
  ) => Promise<Checked<number>>;
  readonly finish: () => Promise<void>;
  readonly giveUp: () => Promise<void>;
};

/** Opens the file; it appears under its name when finished. */
export function openPrintFile(job: PrintJob): PrintFile {
  const { form, fonts, facts, duplex } = job;
  const part = partOf(job.path);
  const sheets = openSheets({ lang: 'en', ...facts }, fonts);
  const writing = pipeline(
    sheets.canvas,
    createWriteStream(part, { mode: ownerOnly, flags: 'wx' }),
  );
  // Awaited at the end; until then a full disk must not end the process from outside.
  writing.catch(() => undefined);
  return {
    add: async (letter, address) => {
      await fonts.load(languagesOf(letter));
      const placed = place(job, letter, address);
      if (!placed.ok) return placed;
      drawLetter(sheets, placed.value);
      const pages = placed.value.pages.length;
      const { width, height } = look.page[form.paper];
      if (duplex && pages % 2 === 1) sheets.canvas.addPage({ size: [width, height], margin: 0 });
      return fine(duplex ? Math.ceil(pages / 2) : pages);
    },
    finish: async () => {
      sheets.typecase.close();
      sheets.canvas.end();
      await writing;
      await rename(part, job.path);
    },
    giveUp: async () => {
      sheets.canvas.end();
      await writing.catch(() => undefined);
      await rm(part, { force: true });
    },
  };
}

function place(
  { form, fonts, window, folds, box }: PrintJob,
  letter: LetterDocument,
  address: readonly string[] | null,
): Checked<PlacedLetter> {
  const placed = layOut(letter, form, fonts, window === null ? 0 : points(window.bodyFrom));
  if (!placed.ok || window === null) return placed;
  const addressed = address === null ? placed : placeAddress(placed.value, address, window, fonts);
  if (!addressed.ok) return addressed;
  const marked = folds ? placeFolds(addressed.value, window) : addressed.value;
  return fine(box ? placeBox(marked, window) : marked);
}
