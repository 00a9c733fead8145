// What the tests may know of the invented evening beside this file.
export type InventedReport = {
  readonly patient: { readonly id: string; readonly name: string; readonly birthDate?: string };
  readonly results: readonly {
    readonly analyte: string;
    readonly value: string;
    readonly unit?: string;
  }[];
};
/** @param seed the same gives the same evening. */
export function inventEvening(count: number, seed?: number): Generator<InventedReport, void>;
export function inventPost(reports: readonly InventedReport[]): string;
