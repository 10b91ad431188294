/** What in a question about a spool makes no sense, each at its field. */
import { type Finding, findingsOf } from '../finding.ts';
import type { SpoolKinds } from './spool-kinds.ts';
import type { SpoolRequest } from './spool-request.ts';

const found = findingsOf<SpoolKinds>();

export function checkSpool(request: SpoolRequest): Finding[] {
  return [...checkRings(request), ...checkPlace(request), ...checkKnot(request), ...checkSurface(request)];
}

function checkRings({ rings, lengthM }: SpoolRequest): Finding[] {
  if (rings.length < 2) return [found('rings', 'spool/too-few-rings', { count: rings.length })];
  return rings.flatMap(({ fromTipM }, index) => {
    const path = `rings[${index}].fromTipM`;
    if (fromTipM > lengthM) return [found(path, 'spool/ring-behind-grip', { fromTipM, lengthM })];
    const other = rings.findIndex((ring) => ring.fromTipM === fromTipM);
    return other === index ? [] : [found(path, 'spool/rings-at-one-place', { fromTipM, other })];
  });
}

/** The whole lip stands behind the first ring. */
function checkPlace({ spool, rings, lengthM }: SpoolRequest): Finding[] {
  const { alongM, lipDiameterM, tiltRad } = spool;
  const ringAlongM = lengthM - Math.max(...rings.map(({ fromTipM }) => fromTipM));
  const foremostM = alongM + (lipDiameterM / 2) * Math.abs(Math.sin(tiltRad));
  if (foremostM < ringAlongM) return [];
  return [found('spool.alongM', 'spool/in-front-of-ring', { alongM, ringAlongM })];
}

function checkKnot({ rings, knotM }: SpoolRequest): Finding[] {
  if (knotM === undefined) return [];
  return rings.flatMap(({ insideM }, index) =>
    insideM > knotM
      ? []
      : [found(`rings[${index}].insideM`, 'spool/ring-smaller-than-knot', { insideM, knotM })],
  );
}

function checkSurface({ surface }: SpoolRequest): Finding[] {
  if (surface.length === 0) return [found('surface', 'spool/no-surface', {})];
  return surface.flatMap(({ fromTipM }, index) => {
    const beforeM = index === 0 ? Number.NEGATIVE_INFINITY : surface[index - 1].fromTipM;
    if (fromTipM >= beforeM) return [];
    return [found(`surface[${index}].fromTipM`, 'spool/surface-out-of-order', { fromTipM, beforeM })];
  });
}
