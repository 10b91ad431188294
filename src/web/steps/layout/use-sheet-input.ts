import { useEffect, useMemo } from 'react';
import type { Zone } from '../../../engine/layout/guide-moves.ts';
import type { LayoutAnswer } from '../../../engine/layout/layout.ts';
import type { MarkSlack } from '../../../engine/layout/slack.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useLayoutProposal } from '../../read/use-layout-proposal.ts';
import { useMarkSpread } from '../../read/use-mark-spread.ts';
import type { LadderSheet } from '../../worker/messages.ts';
import { useSame } from '../../worker/use-same.ts';
import { useSlack } from '../../worker/use-slack.ts';
import type { AskedLayout, LiveSheet } from './live-sheet.ts';
import { marksOnTape } from './marks-on-tape.ts';
import { useNextMove } from './use-next-move.ts';

const noMarks: readonly number[] = [];

interface Shown {
  drawn: number;
  system: UnitSystem;
  /** With the guide in hand as far round as it is held; left out while none is. */
  inHand?: LadderSheet;
}

/**
 * Keeps a live sheet to what the record says, and works out in the background what only takes longer than a
 * frame: the best layout, what to do first, the slack of our marks, and the best under the other rule for intervals.
 */
export function useSheetInput(sheet: LiveSheet | undefined, model: SheetModel, shown: Shown) {
  const bends = model.unreadable === undefined;
  const request = useSame(bends ? model.request : undefined);
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
  const startFromTipM = useSame(model.startStands ? model.startFromTipM : noMarks);
  const { fromTipM, footM, keepOut } = field;

  const best = useLayoutProposal(request);
  const slack = useSlack(
    useMemo(
      () => (bends ? { ladder: ladder.ladder, fromTipM, footM, keepOut } : undefined),
      [bends, ladder, fromTipM, footM, keepOut],
    ),
  );
  const doubt = useMarkSpread(model, best);
  const otherRule = useLayoutProposal(best.answer && !best.working ? otherRequest : undefined);
  const onTape = (answer: LayoutAnswer | undefined) =>
    answer && answer.status !== 'refused'
      ? marksOnTape(model.field, answer.fromTipM, shown.system)
      : undefined;
  const bestMarks = useSame(onTape(best.answer));
  const next = useNextMove(model, best, bestMarks, shown.system);
  const otherMarks = useSame(onTape(otherRule.answer));
  const { drawn } = shown;
  const held = useSame(shown.inHand ?? model.ladder);

  useEffect(() => {
    if (!sheet || !bends) return;
    const asked = (marks: readonly number[] | undefined, on = ladder): AskedLayout | undefined =>
      marks && marks.length === on.ladder.guides.count ? { fromTipM: marks, ladder: on } : undefined;
    sheet.take({
      field,
      ladder: held,
      drawn,
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
    held,
    ladder,
    restLadder,
    startLadder,
    startFromTipM,
    fromTipM,
    bestMarks,
    otherMarks,
    drawn,
  ]);

  const { answer, answered } = slack;
  const slackZones = useMemo(() => zonesOf(answer, answered?.fromTipM), [answer, answered]);
  return { best, bestMarks, next, slackZones, doubt };
}

/** Between which stations each mark is as good, for the layout that was asked about. */
function zonesOf(
  slack: readonly MarkSlack[] | undefined,
  fromTipM: readonly number[] | undefined,
): readonly Zone[] | undefined {
  if (!slack || !fromTipM) return undefined;
  return slack.map(({ towardsTip, towardsButt }, guide) => ({
    fromTipM: fromTipM[guide] - towardsTip,
    toTipM: fromTipM[guide] + towardsButt,
  }));
}
