import { useEffect, useSyncExternalStore } from 'react';
import { useStayAwake } from './stay-awake.ts';

/** Day, night or as the device prefers, set on the root element where the style sheet reads it. */
export function useColours(colours: string): void {
  useEffect(() => {
    document.documentElement.dataset.colours = colours;
  }, [colours]);
}

const benchKey = 'fairbend-bench';
const listeners = new Set<() => void>();

/** Whether this device lies on the bench: larger and stronger. Kept on the device, since the PC is not the tablet. */
export function useBenchView(): { bench: boolean; setBench(on: boolean): void } {
  const bench = useSyncExternalStore(subscribe, readBench);
  useEffect(() => {
    document.documentElement.dataset.bench = bench ? 'on' : 'off';
  }, [bench]);
  useStayAwake(bench);
  return { bench, setBench };
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function readBench(): boolean {
  try {
    return localStorage.getItem(benchKey) === 'on';
  } catch {
    return false;
  }
}

function setBench(on: boolean): void {
  try {
    localStorage.setItem(benchKey, on ? 'on' : 'off');
  } catch {
    document.documentElement.dataset.bench = on ? 'on' : 'off';
  }
  for (const listener of listeners) listener();
}
