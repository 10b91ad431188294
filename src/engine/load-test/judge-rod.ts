/**
 * A taped-up rod judged from one photograph: what the line does at every guide beside what was predicted and the
 * builder's limits, the stiffness told anew by the photograph, and the few guides worth moving.
 *
 * The photograph enters the fit as a curve with the line through its rings (stiffness/curve-places.ts), rings where
 * they were seen. `predicted` is the bend of the blank as the bench alone knew it, `updated` of the blank as both
 * know it, each under the photograph's load with the guides where they stand.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import type { Rod } from '../bend/rod.ts';
import { ringLimitRad } from '../layout/criteria.ts';
import { type LoadReading, makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderLoad } from '../layout/ladder-request.ts';
import { commonSigmaM } from '../stiffness/bench-model.ts';
import { curvePlaces, type PlanePoint } from '../stiffness/curve-places.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import { samplePosterior } from '../stiffness/posterior.ts';
import type { FitAnswer, FitCurve, FitSetup, FitSolved } from '../stiffness/request.ts';
import { findMoves } from './find-moves.ts';
import { loadTestReason } from './join-kinds.ts';
import { lengthDoubt } from './length-doubt.ts';
import type { JudgeAnswer, JudgedRing, JudgeRequest } from './rod-judgement.ts';
import { type SeenRod, seenRod } from './seen-rod.ts';

const judgeDefaults = { blanks: 30, seed: 7 };

export function judgeRod(request: JudgeRequest, options = judgeDefaults): JudgeAnswer {
  const seen = seenOf(request);
  const stands = request.marksFromTipM.map((mark, i) => placeOfGuide(mark, seen, i));
  const before = request.fit.setups.length > 0 ? fitStiffness(request.fit).answer : undefined;
  const curve = curveOf(request, stands);
  const both = fitStiffness({ ...request.fit, setups: [...request.fit.setups, curve] });
  const contradicted = before !== undefined && newFindings(before, both.answer) > 0;
  const { answer, posterior } = contradicted
    ? fitStiffness({ ...request.fit, setups: [...request.fit.setups.map(readCoarsely), curve] })
    : both;
  if (answer.status === 'refused' || !posterior) {
    const reason =
      answer.status === 'refused' ? loadTestReason('load-test/curve-refused', {}) : answer.reason;
    return { status: 'not-judged', reason, findings: answer.findings };
  }
  if (answer.status === 'not-converged') {
    return { status: 'not-judged', reason: answer.reason, findings: answer.findings };
  }
  const known = before && before.status === 'converged' ? before : undefined;
  const buttAngleRad = heldAt(request, answer);
  const updated = readUnder(request, answer, stands, buttAngleRad);
  const predicted = known && readUnder(request, known, stands, buttAngleRad);
  if (updated.status === 'not-converged') {
    return { status: 'not-judged', reason: loadTestReason('load-test/no-bend', {}), findings: [] };
  }
  const { points, driftSigmaM } = request.photo;
  const withheld = lengthDoubt(points, request.layout.rod.lengthM, driftSigmaM);
  const moves = () =>
    findMoves({
      layout: layoutOn(request, answer),
      fromTipM: stands,
      marksFromTipM: request.marksFromTipM,
      stationSigmaM: seen.rings.slice(1).map(({ fromTipM }) => fromTipM.plusMinus / 1.96),
      blanks: samplePosterior({ posterior }, options.blanks, options.seed).map(wholeBlank),
    });
  return {
    status: 'judged',
    rings: ringsOf(request, seen, stands, predicted, updated),
    tipOffM: predicted && tipOff(request, seen, predicted),
    updated: answer,
    contradicted,
    findings: both.answer.findings,
    moves: withheld ? undefined : moves(),
    withheld,
  };
}

/** A bench that the photograph contradicts still says roughly what the blank is like. */
function readCoarsely(setup: FitSetup): FitSetup {
  const coarser = 4;
  if (setup.kind === 'curve') return setup;
  const wide = ({ sigmaM = commonSigmaM }: { sigmaM?: number }) => Math.min(0.5, coarser * sigmaM);
  return setup.kind === 'span'
    ? { ...setup, tests: setup.tests.map((test) => ({ ...test, sigmaM: wide(test) })) }
    : { ...setup, tests: setup.tests.map((test) => ({ ...test, sigmaM: wide(test) })) };
}

/** What only turned odd when the photograph came in. */
function newFindings(before: FitAnswer, both: FitAnswer): number {
  return both.findings.filter(({ path }) => before.findings.every((known) => known.path !== path)).length;
}

/** The mark, unless the photograph plainly shows the ring elsewhere. */
function placeOfGuide(mark: number, { rings }: SeenRod, guide: number): number {
  const { tapped, fromTipM } = rings[guide + 1];
  return tapped && Math.abs(fromTipM.value - mark) > 1.5 * fromTipM.plusMinus ? fromTipM.value : mark;
}

