// Nothing arrives; the shipped templates leave as code. The build fills this file in; the sources compile each template when it is opened.
import type { AheadByName } from '../render/precompiled.js';

export type ShippedTemplates = {
  readonly ahead: AheadByName;
  /** SHA-256 of the text each was made from: a template edited since is compiled anew. */
  readonly seals: Readonly<Record<string, string>>;
};

export const shippedTemplates: ShippedTemplates | null = null;
