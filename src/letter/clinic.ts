// The clinic's own details, as configured. None has a default: a wrong number could cost a life.

export type Clinic = {
  readonly name: string;
  readonly addressLines: readonly string[];
  readonly phone: string;
  readonly hours: string;
  readonly emergencyNumber: string;
  readonly maternityPhone: string | null;
  /** Who answers when the clinic is closed. */
  readonly outOfHours: string | null;
  readonly interpreter: { readonly phone: string; readonly free: boolean } | null;
  readonly website: string | null;
  /** A data: URL as `readLogo` of src/render/logo.ts reads it; the name of a file, as in a configuration, draws nothing. */
  readonly logo?: string;
  /** Invented details: every page is stamped as an example. */
  readonly demo: boolean;
};
