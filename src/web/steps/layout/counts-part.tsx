import { useId } from 'react';
import { Button, ProgressBar } from 'react-aria-components';
import type { GuideCount } from '../../../engine/flow/count-answer.ts';
import type { LayoutLimits } from '../../../engine/layout/ladder-request.ts';
import { clearRow, countRows, fewestClearInWords, fewestInWords } from '../../../words/guide-counts.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table.tsx';
import type { Counts } from './use-counts.ts';
import './counts.css';

interface CountsPartProps {
  counts: Counts;
  /** How many guides there are now. */
  own: number;
  limits: LayoutLimits;
  writer: LadderWriter;
  onLay(fromTipM: readonly number[]): void;
}

/** "How many guides?": the best layout of one fewer, as many and one more; one press lays it. */
export function CountsPart({ counts: { answer, working, failure }, own, ...rest }: CountsPartProps) {
  const id = useId();
  return (
    <section className="counts" aria-labelledby={id}>
      <h2 id={id}>How many guides?</h2>
      <p className="quiet small">each number placed for this blank</p>
      {answer && answer.counts.length > 0 && <CountsTable counts={answer.counts} own={own} {...rest} />}
      {working && (
        <ProgressBar isIndeterminate aria-label="Trying other numbers of guides" className="quiet">
          Trying other numbers of guides: {answer?.counts.length ?? 0} done …
        </ProgressBar>
      )}
      {!working && answer && (
        <p>{`${fewestInWords(answer)} ${fewestClearInWords(answer, rest.writer)}`.trim()}</p>
      )}
      {failure && (
        <p className="attention" role="alert">
          Other numbers of guides could not be tried: {failure}. Load the page again.
        </p>
      )}
    </section>
  );
}

type TableProps = Omit<CountsPartProps, 'counts'> & { counts: readonly GuideCount[] };

function CountsTable({ counts, own, limits, writer, onLay }: TableProps) {
  const boxed = (count: number) => (count === own ? 'own' : undefined);
  return (
    <TableFrame label="How many guides">
      <table className="figures-table counts-table">
        <thead>
          <tr>
            <th scope="col">guides</th>
            {counts.map(({ count }) => (
              <th key={count} scope="col" className={boxed(count)} aria-current={count === own || undefined}>
                {count}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...countRows(counts, limits, writer), ...clearRow(counts, writer)].map(({ name, figures }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {figures.map(({ text, beyond }, i) => (
                <td key={counts[i].count} className={boxed(counts[i].count)}>
                  <span className={beyond ? 'attention' : undefined}>
                    <Figure text={text} />
                    {beyond && <span className="visually-hidden"> over the limit</span>}
                  </span>
                </td>
              ))}
            </tr>
          ))}
          <tr className="screen-only">
            <td />
            {counts.map(({ count, fromTipM }) => (
              <td key={count} className={boxed(count)}>
                {count === own ? (
                  'yours'
                ) : (
                  <Button className="button" onPress={() => onLay(fromTipM)}>
                    Use {count}
                  </Button>
                )}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </TableFrame>
  );
}
