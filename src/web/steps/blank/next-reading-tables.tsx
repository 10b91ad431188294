import type { NextReading } from '../../../engine/sureness/next-reading.ts';
import { readingInWords } from '../../../words/next-reading.ts';
import type { Writer } from '../../../words/writer.ts';
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
        rows={plusMinusM.map((now, mark) => [
          mark + 1,
          `±${writer.tick(slackM[mark])}`,
          held(now) ? 'held' : `±${writer.tick(now)}`,
          held(now) ? 'held' : `±${writer.tick(options[0].plusMinusM[mark])}`,
        ])}
      />
      <Table
        label="Readings compared"
        className="next-reading-list"
        spoken="The readings that tell most for the work"
        heads={['Reading', 'Minutes', 'Widest ± after']}
        rows={options.map((option) => [
          readingInWords(option, writer),
          option.minutes,
          `±${writer.tick(Math.max(...option.plusMinusM))}`,
        ])}
      />
    </details>
  );
}

/** First and stripping guide stay where the builder put them. */
function held(plusMinusM: number): boolean {
  return plusMinusM < 5e-4;
}
