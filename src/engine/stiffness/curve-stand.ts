/**
 * Traced curves as clamps whose readings stand square to the curve, and what their pictures got wrong smoothly.
 *
 * Pictures of one stand share camera, marks and wall: their drift is one field over the wall, which the rod samples at
 * other places in each of them. What is left to a picture of its own is its taps and its edges. Pictures held at the
 * same place of the blank, turned alike, share the clamp: where it stands and how it tilts; weights move the blank,
 * nothing else.
 */
import { pointsSeen } from './curve-bridges.ts';
import {
  type DriftMode,
  type DriftShape,
  type DriftSpread,
  driftDefaults,
  driftFrame,
  driftPattern,
  driftShapes,
  holdShifts,
  tapSigmaM,
} from './curve-drift.ts';
import { type CurvePlace, type CurvePlaces, curvePlaces, pointsLeft } from './curve-places.ts';
import type { PreparedClamp } from './prepared-request.ts';
import type { FitCurvePoint, FitCurveSetup, FitSetup } from './request.ts';
import { holdSeen, throughOneCamera } from './still-camera.ts';

interface StandCurves {
  /** By the set-up's index in the request. */
  clamps: ReadonlyMap<number, PreparedClamp>;
  /** Standard deviation of every drift's amplitude. */
  driftSigmas: number[];
}

/** The direction at the hold is read off the curve to about this; the level's own error comes on top. */
const directionSigmaRad = 0.05;
/** A hold set by eye or by a level; common practice, no source. */
const setSigmaRad = Math.PI / 180;
/**
 * Left to a picture beside the stand's field, m at the edge: by its own taps on the marks and the camera found from them;
 * where one camera stands for all pictures, by the trace. Judgement.
 */
const ownDriftSigmaM = { ownCamera: 0.0007, oneCamera: 0.0002 };
/** What the marks leave over at the edge is believed no smaller and no larger. */
const fieldSigmaRangeM = [0.001, 0.01] as const;

interface Picture {
  index: number;
  setup: FitCurveSetup;
  clampFromTipM: number;
  cut: CurvePlaces;
  /** Standard deviation of what is this picture's alone beside the stand's field, m at the edge. */
  ownSigmaM: number;
}

export function standCurves(setups: readonly FitSetup[], lengthM: number): StandCurves {
  const clamps = new Map<number, PreparedClamp>();
  const driftSigmas: number[] = [];
  for (const pictures of stands(setups, lengthM)) addStand(pictures, clamps, driftSigmas);
  return { clamps, driftSigmas };
}

function stands(setups: readonly FitSetup[], lengthM: number): Picture[][] {
  const groups = new Map<string, { index: number; setup: FitCurveSetup }[]>();
  setups.forEach((setup, index) => {
    if (setup.kind !== 'curve') return;
    const key = setup.shared === undefined ? `alone ${index}` : `shared ${setup.shared}`;
    groups.set(key, [...(groups.get(key) ?? []), { index, setup }]);
  });
  return [...groups.values()].map((members) => {
    const left = members.filter(({ setup }) => pointsLeft(setup.tests[0].points)).length;
    const mirrored = 2 * left > members.length;
    const held = members.map(({ index, setup }) => {
      const { clampFromTipM = lengthM } = setup;
      return { index, setup, clampFromTipM, heldAs: clampKey({ clampFromTipM, setup }) };
    });
    const together = throughOneCamera(held);
    const ownSigmaM = together ? ownDriftSigmaM.oneCamera : ownDriftSigmaM.ownCamera;
    return held.map(({ index, setup, clampFromTipM }, i) => {
      const points = together?.[i] ?? setup.tests[0].points;
      return { index, setup, clampFromTipM, cut: curvePlaces(points, clampFromTipM, mirrored), ownSigmaM };
    });
  });
}

function addStand(
  pictures: readonly Picture[],
  clamps: Map<number, PreparedClamp>,
  driftSigmas: number[],
): void {
  const frame = driftFrame(pictures.map(({ cut }) => cut));
  const spreads = pictures.map(spreadOf);
  const columnsFor = (shapes: readonly DriftShape[]) =>
    shapes.map(({ sigma, shift }) => ({ column: driftSigmas.push(sigma) - 1, shift }));
  const field = driftShapes(widest(spreads), frame);
  const shared = columnsFor(field);
  const holds = new Map<string, { place: CurvePlace; columns: ReturnType<typeof columnsFor> }>();
  pictures.forEach((picture, i) => {
    const key = clampKey(picture);
    const alike = pictures.filter((other) => clampKey(other) === key);
    const hold = holds.get(key) ?? {
      place: meanHold(alike),
      columns: columnsFor(holdShifts.map((shift) => ({ sigma: spreads[i].holdSigmaM, shift }))),
    };
    holds.set(key, hold);
    const own =
      pictures.length > 1
        ? columnsFor(
            [...holdShifts, ...field.map(({ shift }) => shift)].map((shift) => ({
              sigma: picture.ownSigmaM,
              shift,
            })),
          )
        : [];
    const drifts = [...hold.columns, ...shared, ...own].map(
      ({ column, shift }): DriftMode => ({ column, pattern: driftPattern(picture.cut, frame, shift) }),
    );
    const setup = { ...picture.setup, nominalAngleRad: alike[0].setup.nominalAngleRad };
    clamps.set(picture.index, {
      ...clampOf(
        picture,
        hold.place,
        drifts,
        own.map(({ column }) => column),
        { column: shared[0].column, halfM: frame.halfM },
      ),
      ...holdDirection(setup, hold.place, picture.cut.mirrored),
      ...(pictures.length > 1 ? { clampedAs: `${picture.setup.shared} ${key}` } : {}),
    });
  });
}

