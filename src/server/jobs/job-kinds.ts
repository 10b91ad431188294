import { z } from 'zod';
import type { Keeper } from '../keeper.ts';

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
  load(keeper: Keeper, input: Input, step: string): Promise<JobStep | undefined>;
}

const sampleShelf: JobKind<{ builds?: string[] }> = {
  input: z.strictObject({ builds: z.array(z.string().max(40)).min(1).max(10_000).optional() }),
  async steps(keeper, { builds }) {
    return builds ?? (await allBuilds(keeper));
  },
  async load(keeper, _input, build) {
    const found = await keeper.repository.find(build);
    if (found?.kind !== 'build') return undefined;
    return {
      name: found.title,
      data: { build, title: found.title, cells: [...(await keeper.state(build)).cells] },
    };
  },
};

/** What can be asked for; the worker's side of each is in `job-work.ts`. */
export const jobKinds: Record<string, JobKind<never>> = { 'sample shelf': sampleShelf as JobKind<never> };

async function allBuilds(keeper: Keeper): Promise<string[]> {
  const ids: string[] = [];
  for (let total = Infinity; ids.length < total; ) {
    const page = { kind: 'build', search: '', gone: false, limit: 200, offset: ids.length } as const;
    const list = await keeper.repository.list(page);
    if (list.documents.length === 0) break;
    ids.push(...list.documents.map(({ id }) => id));
    total = list.total;
  }
  return [...new Set(ids)];
}
