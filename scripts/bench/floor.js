// One of our PDFs arrives; a way to write it with pdfkit alone leaves, all that we work out being handed over ready made.
import { deflateSync } from 'node:zlib';
import PDFDocument from 'pdfkit';
import { bundled } from '../bundled.js';

/** Pages with our very operators, our fonts cut and packed, one structure element for each stretch of marked content. */
export async function floorOf(bytes) {
  const { readObjects } = await bundled('tests/render/pdf/objects.ts');
  const prebuilt = takeApart(readObjects(bytes));
  return { drawOne: () => replay(prebuilt) };
}

function takeApart(objects) {
  const pages = [...objects.all.values()]
    .filter(({ value }) => value?.Type === '/Page')
    .map(({ value }) => ({
      size: value.MediaBox.slice(2),
      fonts: objects.dict(objects.dict(value.Resources).Font),
      pieces: piecesOf(Buffer.from(objects.stream(value.Contents)).toString('latin1')),
    }));
  const packed = new Map();
  for (const [ref, { stream }] of objects.all)
    if (stream !== null) packed.set(ref, deflateSync(stream));
  return { objects, packed, pages };
}

/** A content stream in its stretches of marked content; the marks themselves are pdfkit's to write. */
function piecesOf(content) {
  const marked = /\/(\w+) (?:<<(?:[^<>]|<[^<])*>> BDC|BMC)\n([\s\S]*?)EMC/g;
  return [...content.matchAll(marked)].map(([whole, tag, operators]) => ({
    tag,
    operators,
    told: whole.includes('MCID'),
  }));
}

async function replay({ objects, packed, pages }) {
  const document = new PDFDocument({ tagged: true, lang: 'en', autoFirstPage: false, font: '' });
  const ended = new Promise((done) => document.on('data', () => {}).on('end', done));
  const copied = new Map();
  for (const { size, fonts, pieces } of pages) {
    document.addPage({ size, margin: 0 });
    for (const [name, font] of Object.entries(fonts))
      document.page.fonts[name] = copy(document, { objects, packed }, font, copied);
    for (const { tag, operators, told } of pieces) {
      if (!told) {
        document.markContent('Artifact').addContent(operators).endMarkedContent();
        continue;
      }
      const mark = document.markStructureContent(tag);
      document.addContent(operators).endMarkedContent();
      document.addStructure(document.struct(tag, mark));
    }
  }
  document.end();
  await ended;
}

/** An object and all it names, written into another document; streams are packed already. */
function copy(document, source, { ref }, copied) {
  const known = copied.get(ref);
  if (known !== undefined) return known;
  const packed = source.packed.get(ref);
  const target = document.ref(packed === undefined ? {} : { Filter: 'FlateDecode' });
  copied.set(ref, target);
  if (packed === undefined)
    target.data = rebuilt(source.objects.all.get(ref).value, (part) =>
      copy(document, source, part, copied),
    );
  target.end(packed);
  return target;
}

/** A value as pdfkit takes it: names without their slash, strings as objects. */
function rebuilt(value, follow) {
  if (Array.isArray(value)) return value.map((part) => rebuilt(part, follow));
  if (typeof value === 'string') return value.startsWith('/') ? value.slice(1) : new String(value);
  if (typeof value !== 'object' || value === null) return value;
  if ('ref' in value) return follow(value);
  const parts = Object.entries(value).map(([key, part]) => [key, rebuilt(part, follow)]);
  return Object.fromEntries(parts);
}
