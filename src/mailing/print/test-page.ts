// A window arrives; a page to lay into the envelope leaves, with an invented address and what to look for.
import type { Block, LetterDocument } from '../../render/block.js';
import type { WindowPreset } from './windows.js';

export function testPage({ id, source, checked }: WindowPreset): {
  readonly document: LetterDocument;
  readonly address: readonly string[];
} {
  return {
    address: ['Tamsin Orrery', '4 Lantern Row', 'Saltmarsh Bay'],
    document: {
      lang: 'en',
      dir: 'ltr',
      title: 'Test page for a window envelope',
      header: { runs: [run('This line must never show in the window.')], pageOf: null },
      footer: null,
      blocks: [
        { kind: 'heading', level: 1, runs: [run(`Window ${id}`)] },
        paragraph('Print at actual size, not fitted to the page. Fold at the marks.'),
        paragraph('Slide the sheet to every corner of the envelope.'),
        paragraph('The whole address must show, and nothing else.'),
        paragraph(`Measures: ${source}. ${said[checked]}`),
      ],
    },
  };
}

const said: Readonly<Record<WindowPreset['checked'], string>> = {
  read: 'Read in the source itself.',
  'read-secondary': 'The source itself was not at hand: trust your envelope, not this page.',
  derived: 'Computed from it: trust your envelope, not this page.',
  proposal: 'A proposal of this program: trust your envelope, not this page.',
  'from-memory': 'Nobody looked it up: trust your envelope, not this page.',
};

function run(text: string) {
  return { text, strong: false, lang: null, isolate: null, href: null };
}

function paragraph(text: string): Block {
  return { kind: 'paragraph', look: 'body', runs: [run(text)] };
}
