// A report and its interpretation in; the JSON other programs rely on out.
import type { Understood } from './understand.js';

/**
 * The reasoning as plain JSON: slugs first, details beside them.
 * @example explainJson(understood).pattern // 'iron-deficiency-anaemia'
 */
export function explainJson({ report, interpretation }: Understood) {
  const { pattern, hold, flags, results, ...rest } = interpretation;
  return {
    id: report.patient.id,
    ...rest,
    results: results.map(({ derived, ...result }) => ({
      ...result,
      derived: derived !== null,
      derivedFrom: derived,
    })),
    pattern: pattern.main,
    companions: pattern.companions,
    supports: pattern.supports,
    against: pattern.against,
    missing: pattern.missing,
    flags: [...new Set(flags.map(({ flag }) => flag))],
    flagDetails: flags,
    hold: {
      tier: hold.tier,
      reasons: [...new Set(hold.reasons.map(({ code }) => code))],
      details: hold.reasons,
    },
  };
}
