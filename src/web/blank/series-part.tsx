import { useMemo } from 'react';
import type { LearntSeries } from '../../engine/series/learn-series.ts';
import { FlagField } from '../fields/flag-field.tsx';
import { useBench } from '../read/bench.tsx';
import { Part } from '../shell/part.tsx';
import { TableFrame } from '../shell/table-frame.tsx';
import { SeriesChart } from './series-chart.tsx';
import { isSpared } from './spared-words.ts';

/** What the shop has learnt about the series this blank is one of; nothing while no series is named. */
export function SeriesPart() {
  const { series } = useBench();
  const { name, wanted, others, answer, working, failure } = series;
  if (name === undefined) return null;
  const learnt = answer?.learnt;
  return (
    <Part
      title={`Series “${name}”`}
      anchor="series"
      aside={
        learnt
          ? `${learnt.blanks === 1 ? 'one other blank' : `${learnt.blanks} other blanks`} measured`
          : undefined
      }
    >
      <FlagField path={['blank', '-', 'withSeries']} gesture="read together with its series">
        Read this blank together with the others of its series: fewer readings then do as much
      </FlagField>
      <div role="status">
        {failure && <p className="attention">{failure}.</p>}
        {wanted && !failure && others === 0 && (
          <p className="quiet">
            No other blank of this name has readings yet. The next one will have this one’s.
          </p>
        )}
        {wanted && working && <p className="quiet">Looking at the other blanks …</p>}
        {answer?.use && (
          <p className={answer.use.innovation?.verdict === 'unlike its series' ? 'attention' : undefined}>
            {answer.use.words}
          </p>
        )}
        {answer?.use && !answer.use.used && isSpared(series) && (
          <p>
            Was it read by the half protocol? Then take the twenty-minute protocol too: under the readings,
            “Measure in another way as well”.
          </p>
        )}
        {answer && answer.leftOut > 0 && (
          <p className="quiet">
            {answer.leftOut === 1 ? 'One blank was' : `${answer.leftOut} blanks were`} left out: of another
            length, or with too few readings.
          </p>
        )}
      </div>
      {learnt && <Learnt learnt={learnt} />}
      <p className="small quiet">
        On simulated series, after five blanks with 32 readings each, 16 readings of the next were as sure as
        32 of its own. How alike real blanks of a series are is not known here: the first few of yours will
        tell. The command line and saved files read every blank by itself.
      </p>
    </Part>
  );
}

function Learnt({ learnt }: { learnt: LearntSeries }) {
  const places = useMemo(() => rowsToShow(learnt), [learnt]);
  return (
    <>
      <SeriesChart learnt={learnt} />
      <TableFrame label="Spread within the series">
        <table className="figures-table">
          <thead>
            <tr>
              <th scope="col">From the tip</th>
              <th scope="col">Blanks differ by ±</th>
              {learnt.members.map(({ id, name }) => (
                <th key={id} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
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
                <td key={id}>{againstOthers?.verdict ?? '–'}</td>
              ))}
            </tr>
          </tbody>
        </table>
      </TableFrame>
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
