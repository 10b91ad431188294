/**
 * Guides on top: where the line lies on the blank under each load, between rings and behind the last one, and how far
 * it clears the foregrip on its way to the reel. Equations: bend/contact.ts.
 */
import { type BendAnswer, bend, sideSign } from '../bend/bend.ts';
import { ladderDefaults } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { bendRequestOf } from './laid-bend.ts';
import type { OutsideDiameter } from './rule-reading.ts';

/** From its front, where the bend begins, towards the reel. */
export interface Foregrip {
  lengthM: number;
  radiusM: number;
}
interface LineOnBlankQuestion {
  ladder: LadderRequest;
  /** One station per guide, ascending. */
  fromTipM: readonly number[];
  diameters: readonly OutsideDiameter[];
  foregrip?: Foregrip;
}
export interface LineOnBlank {
  status: BendAnswer['status'];
  /** Stretch i runs from ring i (0 the tip-top) towards the butt, the last one to the reel. */
  touched: { stretch: number; fromTipM: number; toTipM: number }[];
  behindLast: boolean;
  /** Negative where the line would pass through the foregrip; undefined without one. */
  foregripClearM?: number;
  /** Found, and nothing is touched. */
  clear: boolean;
}

/** One answer for every load of the ladder. */
export function lineOnBlank(question: LineOnBlankQuestion): LineOnBlank[] {
  const { ladder, fromTipM, diameters } = question;
  return ladder.ladder.map((load) => {
    const request = { ...bendRequestOf({ ladder, fromTipM }, load), contact: { diameters } };
    return onBlankOf(bend(request, ladderDefaults), question);
  });
}

/** Of a bend that was asked for with contact. */
export function onBlankOf(
  answer: BendAnswer,
  question: Pick<LineOnBlankQuestion, 'ladder' | 'foregrip'>,
): LineOnBlank {
  const stretches = answer.contact?.stretches ?? [];
  const touched = stretches.flatMap(({ touches, touchedFromTipM = 0, touchedToTipM = 0 }, stretch) =>
    touches ? [{ stretch, fromTipM: touchedFromTipM, toTipM: touchedToTipM }] : [],
  );
  const behindLast = stretches.at(-1)?.touches ?? false;
  const foregripClearM = behindLast ? undefined : clearOfForegrip(answer, question);
  const clear = answer.status === 'converged' && touched.length === 0 && !((foregripClearM ?? 0) < 0);
  return { status: answer.status, touched, behindLast, foregripClearM, clear };
}

/** The line is straight from the last ring to the reel, the foregrip a cylinder about the butt's axis. */
function clearOfForegrip(
  { rings }: BendAnswer,
  { ladder, foregrip }: Pick<LineOnBlankQuestion, 'ladder' | 'foregrip'>,
): number | undefined {
  if (!foregrip) return undefined;
  const { reel, buttAngleRad, guides } = ladder;
  const side = sideSign(guides.side);
  const { xM, yM } = rings[rings.length - 1];
  const [cos, sin] = [Math.cos(buttAngleRad), Math.sin(buttAngleRad)];
  const last = { alongM: xM * cos + yM * sin, offM: side * (yM * cos - xM * sin) };
  const offAt = (alongM: number) => {
    const share = (alongM - reel.alongM) / (last.alongM - reel.alongM);
    return reel.offsetM + share * (last.offM - reel.offsetM);
  };
  const rear = Math.max(-foregrip.lengthM, reel.alongM);
  return Math.min(offAt(0), offAt(rear)) - foregrip.radiusM;
}
