import type { ReelPlace, Side } from '../../../engine/bend/bend.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import type { PiecewiseLinear } from '../../../engine/numerics/piecewise-linear.ts';

/** What the drawing needs of the rod itself; the same object while guides move. */
export interface DrawnRod {
  buttAngleRad: number;
  /** Butt end to the front of the grip. */
  handleM: number;
  reel: ReelPlace;
  side: Side;
  /** Where the reel stands; in a spiral on top while the guides work under the rod. */
  reelSide: Side;
  /** Outside diameter along the blank. */
  outside: PiecewiseLinear;
  /** The builder's limit of the line angle. */
  limitRad: number;
  /** An angle as the shop writes it. */
  angle(angleRad: number): string;
  /** The worst reading of a load, as the bench says it. */
  worst(load: RuledLoad): { value: string; limit: string; place: string };
  /** A gap as a rule reads it. */
  gap(gapM: number): string;
  /** How each load of the ladder is called: `204 g`. */
  loadNames: readonly string[];
  /** Direction in which each load pulls. */
  pullAngleRad: readonly number[];
  loadBy: 'line' | 'tied';
  /** Distance between two lines of the grid, and how many of them make a heavier one. */
  grid: { stepM: number; heavyEvery: number };
}

/** One moment of the bent rod: every load of the ladder, one of them drawn strongly. */
export interface BendView {
  rod: DrawnRod;
  loads: readonly RuledLoad[];
  drawn: number;
  /** Stations of the rings, tip-top first, where the line may lie on the blank; left out: it is drawn straight. */
  ringFromTipM?: readonly number[];
  /** Under its own weight alone. */
  rest?: RuledLoad;
  /** Rings (0 the tip-top) that need the builder's attention under the drawn load. */
  attention: ReadonlySet<number>;
  /** Ring under the builder's hand. */
  active?: number;
  /** False while a guide is dragged: the scale then stays as it is. */
  settled: boolean;
}

/** The drawn load, all heavier ones and the next lighter one; what is lighter still may run off the sheet. */
export function shownWhole({ loads, drawn }: BendView): readonly RuledLoad[] {
  return loads.slice(Math.max(0, drawn - 1));
}
