import { type RefObject, useEffect, useRef, useState } from 'react';
import type { LiveKnown, LiveLook } from '../../../image/live/look-live.ts';
import { openPhotoDesk, type PhotoDesk } from '../../parts/photo/photo-desk.ts';
import { reasonOf } from '../../read/open-store.ts';

export interface Live {
  look: LiveLook | undefined;
  /** From the moment a frame was taken to its curve, the last ones' mean. */
  secondsEach: number | undefined;
  trouble: string | undefined;
}

/** Between two looks at least: a phone that works without pause grows hot. */
const restMs = 400;
const widestPx = 1600;

/** Looks at the camera's picture again and again, one frame at a time, while `on`. Nothing is kept. */
export function useLive(
  video: RefObject<HTMLVideoElement | null>,
  known: LiveKnown | undefined,
  on: boolean,
): Live {
  const [live, setLive] = useState<Live>({ look: undefined, secondsEach: undefined, trouble: undefined });
  const latest = useRef(known);
  latest.current = known;
  const ready = on && known !== undefined;
  useEffect(() => {
    if (!ready) return;
    const stop = new AbortController();
    const desk = openPhotoDesk();
    const loop = async () => {
      while (!stop.signal.aborted) {
        const started = performance.now();
        try {
          const look = await lookOnce(desk, video.current, latest.current, stop.signal);
          const seconds = (performance.now() - started) / 1e3;
          if (look)
            setLive((was) => ({ look, secondsEach: meanOf(was.secondsEach, seconds), trouble: undefined }));
        } catch (error) {
          if (!stop.signal.aborted) setLive((was) => ({ ...was, trouble: reasonOf(error) }));
        }
        await new Promise((done) => setTimeout(done, restMs));
      }
    };
    void loop();
    return () => {
      stop.abort();
      desk.close();
    };
  }, [ready, video]);
  return live;
}

async function lookOnce(
  desk: PhotoDesk,
  video: HTMLVideoElement | null,
  known: LiveKnown | undefined,
  signal: AbortSignal,
): Promise<LiveLook | undefined> {
  if (!video || !known || video.readyState < 2 || video.videoWidth === 0) return undefined;
  const widthPx = Math.min(widestPx, video.videoWidth);
  const frame = await createImageBitmap(video, { resizeWidth: widthPx, resizeQuality: 'high' });
  try {
    return await desk.look({ does: 'live', frame, known }, { signal, progress: () => undefined });
  } finally {
    frame.close();
  }
}

function meanOf(before: number | undefined, seconds: number): number {
  return before === undefined ? seconds : 0.7 * before + 0.3 * seconds;
}
