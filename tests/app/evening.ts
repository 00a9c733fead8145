// An evening's file of invented patients: most get a letter, some must be phoned, some rows cannot be read.

export type Kind = 'letter' | 'phone' | 'fix';

/** Every tenth patient must be phoned, every fifteenth has a value that is no number. */
function kindOf(number: number): Kind {
  if (number % 10 === 4) return 'phone';
  return number % 15 === 7 ? 'fix' : 'letter';
}

const header = 'id,name,sex,born,collected,language,test,value,unit,low,high\n';

/** Patient `number` of the evening; `haemoglobin` replaces the usual value. */
export function rowsOf(number: number, haemoglobin?: string): string {
  const kind = kindOf(number);
  const values = { letter: String(120 + (number % 30)), phone: '52', fix: '13O' };
  const who = `SB-${5000 + number},Zyx${number} Quillfeather,female,1987-03-0${1 + (number % 9)},2026-11-17,en`;
  return [
    `${who},Haemoglobin,${haemoglobin ?? values[kind]},g/L,115,155`,
    `${who},Ferritin,${40 + (number % 50)},ug/L,20,300`,
    `${who},Transferrin saturation,${20 + (number % 12)},%,16,50`,
    `${who},CRP,1,mg/L,0,5\n`,
  ].join('\n');
}

export function evening(count: number): string {
  const numbers = Array.from({ length: count }, (_, at) => at + 1);
  return header + numbers.map((number) => rowsOf(number)).join('');
}

export function counts(count: number): Record<Kind, number> {
  const found = { letter: 0, phone: 0, fix: 0 };
  for (let number = 1; number <= count; number += 1) found[kindOf(number)] += 1;
  return found;
}

/** The second cell of every line but the first: which reports a list of ours is about. */
export function reportsIn(csv: string, column: number): string[] {
  const lines = csv
    .replace(/^\uFEFF/, '')
    .split('\r\n')
    .slice(1);
  const cells = lines.filter((line) => line !== '').map((line) => line.slice(1, -1).split('","'));
  return [...new Set(cells.map((each) => each[column] ?? ''))];
}
