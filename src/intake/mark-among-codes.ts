// Codes of interpretation arrive (HL7 table 0078); the laboratory's mark on this result leaves.

/** Change against an earlier result: up, down, better, worse. */
const changes: ReadonlySet<string> = new Set(['U', 'D', 'B', 'W']);

/**
 * Codes of change stand beside codes of normality; only the first of the latter is the mark.
 * @example markAmong(['D', 'LL']) // 'LL'
 */
export function markAmong(codes: readonly string[]): string | null {
  return codes.find((code) => !changes.has(code)) ?? null;
}
