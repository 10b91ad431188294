/** What in a layout request makes no sense, each with its field, its value and the remedy. */

import { type Finding, inputFound } from '../finding.ts';
import { layoutFound } from './layout-kinds.ts';
import { type LayoutRequest, smallestIntervalM } from './layout-request.ts';

/** The rod's own tables are checked where the rod is read. */
export function checkLayout(request: LayoutRequest): Finding[] {
  const counts = checkCounts(request);
  if (counts.length > 0) return counts;
  return [
    ...checkEnds(request),
    ...checkPinned(request),
    ...checkZones(request),
    ...checkLoads(request),
    ...checkStart(request),
  ];
}

const positive = (value: number) => Number.isFinite(value) && value > 0;
const notNegative = (value: number) => Number.isFinite(value) && value >= 0;

function checkCounts({ guides, footM }: LayoutRequest): Finding[] {
  const { count } = guides;
  if (!Number.isInteger(count) || count < 2) {
    return [inputFound('guides.count', 'input/out-of-range', { value: count, low: 2, whole: true })];
  }
  const lists = [
    { path: 'guides.ringHeightsM', list: guides.ringHeightsM, unit: 'm' },
    { path: 'guides.massesKg', list: guides.massesKg, unit: 'kg' },
    { path: 'footM', list: footM, unit: 'm' },
  ];
  return lists.flatMap(({ path, list, unit }) => {
    if (!list) return [];
    if (list.length !== count) {
      return [inputFound(path, 'input/one-for-each', { given: list.length, wanted: count })];
    }
    return list.flatMap((value, i) =>
      notNegative(value) ? [] : [inputFound(`${path}[${i}]`, 'input/out-of-range', { value, unit, low: 0 })],
    );
  });
}

function checkEnds({ rod, guides, firstFromTipM, strippingFromTipM, footM }: LayoutRequest): Finding[] {
  if (!positive(firstFromTipM)) {
    const range = { value: firstFromTipM, unit: 'm', over: 0 };
    return [inputFound('firstFromTipM', 'input/out-of-range', range)];
  }
  if (!(strippingFromTipM > firstFromTipM && strippingFromTipM < rod.lengthM)) {
    const values = { strippingM: strippingFromTipM, firstM: firstFromTipM, clampM: rod.lengthM };
    return [layoutFound('strippingFromTipM', 'layout/stripping-place', values)];
  }
  const needM = Array.from({ length: guides.count - 1 }, (_, i) =>
    Math.max(smallestIntervalM, ((footM?.[i] ?? 0) + (footM?.[i + 1] ?? 0)) / 2),
  ).reduce((sum, interval) => sum + interval, 0);
  const roomM = strippingFromTipM - firstFromTipM;
  if (needM <= roomM + 1e-9) return [];
  return [layoutFound('guides.count', 'layout/guides-need-room', { count: guides.count, needM, roomM })];
}

function checkPinned({ guides, pinned = [], firstFromTipM, strippingFromTipM }: LayoutRequest): Finding[] {
  const findings: Finding[] = [];
  const stands = new Map([
    [0, firstFromTipM],
    [guides.count - 1, strippingFromTipM],
  ]);
  pinned.forEach(({ index, fromTipM }, k) => {
    const path = `pinned[${k}]`;
    if (!Number.isInteger(index) || index < 0 || index >= guides.count) {
      const range = { value: index, low: 0, high: guides.count - 1, whole: true };
      findings.push(inputFound(`${path}.index`, 'input/out-of-range', range));
    } else if (stands.has(index) && Math.abs(stands.get(index)! - fromTipM) > 1e-9) {
      const values = { guide: index + 1, fromTipM, otherM: stands.get(index)! };
      findings.push(layoutFound(path, 'layout/held-twice', values));
    } else stands.set(index, fromTipM);
  });
  if (findings.length > 0) return findings;
  const order = [...stands].sort(([a], [b]) => a - b);
  for (let k = 1; k < order.length; k++) {
    const [[i, from], [j, to]] = [order[k - 1], order[k]];
    const needM = (j - i) * smallestIntervalM;
    if (to - from >= needM - 1e-9) continue;
    const at = Math.max(
      0,
      pinned.findIndex(({ index }) => index === j || index === i),
    );
    const values = { guide: i + 1, fromTipM: from, next: j + 1, nextM: to, needM };
    findings.push(layoutFound(`pinned[${at}].fromTipM`, 'layout/held-too-close', values));
  }
  return findings;
}

