import { useEffect, useState } from 'react';
import { openLiveLane } from './engine-worker.ts';
import type { LiveAnswer, LiveLane } from './live-lane.ts';
import type { LadderSheet } from './messages.ts';
import { useSame } from './use-same.ts';

export interface LadderState {
  /** The newest reading; of an earlier question while `working`. */
  answer: LiveAnswer | undefined;
  working: boolean;
  failure: string | undefined;
}

/** Reads a layout under every load of a ladder, for sheets on which nothing is dragged. */
export function useLadder(sheet: LadderSheet | undefined, fromTipM: readonly number[]): LadderState {
  const asked = useSame(sheet);
  const stations = useSame(fromTipM);
  const [lane, setLane] = useState<LiveLane>();
  const [state, setState] = useState<Omit<LadderState, 'working'>>({ answer: undefined, failure: undefined });
  useEffect(() => {
    const opened = openLiveLane();
    opened.listen('ladder', {
      read: (answer) => setState({ answer, failure: undefined }),
      failed: (failure) => setState({ answer: undefined, failure }),
    });
    setLane(opened);
    return () => opened.close();
  }, []);
  useEffect(() => {
    if (lane && asked) lane.ask('ladder', asked, stations);
  }, [lane, asked, stations]);
  const current = state.answer?.fromTipM === stations && state.failure === undefined;
  return { ...state, working: asked !== undefined && !current && state.failure === undefined };
}
