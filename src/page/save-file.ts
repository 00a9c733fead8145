// A finished file arrives; the browser's own way of saving it begins. It goes to this device's folder, nowhere else.

/** @example saveFile('letter.en.pdf', bytes, 'application/pdf') */
export function saveFile(name: string, content: Uint8Array | string, type: string): void {
  const part = typeof content === 'string' ? content : new Uint8Array(content);
  const url = URL.createObjectURL(new Blob([part], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
