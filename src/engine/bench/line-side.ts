/** Where the builder puts the guides round a section, by his own rule. */
import { formatDegrees } from '../units/format-quantity.ts';

export interface LineSide {
  /** From the reference mark, as the section is numbered round. */
  angleRad: number;
  /** What stands at 0. */
  reference?: string;
  /** How it was chosen, in the builder's words. */
  method?: string;
}

/** `45° from the label (soft side, two loads)`; `0° from the reference mark`. */
export function lineSideInWords({ angleRad, reference, method }: LineSide): string {
  const angle = formatDegrees(angleRad).replace('.0°', '°');
  return `${angle} from ${reference ?? 'the reference mark'}${method === undefined ? '' : ` (${method})`}`;
}
