import type { NextReading } from '../../../engine/sureness/next-reading.ts';
import { readingInWords } from '../../../words/next-reading.ts';
import type { Writer } from '../../../words/writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';

/** The best few readings beside each other, and what the best does to each mark. */
export function NextReadingTables({ next, writer }: { next: NextReading; writer: Writer }) {
  const { options, plusMinusM, slackM } = next;
  return (
    <details className="figures-twin">
      <summary>Mark by mark, and the next best readings</summary>
      <TableFrame label="Mark by mark">
        <table className="figures-table">
          <caption className="visually-hidden">± of each mark now and after the reading proposed</caption>
          <thead>
            <tr>
              <th scope="col">Guide</th>
              <th scope="col">Slack</th>
              <th scope="col">± now</th>
              <th scope="col">± after it</th>
            </tr>
          </thead>
          <tbody>
            {plusMinusM.map((now, mark) => (
              <tr key={mark}>
                <th scope="row">{mark + 1}</th>
                <td>
                  <Figure text={`±${writer.tick(slackM[mark])}`} />
                </td>
                <td>
                  <Figure text={held(now) ? 'held' : `±${writer.tick(now)}`} />
                </td>
                <td>
                  <Figure text={held(now) ? 'held' : `±${writer.tick(options[0].plusMinusM[mark])}`} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      <TableFrame label="Readings compared">
        <table className="figures-table next-reading-list">
          <caption className="visually-hidden">The readings that tell most for the work</caption>
          <thead>
            <tr>
              <th scope="col">Reading</th>
              <th scope="col">Minutes</th>
              <th scope="col">Widest ± after</th>
            </tr>
          </thead>
          <tbody>
            {options.map((option) => (
              <tr key={readingInWords(option, writer)}>
                <th scope="row">
                  <Figure text={readingInWords(option, writer)} />
                </th>
                <td>{option.minutes}</td>
                <td>
                  <Figure text={`±${writer.tick(Math.max(...option.plusMinusM))}`} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}

/** First and stripping guide stay where the builder put them. */
function held(plusMinusM: number): boolean {
  return plusMinusM < 5e-4;
}
