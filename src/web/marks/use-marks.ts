import { useMemo } from 'react';
import type { AssembledBlank } from '../../engine/bench/assemble.ts';
import type { FerruleZone } from '../../engine/bench/ferrule-zones.ts';
import type { MarkSlack } from '../../engine/layout/slack.ts';
import { type GuideToMark, listMarks, type MarksList } from '../../engine/sheets/marks-list.ts';
import { tablesOf } from '../blank/predicted-drop.ts';
import { type SheetModel, sheetModel } from '../layout/sheet-model.ts';
import { useBench } from '../read/bench.tsx';
import { useSlack } from '../worker/use-slack.ts';

export interface ChosenMarks {
  blank: AssembledBlank;
  list: MarksList;
  zones: readonly FerruleZone[];
  /** What the layout's bend and limits are read from. */
  model: SheetModel;
}

/** The chosen layout as it is marked, its slack beside it once worked out; undefined until every guide has a mark. */
export function useMarks(): ChosenMarks | undefined {
  const { bench, choices, profile, stiffness } = useBench();
  const { solved } = stiffness;
  const model = useMemo(() => {
    const tables = tablesOf(solved, profile, bench?.material ?? 'unknown');
    return bench && choices && tables ? sheetModel({ bench, choices, tables }) : undefined;
  }, [bench, choices, profile, solved]);
  const slack = useSlack(useMemo(() => slackQuestion(model), [model])).answer;
  return useMemo(() => {
    if (model?.marksAre !== 'own') return undefined;
    const { blank, keepOut } = model;
    const list = listMarks(blank, guidesToMark(model, slack), model.choices.tapeStep);
    return { blank, list, zones: keepOut, model };
  }, [model, slack]);
}

function slackQuestion(model: SheetModel | undefined) {
  if (model?.marksAre !== 'own' || model.unreadable || model.loads.ladder.length === 0) return undefined;
  const { fromTipM, footM, keepOut } = model.field;
  return { ladder: model.ladder.ladder, fromTipM, footM, keepOut };
}

function guidesToMark(
  { choices, field }: SheetModel,
  slack: readonly MarkSlack[] | undefined,
): GuideToMark[] {
  return choices.guides.map(({ kind, size }, index) => {
    const may = slack?.[index];
    return {
      name: `${kind} ${size}`.trim(),
      fromTipM: field.fromTipM[index],
      slack: may && { towardsTipM: may.towardsTip, towardsButtM: may.towardsButt },
    };
  });
}
