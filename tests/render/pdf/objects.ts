// Bytes of a PDF arrive; its objects and inflated streams leave (ISO 32000-1, 7.3; files without object streams).
import { inflateSync } from 'node:zlib';

type Ref = { readonly ref: number };
export type Dict = { readonly [key: string]: Value };
export type Value = string | number | boolean | null | Ref | Dict | readonly Value[];
type Entry = { readonly value: Value; readonly stream: Uint8Array | null };

/** Names keep their slash, strings lose their brackets. */
export type Objects = {
  readonly get: (value: Value | undefined) => Value;
  readonly dict: (value: Value | undefined) => Dict;
  readonly list: (value: Value | undefined) => readonly Value[];
  readonly stream: (value: Value | undefined) => Uint8Array;
  readonly all: ReadonlyMap<number, Entry>;
  readonly trailer: Dict;
};

export function readObjects(bytes: Uint8Array): Objects {
  const text = Buffer.from(bytes).toString('latin1');
  const all = new Map<number, Entry>();
  const start = /(\d+) 0 obj\n/g;
  for (let found = start.exec(text); found !== null; found = start.exec(text)) {
    const reader = readerAt(text, start.lastIndex);
    const value = reader.value();
    let stream: Uint8Array | null = null;
    if (text.startsWith('stream\n', reader.place())) {
      const from = reader.place() + 'stream\n'.length;
      const facts: Dict = isDict(value) ? value : {};
      const length = Number(facts.Length);
      const raw = bytes.subarray(from, from + length);
      stream = facts.Filter === '/FlateDecode' ? inflateSync(raw) : raw;
      start.lastIndex = from + length;
    } else start.lastIndex = reader.place();
    all.set(Number(found[1]), { value, stream });
  }
  const get = (value: Value | undefined): Value =>
    isRef(value) ? (all.get(value.ref)?.value ?? null) : (value ?? null);
  const dict = (value: Value | undefined): Dict => {
    const got = get(value);
    return isDict(got) ? got : {};
  };
  return {
    get,
    dict,
    list: (value) => {
      const got = get(value);
      return Array.isArray(got) ? got : got === null ? [] : [got];
    },
    stream: (value) => (isRef(value) ? (all.get(value.ref)?.stream ?? empty) : empty),
    all,
    trailer: dict(readerAt(text, text.lastIndexOf('trailer') + 'trailer'.length).value()),
  };
}

const empty = new Uint8Array();

function isRef(value: Value | undefined): value is Ref {
  return typeof value === 'object' && value !== null && 'ref' in value;
}

function isDict(value: Value | undefined): value is Dict {
  return typeof value === 'object' && value !== null && !Array.isArray(value) && !('ref' in value);
}

const token = /\s*(<<|>>|\[|\]|\(|<[0-9a-fA-F\s]*>|\/[^\s<>[\]()/]*|\d+ \d+ R|[^\s<>[\]()/]+)/y;

/** Reads values one after another; also content streams, where operators come out as plain words. */
export function readerAt(text: string, from: number) {
  token.lastIndex = from;
  let place = from;
  const next = (): string | null => {
    token.lastIndex = place;
    const found = token.exec(text)?.[1] ?? null;
    if (found !== null) place = token.lastIndex;
    return found;
  };
  const string = (): string => {
    let out = '';
    for (let depth = 1; place < text.length; place += 1) {
      const letter = text.charAt(place);
      if (letter === '\\') {
        place += 1;
        out += escapes[text.charAt(place)] ?? text.charAt(place);
        continue;
      }
      if (letter === '(') depth += 1;
      if (letter === ')') depth -= 1;
      if (depth === 0) break;
      out += letter;
    }
    place += 1;
    return decoded(out);
  };
  const value = (): Value => {
    const word = next();
    if (word === '(') return string();
    if (word === '[') {
      const items: Value[] = [];
      for (let rest = value(); rest !== ']'; rest = value()) items.push(rest);
      return items;
    }
    if (word === '<<') {
      const dict: Record<string, Value> = {};
      for (let key = next(); key !== '>>' && key !== null; key = next())
        dict[key.slice(1)] = value();
      place += /^\s*/.exec(text.slice(place, place + 4))?.[0].length ?? 0;
      return dict;
    }
    const ref = /^(\d+) \d+ R$/.exec(word ?? '');
    if (ref !== null) return { ref: Number(ref[1]) };
    if (word === 'true' || word === 'false') return word === 'true';
    return word === null || Number.isNaN(Number(word)) ? word : Number(word);
  };
  return { value, place: () => place };
}

const escapes: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

function decoded(text: string): string {
  if (!text.startsWith('\u00FE\u00FF')) return text;
  return Buffer.from(text.slice(2), 'latin1').swap16().toString('utf16le');
}
