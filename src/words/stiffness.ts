/** Stiffness in figures, the same on screen and in the report. */

/** Rows written of the many that were computed. */
const every = 5;

export function shownRows<Row>(rows: readonly Row[]): Row[] {
  return rows.filter((_, index) => index % every === 0);
}

export function threeDigits(value: number): string {
  return Number(value.toPrecision(3)).toString();
}
