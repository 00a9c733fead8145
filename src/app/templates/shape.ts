// Nothing arrives; what variables a template has leaves, as a tree read from the file beside this one.
import fridge from './fridge.json' with { type: 'json' };
import letter from './letter.json' with { type: 'json' };

/** An object by name, a list as a list of one row, or null where a text, number or code stands. */
export type Shape = { readonly [name: string]: Shape } | readonly Shape[] | null;

/** Templates a clinic may bring and what each is filled with. Parts are filled with what their letter has. */
export const shapes: Readonly<Record<string, Shape>> = { letter, short: letter, fridge };

/** Parts that stand where a letter includes them; alone they are checked for tags and helpers only. */
export const partNames = ['help', 'help-brief', 'paragraphs', 'results', 'step'] as const;

export const ownNames: readonly string[] = [...Object.keys(shapes), ...partNames];
