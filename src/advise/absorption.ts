// A ferritin and what a day holds arrive; the per cent of plant iron taken up leaves, for the clinician's sheet only.
import { coefficient } from '../knowledge/absorption.js';

/** A diet that helps, an ordinary one, one that hinders: coded as the published range implies. */
export type DietKind = 1 | 0 | -1;

/**
 * Per cent of non-haem iron taken up from a whole diet, or null outside the data (ferritin 6 to 80 ug/L).
 * Collings 2013, AJCN 98:65.
 * @example collingsPercent(15, 0) // 9.15068
 */
export function collingsPercent(ferritin: number, diet: DietKind): number | null {
  const inside =
    ferritin >= coefficient('collings-ferritin-from') &&
    ferritin <= coefficient('collings-ferritin-to');
  if (!inside) return null;
  const exponent =
    coefficient('collings-constant') +
    coefficient('collings-ferritin') * Math.log10(ferritin) +
    coefficient('collings-modifier') * diet;
  return 10 ** exponent;
}

/** One whole day of eating: mg, and cups of black tea. */
export type Day = {
  readonly vitaminC: number;
  readonly meatGrams: number;
  readonly teaCups: number;
  readonly phytate: number;
  readonly calcium: number;
  readonly plantIron: number;
};

/**
 * Per cent of non-haem iron taken up over whole days, or null where a logarithm has no value.
 * Armah 2013, J Nutr 143:1136; the equation as transcribed in public code.
 * @example armahPercent(15, { vitaminC: 60, meatGrams: 100, teaCups: 2, phytate: 1000, calcium: 800, plantIron: 12 }) // 7.536782
 */
export function armahPercent(ferritin: number, day: Day): number | null {
  const positive = [ferritin, day.vitaminC, day.phytate, day.calcium, day.plantIron];
  if (positive.some((value) => value <= 0) || day.meatGrams < 0 || day.teaCups < 0) return null;
  const offset = coefficient('armah-offset');
  const sum =
    coefficient('armah-constant') +
    coefficient('armah-ferritin') * Math.log(ferritin) +
    coefficient('armah-vitamin-c') * Math.log(day.vitaminC) +
    coefficient('armah-meat') * Math.log(day.meatGrams + offset) +
    coefficient('armah-tea') * Math.log(day.teaCups + offset) +
    coefficient('armah-phytate') * Math.log(day.phytate) +
    coefficient('armah-calcium') * Math.log(day.calcium) +
    coefficient('armah-plant-iron') * Math.log(day.plantIron);
  return Math.exp(sum);
}

/** An ordinary mixed day without tea, from the rows. */
export function typicalDay(): Day {
  return {
    vitaminC: coefficient('typical-day-vitamin-c'),
    meatGrams: coefficient('typical-day-meat'),
    teaCups: coefficient('typical-day-tea'),
    phytate: coefficient('typical-day-phytate'),
    calcium: coefficient('typical-day-calcium'),
    plantIron: coefficient('typical-day-plant-iron'),
  };
}
