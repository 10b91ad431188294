/** Invented rods bent in space, for the second programs. */

import type { GuideRound, SpaceRequest } from '../../src/engine/space/bend-in-space.ts';
import { realisticRods } from '../cases/realistic-rods.ts';

export interface SpatialRod {
  name: string;
  request: SpaceRequest;
}

const named = (words: RegExp) => realisticRods.find(({ name }) => words.test(name)) ?? realisticRods[0];

/** A planar rod of the set, its rings turned round it, GJ a share of EI, and something sideways. */
function inSpace(
  words: RegExp,
  ratio: number,
  aroundRad: (guide: { fromTipM: number }, index: number, count: number) => number,
  change: (request: SpaceRequest) => SpaceRequest,
): SpaceRequest {
  const { request } = named(words);
  const guides: GuideRound[] = (request.guides ?? []).map(({ fromTipM, ringHeightM }, index, all) => ({
    fromTipM,
    ringHeightM,
    aroundRad: aroundRad({ fromTipM }, index, all.length),
  }));
  return change({
    ...request,
    rod: {
      ...request.rod,
      torsion: request.rod.stiffness.map(({ fromTipM, EINm2 }) => ({ fromTipM, GJNm2: ratio * EINm2 })),
    },
    guides,
    reel: request.reel && { ...request.reel, aroundRad: guides.at(-1)?.aroundRad ?? 0 },
  });
}

const under = () => 0;
const onTop = () => Math.PI;
/** On top at the reel, under from the fourth guide on. */
const spiral = (_: unknown, index: number, count: number) =>
  [Math.PI, 2.1, 1.05, 0][Math.min(3, count - 1 - index)];

export const spatialRods: SpatialRod[] = [
  {
    name: 'casting, spiral',
    request: inSpace(/casting/, 0.3, spiral, (request) => request),
  },
  {
    name: 'casting, spiral, friction 0.25, line in',
    request: inSpace(/casting/, 0.3, spiral, (request) => ({
      ...request,
      friction: { coefficient: 0.25, direction: 'in' },
    })),
  },
  {
    name: 'casting, on top, rolled 10°',
    request: inSpace(/casting/, 0.3, onTop, (request) => ({ ...request, rollRad: Math.PI / 18 })),
  },
  {
    name: 'spinning, pulled 15° sideways',
    request: inSpace(/spinning/, 0.25, under, ({ load, ...request }) => ({
      ...request,
      load: { ...load, line: load.line && { ...load.line, pullSideRad: Math.PI / 12 } },
    })),
  },
  {
    name: 'spinning, soft in twist, rolled back 20°, tip pushed sideways',
    request: inSpace(/spinning/, 0.1, under, ({ load, ...request }) => ({
      ...request,
      rollRad: -Math.PI / 9,
      load: { ...load, tip: { xN: 0, yN: -0.3, zN: 0.6 } },
    })),
  },
  {
    name: 'fly, bowed to the side',
    request: inSpace(/./, 0.25, under, ({ rod, ...request }) => ({
      ...request,
      rod: {
        ...rod,
        restCurvature: [
          { fromTipM: 0, perM: 0.03, sidePerM: 0.06 },
          { fromTipM: rod.lengthM, perM: 0, sidePerM: -0.02 },
        ],
      },
    })),
  },
  {
    name: 'fly, rings round and round',
    request: inSpace(
      /./,
      0.4,
      (_, index) => 0.7 * index,
      (request) => ({ ...request, rollRad: 0.1 }),
    ),
  },
];
