// The data blocks of the page arrive, by name; their bytes, texts and values leave. Nothing is ever fetched.
import { gunzipSync } from 'fflate';

/** What the program writes into a page beside its script. */
export type PageFacts = {
  readonly version: string;
  /** Tags of the languages a letter may be written in. */
  readonly languages: readonly string[];
  readonly exampleClinic: unknown;
  /** Details of the one clinic this copy was made for, or null. */
  readonly clinic: unknown;
};

function textOf(name: string): string {
  const found = document.getElementById(`data:${name}`)?.textContent;
  if (found === null || found === undefined) throw new Error(`the page holds no ${name}`);
  return found;
}

/** A block of JSON. */
export function embeddedJson(name: string): unknown {
  return JSON.parse(textOf(name));
}

export const embeddedFacts = (): PageFacts => embeddedJson('facts') as PageFacts;

/** A block of bytes, packed by gzip and written as base64. */
export function embeddedBytes(name: string): Uint8Array {
  const packed = atob(textOf(name));
  return gunzipSync(Uint8Array.from(packed, (sign) => sign.charCodeAt(0)));
}
