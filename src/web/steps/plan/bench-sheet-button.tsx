import { locateMark } from '../../../engine/bench/assemble.ts';
import { marksRound } from '../../../engine/flow/guides-round.ts';
import { guideName } from '../../../engine/kinds/guides.ts';
import type { BenchStage } from '../../../engine/plan/bench-list.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { formatOnTape } from '../../../engine/units/tape-step.ts';
import { type BenchSheetInput, benchSheet } from '../../../sheets/bench-sheet.ts';
import { markRoundInWords } from '../../../words/round.ts';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBench } from '../../read/bench.tsx';
import { useShop } from '../../read/shop.tsx';
import { useFinish } from '../../read/use-finish.ts';
import { useHandlePlan } from '../../read/use-handle-plan.ts';
import { useNow } from '../../read/use-now.ts';
import { useRack } from '../../read/use-rack.ts';
import { useWraps } from '../../read/use-wraps.ts';

/** The bench sheet: figures, marks and stages of the build on one page. */
export function BenchSheetButton({ stages }: { stages: readonly BenchStage[] }) {
  const facts = useFacts();
  const guides = useGuideLines();
  return (
    <PrintButton sheet="bench" draw={(on) => [benchSheet({ stages, facts, guides }, on)]}>
      Bench sheet as PDF
    </PrintButton>
  );
}

function useFacts(): BenchSheetInput['facts'] {
  const { system, writer } = useShop();
  const { plan, parts } = useHandlePlan();
  const wraps = useWraps();
  const { batch, roomC } = useFinish(useNow());
  const show = (lengthM: number) => formatLength(lengthM, { system, decimals: 0, denominator: 8 });
  return [
    { what: 'Front of the grip', figure: show(parts.gripFrontM) },
    ...(plan
      ? [
          { what: 'Tip-top’s tube', figure: `${plan.tipTube.best.size64}/64 in` },
          { what: 'Winding check', figure: `${plan.check.size64}/64 in or ${plan.check.halfMillimetres} mm` },
          ...(plan.reaming.length > 0 ? [{ what: 'Reaming steps', figure: `${plan.reaming.length}` }] : []),
          ...(plan.arbors.length > 0 ? [{ what: 'Arbors', figure: `${plan.arbors.length}` }] : []),
          { what: 'Rod’s length', figure: show(plan.rodLengthM) },
        ]
      : []),
    ...(wraps
      ? [
          { what: 'Wraps', figure: `${wraps.plan.wraps.length}` },
          {
            what: 'Thread',
            figure: wraps.plan.colours.map(({ threadM }) => writer.run(threadM)).join(' + '),
          },
          { what: 'Width of a turn', figure: writer.thread(wraps.plan.laidWidthM) },
        ]
      : []),
    ...(batch
      ? [
          {
            what: `Mix, ${writer.temperature(roomC)}`,
            figure: `${batch.partA.toFixed(1)} + ${batch.partB.toFixed(1)} ${batch.unit}${batch.batches > 1 ? ` × ${batch.batches}` : ''}`,
          },
        ]
      : []),
  ];
}

function useGuideLines(): BenchSheetInput['guides'] {
  const { blank, choices, profile } = useBench();
  const rack = useRack();
  if (!blank || !choices) return [];
  const round = marksRound(choices, profile);
  return choices.guides.flatMap(({ kind, size, stationM }, index) => {
    const at = round[index];
    const mark = stationM === undefined ? undefined : locateMark(blank, stationM);
    if (!mark || mark.onSection === 'none') return [];
    const bagId = rack?.sorted.places.find(({ guide }) => guide === index + 1)?.bagId;
    return [
      {
        guide: `${index + 1}  ${guideName({ kind, size })}`,
        section: blank.sections[mark.onSection].name,
        ownTip: formatOnTape(mark.fromOwnTipM, choices.tapeStep),
        ownButt: formatOnTape(mark.fromOwnButtM, choices.tapeStep),
        ...(at ? { round: markRoundInWords(at, choices.tapeStep) } : {}),
        bag: bagId === undefined ? '' : `${rack?.numberOf(bagId)}`,
      },
    ];
  });
}
