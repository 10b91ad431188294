/**
 * Runs every check against the outside and writes docs/verification.md with its figures. Run from the project's
 * root: `npm run verify`; `-- --light` leaves out the programs that must be installed besides.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { blankBends, blankStrains, blankThirds } from './cases/blanks.ts';
import { passes } from './cases/check.ts';
import { meshConvergence, populationAccuracy, ringConvergence } from './cases/convergence.ts';
import { elasticaDead, elasticaFollower, elasticaMoment, elasticaPrinted } from './cases/elastica.ts';
import { frequencyBlanks, frequencyPrinted, frequencyTapered, frequencyUniform } from './cases/frequency.ts';
import { capstan } from './cases/friction.ts';
import { greenhill, heavyRods } from './cases/heavy.ts';
import { lineThroughRings } from './cases/line.ts';
import { bendOf45Degrees, bowPushedOutOfPlane, lateralBuckling, twistInstabilities } from './cases/space.ts';
import { taperLarge, taperSmall } from './cases/taper.ts';
import { asShipped } from './cases/unit-rod.ts';
import { unitsAsTyped } from './cases/units.ts';
import { calculixSpaceGroup } from './live/calculix-space.ts';
import { calculixGroup, type LiveGroup, scipyGroup } from './live/groups.ts';
import { leavesItsPlaneGroup, scipySpaceGroup } from './live/space.ts';
import { errorFigure, shapesFigure } from './report/figures.ts';
import { reportText } from './report/report-text.ts';

/** Every heading of the report; live programs only where `live` says so. */
export function allGroups(live: boolean): LiveGroup[] {
  const withElements = [
    elasticaDead,
    elasticaPrinted,
    elasticaFollower,
    elasticaMoment,
    heavyRods,
    greenhill,
    taperLarge,
    taperSmall,
    lineThroughRings,
    blankBends,
    blankThirds,
    blankStrains,
  ];
  const notAsked = 'left out of this run (--light)';
  return [
    ...withElements.map((group) => group(asShipped)),
    ringConvergence(),
    meshConvergence(),
    populationAccuracy(),
    capstan(),
    bendOf45Degrees(),
    bowPushedOutOfPlane(),
    lateralBuckling(),
    twistInstabilities(),
    frequencyUniform(),
    frequencyTapered(),
    frequencyPrinted(),
    frequencyBlanks(),
    unitsAsTyped(),
    live ? scipyGroup() : { title: 'Six realistic rods against a boundary-value solve', notRun: notAsked },
    live
      ? calculixGroup()
      : { title: 'Six realistic rods against a finite-element program', notRun: notAsked },
    live ? scipySpaceGroup() : { title: 'Rods in space against a boundary-value solve', notRun: notAsked },
    live
      ? calculixSpaceGroup()
      : { title: 'Rods out of their plane against a finite-element program', notRun: notAsked },
    live ? leavesItsPlaneGroup() : { title: 'A bow pushed straight leaves its plane', notRun: notAsked },
  ];
}

export interface Verified {
  failed: number;
  notRun: string[];
}

export function verify({ live, folder }: { live: boolean; folder: string }): Verified {
  return writeReport(allGroups(live), folder);
}

/** Writes the page and its figures, and tells how many rows did not pass. */
export function writeReport(groups: readonly LiveGroup[], folder: string): Verified {
  mkdirSync(`${folder}/figures`, { recursive: true });
  writeFileSync(`${folder}/figures/bend-shapes.svg`, shapesFigure());
  writeFileSync(`${folder}/figures/verification-errors.svg`, errorFigure(groups));
  writeFileSync(`${folder}/verification.md`, reportText(groups));
  const ran = groups.flatMap((group) => ('notRun' in group ? [] : group.checks));
  return {
    failed: ran.filter((check) => !passes(check)).length,
    notRun: groups.flatMap((group) => ('notRun' in group ? [`${group.title}: ${group.notRun}`] : [])),
  };
}
