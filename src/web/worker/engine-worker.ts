import { LiveLane } from './live-lane.ts';
import { LongLane, type WorkerLike } from './long-lane.ts';

/** A worker with the engine in it. */
function makeEngineWorker(): WorkerLike {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'fairbend engine' });
}

function makeDoubtWorker(): WorkerLike {
  return new Worker(new URL('./doubt-worker.ts', import.meta.url), {
    type: 'module',
    name: 'fairbend doubt',
  });
}

/** The page's lane for long work, opened with the first piece; one for the whole page. */
export function longLane(): LongLane {
  lane ??= new LongLane(makeEngineWorker);
  return lane;
}
let lane: LongLane | undefined;

/**
 * A lane of its own for what says how sure the others' answers are: it never makes them wait, and waits longer than
 * they do, so that a builder who types row after row does not set it going at each.
 */
export function doubtLane(): LongLane {
  doubts ??= new LongLane(makeDoubtWorker, 400);
  return doubts;
}
let doubts: LongLane | undefined;

/** One for what stands beside the layout: the line off the reel and round the blank, what hands feel. */
export function besideLane(): LongLane {
  beside ??= new LongLane(makeDoubtWorker);
  return beside;
}
let beside: LongLane | undefined;

/** One more, for work of many seconds that not even those must wait for. */
export function patientLane(): LongLane {
  patient ??= new LongLane(makeDoubtWorker, 1500);
  return patient;
}
let patient: LongLane | undefined;

/** A lane for layouts that are followed live; close it when the sheet is left. */
export function openLiveLane(): LiveLane {
  return new LiveLane(makeEngineWorker);
}
