/** Everything the Layout sheet is made from, in SI: what the record says, filled up with what is common. */
import { type AssembledBlank, assembleBlank } from '../../engine/bench/assemble.ts';
import type { Bench } from '../../engine/bench/bench.ts';
import type { BenchFinding } from '../../engine/bench/bench-finding.ts';
import { type DiameterRow, diameterProfile } from '../../engine/bench/diameter-profile.ts';
import type { FerruleZone } from '../../engine/bench/ferrule-zones.ts';
import type { BlankTables, FreeRod } from '../../engine/bench/free-rod.ts';
import { type StrainLevels, strainLevels } from '../../engine/bench/strain.ts';
import type { BlankTorsion } from '../../engine/flow/blank-torsion.ts';
import { checkRound } from '../../engine/flow/check-round.ts';
import type { Choices } from '../../engine/flow/choices.ts';
import type { CountQuestion } from '../../engine/flow/count-answer.ts';
import type { RodToDress } from '../../engine/flow/finished-rod.ts';
import { type GuideRoundBlank, guidesRound } from '../../engine/flow/guides-round.ts';
import { type LayoutQuestion, layoutQuestion } from '../../engine/flow/layout-question.ts';
import { downRad, type LoadLadder } from '../../engine/flow/loads.ts';
import type { LaidBuild } from '../../engine/flow/round-questions.ts';
import {
  climbs,
  closestRingsM,
  type StandingMarks,
  standingMarks,
} from '../../engine/flow/standing-marks.ts';
import { startRings } from '../../engine/flow/start-rod.ts';
import type { GuideField } from '../../engine/layout/guide-moves.ts';
import type { LadderRequest, LayoutLimits } from '../../engine/layout/ladder-request.ts';
import { type LayoutRequest, smallestIntervalM } from '../../engine/layout/layout-request.ts';
import type { LadderSheet } from '../worker/messages.ts';

interface SheetParts {
  bench: Bench;
  choices: Choices;
  /** The fitted blank, or its first estimate. */
  tables: BlankTables;
}
export interface SheetModel {
  blank: AssembledBlank;
  rod: FreeRod;
  diameters: DiameterRow[];
  keepOut: FerruleZone[];
  strain: StrainLevels;
  choices: Choices;
  handle: Bench['handle'];
  loads: LoadLadder;
  limits: LayoutLimits;
  /** The start's marks as they were given; empty where the rule or list makes none. */
  startFromTipM: readonly number[];
  /** Whether a rod can be bent with them: they climb from the tip to less than the grip. */
  startStands: boolean;
  /** Why our own marks cannot be read, in a sentence. */
  unreadable: string | undefined;
  marksAre: StandingMarks['are'];
  field: GuideField;
  /** Stiffness in twist. */
  torsion: BlankTorsion;
  /** Where each guide's foot stands round the blank; empty without a spiral. */
  round: GuideRoundBlank[];
  /** What cannot be about it. */
  roundFindings: BenchFinding[];
  ladder: LadderSheet;
  restLadder: LadderSheet;
  startLadder: LadderSheet;
  /** Asks for the best layout with the builder's rule for intervals. */
  request: LayoutRequest & LadderRequest;
  /** Asks what other numbers of guides would do. */
  counted: CountQuestion;
}
const noLoads = 'There is no weight to bend the rod with: choose your own loads below.';

/** The room in front of the grip that a layout needs at least. */
const leastFreeM = 0.3;

/** Undefined where the blank has no such room, no diameter or no guide. */
export function sheetModel(parts: SheetParts): SheetModel | undefined {
  const { bench, choices } = parts;
  const blank = assembleBlank(bench.sections);
  const diameters = diameterProfile(bench.sections, blank);
  const freeM = blank.lengthM - bench.handle.gripFrontFromButtM;
  if (!(freeM > leastFreeM) || diameters.length === 0 || choices.guides.length < 2) return undefined;
  const question = layoutQuestion({ ...parts, blank, diameters });
  const { rod, keepOut, loads, startFromTipM } = question;
  const startStands = climbs(startFromTipM, freeM);
  const startFits = startStands && startFromTipM.length === choices.guides.length;
  const { are, fromTipM } = standingMarks({ bench, choices, blank }, question);
  return {
    blank,
    rod,
    diameters,
    keepOut,
    strain: strainLevels(bench),
    choices,
    handle: bench.handle,
    loads,
    limits: question.request.limits,
    startFromTipM,
    startStands,
    unreadable: loads.kg.length === 0 ? noLoads : whyUnreadable(fromTipM, freeM),
    marksAre: are,
    field: guideField(choices, fromTipM, keepOut, freeM),
    torsion: question.torsion,
    roundFindings: checkRound(choices, fromTipM, keepOut),
    round: guidesRound(
      choices,
      choices.guides,
      choices.guides.map(({ ringHeightM }) => ringHeightM),
    ),
    counted: { bench, choices, blank, diameters, tables: parts.tables },
    ...ladderSheets({ bench, choices, blank, diameters }, question),
    request: {
      ...question.request,
      firstFromTipM: fromTipM[0],
      strippingFromTipM: fromTipM[fromTipM.length - 1],
      start: startFits ? { fromTipM: startFromTipM } : undefined,
    },
  };
}

/** As it is asked about in space, and of two hands. */
export function laidBuild({ handle, choices, diameters, ladder, torsion, field }: SheetModel): LaidBuild {
  return { handle, choices, diameters, ladder: ladder.ladder, torsion, fromTipM: field.fromTipM };
}

function guideField(
  { guides }: Choices,
  fromTipM: readonly number[],
  keepOut: readonly FerruleZone[],
  freeM: number,
): GuideField {
  return {
    fromTipM,
    footM: guides.map(({ lengthM }) => lengthM),
    keepOut,
    pinned: guides.map(({ pinned }) => pinned),
    room: { fromTipM: smallestIntervalM, toTipM: freeM - guides[guides.length - 1].lengthM / 2 },
    leastIntervalM: smallestIntervalM,
  };
}

/** The same rod with our guides, with no weight at all, and with the start's guides. */
function ladderSheets(laid: RodToDress, question: LayoutQuestion) {
  const { diameters } = laid;
  const { request } = question;
  const { rod, torsionShare, buttAngleRad, reel, guides, tipTop, contact, ladder, limits } = request;
  const ours: LadderRequest = {
    rod,
    torsionShare,
    buttAngleRad,
    reel,
    guides,
    tipTop,
    contact,
    ladder,
    limits,
  };
  const noWeight = [{ tensionN: 0, pullAngleRad: downRad }];
  return {
    ladder: { diameters, ladder: ours },
    restLadder: { diameters, ladder: { ...ours, ladder: noWeight } },
    startLadder: { diameters, ladder: { ...ours, ...startRings(laid, question) } },
  };
}

function whyUnreadable(fromTipM: readonly number[], freeM: number): string | undefined {
  const clash = [...fromTipM, freeM].findIndex((at, i, all) => at - (all[i - 1] ?? 0) < closestRingsM);
  if (clash < 0) return undefined;
  if (clash === 0) return 'Guide 1 stands at the tip-top: move it towards the butt.';
  if (clash === fromTipM.length) return `Guide ${clash} stands under the grip: move it towards the tip.`;
  if (fromTipM[clash] < fromTipM[clash - 1] - closestRingsM) {
    return `Guide ${clash + 1} stands nearer the tip than guide ${clash}: give the marks from the tip down.`;
  }
  return `Guides ${clash} and ${clash + 1} stand at the same place: move one of them.`;
}
