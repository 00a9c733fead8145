// The bytes of a zip file arrive; how many bytes it says it unpacks to leaves, before anything is unpacked.
// PKWARE APPNOTE 4.3.12 (central directory) and 4.3.16 (its end record).

const endRecord = 0x06054b50;
const directoryEntry = 0x02014b50;
const endLength = 22;
const longestComment = 65_535;

/**
 * Sum of the sizes in the central directory; null where there is no such directory.
 * @example unpackedSize(bytes) // 51234
 */
export function unpackedSize(bytes: Uint8Array): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  if (end === null) return null;
  const entries = view.getUint16(end + 10, true);
  let place = view.getUint32(end + 16, true);
  let sum = 0;
  for (let i = 0; i < entries; i++) {
    if (place + 46 > view.byteLength || view.getUint32(place, true) !== directoryEntry) return null;
    sum += view.getUint32(place + 24, true);
    place +=
      46 +
      view.getUint16(place + 28, true) +
      view.getUint16(place + 30, true) +
      view.getUint16(place + 32, true);
  }
  return entries === 0 ? null : sum;
}

function endOf(view: DataView): number | null {
  const from = view.byteLength - endLength;
  for (let at = from; at >= Math.max(0, from - longestComment); at--) {
    if (view.getUint32(at, true) === endRecord) return at;
  }
  return null;
}
