import { useEffect } from 'react';
import { deviceChoice } from './device-choice.ts';
import { useStayAwake } from './stay-awake.ts';

/** Day, night or as the device prefers, set on the root element where the style sheet reads it. */
export function useColours(colours: string): void {
  useEffect(() => {
    document.documentElement.dataset.colours = colours;
  }, [colours]);
}

const benchChoice = deviceChoice('fairbend-bench');

/** Whether this device lies on the bench: larger and stronger. Kept on the device, since the PC is not the tablet. */
export function useBenchView(): { bench: boolean; setBench(on: boolean): void } {
  const bench = benchChoice.useOn();
  useEffect(() => {
    document.documentElement.dataset.bench = bench ? 'on' : 'off';
  }, [bench]);
  useStayAwake(bench);
  return { bench, setBench: benchChoice.set };
}
