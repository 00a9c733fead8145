// The page has no types of Node; the build puts a hash of the same answers in the place of this one.
declare module 'node:crypto' {
  export function createHash(name: 'sha256'): {
    update(content: string | Uint8Array): { digest(form: 'hex'): string; digest(): Uint8Array };
  };
}
