/**
 * Swings that could be counted: the bare blank held where the grip begins or farther up, small swings timed by hand.
 * Forty of them, or as many as last a quarter of a minute; a count's ± is that of the stopwatch (stiffness/swing-data).
 */
import { freeRod } from '../bench/free-rod.ts';
import { rodTables } from '../bend/rod.ts';
import { firstMode } from '../frequency/first-mode.ts';
import type { OptionsQuestion, ReadingOption } from './reading-option.ts';

export interface SwingOnOffer {
  kind: 'swings';
  clampFromTipM: number;
  /** Expected, and its standard deviation. */
  hz: number;
  sigmaHz: number;
  options: { rows: number[]; option: ReadingOption }[];
}

export interface SwingOfferOptions {
  gripM: number;
  stopwatchSigmaS: number;
  fastestHz?: number;
}

/** To come to the tablet and back, to hold the blank, and to count. Common practice, no source. */
const effort = { turnMin: 1.5, holdMin: 1 };
const swingsCounted = 40;
/** A hand counts no more than so many in a second. */
const countedByHandHz = 4;
const shares = [1, 0.75, 0.5];

export function swingsOnOffer(
  { fit, tables }: OptionsQuestion,
  { gripM, stopwatchSigmaS, fastestHz = countedByHandHz }: SwingOfferOptions,
): SwingOnOffer[] {
  const { lengthM, swings = [] } = fit.blank;
  return shares.flatMap((share): SwingOnOffer[] => {
    const clampFromTipM = Math.round(1000 * (share === 1 ? lengthM - gripM : share * lengthM)) / 1000;
    const counted = swings.some(({ clampFromTipM: at = lengthM }) => Math.abs(at - clampFromTipM) < 0.01);
    const hz = firstMode(rodTables(freeRod(tables, clampFromTipM)))?.hz;
    if (counted || !hz || hz > fastestHz) return [];
    const seconds = swingsCounted / hz;
    const option: ReadingOption = {
      swings: { count: swingsCounted, seconds },
      clampFromTipM,
      turnedRad: 0,
      loads: [],
      readings: 1,
      minutes: Math.round(2 * (effort.turnMin + effort.holdMin + seconds / 60)) / 2,
    };
    const sigmaHz = (hz * stopwatchSigmaS) / seconds;
    return [{ kind: 'swings', clampFromTipM, hz, sigmaHz, options: [{ rows: [0], option }] }];
  });
}
