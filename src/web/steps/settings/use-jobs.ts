import { useCallback, useEffect, useState } from 'react';
import type { JobStatus } from '../../../record/record-api.ts';
import { reasonOf } from '../../read/open-store.ts';
import { useAnswer } from '../../read/use-answer.ts';
import { api } from '../../store/open-document.ts';

export interface Jobs {
  /** The newest first; undefined until the server has said. */
  list: readonly JobStatus[] | undefined;
  trouble: string | undefined;
  start(kind: string, input?: unknown): Promise<void>;
  cancel(id: string): Promise<void>;
}

/** How often a job under way is looked at. */
const lookMs = 1000;

/** The server's long computations, looked at for as long as one waits or runs; a reload finds them again. */
export function useJobs(): Jobs {
  const [list, setList] = useState<readonly JobStatus[]>();
  const [trouble, setTrouble] = useState<string>();
  const attempt = useCallback(async (work: () => Promise<unknown>) => {
    try {
      await work();
      setList((await api.jobs()).jobs);
      setTrouble(undefined);
    } catch (error) {
      setTrouble(reasonOf(error));
    }
  }, []);
  const look = useCallback(() => attempt(async () => undefined), [attempt]);
  useEffect(() => void look(), [look]);
  const working = list?.some(isOpen) ?? false;
  useEffect(() => {
    if (!working) return;
    const timer = setInterval(() => void look(), lookMs);
    return () => clearInterval(timer);
  }, [working, look]);
  return {
    list,
    trouble,
    start: (kind, input) => attempt(() => api.startJob(kind, input)),
    cancel: (id) => attempt(() => api.cancelJob(id)),
  };
}

export function isOpen({ state }: JobStatus): boolean {
  return state === 'waiting' || state === 'running';
}

/** What came out of the newest of these that is done; undefined while there is none. */
export function useResult<Result>(
  jobs: readonly JobStatus[],
): { job: JobStatus; result: Result } | undefined {
  const id = jobs.find(({ state }) => state === 'done')?.id;
  const { answer: found } = useAnswer(api.job, id);
  return found?.result !== undefined ? { job: found, result: found.result as Result } : undefined;
}
