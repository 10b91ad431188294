import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { type BenchStage, sumMinutes } from '../../../engine/plan/bench-list.ts';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useNow } from '../../read/use-now.ts';
import { numberOf, textOf } from '../../read/values.ts';
import { BenchSheetButton } from './bench-sheet-button.tsx';
import { logQuarter } from './log-quarter.ts';
import { useStages } from './use-stages.ts';
import './plan.css';

/** One list of the whole build: what is next, what waits and for what, and the hours that went into it. */
export function PlanStep() {
  const { id, rows, write, newRowId } = useBuild();
  const stages = useStages(useNow());
  const next = stages.find(({ status }) => status === 'next');
  const logged = rows('hours').map((row) => ({
    stage: textOf(row, 'stage') ?? '',
    minutes: numberOf(row, 'minutes') ?? 0,
  }));
  const { byStage, totalMinutes } = sumMinutes(logged);
  const log = (stage: BenchStage) =>
    write('logQuarter', logQuarter(newRowId(), { order: logged.length, stage: stage.id }));
  return (
    <>
      <NextLine goOn={next && { href: `/builds/${id}/${stepOf(next)}`, name: 'Go there' }}>
        {next
          ? `${next.name}.`
          : stages.every(({ status }) => status === 'done')
            ? 'All is done; the record is kept.'
            : 'Nothing to do but wait; see below what for.'}
      </NextLine>
      <SinceNote works={['marks', 'rack', 'handle', 'wraps', 'finish']} />
      <Part
        title="Bench list"
        aside={`${hoursWords(totalMinutes)} logged`}
        tools={
          <>
            <Link className="button" href={`/builds/${id}/bench`}>
              One piece at a time
            </Link>
            <BenchSheetButton stages={stages} />
          </>
        }
      >
        <Table label="Stages" className="plan-stages" heads={['Stage', 'Now', 'Hours', 'Log']}>
          {stages.map((stage) => (
            <tr key={stage.id}>
              <th scope="row">
                <StageName stage={stage} />
              </th>
              <td className={stage.status === 'next' ? 'plan-why' : 'plan-why quiet'}>
                {stage.why ? `waits: ${stage.why}` : stage.status}
              </td>
              <td>{hoursWords(byStage.get(stage.id) ?? 0)}</td>
              <td>
                <Button className="button" onPress={() => log(stage)}>
                  + 1/4 h<span className="visually-hidden"> for {stage.name}</span>
                </Button>
              </td>
            </tr>
          ))}
        </Table>
      </Part>
    </>
  );
}

function StageName({ stage }: { stage: BenchStage }) {
  const { id } = useBuild();
  return <Link href={`/builds/${id}/${stepOf(stage)}`}>{stage.name}</Link>;
}

function stepOf(stage: BenchStage): string {
  return /^(coat-\d+|fish)$/.test(stage.id) ? 'finish' : stage.id;
}

function hoursWords(minutes: number): string {
  return `${Number((minutes / 60).toFixed(2))} h`;
}
