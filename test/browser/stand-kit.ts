/** Three painted pictures of an invented blank from one stand, its build, and the wall they were taken before. */
import jpeg from 'jpeg-js';
import type { Page } from 'playwright-core';
import { fit } from '../../src/engine/stiffness/fit.ts';
import { type BenchFit, benchFit } from '../../src/engine/stiffness/from-bench.ts';
import type { FitSolved } from '../../src/engine/stiffness/request.ts';
import type { DocumentAnswer } from '../../src/record/api.ts';
import { emptyDocument, makeOperations } from '../../src/record/document.ts';
import type { Change, DocumentState } from '../../src/record/operation.ts';
import { readBuild } from '../../src/record/read-build.ts';
import type { FieldValue } from '../../src/record/schema.ts';
import type { BentBlank } from '../render/bent-blank.ts';
import type { Camera } from '../render/camera.ts';
import type { Canvas, Place } from '../render/canvas.ts';
import type { Picture } from '../render/develop.ts';
import { paintWallMark } from '../render/mark-scene.ts';
import { standScene } from '../render/stand-photo.ts';
import { judgeStiffness } from '../support/judge-stiffness.ts';
import { type Curve, randomBlank, type TrueBlank, trueCurve } from '../support/simulated-bench.ts';
import { weightFor } from '../support/stand-blank.ts';
import type { Bench } from './open-bench.ts';
import { tapPixel } from './photo-kit.ts';

export interface PaintedStand {
  blank: TrueBlank;
  /** Tip to the clamp; the rest of the blank is held. */
  clampFromTipM: number;
  hungKg: readonly [number, number, number];
  pictures: { picture: Picture; butt: [number, number]; tip: [number, number]; axis: Place[] }[];
  /** Where the printed marks 1 to 8 are, from the first. */
  marks: { number: number; atM: [number, number]; px: [number, number] }[];
}

const heldM = 0.15;

export function paintedStand({ seed, widthPx }: { seed: number; widthPx: number }): PaintedStand {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0, ferrules: 0 });
  const clampFromTipM = blank.lengthM - heldM;
  const third = Math.round(1000 * weightFor(blank, 1 / 3)) / 1000;
  const hungKg = [0, third, 2 * third] as const;
  const bent = hungKg.map((massKg) =>
    bentOf(
      blank,
      trueCurve(blank, {
        buttAngleRad: 0,
        clampFromTipM,
        turnedRad: 0,
        hung: massKg > 0 ? [{ fromTipM: 0, massKg }] : [],
      }),
    ),
  );
  const scene = standScene(bent, { seed: seed + 40, widthPx, marks: 8, mark: paintPrinted });
  const pixel = (place: Place): [number, number] => {
    const { x, y } = scene.camera.project(place);
    return [x, y];
  };
  const [first] = scene.marks;
  return {
    blank,
    clampFromTipM,
    hungKg,
    pictures: bent.map((one, i) => ({
      picture: scene.paint(one, i, hungKg[i] > 0),
      butt: pixel(one.axis[0]),
      tip: pixel(one.axis[one.axis.length - 1]),
      axis: one.axis,
    })),
    marks: scene.marks.map((mark, i) => ({
      number: i + 1,
      atM: [mark.x - first.x, mark.y - first.y],
      px: pixel(mark),
    })),
  };
}

/** Of a printed mark's ring, as src/sheets prints it. */
const printedRadiusM = 0.042;

function paintPrinted(canvas: Canvas, camera: Camera, at: Place, number: number): void {
  paintWallMark(canvas, number, ({ x, y }) =>
    camera.project({ x: at.x + printedRadiusM * x, y: at.y + printedRadiusM * y }),
  );
}

export function jpegOf({ width, height, rgb }: Picture, quality = 90): Buffer {
  const data = new Uint8Array(width * height * 4).fill(255);
  for (let i = 0; i < width * height; i++) data.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  return jpeg.encode({ width, height, data }, quality).data;
}

/** One section, measured as a builder would before anything is hung. */
export function buildOfStand({ blank }: PaintedStand): Change[] {
  const { lengthM } = blank;
  let massKg = 0;
  for (let k = 0; k < 400; k++) massKg += (blank.kgPerM(((k + 0.5) / 400) * lengthM) * lengthM) / 400;
  return [
    ...row('about', '-', { title: 'Invented, photographed', rodKind: 'fly' }),
    ...row('blank', '-', { material: 'carbon' }),
    ...row('sections', 's', { order: 0, name: 'blank', length: metres(lengthM), mass: grams(massKg) }),
    ...[0, 1, 2, 3, 4, 5].flatMap((i) =>
      row('diameters', `d${i}`, {
        section: 's',
        fromOwnTip: metres((i / 5) * lengthM),
        outside: metres(blank.outsideM((i / 5) * lengthM)),
      }),
    ),
  ];
}

