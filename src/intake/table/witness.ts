// Rows of a table arrive one by one; what whole columns prove leaves, without keeping a row.
import { DateOrderWitness, type DateOrder, needsOrder } from '../date-as-written.js';
import { fault } from '../fault.js';
import { type ColumnMeaning, sexLetter } from '../names.js';
import { provesDecimalComma } from '../number-as-written.js';
import type { Problem } from '../../problem.js';
import { cellOf, columnOf, type Proved } from './cells.js';
import type { Plan } from './plan.js';
import type { TableRow } from './table.js';

/** What all rows of a table say together. */
export type Testimony = {
  readonly proved: Proved;
  /** Columns of dates that leave day and month open. */
  readonly problems: readonly Problem[];
  /** Indexes of columns in which some row holds something. */
  readonly used: ReadonlySet<number>;
  /** True where the rows name more than one person. */
  readonly severalNames: boolean;
};

const naming = ['name', 'givenName', 'surname', 'birthDate'] as const;
const dated = ['collected', 'birthDate'] as const;

export class Witness {
  private readonly orders = {
    collected: new DateOrderWitness(),
    birthDate: new DateOrderWitness(),
  };
  private readonly open = new Map<ColumnMeaning, string>();
  private readonly sexLetters = new Set<string>();
  private readonly naming: readonly ColumnMeaning[];
  private readonly used = new Set<number>();
  private readonly values: readonly number[];
  private decimalComma = false;
  private firstName: string | null = null;
  private severalNames = false;

  constructor(
    private readonly file: string,
    private readonly headerRow: number,
    private readonly plan: Plan,
  ) {
    this.naming = naming.filter((meaning) => columnOf(plan, meaning) !== null);
    this.values = plan.columns.flatMap((column) =>
      column.holds === 'result' || (column.holds === 'fact' && column.meaning === 'value')
        ? [column.index]
        : [],
    );
  }

  hear(row: TableRow): void {
    for (const meaning of dated) {
      const date = cellOf(this.plan, row, meaning);
      if (date === null) continue;
      this.orders[meaning].hear(date);
      if (!this.open.has(meaning) && needsOrder(date)) this.open.set(meaning, date);
    }
    const sex = cellOf(this.plan, row, 'sex');
    const letter = sex === null ? null : sexLetter(sex);
    if (letter !== null) this.sexLetters.add(letter);
    for (const index of this.values) {
      const value = (row.cells[index] ?? '').trim();
      if (value === '') continue;
      this.used.add(index);
      this.decimalComma ||= provesDecimalComma(value);
    }
    if (this.severalNames || this.naming.length === 0) return;
    const name = JSON.stringify(this.naming.map((meaning) => cellOf(this.plan, row, meaning)));
    this.firstName ??= name;
    this.severalNames = name !== this.firstName;
  }

  told(): Testimony {
    const { dates, decimal } = this.plan.map;
    const proved: Proved = {
      collected: dates ?? this.orders.collected.proved(),
      birthDate: dates ?? this.orders.birthDate.proved(),
      decimalComma: decimal === ',' || this.decimalComma,
      sexLetters: this.sexLetters,
    };
    const { used, severalNames } = this;
    return {
      proved,
      problems: dated.flatMap((each) => this.ask(each, proved[each])),
      used,
      severalNames,
    };
  }

  private ask(meaning: 'collected' | 'birthDate', order: DateOrder | null): readonly Problem[] {
    const open = order === null ? this.open.get(meaning) : undefined;
    if (open === undefined) return [];
    const place = {
      file: this.file,
      row: this.headerRow,
      field: columnOf(this.plan, meaning)?.header ?? meaning,
    };
    return [
      fault('day-or-month', place, 'cannot tell the day from the month in this column', {
        found: meaning === 'collected' ? open : null,
        expected: 'dates such as 2026-11-25',
        remedy: 'A column map can say "dates": "day-first" or "month-first".',
      }),
    ];
  }
}
