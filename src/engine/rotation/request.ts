/**
 * One section turned about its own axis, its drop (clamped) or sag (on two supports) read under two loads at
 * each step. Turns in radians from the builder's reference mark; drops in metres.
 */
import type { Finding, Reason } from '../finding.ts';

export interface RotationRequest {
  loadsKg: readonly [number, number];
  readings: readonly { turnRad: number; dropsM: readonly [number, number] }[];
  sigmaM: number;
}

export interface RotationSolved {
  status: 'converged' | 'not-converged';
  reason?: Reason;
  /** B cos(φ - direction), at the reading's place. */
  bow: { amplitudeM: number; directionRad: number; sigmaM: number; directionSigmaRad: number };
  /** How much softer the softest direction is than the stiffest, 2c of the mean. */
  stiffnessDifference: {
    fraction: number;
    /** In [0, π): the softest direction and its opposite. */
    softRad: number;
    sigma: number;
    softSigmaRad: number;
  };
  /** Whether each could hardly be chance (1 in 100). */
  significant: { bow: boolean; stiffness: boolean };
  residualRmsM: number;
  findings: Finding[];
}
interface RotationRefused {
  status: 'refused';
  findings: Finding[];
}
export type RotationAnswer = RotationSolved | RotationRefused;
