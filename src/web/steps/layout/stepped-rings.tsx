import { Button } from 'react-aria-components';
import { guideName } from '../../../engine/kinds/guides.ts';
import { stepInWords } from '../../../words/reel-line.ts';
import { Figure } from '../../fields/figure.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import type { FirstRingTableProps } from './first-ring-table.tsx';

/** Rings stepped down from the first guide to the running guides, each with its reason. */
export function SteppedRings({ line, question, answer, writer }: FirstRingTableProps) {
  const { source, freeM, guides } = question;
  const { steps } = answer;
  const fits = steps.every(({ already }) => already);
  const first = guides[guides.length - 1];
  return (
    <Fold
      title="Stepping rings"
      aside={fits ? 'as the funnel asks' : 'other sizes would step down more evenly'}
    >
      <Table
        label="Stepping rings"
        className="stacked"
        heads={['guide', 'from the lip', 'now', 'step to', 'why']}
      >
        <tr>
          <th scope="row">{guides.length}</th>
          <td data-label="from the lip">
            <Figure text={writer.tick(freeM - source.alongM - first.fromTipM)} />
          </td>
          <td data-label="now">{guideName(first)}</td>
          <td data-label="step to">the first ring</td>
          <td className="quiet" data-label="why" />
        </tr>
        {steps.map((step) => (
          <tr key={step.guide}>
            <th scope="row">{step.guide + 1}</th>
            <td data-label="from the lip">
              <Figure text={writer.tick(step.alongM - source.alongM)} />
            </td>
            <td data-label="now">{guideName(guides[step.guide])}</td>
            <td data-label="step to" className={step.already ? undefined : 'reel-line-other'}>
              {step.already ? 'as it is' : step.ring ? guideName(step.ring) : '–'}
            </td>
            <td className="quiet" data-label="why">
              {stepInWords(step)}
            </td>
          </tr>
        ))}
      </Table>
      <p className="small quiet">A straight funnel runs from the first guide to the running guides.</p>
      {!fits && (
        <Button className="button screen-only" onPress={() => line.takeSizes(answer)}>
          Use these sizes
        </Button>
      )}
    </Fold>
  );
}