function checkZones({ keepOut = [], guides, footM, pinned = [], ...ends }: LayoutRequest): Finding[] {
  const held = [
    { index: 0, fromTipM: ends.firstFromTipM, path: 'firstFromTipM' },
    { index: guides.count - 1, fromTipM: ends.strippingFromTipM, path: 'strippingFromTipM' },
    ...pinned.map((mark, k) => ({ ...mark, path: `pinned[${k}].fromTipM` })),
  ];
  return keepOut.flatMap((zone, z) => {
    const ends = { zoneFromM: zone.fromTipM, zoneToM: zone.toTipM };
    if (!(Number.isFinite(zone.fromTipM) && Number.isFinite(zone.toTipM) && zone.fromTipM < zone.toTipM)) {
      return [layoutFound(`keepOut[${z}]`, 'layout/zone-ends', ends)];
    }
    return held.flatMap(({ index, fromTipM, path }) => {
      const half = (footM?.[index] ?? 0) / 2;
      if (fromTipM <= zone.fromTipM - half + 1e-7 || fromTipM >= zone.toTipM + half - 1e-7) return [];
      const clear = { tipSideM: zone.fromTipM - half, buttSideM: zone.toTipM + half };
      return [layoutFound(path, 'layout/held-in-zone', { guide: index + 1, fromTipM, ...ends, ...clear })];
    });
  });
}

function checkLoads({ ladder, limits = {}, intervals }: LayoutRequest): Finding[] {
  const findings: Finding[] = [];
  if (ladder?.length === 0) {
    findings.push(layoutFound('ladder', 'layout/no-load', {}));
  }
  ladder?.forEach(({ tensionN, pullAngleRad, tiedN = 0 }, k) => {
    if (!notNegative(tensionN) || !notNegative(tiedN) || !Number.isFinite(pullAngleRad)) {
      const values = { tensionN, tiedN, directionRad: pullAngleRad };
      findings.push(layoutFound(`ladder[${k}]`, 'layout/load-senseless', values));
    }
  });
  for (const [name, limit] of Object.entries(limits)) {
    if (limit !== undefined && !positive(limit)) {
      findings.push(inputFound(`limits.${name}`, 'input/out-of-range', { value: limit, over: 0 }));
    }
  }
  if (intervals !== undefined && intervals !== 'growing' && intervals !== 'free') {
    const values = { value: String(intervals), choices: ['growing', 'free'] };
    findings.push(inputFound('intervals', 'input/not-a-choice', values));
  }
  return findings;
}

function checkStart({ start, guides, rod }: LayoutRequest): Finding[] {
  if (!start) return [];
  const { fromTipM } = start;
  if (fromTipM.length !== guides.count) {
    const values = { given: fromTipM.length, wanted: guides.count };
    return [inputFound('start.fromTipM', 'input/one-for-each', values)];
  }
  const wrong = fromTipM.findIndex((station, i) => {
    const before = i === 0 ? 0 : fromTipM[i - 1];
    return !(station - before >= 1e-3 && station <= rod.lengthM - 1e-3);
  });
  if (wrong < 0) return [];
  const values = { guide: wrong + 1, fromTipM: fromTipM[wrong], lengthM: rod.lengthM };
  return [layoutFound(`start.fromTipM[${wrong}]`, 'layout/start-order', values)];
}
