// Small sound files of every format, to be broken; each holds a name that must never be repeated.
import { type Part, sheet } from './sheet.js';

export const secret = 'Zebrafinch';

export type Sample = {
  readonly name: string;
  readonly text: string;
  /** As long as these stand in the file, the secret is known to be a name. */
  readonly guards: readonly string[];
};

const observation = (subject: string, value: number) =>
  `{"resourceType":"Observation","status":"final","code":{"text":"Ferritin"},"subject":{"reference":"${subject}"},"effectiveDateTime":"2026-11-20","valueQuantity":{"value":${value},"unit":"ug/L"},"referenceRange":[{"low":{"value":30},"high":{"value":400}}]}`;
const person = (id: string) =>
  `{"resourceType":"Patient","id":"${id}","name":[{"family":"${secret}"}],"gender":"female"}`;
const ours = (id: string, value: string) =>
  `{"patient":{"id":"${id}","name":"${secret}","sex":"female"},"collected":"2026-11-20","results":[{"analyte":"ferritin","value":${value},"unit":"ug/L","interval":{"low":30,"high":400}}]}`;
const inJson = [`"name":"${secret}"`];
const inFhir = [`"name":[{"family":"${secret}"}]`];

export const samples: readonly Sample[] = [
  { name: 'a.json', text: ours('7', '9.50'), guards: inJson },
  { name: 'a.json', text: `[${ours('7', '9.50')},\n${ours('8', '"<5"')}]`, guards: inJson },
  { name: 'a.ndjson', text: `${ours('7', '9.50')}\n${ours('8', '12')}\n`, guards: inJson },
  {
    name: 'a.json',
    text: `{"resourceType":"Bundle","entry":[{"resource":${person('p')}},{"resource":${observation('Patient/p', 9.5)}}]}`,
    guards: inFhir,
  },
  {
    name: 'a.ndjson',
    text: [
      person('p'),
      person('q'),
      ...['p', 'q', 'p'].map((id) => observation(`Patient/${id}`, 9.5)),
    ].join('\n'),
    guards: inFhir,
  },
  {
    name: 'a.csv',
    text: `id,name,sex,collected,test,value,unit,low,high\n7,${secret},F,2026-11-20,Ferritin,"9,5",ug/L,30,400\n8,,M,2026-11-20,Hb,101,g/L,115,165\n7,${secret},F,2026-05-20,Ferritin,8,ug/L,30,400\n`,
    guards: ['id,name,sex,collected,test,value,unit,low,high\n', `\n7,${secret},F,`],
  },
  {
    name: 'a.csv',
    text: 'id;sex;collected;Ferritin (ug/L);Hb g/dL\n7;F;2026-11-20;12,5;9,8\n8;M;2026-11-20;;13,1\n',
    guards: [],
  },
  {
    name: 'a.hl7',
    text: `MSH|^~\\&|L|S|C|S|20261120||ORU^R01|1|P|2.5.1\rPID|1||7||${secret}^T||19840309|F\rOBR|1||1|F|||20261120\rOBX|1|NM|2276-4^Ferritin^LN||9|ug/L|30 - 400|L~D|||F\rNTE|1||x\\T\\y\rOBX|2|SN|^CRP||<^5|mg/L|<5||||F\rMSH|^~\\&|L|S|C|S|20261120||ORU^R01|2|P|2.5.1\rPID|1||8\rOBR|1||1|F|||20261120\rOBX|1|NM|^Hb||101|g/L\r`,
    guards: [`\rPID|1||7||${secret}^T|`, 'MSH|^~\\&|L'],
  },
  {
    name: 'pasted',
    text: `Name: ${secret}\nSex: F   DOB: 1984-03-09\nCollected: 2026-11-20\nFerritin   9 ug/L  (30 - 400)  L\nTest\t2026-11-20\t2026-05-02\tUnit\nHb\t101\t99\tg/L\n`,
    guards: [`Name: ${secret}\n`],
  },
];

const table = [
  ['id', 'name', 'sex', 'collected', 'test', 'value', 'unit', 'range'],
  ['7', secret, 'F', '2026-11-20', 'Ferritin', 9.5, 'ug/L', '30 - 400'],
  ['8', '', 'M', 46346, 'Hb', '9,8', 'g/dL', '&lt;16,5'],
];

/** The parts of a spreadsheet; the last one is its sheet. */
export const spreadsheet: readonly Part[] = sheet(table);
