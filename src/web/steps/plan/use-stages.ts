import { recoatAt } from '../../../engine/finish/schedule.ts';
import { timeAtRoom } from '../../../engine/finish/temperature.ts';
import { type BenchStage, benchList, type StageFact } from '../../../engine/plan/bench-list.ts';
import { bendGate } from '../../../engine/plan/bend-gate.ts';
import { readFinish } from '../../../record/read-finish.ts';
import { readSoftWork } from '../../../record/read-soft-work.ts';
import { softInWords } from '../../../words/due.ts';
import { clockWords } from '../../../words/intl.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { flagOf, textOf } from '../../read/values.ts';

/** The bench list of this build at this moment; each stage's id is the step where it is done. */
export function useStages(nowMs: number): BenchStage[] {
  const { single, rows } = useBuild();
  const { filled, profile, fit, stiffness, choices } = useBench();
  const [handle, finish] = [single('handle'), single('finish')];
  const { coats, times, coatsInAll } = readFinish(filled);
  const last = coats.at(-1);
  const recoat = last && recoatAt(nowMs, last, times);
  const fishMs =
    last &&
    last.brushedAtMs + 1000 * timeAtRoom(times.fishAfterS, times.statedC, last.roomC, times.halvesPerC);
  // It was read; that its stiffness is still being worked out is no work at the bench.
  const measured = stiffness.solved !== undefined || (fit !== undefined && stiffness.working);
  const soft = bendGate(readSoftWork(filled), nowMs);
  const marked = choices?.guides.every(({ stationM }) => stationM !== undefined) ?? false;
  const wrapped =
    flagOf(finish, 'wrapsChecked') ||
    rows('benchDone').some((row) => textOf(row, 'task')?.startsWith('wrap-'));
  const delivered = textOf(single('delivery'), 'deliveredAt') !== undefined;
  const facts: StageFact[] = [
    {
      id: 'blank',
      name: 'Measure the blank',
      after: [],
      done: profile.length > 0 && measured,
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
      waitsFor: soft && `${softInWords(soft)}, until ${clockWords(soft.untilMs, nowMs)}`,
    },
    {
      id: 'wraps',
      name: 'Wrap',
      after: ['handle', 'load-test', 'guides'],
      done: flagOf(finish, 'wrapsChecked'),
    },
    ...coatStages(coatsInAll, coats.length).map((stage, below) => ({
      ...stage,
      waitsFor:
        below > 0 && recoat?.status === 'too-early'
          ? `the coat below, until ${clockWords(recoat.fromMs, nowMs)}`
          : undefined,
    })),
    {
      id: 'fish',
      name: 'Fully cured',
      after: [`coat-${coatsInAll}`],
      done: coats.length >= coatsInAll && fishMs !== undefined && fishMs <= nowMs,
      waitsFor: fishMs === undefined ? undefined : `the cure, until ${clockWords(fishMs, nowMs)}`,
    },
    {
      id: 'papers',
      name: 'Inspect and hand over',
      after: ['fish'],
      done: delivered,
    },
  ];
  // nothing is left to do on a rod that was handed over
  return benchList(delivered ? facts.map((fact) => ({ ...fact, done: true })) : facts);
}

/** One stage for every coat that is planned, the first after the wraps. */
function coatStages(planned: number, brushed: number): StageFact[] {
  return Array.from({ length: planned }, (_, index) => ({
    id: `coat-${index + 1}`,
    name: coatNames[index] ?? `Coat ${index + 1}`,
    after: [index === 0 ? 'wraps' : `coat-${index}`],
    done: brushed > index,
  }));
}
const coatNames = ['First coat', 'Second coat', 'Third coat'];
