import type { UnitSystem } from '../../../engine/units/unit-table.ts';

/** 1, 2, … 9 of every decade inside the domain; those that carry a number are major. */
export function decadeLines([low, high]: number[]): { value: number; major: boolean }[] {
  const first = Math.floor(Math.log10(low));
  const last = Math.ceil(Math.log10(high));
  const numbered = high / low > 60 ? [1] : [1, 2, 5];
  return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    .flatMap((power) =>
      [1, 2, 3, 4, 5, 6, 7, 8, 9].map((digit) => ({
        value: Number((digit * 10 ** power).toPrecision(1)),
        major: numbered.includes(digit),
      })),
    )
    .filter(({ value }) => value >= low && value <= high);
}

/** Room that a tick's words need [px]. */
const roomPx = 44;

/** Feet in an inch shop, quarters of a metre otherwise; every second where they would touch. */
export function stationTicks(lengthM: number, system: UnitSystem, widthPx: number) {
  const unit = system === 'inch' ? 0.3048 : 0.25;
  const step = unit * (widthPx / (lengthM / unit) < roomPx ? 2 : 1);
  return Array.from({ length: Math.floor(lengthM / step + 1e-9) + 1 }, (_, index) => {
    const fromTipM = index * step;
    const mm = index === 0 ? '0 mm' : `${Math.round(fromTipM * 1000)}`;
    return { fromTipM, words: system === 'inch' ? `${Math.round(fromTipM / 0.3048)} ft` : mm };
  });
}