function seenOf({ layout, marksFromTipM, photo }: JudgeRequest): SeenRod {
  const heights = [layout.tipTop.ringHeightM, ...layout.guides.ringHeightsM];
  return seenRod({
    points: photo.points,
    clampFromTipM: layout.rod.lengthM,
    rings: [0, ...marksFromTipM].map((fromTipM, i) => ({
      fromTipM,
      ringHeightM: heights[i],
      seen: photo.ringsSeen[i],
    })),
    side: layout.guides.side,
    pullAngleRad: photo.load.pullAngleRad,
    localSigmaM: photo.localSigmaM,
  });
}

function curveOf({ layout, photo }: JudgeRequest, stands: readonly number[]) {
  const { guides, tipTop, reel } = layout;
  const { load, points, localSigmaM, driftSigmaM, levelSigmaRad } = photo;
  const masses = [
    { fromTipM: 0, massKg: tipTop.massKg ?? 0 },
    ...stands.map((fromTipM, i) => ({ fromTipM, massKg: guides.massesKg?.[i] ?? 0 })),
  ];
  const heights = [tipTop.ringHeightM, ...guides.ringHeightsM];
  const curve: FitCurve = {
    hung: tiedMass(load),
    masses: masses.filter(({ massKg }) => massKg > 0),
    line: {
      tensionN: load.tensionN,
      pullAngleRad: load.pullAngleRad,
      rings: [0, ...stands].map((fromTipM, i) => ({ fromTipM, ringHeightM: heights[i] })),
      side: guides.side,
      reel,
    },
    points,
    localSigmaM,
    driftSigmaM,
    levelSigmaRad,
  };
  return {
    kind: 'curve' as const,
    clampFromTipM: layout.rod.lengthM,
    ...(photo.buttAngleRad === undefined ? {} : { nominalAngleRad: photo.buttAngleRad }),
    tests: [curve] as const,
  };
}

/** A weight tied to the tip hangs straight down, whatever its row says. */
function tiedMass({ tiedN = 0 }: LadderLoad) {
  return tiedN > 0 ? [{ fromTipM: 0, massKg: tiedN / 9.80665 }] : [];
}

function layoutOn({ layout }: JudgeRequest, tables: BlankTables): JudgeRequest['layout'] {
  return { ...layout, rod: freeRod(tables, layout.rod.lengthM) };
}

/** The butt's angle in the picture, as the fit found it. */
function heldAt({ photo, layout }: JudgeRequest, { tiltRad }: FitSolved): number {
  const seen = () => curvePlaces(photo.points, layout.rod.lengthM).hold.directionRad;
  return (photo.buttAngleRad ?? seen()) + tiltRad[tiltRad.length - 1];
}

function readUnder(
  request: JudgeRequest,
  tables: BlankTables,
  stands: readonly number[],
  buttAngleRad: number,
): LoadReading {
  const ladder = makeLadder({ ...layoutOn(request, tables), buttAngleRad, ladder: [request.photo.load] });
  return readLadder(ladder, stands).loads[0];
}

function ringsOf(
  { layout, marksFromTipM }: JudgeRequest,
  seen: SeenRod,
  stands: readonly number[],
  predicted: LoadReading | undefined,
  updated: LoadReading,
): JudgedRing[] {
  const last = stands.length;
  return seen.rings.map((ring, i) => ({
    tapped: ring.tapped,
    markFromTipM: i === 0 ? 0 : marksFromTipM[i - 1],
    fromTipM: ring.fromTipM,
    lineAngle: ring.lineAngleRad && {
      seen: ring.lineAngleRad,
      predicted: predicted?.rings[i].lineAngleRad,
      updated: updated.rings[i].lineAngleRad,
      limit: ringLimitRad(layout.limits, i, last),
    },
    gap: seen.gapM[i] && {
      seen: seen.gapM[i],
      predicted: predicted?.spans[i].gapM,
      updated: updated.spans[i].gapM,
      limit: layout.limits.gapM,
    },
  }));
}

/** Both from the hold: the photograph's origin is its own. */
function tipOff({ photo }: JudgeRequest, { tip }: SeenRod, { xM, yM }: LoadReading): PlanePoint {
  const [hold] = photo.points;
  const mirrored = photo.points[photo.points.length - 1].xM < hold.xM;
  return { xM: tip.xM - (mirrored ? -hold.xM : hold.xM) - xM[0], yM: tip.yM - hold.yM - yM[0] };
}

function wholeBlank({ stiffness, massPerLength = [], restCurvature }: Rod): BlankTables {
  return { stiffness, massPerLength, restCurvature };
}
