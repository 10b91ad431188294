import { type RealLineAtLoad, readRealLine } from '../engine/layout/real-line.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatGrams } from '../engine/units/format-quantity.ts';
import { standardGravity } from '../engine/units/gravity.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** At the builder's own marks where there are, else the proposed ones. */
export function realLineOfWork({ choices, work }: WorkedBuild): RealLineAtLoad[] {
  const { question, best, diameters } = work;
  const fromTipM = question.ownFromTipM ?? best.fromTipM;
  return readRealLine({ ladder: question.request, fromTipM, friction: choices.friction, diameters });
}

/** What friction in the rings makes of the pull, and which spans the line lies on with guides on top. */
export function realLinePart({ choices, work }: WorkedBuild, loads: readonly RealLineAtLoad[]): string {
  const { lowest, highest } = choices.friction;
  const name = (load: number) => formatGrams(work.question.loads.kg[load], 0);
  const rows = loads.map(({ rubbing }, load) => {
    const [coming, going] = (['in', 'out'] as const).map((way) =>
      rangeOf(
        rubbing
          .filter(({ friction, status }) => friction.direction === way && status === 'converged')
          .map(({ reelTensionN }) => reelTensionN / standardGravity),
        (massKg) => formatGrams(massKg, 0),
      ),
    );
    const worst = rangeOf(
      rubbing.filter(({ status }) => status === 'converged').map((line) => line.worst.ratio),
      (ratio) => `${fixedDecimals(100 * ratio, 0)} %`,
    );
    return `  ${name(load)}: the reel feels ${coming} coming in, ${going} going out; worst reading ${worst} of its limit`;
  });
  const touching = loads.flatMap(({ contact }, load) => {
    const spans = (contact?.stretches ?? []).flatMap(({ touches }, span) => (touches ? [span] : []));
    return spans.length === 0
      ? []
      : [`  ${name(load)}: the line lies on the blank behind ${spans.map(ringName).join(', ')}`];
  });
  return [
    `The line as it runs, friction ${lowest} to ${highest} in the rings (guides are placed without it):`,
    ...rows,
    ...touching,
  ].join('\n');
}

function ringName(ring: number): string {
  return ring === 0 ? 'the tip-top' : `guide ${ring}`;
}

function rangeOf(values: readonly number[], write: (value: number) => string): string {
  if (values.length === 0) return 'no bend found';
  const [low, high] = [write(Math.min(...values)), write(Math.max(...values))];
  return low === high ? low : `${low} to ${high}`;
}
