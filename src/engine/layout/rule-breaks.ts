/** Which placing rules a list of marks breaks, and why no layout can keep them all. */

import type { Finding } from '../finding.ts';
import { anyClear, deepestClash } from './kept-free.ts';
import { layoutFound } from './layout-kinds.ts';
import { rulesOf, type SettledLayout } from './layout-request.ts';
import { nearestLayout, type PlacingRules } from './placing-rules.ts';

/** Everything in the start that the layout will have to change. */
export function startBreaks(settled: SettledLayout): Finding[] {
  const { start, held, leastIntervalM, intervals, keepOut, halfFootM } = settled;
  const { fromTipM } = start;
  const findings: Finding[] = [];
  fromTipM.forEach((station, index) => {
    const path = `start.fromTipM[${index}]`;
    const at = { guide: index + 1, fromTipM: station };
    const heldM = held[index];
    if (heldM !== undefined && Math.abs(heldM - station) > 1e-6) {
      findings.push(layoutFound(path, 'layout/start-held', { ...at, heldM }));
    }
    const clash = deepestClash({ zones: keepOut, halfFootM: [halfFootM[index]] }, { held: [undefined] }, [
      station,
    ]);
    if (clash) {
      const { fromTipM: zoneFromM, toTipM: zoneToM } = keepOut[clash.zone];
      findings.push(layoutFound(path, 'layout/start-in-zone', { ...at, zoneFromM, zoneToM }));
    }
    if (index === 0) return;
    const intervalM = station - fromTipM[index - 1];
    if (intervalM < leastIntervalM[index - 1] - 1e-6) {
      findings.push(layoutFound(path, 'layout/start-too-near', { ...at, intervalM }));
    }
    const beforeM = index > 1 ? fromTipM[index - 1] - fromTipM[index - 2] : 0;
    if (intervals === 'growing' && intervalM < beforeM - 1e-6) {
      findings.push(layoutFound(path, 'layout/start-shrinks', { guide: index + 1, intervalM, beforeM }));
    }
  });
  return findings;
}

/** For rules that exclude each other: which to give up. */
export function whyImpossible(settled: SettledLayout): Finding[] {
  const rules = rulesOf(settled);
  const free: PlacingRules = { ...rules, growth: 'free' };
  const { fromTipM } = settled.start;
  if (!nearestLayout(free, fromTipM)) {
    return [layoutFound('pinned', 'layout/held-leave-no-room', { count: rules.count })];
  }
  if (!nearestLayout(rules, fromTipM)) {
    const pinned = settled.held.filter((at) => at !== undefined).length > 2;
    return [layoutFound(pinned ? 'pinned' : 'intervals', 'layout/held-cannot-grow', {})];
  }
  const zones = { zones: settled.keepOut, halfFootM: settled.halfFootM };
  const freeHelps = settled.intervals === 'growing' && anyClear(zones, free, fromTipM).best !== undefined;
  return [layoutFound('keepOut', 'layout/no-clear-place', { count: rules.count, freeHelps })];
}
