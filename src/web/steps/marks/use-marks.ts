import { useMemo } from 'react';
import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import type { FerruleZone } from '../../../engine/bench/ferrule-zones.ts';
import { placesRound } from '../../../engine/flow/guides-round.ts';
import { guideName } from '../../../engine/kinds/guides.ts';
import type { MarkSlack } from '../../../engine/layout/slack.ts';
import {
  type GuideToMark,
  listMarks,
  type MarksList,
  withPlusMinus,
} from '../../../engine/marks/marks-list.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useLayoutProposal } from '../../read/use-layout-proposal.ts';
import { type PlaceDoubt, useMarkSpread } from '../../read/use-mark-spread.ts';
import { useSheetModel } from '../../read/use-rod-sheet.ts';
import { useSlack } from '../../worker/use-slack.ts';

export interface ChosenMarks {
  blank: AssembledBlank;
  list: MarksList;
  zones: readonly FerruleZone[];
  /** What the layout's bend and limits are read from. */
  model: SheetModel;
  /** ± of the best places; also in the list. */
  doubt: PlaceDoubt;
}

/** The chosen layout as it is marked, its slack beside it once worked out; undefined until every guide has a mark. */
export function useMarks(): ChosenMarks | undefined {
  const model = useSheetModel();
  const slack = useSlack(useMemo(() => slackQuestion(model), [model])).answer;
  const best = useLayoutProposal(model?.marksAre === 'own' && !model.unreadable ? model.request : undefined);
  const doubt = useMarkSpread(model, best);
  const { plusMinusM } = doubt;
  const list = useMemo(() => {
    if (model?.marksAre !== 'own') return undefined;
    const marked = listMarks(model.blank, guidesToMark(model, slack), model.choices.tapeStep, model);
    return withPlusMinus(marked, plusMinusM);
  }, [model, slack, plusMinusM]);
  return model && list && { blank: model.blank, list, zones: model.keepOut, model, doubt };
}

function slackQuestion(model: SheetModel | undefined) {
  if (model?.marksAre !== 'own' || model.unreadable || model.loads.ladder.length === 0) return undefined;
  const { fromTipM, footM, keepOut } = model.field;
  return { ladder: model.ladder.ladder, fromTipM, footM, keepOut };
}

function guidesToMark(
  { choices, field, diameters }: SheetModel,
  slack: readonly MarkSlack[] | undefined,
): GuideToMark[] {
  const round = placesRound(choices, field.fromTipM, diameters);
  return choices.guides.map(({ kind, size }, index) => {
    const may = slack?.[index];
    return {
      name: guideName({ kind, size }),
      fromTipM: field.fromTipM[index],
      footM: field.footM[index],
      round: round[index],
      slack: may && { towardsTipM: may.towardsTip, towardsButtM: may.towardsButt },
    };
  });
}
