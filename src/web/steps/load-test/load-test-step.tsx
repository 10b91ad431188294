import { useMemo } from 'react';
import { Link } from 'wouter';
import { lastAccepted, readLoadTests } from '../../../record/read-load-tests.ts';
import { readProofs } from '../../../record/read-proofs.ts';
import { clockWords } from '../../../words/intl.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { stepName } from '../../parts/sheet/steps.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useSheetModel } from '../../read/use-rod-sheet.ts';
import { BeforeAfterPart } from './before-after-part.tsx';
import { DaysPart } from './days-part.tsx';
import { ExpectedPart } from './expected-part.tsx';
import { JudgePart } from './judge-part.tsx';
import { nextOnLoadTest } from './next-on-load-test.ts';
import { NoBendYet, useBendGate } from './no-bend-yet.tsx';
import { PrepareList } from './prepare-list.tsx';
import { ProofPart } from './proof-part.tsx';
import { ProofRecordPart } from './proof-record-part.tsx';
import { SecondEstimatePart } from './second-estimate-part.tsx';
import { TestsPart } from './tests-part.tsx';
import './load-test.css';

/** What the load test should show, the test itself, and the proof that the prediction can be trusted. */
export function LoadTestStep() {
  const { fit, stiffness } = useBench();
  const model = useSheetModel();
  const working = fit !== undefined && stiffness.working && !stiffness.solved;
  const predicted = model && !model.unreadable && !working ? model : undefined;
  // One tree whatever is known: a picture on its way must not be dropped when the fit is done.
  return (
    <BuildFields>
      <WhatNext working={working} model={model} solved={stiffness.solved !== undefined} />
      <NoBendYet />
      {predicted && <ExpectedPart model={predicted} />}
      <PrepareList />
      <TestsPart model={predicted} />
      {predicted && <JudgePart model={predicted} />}
      {predicted && <BeforeAfterPart model={predicted} />}
      <SecondEstimatePart />
      {predicted && <ProofPart model={predicted} />}
      <ProofRecordPart />
      {predicted && <DaysPart model={predicted} />}
    </BuildFields>
  );
}

interface WhatNextProps {
  working: boolean;
  model: SheetModel | undefined;
  solved: boolean;
}

function WhatNext({ working, model, solved }: WhatNextProps) {
  const { id } = useBuild();
  const gate = useBendGate();
  if (gate) {
    return (
      <NextLine>
        Hang nothing on this rod before {clockWords(gate.untilMs, Date.now())}. What the test should show can
        be read meanwhile.
      </NextLine>
    );
  }
  if (working) return <p className="aside">Working out how stiff this blank is …</p>;
  if (!model || model.unreadable) {
    const step = model ? { id: 'layout', name: 'Layout' } : { id: 'blank', name: 'Blank' };
    return (
      <NextLine>
        {model?.unreadable ?? 'The test is predicted from the blank: give its sections and a diameter first.'}{' '}
        See <Link href={`/builds/${id}/${step.id}`}>{step.name}</Link>.
      </NextLine>
    );
  }
  if (!solved) {
    return (
      <NextLine>
        Nothing was hung on this blank yet: what stands here is guessed from its diameters and may be off by
        half. Hang one weight under Blank first.
      </NextLine>
    );
  }
  return <NextOfProof />;
}

function NextOfProof() {
  const { id, document } = useBuild();
  const { bench } = useBench();
  const { writer } = useShop();
  const isSided = bench?.sections.every(({ lineSide }) => lineSide !== undefined) ?? false;
  const { words, at, goOn } = useMemo(() => {
    const isAccepted = lastAccepted(readLoadTests(document)) !== undefined;
    return nextOnLoadTest(readProofs(document), { isAccepted, isSided }, writer.load);
  }, [document, isSided, writer]);
  return (
    <NextLine at={at} goOn={goOn && { href: `/builds/${id}/${goOn}`, name: stepName(goOn) }}>
      {words}
    </NextLine>
  );
}
