// Text arrives; the same text that cannot be taken for a tag or end an attribute leaves.

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Escapes text for HTML, in content and in quoted attributes.
 * @example escapeHtml('<b>') // '&lt;b&gt;'
 */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => entities[character] ?? character);
}
