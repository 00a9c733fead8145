// One line of a FHIR file arrives; whose results are in it leaves.
import type { JsonPart } from '../json/index.js';

/** True for an object that says, by its type, that it is FHIR's and no report file. */
export function isResource(part: JsonPart): boolean {
  return (
    'value' in part &&
    typeof part.value === 'object' &&
    part.value !== null &&
    'resourceType' in part.value
  );
}

/** A line of one patient (lines with one key are of one person), of itself, of whoever refers to it, or of no use. */
export type Whose =
  | { readonly of: 'patient'; readonly key: string }
  | { readonly of: 'itself' | 'anybody' | 'nobody' };

/**
 * Whose a line is. A Bundle, a line that cannot be read and a result without a patient stand alone; a specimen or
 * a report without a patient belongs to whoever refers to it.
 * @example whoseResource({ row: 1, value: { resourceType: 'Patient', id: '7' } }) // { of: 'patient', key: 'Patient/7' }
 */
export function whoseResource(part: JsonPart): Whose {
  if ('problem' in part) return { of: 'itself' };
  const resource = part.value as Readonly<Record<string, unknown>> | null;
  const type = resource?.resourceType;
  if (type === 'Bundle') return { of: 'itself' };
  if (type === 'Patient')
    return typeof resource?.id === 'string'
      ? { of: 'patient', key: `Patient/${resource.id}` }
      : { of: 'nobody' };
  if (type !== 'Observation' && type !== 'DiagnosticReport' && type !== 'Specimen')
    return { of: 'nobody' };
  const subject = resource?.subject as Readonly<Record<string, unknown>> | undefined;
  const reference = subject?.reference;
  if (typeof reference === 'string' && !reference.startsWith('#')) {
    const plain = reference.replace(/\/_history\/.*$/, '').split('/');
    return { of: 'patient', key: plain.slice(-2).join('/') };
  }
  return { of: type === 'Observation' || reference !== undefined ? 'itself' : 'anybody' };
}
