import { foregripOf } from '../engine/flow/foregrip.ts';
import { type RealLineAtLoad, readRealLine } from '../engine/layout/real-line.ts';
import { behindLastWords, contactRows, touchedWords } from '../words/contact-rows.ts';
import type { LadderWriter } from '../words/ladder-writer.ts';
import { reelFeelsInWords, worstRubbingInWords } from '../words/real-line.ts';
import type { WorkedBuild } from './work-build-file.ts';

export function realLineOfWork({ bench, choices, work }: WorkedBuild): RealLineAtLoad[] {
  const { question, standing, diameters } = work;
  const foregrip = foregripOf(bench.handle, choices);
  return readRealLine({
    ladder: question.request,
    fromTipM: standing.fromTipM,
    friction: choices.friction,
    diameters,
    foregrip,
  });
}

/** What friction in the rings makes of the pull, and which spans the line lies on with guides on top. */
export function realLinePart(
  { choices, work }: WorkedBuild,
  loads: readonly RealLineAtLoad[],
  w: LadderWriter,
): string {
  const { lowest, highest } = choices.friction;
  const rows = loads.map(
    (load, i) =>
      `  ${w.loads[i]}: the reel feels ${reelFeelsInWords(load, 'in', w)} winding in, ${reelFeelsInWords(load, 'out', w)} letting out; the worst is at ${worstRubbingInWords(load)} of its limit`,
  );
  return [
    `The line as it runs, friction ${lowest} to ${highest} in the rings (the layout leaves friction out):`,
    ...rows,
    ...touchingLines(loads, work.standing.fromTipM, w),
  ].join('\n');
}

/** With guides on top, as the page says it. */
function touchingLines(
  loads: readonly RealLineAtLoad[],
  fromTipM: readonly number[],
  w: LadderWriter,
): string[] {
  if (!loads.some(({ contact }) => contact)) return [];
  const words = [touchedWords(contactRows(loads, fromTipM), w), behindLastWords(loads, w)];
  return words.filter((one) => one !== '').map((one) => `  ${one}`);
}
