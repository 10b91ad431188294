import { foregripOf } from '../engine/flow/foregrip.ts';
import { type RealLineAtLoad, readRealLine } from '../engine/layout/real-line.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { standardGravity } from '../engine/units/gravity.ts';
import { behindLastWords, contactRows, touchedWords } from '../words/contact-rows.ts';
import type { LadderWriter } from '../words/ladder-writer.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** At the builder's own marks where there are, else the proposed ones. */
export function realLineOfWork({ bench, choices, work }: WorkedBuild): RealLineAtLoad[] {
  const { question, best, diameters } = work;
  const fromTipM = question.ownFromTipM ?? best.fromTipM;
  const foregrip = foregripOf(bench.handle, choices);
  return readRealLine({
    ladder: question.request,
    fromTipM,
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
  const rows = loads.map(({ rubbing }, load) => {
    const [coming, going] = (['in', 'out'] as const).map((way) =>
      rangeOf(
        rubbing
          .filter(({ friction, status }) => friction.direction === way && status === 'converged')
          .map(({ reelTensionN }) => reelTensionN / standardGravity),
        w.load,
      ),
    );
    const worst = rangeOf(
      rubbing.filter(({ status }) => status === 'converged').map((line) => line.worst.ratio),
      (ratio) => `${fixedDecimals(100 * ratio, 0)} %`,
    );
    return `  ${w.loads[load]}: the reel feels ${coming} winding in, ${going} letting out; the worst is at ${worst} of its limit`;
  });
  return [
    `The line as it runs, friction ${lowest} to ${highest} in the rings (the layout leaves friction out):`,
    ...rows,
    ...touchingLines(loads, work.question.ownFromTipM ?? work.best.fromTipM, w),
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

function rangeOf(values: readonly number[], write: (value: number) => string): string {
  if (values.length === 0) return 'no bend found';
  const [low, high] = [write(Math.min(...values)), write(Math.max(...values))];
  return low === high ? low : `${low} to ${high}`;
}
