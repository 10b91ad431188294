/**
 * The fan under load: reel and grip stay with the hand, the blank in front of them bends. In the frame of the butt's
 * axis the rings stand where the bend puts them; the line still runs straight from the reel to the first one.
 */
import type { LoadReading } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { type AxisPlace, clearanceBeside } from '../spool/bent-surface.ts';
import { fanAngles, fanClearanceBy, type LineSource, type Range, type RingPlace } from '../spool/fan.ts';
import { profileOf, type Surface } from '../spool/surface.ts';

export interface FanUnderLoad {
  lineAngleRad: Range;
  clearanceM: number;
  over: 'grip' | 'blank';
}
export interface BentFan {
  ladder: Pick<LadderRequest, 'buttAngleRad' | 'guides' | 'reel'>;
  source: LineSource;
  surface: Surface;
  /** The first guide from the reel. */
  firstFromTipM: number;
}

/** Undefined where the load finds no bend. */
export function fanUnderLoad(load: LoadReading, fan: BentFan): FanUnderLoad | undefined {
  if (load.status === 'not-converged') return undefined;
  const inButt = buttFrame(fan.ladder);
  const [next, ring] = load.rings.slice(-2).map(({ xM, yM, zM = 0 }) => ({ ...inButt(xM, yM), zM }));
  const clearance = fanClearanceBy(fan.source, ring, clearanceBeside(bentAxis(load, fan, inButt)));
  return {
    lineAngleRad: fanAngles(fan.source, ring, { ...next, asideM: next.zM - ring.zM }),
    clearanceM: clearance.clearanceM,
    over: overWhat(clearance.alongM),
  };
}

/** What the line passes nearest to; the front edge of the grip is the grip's. */
export function overWhat(alongM: number): 'grip' | 'blank' {
  return alongM > 0.002 ? 'blank' : 'grip';
}

type InButt = (xM: number, yM: number) => RingPlace;

/** Along the butt's axis from the grip's front, and off it to the reel's side: a spiral's reel sits on top. */
function buttFrame({ buttAngleRad, guides, reel }: BentFan['ladder']): InButt {
  const [c, s] = [Math.cos(buttAngleRad), Math.sin(buttAngleRad)];
  const over = reel.aroundRad === undefined ? guides.side === 'over' : Math.cos(reel.aroundRad) < 0;
  const side = over ? -1 : 1;
  return (xM, yM) => ({ alongM: xM * c + yM * s, underM: side * (xM * s - yM * c) });
}

/** The grip behind its front as on the straight rod, then the bent blank as far as a little beyond the first guide. */
function bentAxis(
  load: LoadReading,
  { source, surface, firstFromTipM }: BentFan,
  inButt: InButt,
): AxisPlace[] {
  const radiusAt = radiusOf(surface);
  const gripM = surface[surface.length - 1].radiusM;
  const behindM = Math.min(source.alongM, 0) - reachM;
  const axis: AxisPlace[] = [
    { alongM: behindM, underM: 0, radiusM: gripM },
    { alongM: 0, underM: 0, radiusM: gripM },
  ];
  for (let i = load.fromTipM.length - 1; i >= 0 && load.fromTipM[i] >= firstFromTipM - reachM; i--) {
    axis.push({ ...inButt(load.xM[i], load.yM[i]), radiusM: radiusAt(load.fromTipM[i]) });
  }
  return axis;
}
const reachM = 0.1;

/** Of the blank alone: at the front of the grip the row before the step counts. */
function radiusOf(surface: Surface): (fromTipM: number) => number {
  const profile = profileOf(surface.slice(0, -1));
  return (fromTipM) => {
    const piece = profile.find((one) => fromTipM <= one.fromTipM + one.runM) ?? profile[profile.length - 1];
    if (piece.runM === 0) return piece.radiusM;
    return piece.radiusM + ((fromTipM - piece.fromTipM) / piece.runM) * piece.riseM;
  };
}
