import { useMemo } from 'react';
import { locateMark } from '../../../engine/bench/assemble.ts';
import { marksRound } from '../../../engine/flow/guides-round.ts';
import { guideName } from '../../../engine/kinds/guides.ts';
import { type BenchTask, benchTasks } from '../../../words/bench-tasks.ts';
import { colourWords } from '../../../words/colour-words.ts';
import { useBench } from '../../read/bench.tsx';
import { useShop } from '../../read/shop.tsx';
import { useFinish } from '../../read/use-finish.ts';
import { useHandlePlan } from '../../read/use-handle-plan.ts';
import { useRack } from '../../read/use-rack.ts';
import { useWraps } from '../../read/use-wraps.ts';

/** The build's work in pieces, as it stands now; empty while there is no blank. */
export function useBenchTasks(nowMs: number): BenchTask[] {
  const { blank, choices, profile } = useBench();
  const { system, writer } = useShop();
  const { plan: handle } = useHandlePlan();
  const rack = useRack();
  const wraps = useWraps();
  const finish = useFinish(nowMs);
  return useMemo(() => {
    if (!blank || !choices) return [];
    const round = marksRound(choices, profile);
    const marks = choices.guides.flatMap(({ kind, size, stationM }, index) => {
      const mark = stationM === undefined ? undefined : locateMark(blank, stationM);
      if (!mark || mark.onSection === 'none') return [];
      const { onSection, fromOwnTipM, fromOwnButtM } = mark;
      return [
        {
          guide: index + 1,
          name: guideName({ kind, size }),
          section: onSection,
          ownTipM: fromOwnTipM,
          ownButtM: fromOwnButtM,
          round: round[index],
        },
      ];
    });
    return benchTasks({
      blank,
      step: system === 'mm' ? '1 mm' : '1/32 in',
      writer,
      handle,
      marks,
      rack,
      wraps: wraps?.plan.wraps ?? [],
      trimTurnsWord: wraps
        ? `in the trim, ${wraps.choices.trim.name ?? colourWords(wraps.choices.trim.colour)},`
        : 'in the trim',
      batch: finish.batch,
    });
  }, [blank, choices, profile, system, writer, handle, rack, wraps, finish.batch]);
}
