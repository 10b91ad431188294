import { useMemo, useState } from 'react';
import { usualLimits } from '../../../engine/flow/usual-limits.ts';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { BendPart } from './bend-part.tsx';
import { CountsPart } from './counts-part.tsx';
import { FiguresPart } from './figures-part.tsx';
import { GuidesPart } from './guides-part.tsx';
import { LimitsPart } from './limits-part.tsx';
import type { LiveSheet } from './live-sheet.ts';
import { LoadsPart } from './loads-part.tsx';
import { RealLinePart } from './real-line-part.tsx';
import { ReelLinePart } from './reel-line-part.tsx';
import { OneSidePart, RoundPart, sidesAreAsked } from './round-part.tsx';
import { rulerModel } from './sheet-drawings.ts';
import { SidePart } from './side-part.tsx';
import { StartPart } from './start-part.tsx';
import { canTakeStart, startFindings } from './start-state.ts';
import { StraightRodPart } from './straight-rod-part.tsx';
import { TwoGripsPart } from './two-grips-part.tsx';
import { useCounts } from './use-counts.ts';
import { useSettledFrame } from './use-live-sheet.ts';
import { useMarks } from './use-marks.ts';
import { useSheetInput } from './use-sheet-input.ts';
import { useTurning } from './use-turning.ts';
import './layout.css';
import { ladderWriter } from '../../../words/ladder-writer.ts';

interface LayoutSheetProps {
  sheet: LiveSheet;
  model: SheetModel;
  /** The builder's word that the ferrules are wrapped or tightly bound. */
  ferrulesBound: boolean;
}

/** The bend above, the straight rod below it, the figures beside them, and what they are all made from. */
export function LayoutSheet({ sheet, model, ferrulesBound }: LayoutSheetProps) {
  const sentence = useSentence();
  const { system, writer: shopWriter } = useShop();
  const { choices, loads } = model;
  const writer = useMemo(() => ladderWriter(shopWriter, loads.kg), [shopWriter, loads.kg]);
  const [picked, setPicked] = useState<number>();
  const drawn = useDrawnLoad(sheet, picked, loads.kg.length);
  const turning = useTurning(model);
  const { inHand } = turning;
  const { best, bestMarks, next, slackZones, doubt } = useSheetInput(sheet, model, { drawn, system, inHand });
  const counts = useCounts(model, next.working);
  const marks = useMarks(sheet, model, system);
  const settled = useSettledFrame(sheet);
  const ruler = useMemo(() => rulerModel(model, slackZones, writer), [model, slackZones, writer]);
  const shared = { sheet, model, ruler, writer, marks, settled };
  return (
    <div className="layout-sheet">
      <BendPart sheet={sheet} model={model} writer={writer} drawn={drawn} onDraw={setPicked} />
      <SidePart {...shared} best={best} bestMarks={bestMarks} next={next} counts={counts} />
      <StraightRodPart {...shared} />
      {model.round.length > 0 && <RoundPart {...shared} turning={turning} waits={best.working} />}
      {!model.unreadable && (
        <CountsPart
          counts={counts}
          own={model.field.fromTipM.length}
          limits={model.limits}
          writer={writer}
          onLay={marks.lay}
        />
      )}
      {choices.line && <ReelLinePart model={model} writer={writer} />}
      <FiguresPart {...shared} drawn={drawn} doubt={doubt} ferrulesBound={ferrulesBound} />
      <div className="layout-parts screen-only">
        <StartPart
          choices={choices}
          blankLengthM={model.blank.lengthM}
          findings={startFindings(model).map(sentence)}
          onTake={canTakeStart(model) ? marks.useStart : undefined}
        />
        <LoadsPart loads={loads} line={choices.line} writer={writer} asksSide={!sidesAreAsked(choices)} />
        {model.round.length === 0 && sidesAreAsked(choices) && (
          <OneSidePart {...shared} waits={best.working} />
        )}
        <LimitsPart usual={usualLimits(choices, model.rod.lengthM)} />
        {model.handle.hands && model.round.length === 0 && (
          <TwoGripsPart model={model} writer={writer} waits={best.working} />
        )}
        <RealLinePart model={model} writer={writer} waits={best.working} />
        <GuidesPart choices={choices} onTakeUp={marks.takeUp} />
      </div>
    </div>
  );
}

/** The load the builder picked; before that, the one at which the worst reading stands. */
function useDrawnLoad(sheet: LiveSheet, picked: number | undefined, count: number): number {
  const [worst, setWorst] = useState<number>();
  usePainted(sheet, ({ ours }) => {
    if (worst === undefined && ours && ours.reading.worstAt.load >= 0) setWorst(ours.reading.worstAt.load);
  });
  return Math.min(picked ?? worst ?? count - 1, count - 1);
}
