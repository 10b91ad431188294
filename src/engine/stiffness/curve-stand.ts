/**
 * Traced curves as clamps whose readings stand square to the curve, and what their pictures got wrong smoothly.
 *
 * Pictures of one stand share camera, marks and wall: their drift is one field over the wall, which the rod samples at
 * other places in each of them. What is left to a picture of its own is its taps and its edges. Pictures held at the
 * same place of the blank, turned alike, share the clamp: where it stands and how it tilts; weights move the blank,
 * nothing else.
 */
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
import type { PreparedClamp, PreparedCurve } from './prepared-request.ts';
import type { FitCurvePoint, FitCurveSetup, FitSetup } from './request.ts';

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
/** What a picture's own taps on the marks and its camera fit leave over beside the stand's field, m at the edge. */
const ownDriftSigmaM = 0.0007;

interface Picture {
  index: number;
  setup: FitCurveSetup;
  clampFromTipM: number;
  cut: CurvePlaces;
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
    return members.map(({ index, setup }) => {
      const { clampFromTipM = lengthM, tests } = setup;
      return { index, setup, clampFromTipM, cut: curvePlaces(tests[0].points, clampFromTipM, mirrored) };
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
              sigma: ownDriftSigmaM,
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

function clampKey({ clampFromTipM, setup: { turnedRad = 0 } }: Picture): string {
  return `${clampFromTipM} ${turnedRad}`;
}

function spreadOf({ setup: { tests }, clampFromTipM, cut }: Picture): DriftSpread {
  const [curve] = tests;
  return {
    driftSigmaM: curve.driftSigmaM ?? driftDefaults.driftSigmaM,
    levelSigmaRad: curve.levelSigmaRad ?? driftDefaults.levelSigmaRad,
    holdSigmaM: driftDefaults.holdSigmaM + 0.1 * Math.max(0, clampFromTipM - cut.tracedM),
    scaleSigma: driftDefaults.scaleSigma,
  };
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
  const readings = cut.places.map(({ fromTipM, xM, yM, directionRad }) => ({
    fromTipM,
    dropM: (xM - hold.xM) * Math.sin(directionRad) - (yM - hold.yM) * Math.cos(directionRad),
    squareToRad: directionRad,
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

function holdSeen(points: readonly FitCurvePoint[]): PreparedCurve['holdSeen'] {
  const [first, next] = [points[0], points[Math.min(points.length - 1, 10)]];
  if (!first.px || !next.px) return undefined;
  const seenPx = Math.hypot(next.px[0] - first.px[0], next.px[1] - first.px[1]);
  const mPerPx = Math.hypot(next.xM - first.xM, next.yM - first.yM) / Math.max(1, seenPx);
  return { x: first.px[0], y: first.px[1], mPerPx };
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
