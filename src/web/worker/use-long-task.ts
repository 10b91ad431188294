import { useEffect, useState } from 'react';
import { longLane } from './engine-worker.ts';
import type { LongLane } from './long-lane.ts';
import type { Answer, LongTask, Progress } from './messages.ts';
import { useSame } from './use-same.ts';

export interface LongTaskState<T extends LongTask> {
  /** Of the task as it is now, or, while `working`, of the one before it. */
  answer: Answer<T> | undefined;
  /** The task that `answer` is of. */
  answered: T | undefined;
  working: boolean;
  progress: Progress<T> | undefined;
  /** Why there is no answer. */
  failure: string | undefined;
}

/**
 * Works a task out in the background, again whenever it changes and the lane's rest is over (typing is waited out);
 * undefined: nothing to do.
 */
export function useLongTask<T extends LongTask>(
  wanted: T | undefined,
  lane: () => LongLane = longLane,
): LongTaskState<T> {
  const task = useSame(wanted);
  const [state, setState] = useState<Kept<T>>(() => ({ ...nothing, of: undefined }));
  useEffect(() => {
    if (!task) return;
    const stop = new AbortController();
    const { restMs } = lane();
    const timer = setTimeout(() => {
      const progress = (so: Progress<T>) => setState((last) => ({ ...last, progress: so }));
      lane()
        .run(task, { signal: stop.signal, progress })
        .then(
          (answer) => setState({ ...nothing, answer, answered: task, of: task }),
          (error: Error) => {
            if (!stop.signal.aborted) setState({ ...nothing, failure: error.message, of: task });
          },
        );
    }, restMs);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [task, lane]);
  if (!task) return nothing;
  return { ...state, working: state.of !== task };
}

/** `of`: the task that was last seen to its end, answered or failed. */
type Kept<T extends LongTask> = LongTaskState<T> & { of: T | undefined };

const nothing = {
  answer: undefined,
  answered: undefined,
  working: false,
  progress: undefined,
  failure: undefined,
};