function clampKey({
  clampFromTipM,
  setup: { turnedRad = 0 },
}: Pick<Picture, 'clampFromTipM' | 'setup'>): string {
  return `${clampFromTipM} ${turnedRad}`;
}

function spreadOf({ setup: { tests, shared }, clampFromTipM, cut }: Picture): DriftSpread {
  const [curve] = tests;
  const ofMarks = shared === undefined ? undefined : fieldSigmaM(curve.points);
  return {
    driftSigmaM: curve.driftSigmaM ?? ofMarks ?? driftDefaults.driftSigmaM,
    levelSigmaRad: curve.levelSigmaRad ?? driftDefaults.levelSigmaRad,
    holdSigmaM: driftDefaults.holdSigmaM + 0.1 * Math.max(0, clampFromTipM - cut.tracedM),
    scaleSigma: driftDefaults.scaleSigma,
  };
}

/** One way, where the places carry their standard errors, which the marks give them both ways together. */
function fieldSigmaM(points: readonly FitCurvePoint[]): number | undefined {
  if (points.some(({ sigmaM }) => sigmaM === undefined)) return undefined;
  const seen = pointsSeen(points);
  const square = seen.reduce((sum, { sigmaM = 0 }) => sum + sigmaM ** 2, 0) / seen.length;
  const [least, most] = fieldSigmaRangeM;
  return Math.min(most, Math.max(least, Math.sqrt(square / 2)));
}

function widest(spreads: readonly DriftSpread[]): DriftSpread {
  const most = (key: keyof DriftSpread) => Math.max(...spreads.map((spread) => spread[key]));
  return {
    driftSigmaM: most('driftSigmaM'),
    levelSigmaRad: most('levelSigmaRad'),
    holdSigmaM: most('holdSigmaM'),
    scaleSigma: most('scaleSigma'),
  };
}

function meanHold(pictures: readonly Picture[]): CurvePlace {
  const mean = (key: keyof CurvePlace) =>
    pictures.reduce((sum, { cut }) => sum + cut.hold[key], 0) / pictures.length;
  return {
    fromTipM: mean('fromTipM'),
    xM: mean('xM'),
    yM: mean('yM'),
    directionRad: mean('directionRad'),
  };
}

function clampOf(
  { setup, clampFromTipM, cut }: Picture,
  hold: CurvePlace,
  drifts: readonly DriftMode[],
  ownColumns: readonly number[],
  level: { column: number; halfM: number },
): Omit<PreparedClamp, 'nominalAngleRad'> {
  const readings = cut.places.map(({ fromTipM, xM, yM, directionRad, bridgedM }) => ({
    fromTipM,
    dropM: (xM - hold.xM) * Math.sin(directionRad) - (yM - hold.yM) * Math.cos(directionRad),
    squareToRad: directionRad,
    bridgedM,
  }));
  const ownSigma = setup.shared === undefined ? driftDefaults.localSigmaM : driftDefaults.standLocalSigmaM;
  const { hung, masses, line, localSigmaM = ownSigma } = setup.tests[0];
  return {
    clampFromTipM,
    turnedRad: setup.turnedRad,
    tests: [{ hung, masses, line, readings, sigmaM: localSigmaM }],
    curve: {
      excessM: cut.tracedM - clampFromTipM,
      excessSigmaM: endsAtHold(cut.tracedM, clampFromTipM)
        ? Math.hypot(tapSigmaM, setup.clampSigmaM ?? 0)
        : Number.POSITIVE_INFINITY,
      drifts,
      ownColumns,
      holdSeen: holdSeen(setup.tests[0].points),
      holdOff: { xM: cut.hold.xM - hold.xM, yM: cut.hold.yM - hold.yM },
      level,
      grainUnstated: setup.shared !== undefined && setup.tests[0].localSigmaM === undefined,
    },
  };
}

/** Else the curve begins behind the hold or in front of it, and its length says nothing. */
function endsAtHold(tracedM: number, clampFromTipM: number): boolean {
  return Math.abs(tracedM - clampFromTipM) < 0.025 * clampFromTipM;
}

function holdDirection(
  { nominalAngleRad, tiltSigmaRad }: FitCurveSetup,
  hold: CurvePlace,
  mirrored: boolean,
): Pick<PreparedClamp, 'nominalAngleRad' | 'tiltSigmaRad'> {
  if (nominalAngleRad === undefined) {
    return { nominalAngleRad: hold.directionRad, tiltSigmaRad: directionSigmaRad };
  }
  const turned = mirrored && Math.cos(nominalAngleRad) < 0 ? Math.PI - nominalAngleRad : nominalAngleRad;
  return { nominalAngleRad: turned, tiltSigmaRad: tiltSigmaRad ?? setSigmaRad };
}
