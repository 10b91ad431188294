/** Places of guides and flags, and how far they may move. */
import { type AssembledBlank, locateMark } from '../engine/bench/assemble.ts';
import type { Stop } from '../engine/layout/guide-moves.ts';
import { systemOfTape, type TapeStep } from '../engine/units/tape-step.ts';
import { shopWriter, type Writer } from './writer.ts';

/** `22 1⁄8` without its unit, where the unit stands elsewhere. */
export function bare(written: string): string {
  return written.replace(/ (in|mm)$/, '');
}

/** For a table whose marks are read off this tape, whatever the shop's units: no row of both. */
export const tapeWriter = (step: TapeStep): Writer =>
  shopWriter({ system: systemOfTape(step), tapeStep: step });

/** The tick that slack and ± are shown to. */
const tickM = ({ units }: Writer) => (units === 'inch' ? 0.0254 / 8 : 0.001);

/** How far a mark may move each way, in ticks no finer than the slack is worth: `-3⁄8 … +1⁄4`. */
export function slackInWords(towardsTipM: number, towardsButtM: number, writer: Writer): string {
  const step = tickM(writer);
  const down = (lengthM: number) => bare(writer.length(Math.floor(lengthM / step + 1e-9) * step));
  return `−${down(towardsTipM)} … +${down(towardsButtM)}`;
}

/** `±1 3⁄8`, up to the next tick of the slack; nothing where a mark is given or its ± not known. */
export function plusMinusInWords(plusMinusM: number | undefined, writer: Writer): string {
  if (plusMinusM === undefined) return '';
  const step = tickM(writer);
  return `±${bare(writer.length(Math.ceil(plusMinusM / step - 1e-9) * step))}`;
}

/** Where one guide is: from the tip, and from its neighbour. */
export function guideInWords(fromTipM: readonly number[], guide: number, writer: Writer): string {
  const from = `${writer.length(fromTipM[guide])} from the tip`;
  if (guide === 0) return `guide 1, ${from}`;
  const interval = writer.length(fromTipM[guide] - fromTipM[guide - 1]);
  return `guide ${guide + 1}, ${from}, ${interval} from guide ${guide}`;
}

/** From the tip, its neighbour and the two ends of its own section. */
export function placeInFull(
  blank: AssembledBlank,
  fromTipM: readonly number[],
  guide: number,
  writer: Writer,
): string {
  const words = guideInWords(fromTipM, guide, writer);
  const mark = locateMark(blank, fromTipM[guide]);
  if (mark.onSection === 'none') return `${words}; in the gap of a spigot`;
  const { name } = blank.sections[mark.onSection];
  const ends = `${writer.length(mark.fromOwnTipM)} from its tip end, ${writer.length(mark.fromOwnButtM)} from its butt end`;
  return `${words}; on ${name}: ${ends}`;
}

/** Why a guide did not go further. */
export function stopInWords(stop: Stop, writer: Writer, joints: readonly string[]): string {
  switch (stop.by) {
    case 'pin':
      return 'This guide is pinned. Unpin it to move it.';
    case 'neighbour':
      return `Guide ${stop.guide + 1} is in the way: rings stay ${writer.length(0.05)} apart, and feet clear of each other.`;
    case 'ferrule': {
      const { fromTipM, toTipM } = stop.zone;
      const joint = joints[stop.joint];
      const name = joint ? `ferrule ${joint}` : 'ferrule';
      return `No guide from ${writer.length(fromTipM)} to ${writer.length(toTipM)}: the ${name}. Press again to jump over it.`;
    }
    case 'end':
      return stop.end === 'tip' ? 'The tip-top is in the way.' : 'The grip begins here.';
  }
}

/** A place on the bent rod, for a pencil mark on the wall. */
export function flagInWords(
  flag: { fromTipM: number; outM: number; upM: number; dropM?: number },
  writer: Writer,
): string {
  const at = flag.fromTipM < 5e-4 ? 'tip' : `${writer.tick(flag.fromTipM)} from the tip`;
  const level = flag.upM < 0 ? 'below' : 'above';
  const place = `${writer.tick(flag.outM)} out from the grip’s front, ${writer.tick(Math.abs(flag.upM))} ${level} it`;
  if (flag.dropM === undefined) return `${at}: ${place}`;
  const way = flag.dropM < 0 ? 'above' : 'below';
  return `${at}: ${place}; ${writer.tick(Math.abs(flag.dropM))} ${way} where it hangs without the weight`;
}
