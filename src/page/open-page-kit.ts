// The page's own data arrive; the kit every letter is made with leaves: the same as the command line's, from no disk.
import type { Kit } from '../app/kit.js';
import { type Language, readLanguage } from '../letter/index.js';
import type { Template } from '../render/markup.js';
import type { Fonts } from '../render/pdf/index.js';
import { type AheadByName, reopenTemplate } from '../render/precompiled.js';
import { embeddedBytes, embeddedFacts, embeddedJson } from './embedded.js';

declare global {
  /** Templates as code, in a script of their own beside this one. */
  var ironleafTemplates: { readonly ahead: AheadByName; readonly partials: readonly string[] };
  /** Asked by the loader of the shaper for its WebAssembly. */
  var ironleafData: (name: string) => Uint8Array;
}

/** Nothing is unpacked before it is asked for; faces wait for the first PDF. */
export function openPageKit(): Kit {
  globalThis.ironleafData = embeddedBytes;
  const templates = new Map<string, Template>();
  const languages = new Map<string, Language>();
  let fonts: Promise<Fonts> | null = null;
  return {
    version: embeddedFacts().version,
    template: async (name) => {
      const { ahead, partials } = globalThis.ironleafTemplates;
      const template = templates.get(name) ?? reopenTemplate(name, ahead, partials);
      templates.set(name, template);
      return template;
    },
    language: async (tag) => {
      const language = languages.get(tag) ?? languageOf(tag);
      languages.set(tag, language);
      return language;
    },
    fonts: () => {
      fonts ??= openFaces();
      return fonts;
    },
  };
}

/** Faces of this copy's languages; a name in a script of another is a problem of the letter, not a fault. */
async function openFaces(): Promise<Fonts> {
  const { openFonts } = await import('../render/pdf/index.js');
  const fonts = await openFonts(async (file) => embeddedBytes(file));
  return { ...fonts, borrow: (points) => fonts.borrow(points).catch(() => false) };
}

function languageOf(tag: string): Language {
  const read = readLanguage(tag, embeddedJson(`locale:${tag}`) as Record<string, unknown>);
  if (!read.ok) throw new Error(`the page's language ${tag} cannot be read`);
  return read.value;
}
