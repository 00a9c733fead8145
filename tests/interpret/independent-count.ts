// In: generated panels as bare numbers. Out: counts of low, usual and high, written straight from the published tables and sharing no code with src.
// Sources: WHO 2024 haemoglobin guideline, Tables 2, 4 and 5; WHO 2020 ferritin guideline; RCPA Manual, ferritin
// (30 for adults, 20 before puberty); Anemia 2016:6430214 (saturation 16); EASL 2022 (45 women, 50 men).

export type Generated = {
  months: number;
  female: boolean;
  trimester: 0 | 1 | 2 | 3;
  metres: number;
  cigarettes: number;
  haemoglobin: number;
  ferritin: number;
  crp: number;
  saturation: number;
};

export type Side = 'below' | 'in' | 'above';

export function haemoglobinSide(p: Generated): Side {
  let limit: number;
  if (p.trimester === 2) limit = 105;
  else if (p.trimester > 0) limit = 110;
  else if (p.months <= 23) limit = 105;
  else if (p.months <= 59) limit = 110;
  else if (p.months <= 143) limit = 115;
  else if (p.months <= 179 || p.female) limit = 120;
  else limit = 130;
  const rises = [0, 4, 8, 11, 14, 18, 21, 25, 29, 33];
  limit += rises[Math.floor(p.metres / 500)] ?? 0;
  limit += p.cigarettes === 0 ? 0 : p.cigarettes < 10 ? 3 : p.cigarettes < 20 ? 5 : 6;
  if (p.haemoglobin < limit) return 'below';
  // NHS referral page (Dumfries): over 180 men, 165 women, look into it; no such figure for children.
  if (p.months >= 180 || p.trimester > 0)
    if (p.haemoglobin > (p.female ? 165 : 180)) return 'above';
  return 'in';
}

export function ferritinSide(p: Generated): Side {
  const inflamed = p.crp > 5;
  const pregnant = p.trimester > 0;
  const child = p.months < 180 && !pregnant;
  let low: number;
  if (inflamed) low = child && p.months < 60 ? 30 : 70;
  else if (child) low = 20;
  else low = 30;
  if (p.ferritin < low) return 'below';
  if (child || pregnant) return 'in';
  const high = inflamed ? 500 : p.female && p.months < 792 ? 150 : 200;
  return p.ferritin > high ? 'above' : 'in';
}

export function saturationSide(p: Generated): Side {
  if (p.saturation < 16) return 'below';
  const child = p.months < 180 && p.trimester === 0;
  return p.saturation > (p.female || child ? 45 : 50) ? 'above' : 'in';
}

/** Park and Miller's generator: the same ten thousand people every time. */
export function generate(count: number): Generated[] {
  let seed = 20240229;
  const next = (): number => {
    seed = (seed * 48271) % 2147483647;
    return seed / 2147483647;
  };
  const pick = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  return Array.from({ length: count }, () => {
    const months = next() < 0.3 ? pick(6, 179) : pick(180, 1100);
    const female = next() < 0.5;
    const mayBePregnant = female && months >= 180 && months < 600;
    return {
      months,
      female,
      trimester: (mayBePregnant && next() < 0.3 ? pick(1, 3) : 0) as 0 | 1 | 2 | 3,
      metres: next() < 0.5 ? 0 : pick(0, 4999),
      cigarettes: months < 180 || next() < 0.7 ? 0 : pick(1, 40),
      haemoglobin: pick(60, 200),
      ferritin: next() < 0.5 ? pick(2, 110) : pick(100, 700),
      crp: next() < 0.6 ? pick(0, 6) : pick(5, 90),
      saturation: pick(30, 700) / 10,
    };
  });
}
