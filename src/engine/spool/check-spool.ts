/** What in a question about a spool makes no sense, each with its field, its value and the remedy. */
import type { Finding } from '../finding.ts';
import type { SpoolRequest } from './spool-request.ts';

export function checkSpool(request: SpoolRequest): Finding[] {
  return [...checkRings(request), ...checkPlace(request), ...checkKnot(request), ...checkSurface(request)];
}

function checkRings({ rings, lengthM }: SpoolRequest): Finding[] {
  if (rings.length < 2) {
    const message = `${rings.length} rings: give the first ring and the next one toward the tip, where the line goes on to`;
    return [{ path: 'rings', message }];
  }
  return rings.flatMap(({ fromTipM }, index) => {
    const path = `rings[${index}].fromTipM`;
    if (fromTipM > lengthM) {
      return [
        {
          path,
          message: `${fromTipM} m lies behind the front of the grip, ${lengthM} m from the tip: measure it from the tip`,
        },
      ];
    }
    const same = rings.findIndex((ring) => ring.fromTipM === fromTipM);
    if (same === index) return [];
    return [
      { path, message: `${fromTipM} m is the place of rings[${same}] too: give each ring its own place` },
    ];
  });
}

/** The whole lip stands behind the first ring. */
function checkPlace({ spool, rings, lengthM }: SpoolRequest): Finding[] {
  if (rings.length === 0) return [];
  const foremostM = spool.alongM + (spool.lipDiameterM / 2) * Math.abs(Math.sin(spool.tiltRad));
  const firstAlongM = lengthM - Math.max(...rings.map(({ fromTipM }) => fromTipM));
  if (foremostM < firstAlongM) return [];
  const message = `${spool.alongM} m puts the spool in front of its ring, which stands ${firstAlongM} m ahead of the grip's front: behind the grip's front count negative, or move the ring toward the tip`;
  return [{ path: 'spool.alongM', message }];
}

function checkKnot({ rings, knotM }: SpoolRequest): Finding[] {
  if (knotM === undefined) return [];
  return rings.flatMap(({ insideM }, index) =>
    insideM > knotM
      ? []
      : [
          {
            path: `rings[${index}].insideM`,
            message: `${insideM} m inside is smaller than the knot of ${knotM} m: take a wider ring, or a slimmer knot`,
          },
        ],
  );
}

function checkSurface({ surface }: SpoolRequest): Finding[] {
  if (surface.length === 0) return [{ path: 'surface', message: 'a list of 0: give at least one radius' }];
  return surface.flatMap(({ fromTipM }, index) =>
    index === 0 || fromTipM >= surface[index - 1].fromTipM
      ? []
      : [
          {
            path: `surface[${index}].fromTipM`,
            message: `${fromTipM} m comes after ${surface[index - 1].fromTipM} m: list the rows from the tip to the butt`,
          },
        ],
  );
}
