import { strainLevels } from '../engine/bench/strain.ts';
import type { LayoutLimits } from '../engine/layout/criteria.ts';
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import { worstValues } from '../engine/layout/worst.ts';
import { finishOfWork } from './finish-part.ts';
import { lineData } from './line-words.ts';
import type { OpenBuild } from './open-build.ts';
import { powerOfWork } from './power-part.ts';
import { realLineOfWork } from './real-line-words.ts';
import { reelLineOfWork } from './reel-line-part.ts';
import { roundOfWork } from './round-part.ts';
import { marksWithSureness, sureness } from './sureness-of-work.ts';
import { turnedData } from './turned-part.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** The report as data (`report --json`), SI units; the text report shows the same numbers. */
export function reportData(worked: WorkedBuild, build: OpenBuild) {
  const { fileName, assumed, findings } = build;
  const { bench, choices, work } = worked;
  const { blank, fitted, tables, question, best, readings } = work;
  const sure = sureness(worked);
  const marks = sure ? marksWithSureness(worked, sure.marks) : work.marks;
  return {
    build: { title: choices.title, demo: choices.demo, file: fileName },
    blank: {
      lengthM: blank.lengthM,
      freeLengthM: question.rod.lengthM,
      sections: blank.sections,
      joints: blank.joints,
    },
    stiffness: {
      from: fitted ? ('readings' as const) : ('diameters' as const),
      rows: tables.stiffness,
      massPerLength: tables.massPerLength,
      restCurvature: tables.restCurvature ?? [],
      ...(fitted
        ? { status: fitted.status, tiltRad: fitted.tiltRad, residualRmsM: fitted.residualRmsM }
        : {}),
    },
    turned: turnedData(build),
    thirdLoadKg: work.thirdLoadKg,
    lines: lineData(worked),
    /** Frequencies and the tip load for a third, with what the readings leave open. */
    power: powerOfWork(worked, build),
    swingsCounted: build.swings,
    ladderKg: question.loads.kg,
    loadBy: choices.loadBy,
    limits: best.limits,
    strain: strainLevels(bench),
    layout: {
      status: best.status,
      proposedFromTipM: best.fromTipM,
      slackM: best.slackM,
      verdict: best.verdict,
      startFromTipM: question.startFromTipM,
      ownFromTipM: question.ownFromTipM,
      /** What strain, power, finish and the line are read at. */
      standing: work.standing,
      scores: {
        start: readings.start && score(readings.start, best.limits),
        proposed: score(readings.best, best.limits),
        own: readings.own && score(readings.own, best.limits),
        marked: readings.marked && score(readings.marked, best.limits),
      },
    },
    /** Left out where no drop was read: then nothing is known of it. */
    sureness: sure,
    /** Bare blank against finished rod, the wraps' stiffness as a range. */
    finish: finishOfWork(worked),
    friction: choices.friction,
    realLine: realLineOfWork(worked),
    /** Left out for a fly rod, and until the reel was measured. */
    reelLine: reelLineOfWork(worked)?.answer,
    /** Clearance, turns and torque of guides round the blank; what each of two hands gives. */
    ...roundOfWork(worked),
    marks: { are: work.marksAre, tapeStep: marks.tapeStep, sections: marks.sections },
    assumed,
    findings: [...findings, ...work.findings],
  };
}

/** The largest of each reading over all loads, and the largest surface strain by load. */
function score({ worst, worstAt, worstOf, loads }: RuledReading, limits: LayoutLimits) {
  return {
    worst,
    worstAt,
    ...worstValues(worstOf, limits),
    strainPercent: loads.map(({ strain }) => strain.percent),
  };
}
