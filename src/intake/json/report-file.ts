// Nothing arrives; the shape of a report file leaves, with a description of every field.
import { z } from 'zod';
import {
  analytes,
  bleedings,
  conditions,
  dietAvoids,
  diets,
  medicines,
  sexes,
  symptoms,
} from '../../terms.js';

const count = z.number().int().nonnegative();
const amount = z.union([z.string(), z.number()]);
const text = z.string().min(1);

const interval = z
  .strictObject({
    low: amount.nullish().describe('Lower end as printed; absent where open.'),
    high: amount.nullish().describe('Upper end as printed; absent where open.'),
    text: text.nullish().describe("The interval as printed, such as '30 - 400'."),
  })
  .describe("The laboratory's own reference interval.");

const result = z.strictObject({
  analyte: z.enum(analytes).describe('Which test this is.'),
  name: text.nullish().describe("The test's name as the laboratory prints it."),
  value: amount.describe(
    "The number as the laboratory wrote it; as text it may be '12,5' or '<5'.",
  ),
  comparator: z
    .enum(['<', '<=', '>', '>='])
    .nullish()
    .describe('Only where the laboratory wrote one.'),
  unit: text.nullish().describe("The unit as the laboratory wrote it, such as 'ug/L'."),
  interval: interval.nullish(),
  labFlag: text.nullish().describe("The laboratory's own mark, such as 'L' or 'HH'."),
  status: z.enum(['final', 'preliminary', 'corrected']).nullish(),
  confirmed: z
    .boolean()
    .nullish()
    .describe('True only when somebody looked at a doubtful value and says it stands.'),
});

const collected = z
  .string()
  .describe(
    "Day the sample was taken, such as '2026-11-25'; a time may follow, as in '2026-11-25T08:40'.",
  );

const panel = z.strictObject({ collected, results: z.array(result).min(1) });

const pregnancy = z
  .union([
    z.strictObject({ weeks: count.describe('Completed weeks.') }),
    z.strictObject({ trimester: z.union([z.literal(1), z.literal(2), z.literal(3)]) }),
  ])
  .describe('By weeks or by trimester; null or absent when not pregnant or not known.');

const diet = z.strictObject({
  pattern: z.enum(diets).nullish(),
  avoids: z.array(z.enum(dietAvoids)).nullish(),
  lowCost: z.boolean().nullish(),
  fastingMonth: z.boolean().nullish().describe('Keeps a month of fasting from dawn to dusk.'),
  cuisines: z.array(text).nullish(),
});

const patient = z.strictObject({
  id: text.nullish().describe("The clinic's own number for the person."),
  name: text.nullish(),
  birthDate: text.nullish().describe("Such as '1984-03-09'."),
  ageYears: count.nullish(),
  ageMonths: count.nullish().describe('For babies, where no birth date is given.'),
  sex: z.enum(sexes).describe('Which reference intervals apply.'),
  pregnancy: pregnancy.nullish(),
  afterBirthWeeks: count.nullish(),
  menstruating: z.boolean().nullish(),
  altitudeMetres: z.number().nullish().describe('Where the person lives, above the sea.'),
  cigarettesPerDay: z
    .union([count, z.literal('unknown-amount')])
    .nullish()
    .describe("A number, or 'unknown-amount' for a smoker who gave none."),
  diet: diet.nullish(),
  conditions: z.array(z.enum(conditions)).nullish(),
  medicines: z.array(z.enum(medicines)).nullish(),
});

const context = z.strictObject({
  symptoms: z.array(z.enum(symptoms)).nullish(),
  bleeding: z.union([z.enum(bleedings), z.array(z.enum(bleedings))]).nullish(),
  ironTabletHoursBefore: z
    .number()
    .nonnegative()
    .nullish()
    .describe('Hours from tablet to sample.'),
  ironInjectionDaysBefore: z
    .number()
    .nonnegative()
    .nullish()
    .describe('Days from injection to sample.'),
  transfusionDaysBefore: z
    .number()
    .nonnegative()
    .nullish()
    .describe('Days from transfusion to sample.'),
  fasting: z.boolean().nullish(),
  sampleTime: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/)
    .nullish()
    .describe("Hour and minute of the sample, such as '08:40'."),
  notes: z.array(z.string()).nullish().describe('Notes of the laboratory, for the clinician only.'),
});

/** One report file: everything but the sex, the day of the sample and one result may be absent. */
export const reportFile = z.strictObject({
  patient,
  collected,
  results: z.array(result).min(1),
  context: context.nullish(),
  previous: z.array(panel).nullish().describe('Earlier results of the same person.'),
  wishes: z
    .strictObject({
      language: text.nullish().describe("Language tag for the letter, such as 'ar'."),
    })
    .nullish(),
});

export type ReportFile = z.infer<typeof reportFile>;
export type ResultInFile = ReportFile['results'][number];

/**
 * JSON Schema (draft 2020-12) of a report file, for other programs and editors.
 * @example reportFileSchema().title // 'Ironleaf report file'
 */
export function reportFileSchema(): Record<string, unknown> {
  return { title: 'Ironleaf report file', ...z.toJSONSchema(reportFile) };
}
