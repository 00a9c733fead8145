// An XLIFF 2.0 file arrives; its segments leave, each with its state, or why the file cannot be read.
import { Parser } from 'htmlparser2';
import { type Checked, faulty, fine } from '../../problem.js';

export type Segment = {
  readonly namespace: string;
  readonly key: string;
  readonly source: string;
  readonly target: string | null;
  readonly state: string;
};
export type Translated = { readonly tag: string; readonly segments: readonly Segment[] };

/**
 * Reads what translators' tools give back. Elements of other modules are passed over; a variable may stand as an
 * inline code or as text.
 * Problems: not XML in every tag closed; another version; a source other than English; a document type, which
 * could define entities; a unit twice.
 * @example readXliff('pl.xlf', text) // { ok: true, value: { tag: 'pl', segments: […] }, notes: [] }
 */
export function readXliff(file: string, text: string): Checked<Translated> {
  const reader = new Reading();
  const parser = new Parser(
    {
      onopentag: (name, attributes) => reader.open(name, attributes),
      onclosetag: (name, implied) => reader.close(name, implied),
      ontext: (words) => reader.text(words),
      onprocessinginstruction: (name) => {
        if (name.toLowerCase() === '!doctype') reader.fault ??= 'no document type';
      },
    },
    { xmlMode: true, decodeEntities: true },
  );
  parser.end(text.replace(/^\uFEFF/, ''));
  const fault = reader.fault ?? (reader.root === null ? 'an xliff element' : null);
  if (fault === null && reader.root !== null)
    return fine({ tag: reader.root, segments: reader.segments });
  return faulty([
    {
      code: 'not-xliff',
      place: { file, row: null, field: null },
      cannot: 'cannot read the file as XLIFF 2.0',
      found: null,
      expected: fault,
      remedy: 'ironleaf languages export makes such a file.',
    },
  ]);
}

type Attributes = Readonly<Record<string, string>>;

class Reading {
  root: string | null = null;
  fault: string | null = null;
  readonly segments: Segment[] = [];
  private readonly seen = new Set<string>();
  private namespace = '';
  private key = '';
  private state = 'initial';
  private source: string[] = [];
  private target: string[] | null = null;
  private into: string[] | null = null;
  /** A tag that has just been opened and may close itself, as <ph/> does. */
  private opened: string | null = null;

  open(name: string, attributes: Attributes): void {
    this.opened = name;
    if (name === 'xliff') this.openRoot(attributes);
    else if (name === 'file') this.namespace = attributes.id ?? '';
    else if (name === 'unit') this.openUnit(attributes.id ?? '');
    else if (name === 'segment') this.state = attributes.state ?? 'initial';
    else if (name === 'source') this.into = this.source;
    else if (name === 'target') {
      this.target ??= [];
      this.into = this.target;
    } else if (name === 'ph' && this.into !== null) this.into.push(attributes.equiv ?? '');
  }

  private openRoot({ version, srcLang, trgLang }: Attributes): void {
    if (version?.startsWith('2.') !== true) this.fault ??= 'version 2.0';
    if (srcLang?.split('-')[0] !== 'en') this.fault ??= 'English as the source (srcLang)';
    if (trgLang === undefined) this.fault ??= 'a target language (trgLang)';
    this.root = trgLang ?? '';
  }

  private openUnit(key: string): void {
    const place = `${this.namespace} ${key}`;
    if (this.seen.has(place)) this.fault ??= `each unit once (${key})`;
    this.seen.add(place);
    this.key = key;
    this.state = 'initial';
    this.source = [];
    this.target = null;
  }

  close(name: string, implied: boolean): void {
    if (implied && this.opened !== name) this.fault ??= 'every tag closed';
    this.opened = null;
    if (name === 'source' || name === 'target') this.into = null;
    if (name !== 'unit') return;
    this.segments.push({
      namespace: this.namespace,
      key: this.key,
      source: this.source.join(''),
      target: this.target?.join('') ?? null,
      state: this.state,
    });
  }

  text(words: string): void {
    this.opened = null;
    this.into?.push(words);
  }
}
