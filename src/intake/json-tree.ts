// JSON text arrives; plain values leave, with numbers under 'value', 'low' and 'high' kept as they were typed.

export type JsonTree =
  | { readonly ok: true; readonly value: unknown; readonly twice: readonly string[] }
  | { readonly ok: false; readonly cannot: string };

/** A laboratory's 12.50 must stay 12.50, so these keys keep their digits as text. */
const asTyped = new Set(['value', 'low', 'high']);
const deepest = 60;

/**
 * Reads JSON without losing digits or hiding a key that stands twice. Objects have no prototype.
 * Problems: not JSON; nested deeper than 60. `twice` lists paths of repeated keys.
 * @example readJsonTree('{"value": 12.50}') // value: { value: '12.50' }
 */
export function readJsonTree(text: string): JsonTree {
  try {
    JSON.parse(text);
  } catch (error) {
    return { ok: false, cannot: `cannot read this as JSON${placeOf(error, text)}` };
  }
  const twice: string[] = [];
  try {
    return { ok: true, value: new Walk(text, twice).value('', '', 0), twice };
  } catch (error) {
    if (error instanceof TooDeep)
      return { ok: false, cannot: `cannot read JSON nested deeper than ${deepest} levels` };
    throw error;
  }
}

/** The parser's own message quotes the text, which may hold a name; only line and column are kept. */
function placeOf(error: unknown, text: string): string {
  const position = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
  if (position === undefined) return '';
  const before = text.slice(0, Number(position)).split(/\r\n|\r|\n/);
  return ` (line ${before.length}, column ${(before.at(-1) ?? '').length + 1})`;
}

const blank = new Set([' ', '\t', '\r', '\n'].map((sign) => sign.charCodeAt(0)));
const word = /[^\s,\]}]+/y;

class TooDeep extends Error {}

/** Walks text already known to be JSON. */
class Walk {
  private at = 0;
  constructor(
    private readonly text: string,
    private readonly twice: string[],
  ) {}

  value(key: string, path: string, depth: number): unknown {
    if (depth > deepest) throw new TooDeep();
    this.space();
    const next = this.text[this.at];
    if (next === '{') return this.object(path, depth);
    if (next === '[') return this.array(key, path, depth);
    const token = next === '"' ? this.string() : this.match(word);
    return asTyped.has(key) && /^-?\d/.test(token) && next !== '"' ? token : JSON.parse(token);
  }

  private object(path: string, depth: number): object {
    const read: Record<string, unknown> = Object.create(null);
    this.at++;
    for (this.space(); this.text[this.at] !== '}'; this.space()) {
      if (this.text[this.at] === ',') {
        this.at++;
        this.space();
      }
      const key: string = JSON.parse(this.string());
      this.space();
      this.at++;
      const here = path === '' ? key : `${path}.${key}`;
      if (key in read) this.twice.push(here);
      read[key] = this.value(key, here, depth + 1);
    }
    this.at++;
    return read;
  }

  private array(key: string, path: string, depth: number): unknown[] {
    const read: unknown[] = [];
    this.at++;
    for (this.space(); this.text[this.at] !== ']'; this.space()) {
      if (this.text[this.at] === ',') this.at++;
      read.push(this.value(key, `${path}[${read.length}]`, depth + 1));
    }
    this.at++;
    return read;
  }

  private space(): void {
    while (blank.has(this.text.charCodeAt(this.at))) this.at++;
  }

  /** Quoted text up to its closing quote; a loop, because one long expression would run out of stack. */
  private string(): string {
    let end = this.at + 1;
    while (this.text[end] !== '"') end += this.text[end] === '\\' ? 2 : 1;
    const from = this.at;
    this.at = end + 1;
    return this.text.slice(from, this.at);
  }

  private match(shape: RegExp): string {
    shape.lastIndex = this.at;
    const found = shape.exec(this.text)?.[0] ?? '';
    this.at += found.length;
    return found;
  }
}
