// One FHIR R4 resource as JSON arrives; the part of it this program reads leaves, checked. Other fields pass by.
import { z } from 'zod';

const text = z.string();
const written = z.union([z.string(), z.number()]);
const coding = z.looseObject({
  system: text.optional(),
  code: text.optional(),
  display: text.optional(),
});
const concept = z.looseObject({ coding: z.array(coding).optional(), text: text.optional() });
const reference = z.looseObject({ reference: text.optional(), display: text.optional() });
const quantity = z.looseObject({
  value: written.optional(),
  comparator: text.optional(),
  unit: text.optional(),
  code: text.optional(),
});
const period = z.looseObject({ start: text.optional() });
const note = z.looseObject({ text: text.optional() });
const range = z.looseObject({
  low: quantity.optional(),
  high: quantity.optional(),
  text: text.optional(),
  type: concept.optional(),
  appliesTo: z.array(concept).optional(),
  age: z.looseObject({ low: quantity.optional(), high: quantity.optional() }).optional(),
});

const measured = {
  code: concept.optional(),
  valueQuantity: quantity.optional(),
  valueString: text.optional(),
  valueInteger: written.optional(),
  valueCodeableConcept: concept.optional(),
  dataAbsentReason: concept.optional(),
  interpretation: z.array(concept).optional(),
  referenceRange: z.array(range).optional(),
};

const common = { id: text.optional(), contained: z.array(z.unknown()).optional() };

export const observationShape = z.looseObject({
  ...common,
  ...measured,
  resourceType: z.literal('Observation'),
  status: text.optional(),
  subject: reference.optional(),
  specimen: reference.optional(),
  effectiveDateTime: text.optional(),
  effectiveInstant: text.optional(),
  effectivePeriod: period.optional(),
  component: z.array(z.looseObject(measured)).optional(),
  note: z.array(note).optional(),
  modifierExtension: z.array(z.unknown()).optional(),
});

export const diagnosticReportShape = z.looseObject({
  ...common,
  resourceType: z.literal('DiagnosticReport'),
  status: text.optional(),
  subject: reference.optional(),
  effectiveDateTime: text.optional(),
  effectivePeriod: period.optional(),
  result: z.array(reference).optional(),
  conclusion: text.optional(),
});

export const patientShape = z.looseObject({
  ...common,
  resourceType: z.literal('Patient'),
  identifier: z.array(z.looseObject({ value: text.optional() })).optional(),
  name: z
    .array(
      z.looseObject({
        use: text.optional(),
        text: text.optional(),
        family: text.optional(),
        given: z.array(text).optional(),
      }),
    )
    .optional(),
  birthDate: text.optional(),
  gender: text.optional(),
  deceasedBoolean: z.boolean().optional(),
  deceasedDateTime: text.optional(),
});

export const specimenShape = z.looseObject({
  ...common,
  resourceType: z.literal('Specimen'),
  type: concept.optional(),
});

export type Concept = z.infer<typeof concept>;
export type FhirRange = z.infer<typeof range>;
export type Observation = z.infer<typeof observationShape>;
export type Measured = Pick<Observation, keyof typeof measured>;
export type DiagnosticReport = z.infer<typeof diagnosticReportShape>;
