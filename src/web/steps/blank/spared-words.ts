import { enoughBlanks, fullReadings } from '../../../engine/series/spared-readings.ts';
import type { SeriesReading } from '../../read/use-series.ts';
import type { SetupRows } from './reading-rows.ts';

type Known = Pick<SeriesReading, 'name' | 'wanted' | 'inFull'>;

/** Whether this blank may be read by half the protocol. */
export function isSpared({ name, wanted, inFull }: Known): boolean {
  return name !== undefined && wanted && inFull >= enoughBlanks;
}

/** What the shorter protocol rests on, for the card that offers it. */
export function sparedWords(
  { name, inFull }: Known,
  { short, full }: { short: number; full: number },
): string {
  return `Three set-ups, ${short} readings instead of ${full}: the other half comes from ${inFull} blanks of “${name}”, each measured in full. On simulated series three such blanks and these readings were as sure as the full protocol. The tip is still read under nothing and under every weight; a blank unlike its series shows: read that one in full.`;
}

/** How it could be had, where a series is named and does not say enough yet; undefined where none is. */
export function notSparedWords({ name, wanted, inFull }: Known): string | undefined {
  if (name === undefined) return undefined;
  if (!wanted)
    return `This blank is one of the series “${name}”. Tick “Read this blank together with the others” below: after ${enoughBlanks} blanks measured in full, half the readings do.`;
  const known = inFull === 0 ? 'none is' : inFull === 1 ? 'one is' : `${inFull} are`;
  return `Half the readings do once ${enoughBlanks} other blanks of “${name}”, of this length, were measured with ${fullReadings} readings or more; ${known} so far.`;
}

/** For the printed sheet, where the rows are the shorter protocol's; undefined where they are not. */
export function sparedLine(known: Known, setups: readonly SetupRows[]): string | undefined {
  const planned = setups.flatMap(({ tests }) => tests).flatMap(({ readings }) => readings).length;
  if (!isSpared(known) || setups.length < 3 || planned >= fullReadings) return undefined;
  return `Half the protocol: ${known.inFull} measured blanks of its series say the rest. If it is unlike them, read it in full.`;
}