/** The shop's wall, its marks told `offM` wrong each way in turn. */
export function wallOfStand({ marks }: Pick<PaintedStand, 'marks'>, offM = 0): Change[] {
  return [
    ...row('walls', 'w', { order: 0, name: 'bench wall' }),
    ...marks.flatMap(({ number, atM: [x, y] }, i) =>
      row('wallMarks', `w${number}`, {
        order: i,
        wall: 'w',
        number,
        atX: metres(x + (i % 2 ? offM : -offM)),
        atY: metres(y + (i % 3 ? offM : -offM)),
      }),
    ),
  ];
}

/** A stand as Blank lays it out, held where the pictures were. */
export function standRows({ clampFromTipM }: PaintedStand): Change[] {
  const madeAt = '2026-03-01T09:00:00Z';
  return [
    ...row('stands', 'st', { order: 0, madeAt, heldFromTip: metres(clampFromTipM) }),
    ...[0, 1, 2].flatMap((order) =>
      row('loadTests', `lt${order}`, {
        order,
        madeAt,
        rod: 'bare',
        stand: 'st',
        ...(order === 0 ? { hung: grams(0) } : {}),
      }),
    ),
  ];
}

/** Into the shop's own document. */
export async function keepWall({ server: { address } }: Bench, changes: readonly Change[]): Promise<void> {
  const { id } = (await (await fetch(`${address}/api/shop`)).json()) as { id: string };
  const by = { device: 'kit-1', gesture: 'wall', at: '2026-03-01T08:00:00Z' };
  const kept = await fetch(`${address}/api/documents/${id}/operations`, {
    method: 'POST',
    headers: { origin: address, 'content-type': 'application/json' },
    body: JSON.stringify({ operations: makeOperations(emptyDocument(id, 'shop'), changes, by) }),
  });
  if (!kept.ok) throw new Error(`the wall was refused: ${await kept.text()}`);
}

/** A build as the server keeps it. */
export async function stateOf({ server: { address } }: Bench, id: string): Promise<DocumentState> {
  const answer = (await (await fetch(`${address}/api/documents/${id}`)).json()) as DocumentAnswer;
  return { id, kind: 'build', cells: new Map(answer.cells), clock: answer.clock };
}

/** What the record asks the fit, and how far the answer is from the invented blank. */
export function solvedOf(
  state: DocumentState,
  blank: TrueBlank,
): { fit: BenchFit; answer: FitSolved; lnRms: number; held: number } {
  const { bench } = readBuild(state);
  if (!bench) throw new Error('the build cannot be read');
  const asked = benchFit(bench);
  const answer = fit(asked.request);
  if (answer.status === 'refused') throw new Error(answer.findings[0].code);
  const { stiffnessRms, held } = judgeStiffness(blank, answer, 0.1);
  return { fit: asked, answer, lnRms: stiffnessRms, held };
}

interface Ends {
  butt: [number, number];
  tip: [number, number];
}

/** Butt, then tip. */
export async function tapEnds(page: Page, { butt, tip }: Ends): Promise<void> {
  await tapPixel(page, butt);
  await page.getByRole('button', { name: /^Butt end, at/ }).waitFor();
  await tapPixel(page, tip);
}

/** Found by themselves once the clamp has been seen, else tapped; which of the two. */
export async function findOrTapEnds(page: Page, ends: Ends): Promise<'found' | 'tapped'> {
  const said = page.getByText(/Butt and tip were found|Tap butt and tip/);
  await said.waitFor();
  if (/were found/.test((await said.textContent()) ?? '')) return 'found';
  await tapEnds(page, ends);
  return 'tapped';
}

function bentOf(blank: TrueBlank, { xM, yM, fromTipM }: Curve): BentBlank {
  const last = xM.length - 1;
  return {
    axis: Array.from(xM, (x, i) => ({ x, y: yM[i] })),
    radiusM: Array.from(fromTipM, (s) => 0.5 * blank.outsideM(s)),
    angleRad: Array.from(xM, (_, i) => {
      const j = Math.min(last - 1, i);
      return Math.atan2(yM[j + 1] - yM[j], xM[j + 1] - xM[j]);
    }),
    lengthM: fromTipM[0],
  };
}

const metres = (si: number) => ({ si, text: `${Number((1000 * si).toFixed(2))} mm` });
const grams = (si: number) => ({ si, text: `${Number((1000 * si).toFixed(2))} g` });

export function row(collection: string, id: string, fields: Record<string, FieldValue>): Change[] {
  return Object.entries(fields).map(([field, value]) => ({ path: [collection, id, field], value }));
}
