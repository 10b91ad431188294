import type { NextReading } from '../../../engine/sureness/next-reading.ts';
import { readingInWords } from '../../../words/next-reading.ts';
import type { Writer } from '../../../words/writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';

/** The best few readings beside each other, and what the best does to each mark. */
export function NextReadingTables({ next, writer }: { next: NextReading; writer: Writer }) {
  const { options, plusMinusM, slackM } = next;
  return (
    <details className="figures-twin">
      <summary>Mark by mark, and the next best readings</summary>
      <Table
        label="Mark by mark"
        spoken="± of each mark now and after the reading proposed"
        heads={['Guide', 'Slack', '± now', '± after it']}
      >
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
      </Table>
      <Table
        label="Readings compared"
        className="next-reading-list"
        spoken="The readings that tell most for the work"
        heads={['Reading', 'Minutes', 'Widest ± after']}
      >
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
      </Table>
    </details>
  );
}

/** First and stripping guide stay where the builder put them. */
function held(plusMinusM: number): boolean {
  return plusMinusM < 5e-4;
}
