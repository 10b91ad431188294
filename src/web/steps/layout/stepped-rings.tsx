import { Button } from 'react-aria-components';
import { guideName } from '../../../engine/kinds/guides.ts';
import { stepInWords } from '../../../words/reel-line.ts';
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
        rows={[
          [
            guides.length,
            writer.tick(freeM - source.alongM - first.fromTipM),
            guideName(first),
            'the first ring',
            '',
          ],
          ...steps.map((step) => [
            step.guide + 1,
            writer.tick(step.alongM - source.alongM),
            guideName(guides[step.guide]),
            {
              of: step.already ? 'as it is' : step.ring ? guideName(step.ring) : '–',
              className: step.already ? undefined : 'reel-line-other',
            },
            { of: stepInWords(step), className: 'quiet' },
          ]),
        ]}
      />
      <p className="small quiet">A straight funnel runs from the first guide to the running guides.</p>
      {!fits && (
        <Button className="button screen-only" onPress={() => line.takeSizes(answer)}>
          Use these sizes
        </Button>
      )}
    </Fold>
  );
}
