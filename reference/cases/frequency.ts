import type { PointMass } from '../../src/engine/bend/mesh.ts';
import type { Rod } from '../../src/engine/bend/rod.ts';
import { frequency } from '../../src/engine/frequency/frequency.ts';
import { type CheckRow, checkRowsOf } from '../check-values.ts';
import { type SyntheticBlankName, syntheticBlank } from '../synthetic-blank.ts';
import type { Check, CheckGroup } from './check.ts';
import { taperedRod } from './unit-rod.ts';

/** λ = ω L² √(m/EI) at the clamp; here L = m = EI = 1, so λ = ω. */
export function omegas(rod: Rod, masses: PointMass[], modes: number): number[] {
  const answer = frequency({ rod, masses, modes });
  if (answer.status !== 'converged') throw new Error(JSON.stringify(answer));
  return answer.hz.map((hz) => 2 * Math.PI * hz);
}

export const uniformRodWithMass: Rod = {
  lengthM: 1,
  stiffness: [{ fromTipM: 0, EINm2: 1 }],
  massPerLength: [{ fromTipM: 0, kgPerM: 1 }],
};

export function frequencyUniform(): CheckGroup {
  const bare = omegas(uniformRodWithMass, [], 5);
  const checks = checkRowsOf('freq.uniform.lambda').map((row) => rowCheck(row, bare[modeOf(row)], 1e-7));
  for (const row of checkRowsOf('freq.tipmass')) {
    const found = omegas(uniformRodWithMass, [{ fromTipM: 0, massKg: row.inputs.mu as number }], 3);
    checks.push(rowCheck(row, Math.sqrt(found[modeOf(row)]), 1e-7));
  }
  const about = 'λ of a uniform rod, β = √λ of one with a tip mass; allowed 1e-7 of the value.';
  return { title: 'Frequencies: uniform, with tip mass', about, checks };
}

export function frequencyTapered(): CheckGroup {
  const checks: Check[] = [];
  for (const [start, power] of [
    ['freq.cone.lambda', 4],
    ['freq.wedge.lambda', 3],
    ['freq.trunc.cone', 4],
    ['freq.trunc.wedge_or_thin_tube', 3],
  ] as const) {
    // the rows of one rod differ in the mode alone
    const known = new Map<string, number[]>();
    for (const row of checkRowsOf(start)) {
      const { mode, ...inputs } = row.inputs;
      const key = JSON.stringify(inputs);
      const found = known.get(key) ?? taperedOmegas(row, power);
      known.set(key, found);
      checks.push(rowCheck(row, found[(mode as number) - 1], 1e-5));
    }
  }
  const about =
    'λ of complete and cut-off cones and wedges (a thin tube of constant wall is the wedge), bare and with a tip mass, given as tables of 2,000 rows; allowed 1e-5 of the value.';
  return { title: 'Frequencies: tapered', about, checks };
}

function taperedOmegas(row: CheckRow, power: number): number[] {
  const ratio = (row.inputs.d_tip_over_d_butt as number | undefined) ?? 0;
  const mu = (row.inputs.mu as number | undefined) ?? 0;
  const massShare = power === 4 ? (1 + ratio + ratio ** 2) / 3 : (1 + ratio) / 2;
  const masses = mu > 0 ? [{ fromTipM: 0, massKg: mu * massShare }] : [];
  return omegas(taperedRod(power, ratio, 1), masses, 3);
}

/** Its modes 2 and 3 are that paper's own approximations, good to 6e-4. */
export function frequencyPrinted(): CheckGroup {
  const checks = checkRowsOf('lit.ijmme2015.').flatMap((row) => {
    const power = row.id.includes('.cone.') ? 4 : 3;
    const found = omegas(taperedRod(power, row.inputs.d_tip_over_d_butt as number, 1), [], 3);
    return (row.value as number[]).map((theirs, k) => ({
      ...rowCheck(row, found[k], 0),
      id: `${row.id}[${k}]`,
      theirs,
      allowance: (k === 0 ? 5e-6 : 6e-4) * theirs,
    }));
  });
  const about = 'λ of cut-off tapers; allowed 5e-6 of the value for mode 1, 6e-4 for modes 2 and 3.';
  return { title: 'Frequencies: a printed table', about, checks };
}

export function frequencyBlanks(): CheckGroup {
  const checks = (['SYN-FLY9', 'SYN-GLASS6'] as SyntheticBlankName[]).flatMap((name) => {
    const { rod, lengthM } = syntheticBlank(name);
    const bare = omegas(rod, [], 3);
    const rows = [1, 2, 3].map((mode) => {
      const row = checkRowsOf(`blank.${name}.f${mode}`)[0];
      return rowCheck(row, bare[mode - 1] / (2 * Math.PI), 1e-6);
    });
    for (const row of checkRowsOf(`blank.${name}.f1.`)) {
      const points = (row.inputs.points as [number, number][] | undefined) ?? [];
      const masses = points.map(([fromButtM, massKg]) => ({ fromTipM: lengthM - fromButtM, massKg }));
      masses.push({ fromTipM: 0, massKg: row.inputs.tip_kg as number });
      rows.push(rowCheck(row, omegas(rod, masses, 1)[0] / (2 * Math.PI), 1e-6));
    }
    return rows;
  });
  const about = 'Hz, bare, with weights at the tip and with a set of hardware; allowed 1e-6 of the value.';
  return { title: 'Frequencies: two invented blanks', about, checks };
}

function modeOf(row: CheckRow): number {
  return (row.inputs.mode as number) - 1;
}

function rowCheck(row: CheckRow, ours: number, relative: number): Check {
  const theirs = row.value as number;
  const { id, quantity, source, unit } = row;
  return { id, quantity, source, unit, ours, theirs, allowance: relative * Math.abs(theirs) };
}
