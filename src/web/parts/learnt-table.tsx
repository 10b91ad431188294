import { useMemo } from 'react';
import type { LearntSeries } from '../../engine/series/learn-series.ts';
import { alikeWords } from '../../words/alike.ts';
import { SeriesChart } from './charts/series-chart.tsx';
import { Table } from './sheet/table.tsx';
import '../style/blank.css';

/** A series as it was learnt: its spread drawn and listed, and each blank against the others. */
export function LearntTable({ learnt }: { learnt: LearntSeries }) {
  const places = useMemo(() => rowsToShow(learnt), [learnt]);
  return (
    <>
      <SeriesChart learnt={learnt} />
      <Table
        label="Spread within the series"
        heads={['From the tip', 'Blanks differ by ±', ...learnt.members.map(({ name }) => name)]}
        rows={[
          ...places.map((row) => [
            `${Math.round(100 * learnt.shareOfLength[row])} % of the length`,
            percent(2 * learnt.spread[row]).replace('+', ''),
            ...learnt.members.map(({ difference }) => percent(difference[row])),
          ]),
          [
            'Against the others',
            { of: '19 of 20 lie within', className: 'quiet' },
            ...learnt.members.map(({ againstOthers }) =>
              againstOthers ? alikeWords[againstOthers.verdict] : '–',
            ),
          ],
        ]}
      />
    </>
  );
}

/** Nine places, evenly along the blank. */
function rowsToShow({ shareOfLength }: LearntSeries): number[] {
  return [0.05, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9].map((wanted) =>
    shareOfLength.reduce(
      (best, share, i) => (Math.abs(share - wanted) < Math.abs(shareOfLength[best] - wanted) ? i : best),
      0,
    ),
  );
}

/** Of EI, from its logarithm. */
function percent(log: number): string {
  const value = 100 * (Math.exp(log) - 1);
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(0)} %`;
}
