// Nothing arrives; a person and a sample of whom nothing is known leave, for readers to fill in.
import type { WrittenContext, WrittenPatient } from './written.js';

export const blankPatient: WrittenPatient = {
  id: null,
  name: null,
  birthDate: null,
  ageYears: null,
  ageMonths: null,
  sex: null,
  pregnancy: null,
  afterBirthWeeks: null,
  menstruating: null,
  altitudeMetres: null,
  cigarettesPerDay: null,
  diet: null,
  conditions: [],
  medicines: [],
};

export const blankContext: WrittenContext = {
  symptoms: [],
  bleeding: [],
  ironTabletHoursBefore: null,
  ironInjectionDaysBefore: null,
  transfusionDaysBefore: null,
  fasting: null,
  sampleTime: null,
  notes: [],
};
