import { Link } from 'wouter';
import { BuildFields } from '../fields/build-fields.tsx';
import { TestsPart } from '../photo/tests-part.tsx';
import { useBench } from '../read/bench.tsx';
import { useBuild } from '../read/build.tsx';
import { NextLine } from '../shell/next-line.tsx';
import { ExpectedPart } from './expected-part.tsx';
import { PrepareList } from './prepare-list.tsx';
import { ProofPart } from './proof-part.tsx';
import { useTestedRod } from './use-load-test.ts';
import './load-test.css';

/** What the load test should show, and the proof that the prediction can be trusted. */
export function LoadTestStep() {
  const { id } = useBuild();
  const { fit, stiffness } = useBench();
  const model = useTestedRod();
  if (fit && stiffness.working && !stiffness.solved)
    return <p className="aside">Working out how stiff this blank is …</p>;
  if (!model || model.unreadable) {
    const step = model ? { id: 'layout', name: 'Layout' } : { id: 'blank', name: 'Blank' };
    return (
      <NextLine>
        {model?.unreadable ?? 'The test is predicted from the blank: give its sections and a diameter first.'}{' '}
        See <Link href={`/builds/${id}/${step.id}`}>{step.name}</Link>.
      </NextLine>
    );
  }
  return (
    <BuildFields>
      <NextLine>
        {stiffness.solved
          ? 'Predict a weight you never hung, see where the rod goes, then hang the test load and compare.'
          : 'Nothing was hung on this blank yet: what stands here is guessed from its diameters and may be off by half. Hang one weight under Blank first.'}
      </NextLine>
      <PrepareList />
      <ExpectedPart model={model} />
      <TestsPart />
      <ProofPart model={model} />
    </BuildFields>
  );
}
