/**
 * A layout with a line that rubs in its rings and, with guides on top, may lie on the blank: beside the frictionless
 * line that the guides are placed for, both ends of a range of coefficients, line coming in and going out.
 * Equations: bend/friction.ts, bend/contact.ts. No reading here enters the objective.
 */
import type { BendAnswer, ContactReading } from '../bend/bend.ts';
import { bend } from '../bend/bend.ts';
import type { BendRequest } from '../bend/bend-request.ts';
import type { LineFriction } from '../bend/friction.ts';
import { bendOverFrictionRange } from '../bend/friction-range.ts';
import { ladderDefaults } from './ladder.ts';
import type { LadderLoad, LadderRequest } from './ladder-request.ts';
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
}

/** One answer for every load of the ladder. */
export function readRealLine(question: RealLineQuestion): RealLineAtLoad[] {
  const { ladder, friction, diameters } = question;
  return ladder.ladder.map((load, row) => {
    const request = bendRequestOf(question, load);
    const worst = (answer: BendAnswer) => worstPlace(answer, ladder, row);
    return {
      pullN: load.tensionN,
      free: worst(bend(request, ladderDefaults)),
      rubbing: bendOverFrictionRange(request, friction, ladderDefaults).map(({ friction: one, answer }) => ({
        friction: one,
        status: answer.status,
        reelTensionN: answer.lineTensionN?.at(-1) ?? load.tensionN,
        worst: worst(answer),
      })),
      contact:
        ladder.guides.side === 'over' && diameters.length > 0
          ? bend({ ...request, contact: { diameters } }, ladderDefaults).contact
          : undefined,
    };
  });
}

/** The rod with its guides at these places under one load. */
export function bendRequestOf(
  { ladder, fromTipM }: Pick<RealLineQuestion, 'ladder' | 'fromTipM'>,
  load: LadderLoad,
): BendRequest {
  const { rod, buttAngleRad, reel, guides, tipTop } = ladder;
  const { tiedN = 0, pullAngleRad, tensionN } = load;
  const places = [0, ...fromTipM];
  const masses = [tipTop.massKg ?? 0, ...fromTipM.map((_, i) => guides.massesKg?.[i] ?? 0)];
  const heights = [tipTop.ringHeightM, ...guides.ringHeightsM];
  return {
    rod,
    buttAngleRad,
    reel,
    masses: places.map((at, i) => ({ fromTipM: at, massKg: masses[i] })).filter(({ massKg }) => massKg > 0),
    guides: places.map((at, i) => ({ fromTipM: at, ringHeightM: heights[i], side: guides.side })),
    load: {
      line: { tensionN, pullAngleRad },
      tip: { xN: tiedN * Math.cos(pullAngleRad), yN: tiedN * Math.sin(pullAngleRad) },
    },
  };
}

function worstPlace({ rings, spans }: BendAnswer, { limits }: LadderRequest, row: number): WorstPlace {
  return largestOf(worstOfLoad({ rings, spans }, limits, row));
}
