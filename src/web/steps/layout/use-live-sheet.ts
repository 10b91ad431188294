import { useEffect, useState } from 'react';
import { openLiveLane } from '../../worker/engine-worker.ts';
import { LiveSheet } from './live-sheet.ts';
import type { SheetFrame } from './sheet-frame.ts';

/** A live sheet for as long as the component stands. */
export function useLiveSheet(): LiveSheet | undefined {
  const [sheet, setSheet] = useState<LiveSheet>();
  useEffect(() => {
    const opened = new LiveSheet(openLiveLane(), (paint) => requestAnimationFrame(paint));
    setSheet(opened);
    return () => opened.close();
  }, []);
  return sheet;
}

/** The sheet's newest frame while nothing is dragged, for what React renders. */
export function useSettledFrame(sheet: LiveSheet): SheetFrame {
  const [frame, setFrame] = useState(sheet.frame);
  useEffect(() => {
    setFrame(sheet.frame);
    return sheet.subscribe((next) => {
      if (!next.dragging) setFrame(next);
    });
  }, [sheet]);
  return frame;
}
