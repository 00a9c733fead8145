// One report object and what the operator says arrive; the object leaves with the required fields it lacks.
import type { WrittenPatient } from '../written.js';
import type { JsonPart } from './index.js';

/**
 * A report file must say the sex and the day of the sample: where it does not, the operator may. What the file
 * says stays, for `addPatient` to compare.
 * @example fillPart({ row: null, value: { patient: {} } }, { sex: 'female' }, null)
 */
export function fillPart(
  part: JsonPart,
  { sex = null }: Partial<WrittenPatient>,
  collected: string | null,
): JsonPart {
  if ('problem' in part || !isRecord(part.value)) return part;
  const value = { ...part.value };
  const patient = value.patient ?? {};
  if (sex !== null && isRecord(patient) && (patient.sex ?? null) === null)
    value.patient = { ...patient, sex };
  if (collected !== null && (value.collected ?? null) === null) value.collected = collected;
  return { ...part, value };
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
