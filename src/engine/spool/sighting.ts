/**
 * A spool's place and tilt from two sightings along its spindle: the spindle's own line, prolonged by a thread or a
 * straight rod, read over the blank's surface at two places ahead of the reel. Plane geometry: the line through the two
 * heights over the blank's axis. A reading is good to a millimetre, which is why the two places stand well apart.
 */
export interface Sighting {
  fromButtM: number;
  /** Over the blank's surface, on the reel's side. */
  overBlankM: number;
}
export interface SightedSpindle {
  /** Towards the blank, going to the tip. */
  tiltRad: number;
  /** What a millimetre in both readings, one up and one down, makes of it. */
  tiltSigmaRad: number;
  /** Distance of the spindle's line from the blank's axis. */
  offAxisM(fromButtM: number): number;
}

const readTo = 0.001;
/** Nearer together two heights say little of a tilt: 2 mm over 0.1 m are more than 1°. */
export const leastSightedM = 0.1;

/** `radiusAt`: of the blank. Undefined where the two stand nearer than `leastSightedM`, or the wrong way about. */
export function sightSpindle(
  near: Sighting,
  far: Sighting,
  radiusAt: (fromButtM: number) => number,
): SightedSpindle | undefined {
  const runM = far.fromButtM - near.fromButtM;
  if (!(runM >= leastSightedM)) return undefined;
  const heightOf = ({ fromButtM, overBlankM }: Sighting) => overBlankM + radiusAt(fromButtM);
  const fall = (heightOf(near) - heightOf(far)) / runM;
  return {
    tiltRad: Math.atan(fall),
    tiltSigmaRad: (2 * readTo) / runM,
    offAxisM: (fromButtM) => heightOf(near) - fall * (fromButtM - near.fromButtM),
  };
}
