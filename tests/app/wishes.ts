// Nothing arrives; what an operator wishes who chose nothing leaves, for tests to change.
import type { Wishes } from '../../src/app/make-letter.js';

export const today = '2026-11-25';

export const plainWishes: Wishes = {
  language: 'en',
  beside: null,
  formats: ['pdf'],
  form: { paper: 'A4', size: 'standard' },
  analogy: 'shirt-shop',
  easyRead: false,
  checkedBy: null,
  done: null,
  choices: { steps: null, tabletsPrescribed: null, noFood: false },
  date: today,
};
