import type { SeriesKinds } from '../../engine/series/use-of-series.ts';
import type { DaysKinds } from '../../engine/sureness/compare-days.ts';
import type { Sentences } from './sentences.ts';

export const seriesSentences: Sentences<SeriesKinds> = {
  'series/other-length': ({ lengthM }, w) =>
    `This blank is not as long as its series (${w.length(lengthM)}). It is read by itself.`,
  'series/few-readings': () =>
    'It is read by itself. Its readings are too few or too odd to compare it with its series.',
  'series/unlike': () =>
    'This blank is unlike its series, so it is read by itself. Its readings lie further off than those of 99 of 100 blanks of the series. Check the readings, or the name of the series.',
  'series/at-edge': ({ blanks }) =>
    `It lies at the edge of its series of ${measured(blanks)}, so the series counts for less.`,
  'series/read-with': ({ blanks }) => `Read with what ${measured(blanks)} of its series say.`,
};

const measured = (blanks: number) => (blanks === 1 ? '1 measured blank' : `${blanks} measured blanks`);

export const daysSentences: Sentences<DaysKinds> = {
  'days/refused': () => 'Check its readings: some make no sense.',
  'days/no-bend': () => 'Under some load of the ladder the rod of one day finds no bend. Take lighter loads.',
};
