// Letters as HTML arrive; a way to set them all with a general-purpose typesetter leaves, or null where it is not installed.
// For its size it is no dependency of this project: npm install --no-save @myriaddreamin/typst-ts-node-compiler
import { Parser } from 'htmlparser2';

export const typesetterName = '@myriaddreamin/typst-ts-node-compiler';

/** The same words with their headings, paragraphs and lists, as a tagged PDF in our own faces; no pictures, no columns. */
export async function typesetter(pages, fonts) {
  const typst = await import(typesetterName).catch(() => null);
  if (typst === null) return null;
  const compiler = typst.NodeCompiler.create({ fontArgs: [{ fontPaths: [fonts] }] });
  const sources = pages.map(sourceOf);
  return {
    drawOne: async (nth) =>
      compiler.pdf({ mainFileContent: sources[nth] }, { pdfStandard: 'ua-1' }),
  };
}

const opening = {
  h1: '#heading(level: 1)[',
  h2: '#heading(level: 2)[',
  h3: '#heading(level: 3)[',
  p: '#par[',
  ul: '#list(',
  ol: '#enum(',
  li: '[',
  strong: '#strong[',
};
const closing = { ul: ')\n', ol: ')\n', li: '],', strong: ']' };
const unseen = ['head', 'svg', 'style', 'header'];

/** Our HTML as the typesetter's own markup; every piece of text is a string of its own, so that none is read as markup. */
function sourceOf(html) {
  const out = [
    '#set document(title: "Letter")\n#set page(paper: "a4", margin: 2cm, numbering: "1")\n',
    '#set text(font: "Noto Sans", size: 14pt, lang: "en")\n',
  ];
  let hidden = 0;
  const parser = new Parser({
    onopentag: (tag) => {
      if (unseen.includes(tag)) hidden++;
      if (hidden === 0 && tag in opening) out.push(opening[tag]);
    },
    ontext: (text) => {
      if (hidden === 0 && text.trim() !== '') out.push(`#${JSON.stringify(text)}`);
    },
    onclosetag: (tag) => {
      if (hidden === 0 && tag in opening) out.push(closing[tag] ?? ']\n');
      if (unseen.includes(tag)) hidden--;
    },
  });
  parser.end(html);
  return out.join('');
}
