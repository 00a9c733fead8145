// What these tests use of the xliff package, which ships no types.
declare module 'xliff' {
  type Unit = { readonly source?: string; readonly target?: string; readonly note?: string };
  export function xliff2js(
    xml: string,
    options: { readonly inlineAsString: boolean },
  ): Promise<{
    readonly sourceLanguage: string;
    readonly targetLanguage: string;
    readonly resources: Readonly<Record<string, Readonly<Record<string, Unit>>>>;
  }>;
}
