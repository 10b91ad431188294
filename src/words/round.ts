/** Guides round the blank: where the line turns most, where it comes near the blank, what the hand holds. */
import type { BlankTorsion } from '../engine/flow/blank-torsion.ts';
import type { RoundAtLoad } from '../engine/flow/round-answer.ts';
import type { MarkRound, SectionMarks } from '../engine/marks/marks-list.ts';
import { trimZeros } from '../engine/units/format-decimal.ts';
import { formatOnTape, type TapeStep } from '../engine/units/tape-step.ts';
import { spanInWords } from './criteria.ts';
import type { LadderWriter } from './ladder-writer.ts';
import { halfDegrees, type Writer } from './writer.ts';

/** The largest of one reading over the loads, and at which. */
export interface AtLoad {
  value: number;
  load: number;
}
export const largestOver = (loads: readonly RoundAtLoad[], of: (at: RoundAtLoad) => number): AtLoad =>
  loads.reduce((most, at, load) => (of(at) > most.value ? { value: of(at), load } : most), {
    value: Number.NEGATIVE_INFINITY,
    load: 0,
  });

/** Ring 0 is the tip-top's; the tip-top's own turn is the pull's. */
export function turnInWords(loads: readonly RoundAtLoad[], limitRad: number, writer: LadderWriter): string {
  const rings = loads[0].lineAngleRad.map((_, ring) => ring).slice(1);
  const most = rings
    .map((ring) => ({ ring, ...largestOver(loads, ({ lineAngleRad }) => lineAngleRad[ring]) }))
    .reduce((a, b) => (b.value > a.value ? b : a));
  return `The line turns most in guide ${most.ring}: ${writer.lineAngle(most.value)} at ${writer.loads[most.load]}. Your limit is ${writer.lineAngle(limitRad)}.`;
}

/** Stretch `k` runs from ring `k` toward the reel; the last one reaches it. */
export function stretchInWords(stretch: number, guides: number): string {
  return stretch === guides ? `between guide ${guides} and the reel` : spanInWords(stretch);
}

/** What to do first where the straight line would run through the blank. */
export function clearInWords(loads: readonly RoundAtLoad[], spiral: boolean, writer: LadderWriter): string {
  const guides = loads[0].clearM.length - 1;
  const least = loads[0].clearM
    .map((_, stretch) => {
      const { value, load } = largestOver(loads, ({ clearM }) => -clearM[stretch]);
      return { stretch, clearM: -value, load };
    })
    .reduce((a, b) => (b.clearM < a.clearM ? b : a));
  const where = stretchInWords(least.stretch, guides);
  const at = writer.loads[least.load];
  if (least.clearM > 0) {
    return `The line clears the blank at every load, by ${writer.fine(least.clearM)} at the least: ${where}, at ${at}.`;
  }
  const first = loads.findIndex(({ clearM }) => clearM[least.stretch] <= 0);
  const remedy = spiral
    ? 'Turn these guides less far apart, put them closer or take higher rings.'
    : 'Put these guides closer, add one, or take higher rings.';
  return `${remedy} The line lies on the blank ${where}, from ${writer.loads[first]}.`;
}

/** Positive turns a ring from under to the right. */
export function handInWords(loads: readonly RoundAtLoad[], writer: LadderWriter): string {
  const last = loads.length - 1;
  const { handTorqueNm, tipTwistRad, stable } = loads[last];
  if (!stable) return `At ${writer.loads[last]} a small push turns the rod over.`;
  if (Math.abs(handTorqueNm) < 5e-4) return 'Pulled straight, the rod does not turn in the hand.';
  return `Pulled straight at ${writer.loads[last]}, your hand holds ${writer.torque(Math.abs(handTorqueNm))} and the tip twists by ${writer.lineAngle(Math.abs(tipTwistRad))}.`;
}

/** How stiff in twist, and who says so. */
export function torsionInWords({ share, low, high, by }: BlankTorsion): string {
  const band = low < high ? ` (${low.toFixed(2)} to ${high.toFixed(2)})` : '';
  const origin = { measured: 'measured with the bar', stated: 'as you state it', material: 'typical' }[by];
  return `Stiffness in twist ${share.toFixed(2)}${band} of that in bending, ${origin}.`;
}

/** `60° to the right of the top`. */
export function roundInWords(
  fromTopRad: number,
  by: 'right' | 'left',
  writer: Pick<Writer, 'angle'>,
): string {
  if (Math.abs(fromTopRad) < 1e-6) return 'on top';
  if (Math.abs(fromTopRad - Math.PI) < 1e-6) return 'under';
  const other = by === 'right' ? 'left' : 'right';
  return `${writer.angle(Math.abs(fromTopRad))} to the ${fromTopRad < 0 ? other : by} of the top`;
}

/** A strip of paper round a blank is read finer than a tape along it: to 1/32 in or half a millimetre. */
export function roundOnTape(lengthM: number, step: TapeStep): string {
  if (step !== '1 mm') return formatOnTape(lengthM, '1/32 in');
  return `${trimZeros(Math.round(lengthM * 2000) / 2, 1)} mm`;
}

/** The second line to mark: `60° left, 3/16 in from the top line`; shorter for a table: `60° left, 3/16 in`. */
export function markRoundInWords({ fromTopRad, by, fromTopLineM }: MarkRound, step: TapeStep): string {
  if (Math.abs(fromTopRad) < 1e-6) return 'top line';
  if (Math.abs(fromTopRad - Math.PI) < 1e-6) return 'under line';
  const other = by === 'right' ? 'left' : 'right';
  const to = fromTopRad < 0 ? other : by;
  return `${halfDegrees(Math.abs(fromTopRad))} ${to}, ${roundOnTape(Math.abs(fromTopLineM), step)}`;
}

/** `, round the blank 1/8 in at its tip end, 3/16 in at its butt end` */
export function lineSideRoundInWords(
  { lineSideRoundM }: Pick<SectionMarks, 'lineSideRoundM'>,
  step: TapeStep,
): string {
  if (!lineSideRoundM) return '';
  const { tipEnd, buttEnd } = lineSideRoundM;
  return `, round the blank ${roundOnTape(tipEnd, step)} at its tip end, ${roundOnTape(buttEnd, step)} at its butt end`;
}

/** What to draw on the blank before the marks. */
export const linesToDraw =
  'Draw two lines along each section, one on top and one under. Measure round from the top line, seen from behind the butt.';
