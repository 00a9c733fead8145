// The little of the UCUM library that the tests use; the package brings no types of its own.
declare module '@lhncbc/ucum-lhc' {
  type Converted = {
    readonly status: 'succeeded' | 'failed' | 'error';
    readonly toVal: number | null;
    readonly msg: readonly string[];
  };
  type UcumUtils = {
    convertUnitTo(
      from: string,
      value: number,
      to: string,
      options?: { readonly molecularWeight?: number },
    ): Converted;
    validateUnitString(code: string): { readonly status: 'valid' | 'invalid' | 'error' };
  };
  const ucum: { readonly UcumLhcUtils: { getInstance(): UcumUtils } };
  export default ucum;
}
