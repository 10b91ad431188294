/**
 * The invented two-piece with two photographed load tests: the bare blank, and the taped-up rod with guide 3 off its
 * mark. The curves are bends of the blank that its own bench tells of, seen through the simulated camera.
 */

import { assembleBlank } from '../../src/engine/bench/assemble.ts';
import { diameterProfile } from '../../src/engine/bench/diameter-profile.ts';
import { freeRod } from '../../src/engine/bench/free-rod.ts';
import { bend } from '../../src/engine/bend/bend.ts';
import { layoutQuestion } from '../../src/engine/flow/layout-question.ts';
import { fit } from '../../src/engine/stiffness/fit.ts';
import { benchFit } from '../../src/engine/stiffness/from-bench.ts';
import { applyOperations, emptyDocument, makeOperations } from '../../src/record/document.ts';
import { curveText, ringsText } from '../../src/record/load-curve.ts';
import type { Change } from '../../src/record/operation.ts';
import { readBuild } from '../../src/record/read-build.ts';
import { readLoadTests } from '../../src/record/read-load-tests.ts';
import type { FieldValue } from '../../src/record/schema.ts';
import { inWords } from '../support/in-words.ts';
import type { Curve } from '../support/simulated-bench.ts';
import { commonPhoto, type PhotoErrors, photographer } from '../support/simulated-photo.ts';
import { evenly, topShare } from '../support/taped-rod.ts';
import { twoPieceChanges } from './invented-build.ts';

export const strayGuide = 3;

export function tracedChanges(more: Change[] = []): Change[] {
  const plain = [...twoPieceChanges(), ...more];
  const rod = benchRod(plain);
  const pictures = [
    ...testRow('bare1', 0, 'bare', 0.05, 1),
    ...testRow('taped1', 1, 'taped', 0.12, 2),
    ...curveRow('bare1', photographed(rod, 'bare', 0.05)),
    ...curveRow('taped1', photographed(rod, 'taped', 0.12)),
    ...closeUpRows('taped1', rod, 0.12),
  ];
  const all = [...plain, ...pictures];
  return [...all, ...madeFrom(all)];
}

function stateOf(changes: readonly Change[]) {
  const by = { device: 'd', gesture: 'g', at: '2026-03-01T09:00:00Z' };
  const empty = emptyDocument('b', 'build');
  return applyOperations(empty, makeOperations(empty, changes, by));
}

type BenchRod = ReturnType<typeof benchRod>;

function benchRod(changes: readonly Change[]) {
  const { bench, choices } = readBuild(stateOf(changes));
  if (!bench || !choices) throw new Error('the invented build cannot be read');
  const tables = fit(benchFit(bench).request);
  if (tables.status === 'refused') throw new Error(inWords(tables.findings[0]));
  const blank = assembleBlank(bench.sections);
  const diameters = diameterProfile(bench.sections, blank);
  const question = layoutQuestion({ bench, choices, blank, diameters, tables });
  return { question, rod: freeRod(tables, question.rod.lengthM) };
}

interface Photographed {
  points: { xM: number; yM: number }[];
  rings: { guide: string | undefined; xM: number; yM: number }[];
}

interface Framed {
  seed: number;
  errors: PhotoErrors;
  frame(curve: Curve): Curve;
}

function photographed(
  { question, rod }: BenchRod,
  kind: 'bare' | 'taped',
  kg: number,
  framed?: Framed,
): Photographed {
  const { guides, tipTop, reel, buttAngleRad } = question.request;
  const marks = question.ownFromTipM ?? [];
  const stands = marks.map((at, i) => (i === strayGuide - 1 ? at + 0.06 : at));
  const heights = [tipTop.ringHeightM, ...guides.ringHeightsM];
  const taped = kind === 'taped';
  const bent = bend({
    rod,
    buttAngleRad,
    guides: taped
      ? [0, ...stands].map((fromTipM, i) => ({ fromTipM, ringHeightM: heights[i], side: guides.side }))
      : [],
    reel,
    load: taped
      ? { line: { tensionN: kg * 9.80665, pullAngleRad: -Math.PI / 2 } }
      : { tip: { xN: 0, yN: -kg * 9.80665 } },
  });
  const curve = evenly(bent.points);
  const { trace, see } = framed
    ? photographer(framed.frame(curve), framed.seed, framed.errors)
    : photographer(curve, taped ? 12 : 11);
  const rings = taped
    ? bent.rings.map((ring, i) => ({ guide: i === 0 ? undefined : `g${i - 1}`, ...see(ring) }))
    : [];
  return { points: trace(), rings };
}

function testRow(id: string, order: number, rod: string, kg: number, day: number): Change[] {
  return [
    ...row('loadTests', id, {
      order,
      madeAt: `2026-03-0${day}T09:00:00Z`,
      hung: { si: kg, text: `${1000 * kg} g` },
      rod,
    }),
    ...row('loadPhotos', `p-${id}`, { order: 0, test: id, part: 'whole', widthPx: 4000, heightPx: 3000 }),
  ];
}

/** The top third by itself, from nearer, with the rings in it. */
function closeUpRows(test: string, rod: BenchRod, kg: number): Change[] {
  const nearer = { ...commonPhoto, lensM: 0.001, localM: commonPhoto.localM / 3 };
  const frame = (curve: Curve) => topShare(curve, 1 / 3);
  const { points, rings } = photographed(rod, 'taped', kg, { seed: 13, errors: nearer, frame });
  const [low] = points;
  const inIt = rings.filter(({ xM, yM }) => Math.hypot(xM - low.xM, yM - low.yM) < 0.6 && xM > low.xM);
  return [
    ...row('loadPhotos', `c-${test}`, { order: 1, test, part: 'close-up', widthPx: 4000, heightPx: 3000 }),
    ...curveRow(test, { points, rings: inIt }, `c-${test}`),
  ];
}

function curveRow(test: string, { points, rings }: Photographed, photo = `p-${test}`): Change[] {
  const onPicture = { sigmaM: 0.003, px: [0, 0] as [number, number] };
  return row('traces', photo, {
    photo,
    madeAt: '2026-03-03T09:00:00Z',
    curve: curveText(points.map((point) => ({ ...point, ...onPicture }))),
    ...(rings.length > 0 ? { rings: ringsText(rings.map((ring) => ({ ...ring, ...onPicture }))) } : {}),
    marksRms: { si: 0.001, text: '1 mm' },
  });
}

/** So that the curves count as made from the pictures as they are. */
function madeFrom(changes: readonly Change[]): Change[] {
  return readLoadTests(stateOf(changes)).flatMap(({ photos }) =>
    photos.flatMap((photo) => row('traces', photo.id, { madeFrom: photo.madeFrom })),
  );
}

function row(collection: string, id: string, fields: Record<string, FieldValue>): Change[] {
  return Object.entries(fields).map(([field, value]) => ({ path: [collection, id, field], value }));
}
