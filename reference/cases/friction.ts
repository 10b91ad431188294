import { bend } from '../../src/engine/bend/bend.ts';
import { type CheckRow, checkRowsOf } from '../check-values.ts';
import type { CheckGroup } from './check.ts';

/** One ring at the end of a rod too stiff to bend; the line turns in it by a known angle. */
function stiffRodWithOneRing(wrapRad: number, coefficient: number, direction: 'in' | 'out') {
  return bend({
    rod: { lengthM: 1, stiffness: [{ fromTipM: 0, EINm2: 1e9 }] },
    buttAngleRad: 0,
    guides: [{ fromTipM: 0, ringHeightM: 0, side: 'under' }],
    reel: { alongM: 0, offsetM: 0 },
    load: { line: { tensionN: 2, pullAngleRad: wrapRad } },
    friction: { coefficient, direction },
  });
}

export function capstan(): CheckGroup {
  const wrapOf = (row: CheckRow) => ((row.inputs.wrap_deg as number) * Math.PI) / 180;
  const base = ({ id, quantity, source, unit, value }: CheckRow) => ({
    id,
    quantity,
    source,
    unit,
    theirs: value as number,
  });
  const ratios = checkRowsOf('capstan.').flatMap((row) => {
    const mu = row.inputs.mu as number;
    const [inward, outward] = (['in', 'out'] as const).map(
      (direction) => stiffRodWithOneRing(wrapOf(row), mu, direction).lineTensionN?.[0] ?? Number.NaN,
    );
    return [
      { ...base(row), id: `${row.id} in`, ours: inward / 2, allowance: 1e-6 },
      { ...base(row), id: `${row.id} out`, ours: 2 / outward, allowance: 1e-6 },
    ];
  });
  const forces = checkRowsOf('guideforce.').map((row) => {
    const angle = stiffRodWithOneRing(wrapOf(row), 0, 'in').rings[0].lineAngleRad;
    return { ...base(row), ours: 2 * Math.sin(angle / 2), allowance: 1e-6 };
  });
  const about =
    'Tension behind over tension before a ring, line coming in; the inverse, line going out; ring force over tension without friction. One ring at the end of a stiff rod.';
  return { title: 'Capstan', about, checks: [...ratios, ...forces] };
}
