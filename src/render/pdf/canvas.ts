// Document facts arrive; the members of pdfkit that drawing needs leave, typed as they are.
import { zlibSync } from 'fflate';
import PDFDocument from 'pdfkit';

/** An object of the file. `data` becomes its dictionary; bytes written become its stream. */
export type Reference = {
  readonly data: Record<string, unknown>;
  readonly write: (chunk: string | Uint8Array) => void;
  readonly end: (chunk?: string | Uint8Array) => void;
};

export type Canvas = AsyncIterable<Uint8Array> & {
  readonly page: {
    readonly height: number;
    readonly dictionary: Reference;
    readonly fonts: Record<string, Reference>;
    readonly xobjects: Record<string, Reference>;
    readonly annotations: Reference[];
    /** Key of the page's marked content in the parent tree, given when first asked for. */
    readonly structParentTreeKey: number;
    readonly write: (chunk: Uint8Array) => void;
  };
  readonly addPage: (form: { readonly size: readonly number[]; readonly margin: number }) => void;
  /** Operators of plain ASCII. */
  readonly addContent: (operators: string) => void;
  readonly ref: (data: Readonly<Record<string, unknown>>) => Reference;
  readonly getStructTreeRoot: () => Reference;
  /** ISO 32000-1, 14.7.4.4: by key, the element of each marked content of a page, or that of an annotation. */
  readonly getStructParentTree: () => {
    readonly get: (key: number) => Reference[];
    readonly add: (key: number, element: Reference) => void;
  };
  readonly createStructParentTreeNextKey: () => number;
  readonly end: () => void;
  readonly on: (event: 'data' | 'end', heard: (chunk: Uint8Array) => void) => void;
};

export type DocumentFacts = {
  readonly lang: string;
  readonly title: string;
  /** ISO 8601 date and time. */
  readonly created: string;
  readonly producerVersion: string;
  /**
   * Opens the file; printable ASCII. AES with a 256-bit key (ISO 32000-1, Adobe extension level 3, revision 5);
   * its keys are random, so such a file is never made twice with the same bytes.
   */
  readonly password?: string;
};

/**
 * Opens a tagged document of PDF 1.7 that claims PDF/UA-1. Titles must name no patient.
 * @example openCanvas({ lang: 'en', title: 'Your iron results', created: '2026-01-05T00:00:00Z', producerVersion: '1' })
 */
export function openCanvas(facts: DocumentFacts): Canvas {
  const options = {
    autoFirstPage: false,
    font: null,
    tagged: true,
    subset: 'PDF/UA',
    ...lock(facts.password),
    lang: facts.lang,
    displayTitle: true,
    info: {
      Title: xmpSafe(facts.title),
      Producer: xmpSafe(`Ironleaf ${facts.producerVersion}`),
      Creator: 'Ironleaf',
      CreationDate: new Date(facts.created),
    },
  };
  // pdfkit's published types lag behind it (no PDF/UA, no bounding boxes): Canvas says what is used and tested.
  const Document = PDFDocument as unknown as new (settings: typeof options) => Canvas;
  const canvas = new Document(options);
  writeInLargePieces(canvas as Canvas & Writer);
  const { ref } = canvas;
  return Object.assign(canvas, {
    // pdfkit would go through them letter by letter.
    addContent: (operators: string) => canvas.page.write(utf8.encode(`${operators}\n`)),
    ref: (data: Readonly<Record<string, unknown>>) => packedAlike(ref.call(canvas, data)),
  });
}

const utf8 = new TextEncoder();

/** How pdfkit writes its file: text of one byte a character, line by line, or bytes. */
type Writer = {
  _offset: number;
  _write: (piece: unknown) => void;
  push: (chunk: Uint8Array | null) => boolean;
};

const largePiece = 64 * 1024;

/** Lines are handed on together: through a stream, a thousand short ones cost as much as drawing the letter. */
function writeInLargePieces(canvas: Writer): void {
  const push = canvas.push.bind(canvas);
  let waiting = '';
  const flush = () => {
    if (waiting !== '') push(bytesOf(waiting));
    waiting = '';
  };
  canvas._write = (piece) => {
    if (piece instanceof Uint8Array) {
      flush();
      push(piece);
      canvas._offset += piece.length;
      return;
    }
    const line = `${String(piece)}\n`;
    waiting += line;
    canvas._offset += line.length;
    if (waiting.length > largePiece) flush();
  };
  canvas.push = (chunk) => {
    if (chunk === null) flush();
    return push(chunk);
  };
}

function bytesOf(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at += 1) bytes[at] = text.charCodeAt(at);
  return bytes;
}

/** Ends a document that nobody has read yet; its bytes leave as one. */
export function endWhole(canvas: Canvas): Promise<Uint8Array> {
  canvas.end();
  const chunks: Uint8Array[] = [];
  // Listening is quicker than iterating, for which Node first loads half of what it knows of streams.
  return new Promise((done) => {
    canvas.on('data', (chunk) => chunks.push(chunk));
    canvas.on('end', () => done(joined(chunks)));
  });
}

/** What pdfkit keeps of a stream until it is written. */
type Stream = Reference & { compress: boolean; buffer: Uint8Array[]; finalize: () => void };

/**
 * Packs a stream in the same way wherever the program runs. pdfkit leaves that to the platform's own zlib, whose bytes
 * differ between a browser and Node; any of them is a valid stream (RFC 1950), but one letter must be one file.
 */
function packedAlike(reference: Reference): Reference {
  const stream = reference as Stream;
  const { finalize } = stream;
  stream.finalize = () => {
    if (stream.compress && stream.buffer.length > 0) {
      stream.buffer = [zlibSync(joined(stream.buffer), { level: quick })];
      stream.compress = false;
    }
    finalize.call(stream);
  };
  return reference;
}

/** Pages are packed anew in each letter: three fifths of the time of level 6, for a thirtieth more bytes in a letter. */
const quick = 1;

/** Bytes as they stand in the file; kept, they serve every document that has the same stream. */
export type Packed = { readonly packed: Uint8Array };

export function pack(bytes: Uint8Array): Packed {
  return { packed: zlibSync(bytes) };
}

/** A stream of bytes packed before. */
export function packedStream(
  canvas: Canvas,
  { packed }: Packed,
  facts: Readonly<Record<string, unknown>>,
): Reference {
  const made = canvas.ref({ ...facts, Filter: 'FlateDecode' });
  (made as Stream).compress = false;
  made.end(packed);
  return made;
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** Everything is allowed to who can open the file; screen readers above all (PDF/UA-1, 7.16). */
function lock(password: string | undefined) {
  if (password === undefined) return { pdfVersion: '1.7' };
  const permissions = {
    printing: 'highResolution',
    copying: true,
    contentAccessibility: true,
    fillingForms: true,
  };
  return { pdfVersion: '1.7ext3', userPassword: password, permissions };
}

/** pdfkit writes document facts into XML as they are: what XML reserves becomes its look-alike. */
function xmpSafe(text: string): string {
  return text
    .replaceAll('&', '\uFF06')
    .replaceAll('<', '\u2039')
    .replaceAll('>', '\u203A')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\uFFFE\uFFFF]/gu, '');
}
