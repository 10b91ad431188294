/** Guides round the blank: where the line turns most, where it comes near the blank, what the hand holds. */
import type { BlankTorsion } from '../engine/flow/blank-torsion.ts';
import type { SpiralProposal } from '../engine/flow/propose-spiral.ts';
import type { RoundAtLoad } from '../engine/flow/round-answer.ts';
import { ringLimitRad } from '../engine/layout/criteria.ts';
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

/** Ring 0 is the tip-top's, whose turn is the pull's; the first guide has a limit of its own, or does not count. */
export function turnInWords(
  loads: readonly RoundAtLoad[],
  limits: Parameters<typeof ringLimitRad>[0],
  writer: LadderWriter,
): string {
  const last = loads[0].lineAngleRad.length - 1;
  const most = loads[0].lineAngleRad
    .map((_, ring) => {
      const limitRad = ringLimitRad(limits, ring, last) ?? Number.POSITIVE_INFINITY;
      return { ring, limitRad, ...largestOver(loads, (at) => at.lineAngleRad[ring]) };
    })
    .slice(1)
    .reduce((a, b) => (b.value / b.limitRad > a.value / a.limitRad ? b : a));
  return `Closest: guide ${most.ring} at ${writer.loads[most.load]}, the line turns ${writer.lineAngle(most.value)} of ${writer.lineAngle(most.limitRad)}.`;
}

/** Stretch `k` runs from ring `k` toward the reel; the last one reaches it. */
export function stretchInWords(stretch: number, guides: number): string {
  return stretch === guides ? `between guide ${guides} and the reel` : spanInWords(stretch);
}

/** What to do first where the straight line would run through the blank or the foregrip. */
export function clearInWords(loads: readonly RoundAtLoad[], spiral: boolean, writer: LadderWriter): string {
  const blank = clearOfBlank(loads, spiral, writer);
  const grip = clearOfGrip(loads, writer);
  return grip ? `${blank} ${grip}` : blank;
}

function clearOfBlank(loads: readonly RoundAtLoad[], spiral: boolean, writer: LadderWriter): string {
  const guides = loads[0].clearM.length - 1;
  const least = loads[0].clearM
    .map((_, stretch) => ({ stretch, ...leastOver(loads, ({ clearM }) => clearM[stretch]) }))
    .reduce((a, b) => (b.value < a.value ? b : a));
  const where = stretchInWords(least.stretch, guides);
  if (least.value > 0) {
    return `The line clears the blank at every load, by ${writer.fine(least.value)} at the least: ${where}, at ${writer.loads[least.load]}.`;
  }
  const first = loads.findIndex(({ clearM }) => clearM[least.stretch] <= 0);
  const remedy = spiral
    ? 'Turn these guides less far apart, put them closer or take higher rings.'
    : 'Put these guides closer, add one, or take higher rings.';
  return `${remedy} The line lies on the blank ${where}, from ${writer.loads[first]}.`;
}

/** Empty without a foregrip ahead of the reel. */
function clearOfGrip(loads: readonly RoundAtLoad[], writer: LadderWriter): string {
  if (loads.some(({ foregripClearM }) => foregripClearM === undefined)) return '';
  return foregripInWords(
    loads.map(({ foregripClearM = 0 }) => foregripClearM),
    writer,
  );
}

/** One clearance for every load. */
export function foregripInWords(clearM: readonly number[], writer: LadderWriter): string {
  const first = clearM.findIndex((one) => one <= 0);
  if (first < 0) return `It clears the foregrip by ${writer.fine(Math.min(...clearM))} or more.`;
  return `Take a thinner or shorter foregrip or a higher first guide: the line rubs on the foregrip from ${writer.loads[first]}.`;
}

function leastOver(loads: readonly RoundAtLoad[], of: (at: RoundAtLoad) => number): AtLoad {
  const { value, load } = largestOver(loads, (at) => -of(at));
  return { value: -value, load };
}

/** What other angles would change; the guides that turn, and why. */
export function spiralInWords(
  { now, best }: SpiralProposal,
  writer: LadderWriter,
): { deed: string; why: string; better: boolean } {
  const turned = best.fromTopRad.flatMap((at, i) =>
    Math.abs(at - now.fromTopRad[i]) > 1e-6 ? [`guide ${i + 1} to ${writer.angle(at)}`] : [],
  );
  if (turned.length === 0) {
    return { deed: 'No other angles do better.', why: 'Tried in steps of 5°.', better: false };
  }
  const turn = `The line then turns ${writer.lineAngle(best.turn.valueRad)} at most there (now ${writer.lineAngle(now.turn.valueRad)})`;
  const clear = best.clearM > 0 ? `clears by ${writer.fine(best.clearM)}` : 'still lies on the blank';
  const held = `your hand holds ${writer.torque(best.handTorqueNm)} (now ${writer.torque(now.handTorqueNm)})`;
  return { deed: `Turn ${listed(turned)}.`, why: `${turn}, ${clear}, and ${held}.`, better: true };
}

function listed(parts: readonly string[]): string {
  return parts.length < 2
    ? parts.join('')
    : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;
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

/** `60° left`: where a column is narrow. */
export function roundBriefly(fromTopRad: number, by: 'right' | 'left'): string {
  if (Math.abs(fromTopRad) < 1e-6) return 'top';
  if (Math.abs(fromTopRad - Math.PI) < 1e-6) return 'under';
  const other = by === 'right' ? 'left' : 'right';
  return `${halfDegrees(Math.abs(fromTopRad))} ${fromTopRad < 0 ? other : by}`;
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
  return `${roundBriefly(fromTopRad, by)}, ${roundOnTape(Math.abs(fromTopLineM), step)}`;
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
