/** What in a layout request makes no sense, each with its field, its value and the remedy. */

import type { Finding } from '../finding.ts';
import { said } from '../finding.ts';
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
    const message = `${count} guides: give a whole number of at least 2 (the first guide and the stripping guide)`;
    return [said('guides.count', message)];
  }
  const lists = [
    {
      path: 'guides.ringHeightsM',
      list: guides.ringHeightsM,
      fits: notNegative,
      what: 'a height of 0 or more',
    },
    { path: 'guides.massesKg', list: guides.massesKg, fits: notNegative, what: 'a mass of 0 or more' },
    { path: 'footM', list: footM, fits: notNegative, what: 'a length of 0 or more' },
  ];
  return lists.flatMap(({ path, list, fits, what }) => {
    if (!list) return [];
    if (list.length !== count) {
      return [said(path, `${list.length} values for ${count} guides: give one for each guide`)];
    }
    return list.flatMap((value, i) =>
      fits(value) ? [] : [said(`${path}[${i}]`, `${value} at guide ${i + 1}: give ${what}`)],
    );
  });
}

function checkEnds({ rod, guides, firstFromTipM, strippingFromTipM, footM }: LayoutRequest): Finding[] {
  if (!positive(firstFromTipM)) {
    return [said('firstFromTipM', `guide 1 at ${firstFromTipM} m: give its distance from the tip`)];
  }
  if (!(strippingFromTipM > firstFromTipM && strippingFromTipM < rod.lengthM)) {
    const message = `stripping guide at ${strippingFromTipM} m: it stands behind guide 1 (${firstFromTipM} m) and in front of the clamp (${rod.lengthM} m)`;
    return [said('strippingFromTipM', message)];
  }
  const needM = Array.from({ length: guides.count - 1 }, (_, i) =>
    Math.max(smallestIntervalM, ((footM?.[i] ?? 0) + (footM?.[i + 1] ?? 0)) / 2),
  ).reduce((sum, interval) => sum + interval, 0);
  const roomM = strippingFromTipM - firstFromTipM;
  if (needM <= roomM + 1e-9) return [];
  const message = `${guides.count} guides need ${metres(needM)} between guide 1 and the stripping guide (50 mm an interval, or the length of their feet), and there is ${metres(roomM)}: take fewer guides`;
  return [said('guides.count', message)];
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
      findings.push(
        said(`${path}.index`, `guide ${index} of ${guides.count}: give 0 to ${guides.count - 1}`),
      );
    } else if (stands.has(index) && Math.abs(stands.get(index)! - fromTipM) > 1e-9) {
      const message = `guide ${index + 1} is held at ${fromTipM} m and at ${stands.get(index)} m: leave one of them out`;
      findings.push(said(path, message));
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
    const message = `guide ${i + 1} is held at ${from} m and guide ${j + 1} at ${to} m: they need ${metres(needM)} between them; move one of the held marks`;
    findings.push(said(`pinned[${at}].fromTipM`, message));
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
    if (!(Number.isFinite(zone.fromTipM) && Number.isFinite(zone.toTipM) && zone.fromTipM < zone.toTipM)) {
      const message = `from ${zone.fromTipM} m to ${zone.toTipM} m: give the end nearer the tip first`;
      return [said(`keepOut[${z}]`, message)];
    }
    return held.flatMap(({ index, fromTipM, path }) => {
      const half = (footM?.[index] ?? 0) / 2;
      if (fromTipM <= zone.fromTipM - half + 1e-7 || fromTipM >= zone.toTipM + half - 1e-7) return [];
      const message = `guide ${index + 1} is held at ${fromTipM} m, in or too near the kept-free zone ${zone.fromTipM} m to ${zone.toTipM} m: move it to ${metres(zone.fromTipM - half)} or ${metres(zone.toTipM + half)}, or change the zone`;
      return [said(path, message)];
    });
  });
}

function checkLoads({ ladder, limits = {}, intervals }: LayoutRequest): Finding[] {
  const findings: Finding[] = [];
  if (ladder?.length === 0) {
    findings.push(said('ladder', 'no load: give at least one, or leave the ladder out for the default one'));
  }
  ladder?.forEach(({ tensionN, pullAngleRad, tiedN = 0 }, k) => {
    if (!notNegative(tensionN) || !notNegative(tiedN) || !Number.isFinite(pullAngleRad)) {
      const message = `tension ${tensionN} N, tied ${tiedN} N, direction ${pullAngleRad} rad: give loads of 0 or more and a direction`;
      findings.push(said(`ladder[${k}]`, message));
    }
  });
  for (const [name, limit] of Object.entries(limits)) {
    if (limit !== undefined && !positive(limit)) {
      findings.push(said(`limits.${name}`, `a limit of ${limit}: give one above 0`));
    }
  }
  if (intervals !== undefined && intervals !== 'growing' && intervals !== 'free') {
    findings.push(said('intervals', `"${intervals}": give "growing" or "free"`));
  }
  return findings;
}

function checkStart({ start, guides, rod }: LayoutRequest): Finding[] {
  if (!start) return [];
  const { fromTipM } = start;
  if (fromTipM.length !== guides.count) {
    const message = `${fromTipM.length} marks for ${guides.count} guides: give one for each guide`;
    return [said('start.fromTipM', message)];
  }
  const wrong = fromTipM.findIndex((station, i) => {
    const before = i === 0 ? 0 : fromTipM[i - 1];
    return !(station - before >= 1e-3 && station <= rod.lengthM - 1e-3);
  });
  if (wrong < 0) return [];
  const message = `guide ${wrong + 1} at ${fromTipM[wrong]} m: marks climb from the tip to less than the rod's ${rod.lengthM} m; look for a typing slip`;
  return [said(`start.fromTipM[${wrong}]`, message)];
}

function metres(value: number): string {
  return `${Number(value.toFixed(4))} m`;
}
