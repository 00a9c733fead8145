// The compiler's library for Node leaves WebAssembly out; these are the members used here.
declare namespace WebAssembly {
  type Exports = Readonly<Record<string, unknown>>;
  class Memory {
    readonly buffer: ArrayBuffer;
  }
  function instantiate(
    bytes: Uint8Array,
    imports: object,
  ): Promise<{ readonly instance: { readonly exports: Exports } }>;
}
