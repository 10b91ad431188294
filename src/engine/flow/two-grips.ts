/** A layout of a rod that is held with both hands, under every load of its ladder: what each hand gives. */
import { type BendAnswer, bend } from '../bend/bend.ts';
import { ladderDefaults } from '../layout/ladder.ts';
import { bendRequestOf, type LaidGuides } from '../layout/laid-bend.ts';
import { type HandForces, twoHands } from './two-hands.ts';

export interface TwoGripsQuestion extends LaidGuides {
  /** Middle of the upper hand behind the front of the grip, where the bend begins: the grip between does not bend. */
  upperBehindM: number;
  /** Between the middles of the hands. */
  betweenM: number;
}
export interface TwoGripsAtLoad extends HandForces {
  status: BendAnswer['status'];
}

/** One answer for every load; the guides all stand on one side. */
export function twoGrips({ upperBehindM, betweenM, ...laid }: TwoGripsQuestion): TwoGripsAtLoad[] {
  const { rod, buttAngleRad, ladder } = laid.ladder;
  const [alongX, alongY] = [Math.cos(buttAngleRad) * upperBehindM, Math.sin(buttAngleRad) * upperBehindM];
  const fromHand = <P extends { xM: number; yM: number }>(place: P): P => ({
    ...place,
    xM: place.xM + alongX,
    yM: place.yM + alongY,
  });
  return ladder.map((load) => {
    const request = bendRequestOf(laid, load);
    const { status, points, rings } = bend(request, ladderDefaults);
    const { massPerLength } = rod;
    const hands = { betweenM, buttAngleRad, load: request.load, massPerLength, masses: request.masses };
    return {
      status,
      ...twoHands(hands, { points: points.map(fromHand), rings: rings.map(fromHand) }),
    };
  });
}
