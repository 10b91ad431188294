/** A second home of the engine, for how sure its answers are, and for what stands beside the layout. */
import { answerCounts } from '../../engine/flow/count-answer.ts';
import { finishEffects } from '../../engine/flow/finish-effects.ts';
import { proposeSpiral } from '../../engine/flow/propose-spiral.ts';
import { readReelLine } from '../../engine/flow/reel-line.ts';
import { handsAnswer, roundAnswer } from '../../engine/flow/round-answer.ts';
import { twoGrips } from '../../engine/flow/two-grips.ts';
import { readRealLine } from '../../engine/layout/real-line.ts';
import { judgeRod } from '../../engine/load-test/judge-rod.ts';
import { compareDays } from '../../engine/sureness/compare-days.ts';
import { answerTasks } from './answer-tasks.ts';
import type { DoubtTask } from './doubt-messages.ts';
import type { Progress } from './messages.ts';
import { nextReadingOfBench } from './next-reading-of-bench.ts';
import { secondOpinion } from './second-opinion.ts';
import { seriesOfBlanks } from './series-of-blanks.ts';
import { blanksOfBench, powerOfBlank, spreadOfPlaces, surenessOfLayouts } from './sureness-of-layouts.ts';

answerTasks<DoubtTask>((task, progress: (so: Progress<DoubtTask>) => void) => {
  switch (task.does) {
    case 'blanks':
      return blanksOfBench(task);
    case 'sureness':
      return surenessOfLayouts(task, progress);
    case 'spread':
      return spreadOfPlaces(task, progress);
    case 'series':
      return seriesOfBlanks(task);
    case 'power':
      return powerOfBlank(task);
    case 'finished':
      return finishEffects(task.parts, task.marksFromTipM);
    case 'nextReading':
      return nextReadingOfBench(task, progress);
    case 'judge':
      return judgeRod(task.question);
    case 'second':
      return secondOpinion(task);
    case 'counts':
      return answerCounts(task.question, progress);
    case 'spiral':
      return proposeSpiral(task.question);
    case 'reelLine':
      return readReelLine(task.question);
    case 'realLine':
      return readRealLine(task.question);
    case 'round':
      return roundAnswer(task.question);
    case 'hands':
      return handsAnswer(task.question);
    case 'grips':
      return twoGrips(task.question);
    case 'days':
      return compareDays(task.question);
  }
});
