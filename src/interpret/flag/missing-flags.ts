// In: a reading. Out: flags of what was not measured, and of inflammation.
import { limit } from '../../knowledge/limit.js';
import type { FlagRaised } from '../interpretation.js';
import type { Reading } from '../reading.js';
import { raise } from './raise.js';

/** Flags of tests that are absent, and of CRP. */
export function missingFlags({ person, results, read }: Reading): readonly FlagRaised[] {
  const has = new Set(results.map(({ analyte }) => analyte));
  const raised = limit('crp-raised');
  const crp = person.sure.get('crp');
  const certain = read.ferritin?.reading === 'ferritin-low';
  return [
    ...(has.has('haemoglobin') ? [] : [raise('haemoglobin-not-measured')]),
    ...(has.has('ferritin') ? [] : [raise('ferritin-not-measured')]),
    ...(has.has('transferrin-saturation') ? [] : [raise('iron-supply-not-measured')]),
    // Stryker disable next-line ConditionalExpression: whoever is inflamed has a CRP.
    ...(crp !== undefined && person.inflammation === 'raised'
      ? [
          raise('crp-raised', {
            analyte: 'ferritin',
            facts: { crp: crp.quantity.value },
            rules: [raised.id],
          }),
        ]
      : []),
    ...(person.inflammation === 'not-measured' && !certain
      ? [raise('crp-not-measured', { analyte: 'ferritin', rules: [raised.id] })]
      : []),
  ];
}
