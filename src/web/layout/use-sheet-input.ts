import { useEffect, useMemo } from 'react';
import { useLayoutProposal } from '../worker/use-layout-proposal.ts';
import { useSame } from '../worker/use-same.ts';
import { useSlack } from '../worker/use-slack.ts';
import type { AskedLayout, LiveSheet } from './live-sheet.ts';
import type { SheetModel } from './sheet-model.ts';

/**
 * Keeps a live sheet to what the record says, and works out in the background what only takes longer than a
 * frame: the best layout, the best under the other rule for intervals, and the slack of our marks.
 */
export function useSheetInput(sheet: LiveSheet | undefined, model: SheetModel, drawn: number | undefined) {
  const request = useSame(model.loads.ladder.length > 0 ? model.request : undefined);
  const otherRequest = useMemo(
    () =>
      request && {
        ...request,
        intervals: request.intervals === 'free' ? ('growing' as const) : ('free' as const),
      },
    [request],
  );
  const ladder = useSame(model.ladder);
  const restLadder = useSame(model.restLadder);
  const startLadder = useSame(model.startLadder);
  const field = useSame(model.field);
  const startFromTipM = useSame(model.startFromTipM);
  const { fromTipM, footM, keepOut } = field;
  const bends = ladder.ladder.ladder.length > 0;

  const best = useLayoutProposal(request);
  const slack = useSlack(
    useMemo(
      () => (bends ? { ladder: ladder.ladder, fromTipM, footM, keepOut } : undefined),
      [bends, ladder, fromTipM, footM, keepOut],
    ),
  );
  const otherRule = useLayoutProposal(best.answer && !best.working ? otherRequest : undefined);
  const bestMarks = useSame(best.answer?.status === 'refused' ? undefined : best.answer?.fromTipM);
  const otherMarks = useSame(otherRule.answer?.status === 'refused' ? undefined : otherRule.answer?.fromTipM);

  useEffect(() => {
    if (!sheet || !bends) return;
    const asked = (marks: readonly number[] | undefined, on = ladder): AskedLayout | undefined =>
      marks && marks.length === on.ladder.guides.count ? { fromTipM: marks, ladder: on } : undefined;
    sheet.take({
      field,
      ladder,
      drawn: drawn ?? ladder.ladder.ladder.length - 1,
      beside: {
        start: startFromTipM.length > 1 ? asked(startFromTipM, startLadder) : undefined,
        best: asked(bestMarks),
        otherRule: asked(otherMarks),
        rest: asked(fromTipM, restLadder),
      },
    });
  }, [
    sheet,
    bends,
    field,
    ladder,
    restLadder,
    startLadder,
    startFromTipM,
    fromTipM,
    bestMarks,
    otherMarks,
    drawn,
  ]);

  return { best, slack, bestMarks };
}
