import { z } from 'zod';
import { withHabits } from '../../record/shop-habits.ts';
import type { Keeper } from '../keeper.ts';
import { seriesName } from '../summary.ts';

/** One step of a job: what a worker is given. Plain data, for it crosses to another thread. */
export interface JobStep {
  name: string;
  data: unknown;
}

export interface JobKind<Input = unknown> {
  input: z.ZodType<Input>;
  /** Names of the steps, read when the job begins; the step's data are read when its turn comes. */
  steps(keeper: Keeper, input: Input): Promise<readonly string[]>;
  /** Undefined where there is nothing left to do for this step, such as a build put away meanwhile. */
  load(keeper: Keeper, step: string, answers: readonly unknown[]): Promise<JobStep | undefined>;
  /** What is kept of the steps' answers. */
  result(answers: readonly unknown[]): unknown;
}

const sampleShelf: JobKind<{ builds?: string[] }> = {
  input: z.strictObject({ builds: z.array(z.string().max(40)).min(1).max(10_000).optional() }),
  steps: async (keeper, { builds }) => builds ?? (await buildsOf(keeper, {})),
  load: loadBuild,
  result: (answers) => answers,
};

/** The last step, in which the blanks are taken together. */
const together = '';

const learnSeries: JobKind<{ series: string }> = {
  input: z.strictObject({ series: z.string().min(1).max(120) }),
  async steps(keeper, { series }) {
    const builds = await buildsOf(keeper, { series: seriesName(series) });
    return [...builds, together];
  },
  load: async (keeper, step, answers) =>
    step === together ? { name: 'the blanks together', data: { members: answers } } : loadBuild(keeper, step),
  result: (answers) => answers.at(-1),
};

/** What can be asked for; the worker's side of each is in `job-work.ts`. */
export const jobKinds: Record<string, JobKind<never>> = {
  'sample shelf': sampleShelf as JobKind<never>,
  'learn series': learnSeries as JobKind<never>,
};

async function loadBuild(keeper: Keeper, build: string): Promise<JobStep | undefined> {
  const found = await keeper.repository.find(build);
  if (found?.kind !== 'build') return undefined;
  const [own, shop] = [await keeper.state(build), await keeper.shop()];
  const { cells } = withHabits(own, await keeper.state(shop.id));
  return { name: found.title, data: { build, title: found.title, cells: [...cells] } };
}

async function buildsOf(keeper: Keeper, { series }: { series?: string }): Promise<string[]> {
  const ids: string[] = [];
  for (let total = Infinity; ids.length < total; ) {
    const page = { kind: 'build', search: '', gone: false, limit: 200, offset: ids.length, series } as const;
    const list = await keeper.repository.list(page);
    if (list.documents.length === 0) break;
    ids.push(...list.documents.map(({ id }) => id));
    total = list.total;
  }
  return [...new Set(ids)];
}
