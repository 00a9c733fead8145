// Parts of a FHIR file arrive; every resource in them leaves, in order, with ways to follow references.
import type { z } from 'zod';
import type { Problem } from '../../problem.js';
import { at } from '../fault.js';
import type { JsonPart } from '../json/index.js';
import { schemaProblems } from '../json/schema-problems.js';

export type Found = {
  readonly row: number | null;
  readonly resource: Readonly<Record<string, unknown>>;
  /** The resource this one is contained in, for references such as '#p1'. */
  readonly container: Found | null;
  readonly path: string;
};

export type Pool = {
  readonly all: readonly Found[];
  /** Resource a reference points at, looked up from the one that holds the reference. */
  readonly follow: (from: Found, reference: string | undefined) => Found | null;
};

/** Lists every resource: bundles are opened, contained resources follow their container. */
export function poolOf(parts: readonly JsonPart[]): Pool {
  const all: Found[] = [];
  const named = new Map<string, Found | null>();
  const inside = new Map<Found, Map<string, Found>>();
  /** Within its own part a name is certain; across parts only when no other part uses it. */
  const name = (reference: string, found: Found) => {
    named.set(`${found.row} ${reference}`, found);
    named.set(reference, named.has(reference) ? null : found);
  };
  const add = (
    value: unknown,
    row: number | null,
    path: string,
    container: Found | null,
    url: unknown,
  ) => {
    if (!isResource(value)) return;
    if (value.resourceType === 'Bundle') {
      const entries: unknown = value.entry;
      if (!Array.isArray(entries)) return;
      entries.forEach((entry: unknown, i) => {
        if (isRecord(entry))
          add(entry.resource, row, `${dotted(path)}entry[${i}].resource`, null, entry.fullUrl);
      });
      return;
    }
    const found: Found = { row, resource: value, container, path };
    all.push(found);
    const id: unknown = value.id;
    if (container === null && typeof id === 'string') name(`${value.resourceType}/${id}`, found);
    if (typeof url === 'string' && !url.endsWith(`/${String(id)}`)) name(url, found);
    if (container !== null && typeof id === 'string') {
      const names = inside.get(container) ?? new Map<string, Found>();
      if (!names.has(id)) names.set(id, found);
      inside.set(container, names);
    }
    const contained: unknown = value.contained;
    if (!Array.isArray(contained)) return;
    contained.forEach((one: unknown, i) => {
      add(one, row, `${dotted(path)}contained[${i}]`, found, undefined);
    });
  };
  for (const part of parts) if ('value' in part) add(part.value, part.row, '', null, undefined);
  return { all, follow: (from, reference) => follow(inside, named, from, reference) };
}

function follow(
  inside: ReadonlyMap<Found, ReadonlyMap<string, Found>>,
  named: ReadonlyMap<string, Found | null>,
  from: Found,
  reference: string | undefined,
): Found | null {
  if (reference === undefined) return null;
  if (reference.startsWith('#'))
    return inside.get(from.container ?? from)?.get(reference.slice(1)) ?? null;
  const plain = reference.replace(/\/_history\/.*$/, '');
  const spellings = [plain, plain.split('/').slice(-2).join('/')];
  const keys = [...spellings.map((spelling) => `${from.row} ${spelling}`), ...spellings];
  return (
    keys.map((key) => named.get(key)).find((found) => found !== undefined && found !== null) ?? null
  );
}

/** A resource of one type, checked; null when it is of another type, a problem list when it does not fit. */
export function readAs<T>(
  found: Found,
  shape: z.ZodType<T>,
  file: string,
  problems: Problem[],
): T | null {
  const read = shape.safeParse(found.resource);
  if (read.success) return read.data;
  const place = at(file, found.row, found.path === '' ? null : found.path);
  problems.push(...schemaProblems(read.error, found.resource, place, () => []));
  return null;
}

type Resource = Readonly<Record<string, unknown>> & { readonly resourceType: string };

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isResource(value: unknown): value is Resource {
  return isRecord(value) && typeof value.resourceType === 'string';
}

function dotted(path: string): string {
  return path === '' ? '' : `${path}.`;
}
