import type { JobStatus } from '../../record/record-api.ts';

/** Long computations: started, watched and called off; they outlive the page that asked, and the server that worked. */
export interface Jobs {
  /** @throws RefusedError when kind or input make no sense, ConflictError when too many wait */
  start(kind: string, input: unknown): Promise<JobStatus>;
  /** Undefined where there is none. */
  status(id: string): Promise<JobStatus | undefined>;
  /** The newest first. */
  list(): Promise<JobStatus[]>;
  /** One that has ended stays as it is. @throws NotFoundError */
  cancel(id: string): Promise<JobStatus>;
  /** What is being worked on is laid down again, for the next server. */
  close(): Promise<void>;
}

/** Times a job is begun before it counts as one that ends every worker. */
export const mostAttempts = 3;
/** Jobs that may wait at once, for all pages together. */
export const mostWaiting = 50;
