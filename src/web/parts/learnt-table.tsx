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
      >
        {places.map((row) => (
          <tr key={row}>
            <th scope="row">{Math.round(100 * learnt.shareOfLength[row])} % of the length</th>
            <td>{percent(2 * learnt.spread[row]).replace('+', '')}</td>
            {learnt.members.map(({ id, difference }) => (
              <td key={id}>{percent(difference[row])}</td>
            ))}
          </tr>
        ))}
        <tr>
          <th scope="row">Against the others</th>
          <td className="quiet">19 of 20 lie within</td>
          {learnt.members.map(({ id, againstOthers }) => (
            <td key={id}>{againstOthers ? alikeWords[againstOthers.verdict] : '–'}</td>
          ))}
        </tr>
      </Table>
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
