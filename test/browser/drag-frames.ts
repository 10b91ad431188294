import type { Page } from 'playwright-core';

/** What the page did while something was dragged. */
export interface DragFrames {
  frames: number;
  /** From a frame's begin to when its pixels were handed on: script, style, layout, paint. Milliseconds. */
  workMedianMs: number;
  workP95Ms: number;
  /** From one frame's begin to the next; a display's own rate at best. */
  betweenMedianMs: number;
  betweenP95Ms: number;
  /** Frames in which the bent rod had another shape. */
  newShapes: number;
}

/** Measures frames while `drag` runs; `shape` is the element whose `d` changes with every answer. */
export async function measureFrames(
  page: Page,
  shape: string,
  drag: () => Promise<void>,
): Promise<DragFrames> {
  await page.evaluate(startRecording, shape);
  await drag();
  const { work, between, newShapes } = await page.evaluate(() => {
    const recorder = globalThis as unknown as { stopRecording(): Recording };
    return recorder.stopRecording();
  });
  const at = (share: number, sorted: number[]) => sorted[Math.floor(share * (sorted.length - 1))];
  const sorted = (values: number[]) => [...values].sort((a, b) => a - b);
  return {
    frames: work.length,
    workMedianMs: at(0.5, sorted(work)),
    workP95Ms: at(0.95, sorted(work)),
    betweenMedianMs: at(0.5, sorted(between)),
    betweenP95Ms: at(0.95, sorted(between)),
    newShapes,
  };
}

interface Recording {
  work: number[];
  between: number[];
  newShapes: number;
}

/**
 * Runs in the page. A message posted in a frame's first callback is heard after that frame's paint: the time
 * from one to the other is what the frame cost.
 */
function startRecording(shape: string): void {
  const recording: Recording = { work: [], between: [], newShapes: 0 };
  const channel = new MessageChannel();
  let begun = 0;
  let last = 0;
  let going = true;
  channel.port1.onmessage = () => recording.work.push(performance.now() - begun);
  const watch = new MutationObserver(() => {
    recording.newShapes++;
  });
  const watched = document.querySelector(shape);
  if (watched) watch.observe(watched, { attributes: true });
  const frame = () => {
    if (!going) return;
    begun = performance.now();
    if (last > 0) recording.between.push(begun - last);
    last = begun;
    channel.port2.postMessage(0);
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
  Object.assign(globalThis, {
    stopRecording: () => {
      going = false;
      watch.disconnect();
      return recording;
    },
  });
}
