// A path into a report file arrives; the names of the fields allowed there leave.
import { z } from 'zod';
import { reportFile } from './report-file.js';

/** @example knownKeys(['results', 0]) // ['analyte', 'name', 'value', ...] */
export function knownKeys(path: readonly PropertyKey[]): readonly string[] {
  const end = path.reduce<readonly z.core.$ZodType[]>(
    (types, key) => types.flatMap((type) => opened(type)).flatMap((type) => inside(type, key)),
    [reportFile],
  );
  return [...new Set(end.flatMap(opened).flatMap(keys))];
}

/** A type without its optional and nullable wrappings, each branch of a union on its own. */
function opened(type: z.core.$ZodType): readonly z.core.$ZodType[] {
  if (type instanceof z.ZodOptional || type instanceof z.ZodNullable) return opened(type.unwrap());
  if (type instanceof z.ZodUnion) return type.options.flatMap(opened);
  return [type];
}

function inside(type: z.core.$ZodType, key: PropertyKey): readonly z.core.$ZodType[] {
  if (type instanceof z.ZodArray) return [type.element];
  if (!(type instanceof z.ZodObject) || typeof key !== 'string') return [];
  const field: z.core.$ZodType | undefined = type.shape[key];
  return field === undefined ? [] : [field];
}

function keys(type: z.core.$ZodType): readonly string[] {
  return type instanceof z.ZodObject ? Object.keys(type.shape) : [];
}
