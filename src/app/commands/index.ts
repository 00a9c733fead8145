// The first word of a command line in, the commands that may answer it out. Only the one that was named is loaded.
import type { CommandModule } from 'yargs';

/** In the order of the help page. */
const doors = {
  letter: () => import('./letter.js').then((room) => room.letterCommand),
  check: () => import('./check.js').then((room) => room.checkCommand),
  columns: () => import('./columns.js').then((room) => room.columnsCommand),
  explain: () => import('./explain.js').then((room) => room.explainCommand),
  mailing: () => import('./mailing.js').then((room) => room.mailingCommand),
  review: () => import('./review.js').then((room) => room.reviewCommand),
  release: () => import('./release.js').then((room) => room.releaseCommand),
  page: () => import('./page.js').then((room) => room.pageCommand),
  print: () => import('./print.js').then((room) => room.printCommand),
  verify: () => import('./verify.js').then((room) => room.verifyCommand),
  languages: () => import('./languages.js').then((room) => room.languagesCommand),
  schema: () => import('./schema.js').then((room) => room.schemaCommand),
  templates: () => import('./templates.js').then((room) => room.templatesCommand),
  completion: () => import('./completion.js').then((room) => room.completionCommand),
} as const;

/**
 * The command called `word` alone, none for the version; all of them otherwise: help, completion and a misspelt
 * word speak of every command. A command may load half the program, and a start waits for what it loads.
 */
export async function commandsFor(word: string | undefined): Promise<readonly CommandModule[]> {
  if (word === '--version') return [];
  const named = Object.entries(doors).filter(([name]) => name === word);
  const wanted = named.length > 0 ? named : Object.entries(doors);
  // Each command knows the type of its own words; yargs only passes them on.
  return Promise.all(wanted.map(([, load]) => load() as Promise<CommandModule>));
}
