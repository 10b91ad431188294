import { type BenchFinding, doubtAt } from './bench-finding.ts';

/** How far the hook and weight hang below the tip, and the room left under them; a bench's habit. */
const floorDefaults = { hangingM: 0.1, clearM: 0.05 } as const;

interface FloorQuestion {
  /** Where the finding goes: `setups/<id>/clampHeight`. */
  path: string;
  clampHeightM: number;
  nominalAngleRad: number;
  /** Free length in front of the clamp. */
  freeLengthM: number;
  /** Expected drop of the tip below the straight line through the clamp, square to it. */
  tipDropM: number;
}

/** Height of the clamp over the floor that lets the weight hang free. */
export function clampHeightNeeded(question: Omit<FloorQuestion, 'path' | 'clampHeightM'>): number {
  const { nominalAngleRad, freeLengthM, tipDropM } = question;
  const alongM = Math.sqrt(Math.max(0, freeLengthM ** 2 - tipDropM ** 2));
  const riseM = alongM * Math.sin(nominalAngleRad) - tipDropM * Math.cos(nominalAngleRad);
  return floorDefaults.hangingM + floorDefaults.clearM - riseM;
}

/** A finding where the weight would touch the floor. */
export function checkFloor(question: FloorQuestion): BenchFinding[] {
  const neededM = clampHeightNeeded(question);
  const { path, clampHeightM: heightM, tipDropM: dropM } = question;
  return heightM >= neededM ? [] : [doubtAt(path, 'bench/weight-reaches-floor', { dropM, heightM, neededM })];
}
