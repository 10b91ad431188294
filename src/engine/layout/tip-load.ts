/**
 * The tip load for a third of the length: clamped level, a weight tied to the tip that lowers it by L/3 from
 * where the rod's own weight leaves it, L the length in front of the clamp. A bench measure of a blank's power
 * (common practice, no source). The rod is taken bare, without guides.
 */
import { loadingOf, rebend } from '../bend/bend.ts';
import { makeWorkspace } from '../bend/equilibrium.ts';
import { followLoad } from '../bend/follow.ts';
import { buildMesh, type Mesh } from '../bend/mesh.ts';
import { type Rod, rodTables } from '../bend/rod.ts';
import { type Bracket, bracketedRoot } from '../numerics/bracketed-root.ts';
import { standardGravity } from '../units/gravity.ts';

export interface TipLoad {
  status: 'converged' | 'not-converged';
  /** 0 where no load was found. */
  tipN: number;
}

interface TipLoadOptions {
  resolution: number;
  /** Of the load that would do for a small bend. */
  maxDoublings: number;
  maxEvaluations: number;
  /** Of L. */
  toleranceF: number;
}
const tipLoadDefaults: TipLoadOptions = {
  resolution: 150,
  maxDoublings: 12,
  maxEvaluations: 60,
  toleranceF: 1e-7,
};

export function tipLoadForThird(rod: Rod, options: TipLoadOptions = tipLoadDefaults): TipLoad {
  const mesh = buildMesh(rodTables(rod), [], [], { resolution: options.resolution });
  const dropAt = tipDropOf(mesh);
  const atRestM = dropAt(0);
  const short = (tipN: number) => (dropAt(tipN) - atRestM) / rod.lengthM - 1 / 3;
  let low = { x: 0, f: -1 / 3 };
  let x = rod.lengthM / 3 / smallBendCompliance(mesh);
  for (let doublings = 0; doublings < options.maxDoublings; doublings++) {
    const high = { x, f: short(x) };
    if (high.f >= 0) {
      const bracket = bracketedRoot(short, { low, high }, { ...options, toleranceX: 0 });
      return { status: 'converged', tipN: nearerRoot(bracket) };
    }
    low = high;
    x *= 2;
  }
  return { status: 'not-converged', tipN: 0 };
}

/** The same as a mass hung there; undefined where none does it. */
export function massForThirdKg(rod: Rod): number | undefined {
  const { status, tipN } = tipLoadForThird(rod);
  return status === 'converged' ? tipN / standardGravity : undefined;
}

function nearerRoot({ low, high }: Bracket): number {
  return Math.abs(low.f) < Math.abs(high.f) ? low.x : high.x;
}

/** How far the tip hangs below the clamp's level under a weight. NaN where the rod finds no bend. */
function tipDropOf(mesh: Mesh): (tipN: number) => number {
  const work = makeWorkspace(mesh);
  let bent = false;
  return (tipN) => {
    const loading = loadingOf({ buttAngleRad: 0, load: { tip: { xN: 0, yN: -tipN } } });
    const { status } = bent ? rebend(mesh, loading, 0, work) : followLoad(mesh, loading, 0, work);
    bent = status !== 'not-converged';
    return bent ? -work.yM[mesh.count] : Number.NaN;
  };
}

/** Deflection per newton while the bend is small: ∫ s² ds / EI, s from the tip. */
function smallBendCompliance(mesh: Mesh): number {
  let compliance = 0;
  for (let e = 1; e <= mesh.count; e++) {
    const middle = 0.5 * (mesh.fromTipM[e - 1] + mesh.fromTipM[e]);
    compliance += (middle * middle) / mesh.springNm[e];
  }
  return compliance;
}
