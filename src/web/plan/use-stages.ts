import { recoatAt } from '../../engine/finish/schedule.ts';
import { timeAtRoom } from '../../engine/finish/temperature.ts';
import { type BenchStage, benchList, type StageFact } from '../../engine/plan/bench-list.ts';
import { readFinish } from '../../record/read-finish.ts';
import { clockWords } from '../finish/due-words.ts';
import { useBench } from '../read/bench.tsx';
import { useBuild } from '../read/build.tsx';
import { flagOf, textOf } from '../read/values.ts';

/** The bench list of this build at this moment; each stage's id is the step where it is done. */
export function useStages(nowMs: number): BenchStage[] {
  const { single, rows } = useBuild();
  const { filled, profile, stiffness, choices } = useBench();
  const [handle, finish] = [single('handle'), single('finish')];
  const { coats, times } = readFinish(filled);
  const last = coats.at(-1);
  const recoat = last && recoatAt(nowMs, last, times);
  const fishMs = last && last.brushedAtMs + 1000 * timeAtRoom(times.fishAfterS, times.statedC, last.roomC);
  const marked = choices?.guides.every(({ stationM }) => stationM !== undefined) ?? false;
  const wrapped =
    flagOf(finish, 'wrapsChecked') ||
    rows('benchDone').some((row) => textOf(row, 'task')?.startsWith('wrap-'));
  const facts: StageFact[] = [
    {
      id: 'blank',
      name: 'Measure the blank',
      after: [],
      done: profile.length > 0 && stiffness.solved !== undefined,
    },
    {
      id: 'handle',
      name: 'Glue the handle',
      after: ['blank'],
      done: textOf(handle, 'gluedAt') !== undefined,
    },
    { id: 'layout', name: 'Choose the layout', after: ['blank'], done: marked },
    {
      id: 'marks',
      name: 'Mark the sections',
      after: ['layout'],
      done: rows('prints').some((row) => ['strips', 'marks'].includes(textOf(row, 'sheet') ?? '')),
    },
    { id: 'guides', name: 'Sort the guides', after: ['layout'], done: rows('bag').length > 0 },
    {
      id: 'load-test',
      name: 'Tape the guides and load the rod',
      after: ['marks'],
      done: ['loadTests', 'proofs'].some((kind) => rows(kind).length > 0) || wrapped,
    },
    {
      id: 'wraps',
      name: 'Wrap',
      after: ['handle', 'load-test', 'guides'],
      done: flagOf(finish, 'wrapsChecked'),
    },
    { id: 'coat-1', name: 'First coat', after: ['wraps'], done: coats.length > 0 },
    {
      id: 'coat-2',
      name: 'Second coat',
      after: ['coat-1'],
      done: coats.length > 1,
      waitsFor:
        recoat?.status === 'too early' ? `the coat below, until ${clockWords(recoat.fromMs)}` : undefined,
    },
    {
      id: 'fish',
      name: 'Fully cured, ready to inspect',
      after: ['coat-2'],
      done: coats.length > 1 && fishMs !== undefined && fishMs <= nowMs,
      waitsFor: fishMs === undefined ? undefined : `the cure, until ${clockWords(fishMs)}`,
    },
  ];
  return benchList(facts);
}
