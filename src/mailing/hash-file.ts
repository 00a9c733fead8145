// A path arrives; the hash and size of the file leave, whatever its size: a print file may be larger than memory.
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';

/** Null when there is no such file. @throws as the file system does for any other reason. */
export async function hashFile(
  path: string,
): Promise<{ readonly sha256: string; readonly bytes: number } | null> {
  const hash = createHash('sha256');
  let bytes = 0;
  try {
    for await (const chunk of createReadStream(path) as AsyncIterable<Uint8Array>) {
      hash.update(chunk);
      bytes += chunk.length;
    }
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw fault;
  }
  return { sha256: hash.digest('hex'), bytes };
}
