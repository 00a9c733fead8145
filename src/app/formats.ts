// Nothing arrives; the names of what a letter can be made as leave.

/** What a patient may be given; the others are to be read aloud to them, or for the record. */
export const pageFormats = ['html', 'pdf', 'text'] as const;
export const formats = [...pageFormats, 'script', 'note', 'fhir'] as const;
export type PageFormat = (typeof pageFormats)[number];
export type Format = (typeof formats)[number];
