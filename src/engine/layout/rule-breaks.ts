/** Which placing rules a list of marks breaks, and why no layout can keep them all. */

import type { Finding } from '../finding.ts';
import { said } from '../finding.ts';
import { anyClear, deepestClash } from './kept-free.ts';
import { rulesOf, type SettledLayout } from './layout-request.ts';
import { nearestLayout, type PlacingRules } from './placing-rules.ts';

/** Everything in the start that the layout will have to change. */
export function startBreaks(settled: SettledLayout): Finding[] {
  const { start, held, leastIntervalM, intervals, keepOut, halfFootM } = settled;
  const { fromTipM } = start;
  const findings: Finding[] = [];
  const add = (guide: number, message: string) =>
    findings.push(
      said(`start.fromTipM[${guide}]`, `guide ${guide + 1} at ${metres(fromTipM[guide])} ${message}`),
    );
  fromTipM.forEach((station, guide) => {
    const heldAt = held[guide];
    if (heldAt !== undefined && Math.abs(heldAt - station) > 1e-6) add(guide, `is held at ${metres(heldAt)}`);
    const clash = deepestClash({ zones: keepOut, halfFootM: [halfFootM[guide]] }, { held: [undefined] }, [
      station,
    ]);
    if (clash) {
      const zone = keepOut[clash.zone];
      add(guide, `stands in the kept-free zone ${metres(zone.fromTipM)} to ${metres(zone.toTipM)}`);
    }
    if (guide === 0) return;
    const intervalM = station - fromTipM[guide - 1];
    if (intervalM < leastIntervalM[guide - 1] - 1e-6)
      add(guide, `is only ${metres(intervalM)} from its neighbour`);
    const beforeM = guide > 1 ? fromTipM[guide - 1] - fromTipM[guide - 2] : 0;
    if (intervals === 'growing' && intervalM < beforeM - 1e-6) {
      add(guide, `ends an interval of ${metres(intervalM)} after one of ${metres(beforeM)}`);
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
    const message = `the held marks leave no room for ${rules.count} guides with 50 mm, or the length of their feet, an interval: move a held mark or take fewer guides`;
    return [said('pinned', message)];
  }
  if (!nearestLayout(rules, fromTipM)) {
    const message =
      'with these held marks the intervals cannot grow towards the butt: move a held mark or ask for free intervals';
    return [said(settled.held.filter((at) => at !== undefined).length > 2 ? 'pinned' : 'intervals', message)];
  }
  const zones = { zones: settled.keepOut, halfFootM: settled.halfFootM };
  const freeHelps = settled.intervals === 'growing' && anyClear(zones, free, fromTipM).best !== undefined;
  const message = freeHelps
    ? `${rules.count} guides find no place clear of the kept-free zones with growing intervals: ask for free intervals, narrow a zone or change the number of guides`
    : `${rules.count} guides find no place clear of the kept-free zones: narrow a zone, move a held mark or take fewer guides`;
  return [said('keepOut', message)];
}

function metres(value: number): string {
  return `${Number(value.toFixed(4))} m`;
}
