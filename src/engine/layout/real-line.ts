/**
 * A layout with a line that rubs in its rings and, with guides on top, may lie on the blank: beside the frictionless
 * line that the guides are placed for, both ends of a range of coefficients, line coming in and going out.
 * Equations: bend/friction.ts, bend/contact.ts. No reading here enters the objective.
 */
import type { BendAnswer, ContactReading } from '../bend/bend.ts';
import { bend } from '../bend/bend.ts';
import type { LineFriction } from '../bend/friction.ts';
import { frictionEnds } from '../bend/friction-range.ts';
import { bendInSpace } from '../space/bend-in-space.ts';
import { ladderDefaults } from './ladder.ts';
import type { LadderLoad, LadderRequest } from './ladder-request.ts';
import { bendRequestOf, leavesPlane, spaceRequestOf } from './laid-bend.ts';
import { type Foregrip, type LineOnBlank, onBlankOf } from './line-on-blank.ts';
import type { OutsideDiameter } from './rule-reading.ts';
import { largestOf, type WorstPlace, worstOfLoad } from './worst.ts';

export interface FrictionRange {
  lowest: number;
  highest: number;
}
/** Measured coefficients of coated line on rings were not found: common practice, no source. */
export const commonFriction: FrictionRange = { lowest: 0.1, highest: 0.3 };

export interface RealLineQuestion {
  ladder: LadderRequest;
  /** One station per guide, ascending. */
  fromTipM: readonly number[];
  friction: FrictionRange;
  diameters: readonly OutsideDiameter[];
  foregrip?: Foregrip;
}
export interface RubbingLine {
  friction: LineFriction;
  status: BendAnswer['status'];
  /** Behind the stripping guide. */
  reelTensionN: number;
  worst: WorstPlace;
}
export interface RealLineAtLoad {
  pullN: number;
  /** The frictionless line's worst reading. */
  free: WorstPlace;
  rubbing: RubbingLine[];
  /** With guides on top only; undefined where no bend was found. */
  contact?: ContactReading;
  /** What it touches, foregrip included; with guides on top. */
  onBlank?: LineOnBlank;
}

/** One answer for every load of the ladder. */
export function readRealLine(question: RealLineQuestion): RealLineAtLoad[] {
  const { ladder, friction } = question;
  return ladder.ladder.map((load, row) => {
    const bent = bendsOf(question, load);
    const worst = (answer: Read) => worstPlace(answer, ladder, row);
    return {
      pullN: load.tensionN,
      free: worst(bent()),
      rubbing: frictionEnds(friction).map((end) => {
        const one = { ...end, ...ringSharesOf(ladder) };
        const answer = bent(one);
        return {
          friction: one,
          status: answer.status,
          reelTensionN: answer.lineTensionN?.at(-1) ?? load.tensionN,
          worst: worst(answer),
        };
      }),
      ...touchingOf(question, load),
    };
  });
}

function ringSharesOf({ guides }: LadderRequest): Pick<LineFriction, 'ringShares'> {
  return guides.frictionShares ? { ringShares: [1, ...guides.frictionShares] } : {};
}

function touchingOf(
  question: RealLineQuestion,
  load: LadderLoad,
): Pick<RealLineAtLoad, 'contact' | 'onBlank'> {
  const { ladder, diameters } = question;
  if (ladder.guides.side !== 'over' || diameters.length === 0) return {};
  const answer = bend({ ...bendRequestOf(question, load), contact: { diameters } }, ladderDefaults);
  return { contact: answer.contact, onBlank: onBlankOf(answer, question) };
}

/** The bend, and the same with friction, in the plane or in space. */
function bendsOf(question: RealLineQuestion, load: LadderLoad) {
  if (leavesPlane(question.ladder)) {
    const request = spaceRequestOf(question, load);
    return (friction?: LineFriction) => bendInSpace({ ...request, friction }, ladderDefaults);
  }
  const request = { ...bendRequestOf(question, load), depthInto: question.ladder.contact };
  return (friction?: LineFriction) => bend({ ...request, friction }, ladderDefaults);
}

type Read = Pick<BendAnswer, 'rings' | 'spans'>;

function worstPlace({ rings, spans }: Read, { limits }: LadderRequest, row: number): WorstPlace {
  return largestOf(worstOfLoad({ rings, spans }, limits, row));
}
