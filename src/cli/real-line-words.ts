import { type RealLineAtLoad, readRealLine } from '../engine/layout/real-line.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { standardGravity } from '../engine/units/gravity.ts';
import { spanInWords } from '../words/criteria.ts';
import type { LadderWriter } from '../words/ladder-writer.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** At the builder's own marks where there are, else the proposed ones. */
export function realLineOfWork({ choices, work }: WorkedBuild): RealLineAtLoad[] {
  const { question, best, diameters } = work;
  const fromTipM = question.ownFromTipM ?? best.fromTipM;
  return readRealLine({ ladder: question.request, fromTipM, friction: choices.friction, diameters });
}

/** What friction in the rings makes of the pull, and which spans the line lies on with guides on top. */
export function realLinePart(
  { choices }: WorkedBuild,
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
  const touching = loads.flatMap(({ contact }, load) => {
    const spans = (contact?.stretches ?? []).flatMap(({ touches }, span) => (touches ? [span] : []));
    return spans.length === 0
      ? []
      : [`  ${w.loads[load]}: the line lies on the blank ${spans.map(spanInWords).join(', ')}`];
  });
  return [
    `The line as it runs, friction ${lowest} to ${highest} in the rings (the layout leaves friction out):`,
    ...rows,
    ...touching,
  ].join('\n');
}

function rangeOf(values: readonly number[], write: (value: number) => string): string {
  if (values.length === 0) return 'no bend found';
  const [low, high] = [write(Math.min(...values)), write(Math.max(...values))];
  return low === high ? low : `${low} to ${high}`;
}
