// Bytes arrive; their base64 text leaves (RFC 4648, section 4), in Node and in a browser alike.

const mostAtOnce = 0x8000;

/** @example base64(new Uint8Array([104, 105])) // 'aGk=' */
export function base64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += mostAtOnce)
    text += String.fromCharCode(...bytes.subarray(at, at + mostAtOnce));
  return btoa(text);
}
