/**
 * Six invented rods as builders clamp them: two-piece and four-piece fly rods, a spinning and a casting rod, a
 * surf rod, a two-handed rod. Outside diameter and wall linear, a stiff zone at every ferrule, natural bow,
 * guides with their mass, line and sometimes a weight tied at the tip. Not products.
 */
import type { BendRequest, Side } from '../../src/engine/bend/bend.ts';
import type { Rod } from '../../src/engine/bend/rod.ts';

export interface RealisticRod {
  name: string;
  request: BendRequest;
}

interface Draft {
  name: string;
  /** In front of the clamp. */
  lengthM: number;
  outsideTipM: number;
  outsideButtM: number;
  wallM: number;
  modulusPa: number;
  densityKgPerM3: number;
  /** Natural curvature at the clamp and at the tip. */
  bowPerM: [number, number];
  ferrulesFromTipM: number[];
  buttDegrees: number;
  side: Side;
  guides: { count: number; firstM: number; growth: number; heightsM: [number, number] };
  reel: { alongM: number; offsetM: number };
  tensionN: number;
  pullDegrees: number;
  tiedKg: number;
}

const carbon = { modulusPa: 105e9, densityKgPerM3: 1530 };
const glass = { modulusPa: 38e9, densityKgPerM3: 1900 };

const drafts: Draft[] = [
  {
    name: 'four-piece fly rod, 9 ft, 5-weight',
    ...{ lengthM: 2.5, outsideTipM: 0.0017, outsideButtM: 0.0098, wallM: 0.00048, ...carbon },
    ...{ bowPerM: [0.004, -0.02], ferrulesFromTipM: [0.66, 1.32, 1.98], buttDegrees: 30, side: 'under' },
    guides: { count: 10, firstM: 0.115, growth: 1.11, heightsM: [0.004, 0.011] },
    ...{ reel: { alongM: -0.16, offsetM: 0.05 }, tensionN: 4.9, pullDegrees: -90, tiedKg: 0 },
  },
  {
    name: 'two-piece fly rod of glass, 7 ft 6 in, 4-weight',
    ...{ lengthM: 2.1, outsideTipM: 0.0021, outsideButtM: 0.0098, wallM: 0.0009, ...glass },
    ...{ bowPerM: [0, 0.015], ferrulesFromTipM: [1.12], buttDegrees: 0, side: 'under' },
    guides: { count: 9, firstM: 0.11, growth: 1.12, heightsM: [0.004, 0.01] },
    ...{ reel: { alongM: -0.14, offsetM: 0.045 }, tensionN: 0.1, pullDegrees: -90, tiedKg: 0.1 },
  },
  {
    name: 'spinning rod, 7 ft',
    ...{ lengthM: 1.75, outsideTipM: 0.0019, outsideButtM: 0.0115, wallM: 0.0007, ...carbon },
    ...{ bowPerM: [0, 0], ferrulesFromTipM: [], buttDegrees: 45, side: 'under' },
    guides: { count: 8, firstM: 0.1, growth: 1.22, heightsM: [0.006, 0.034] },
    ...{ reel: { alongM: 0.02, offsetM: 0.08 }, tensionN: 15, pullDegrees: -70, tiedKg: 0 },
  },
  {
    name: 'casting rod, 6 ft 6 in, guides on top',
    ...{ lengthM: 1.6, outsideTipM: 0.002, outsideButtM: 0.0112, wallM: 0.0008, ...carbon },
    ...{ bowPerM: [-0.005, 0.01], ferrulesFromTipM: [], buttDegrees: 10, side: 'over' },
    guides: { count: 9, firstM: 0.09, growth: 1.16, heightsM: [0.0055, 0.012] },
    ...{ reel: { alongM: 0.01, offsetM: 0.03 }, tensionN: 8, pullDegrees: -60, tiedKg: 0 },
  },
  {
    name: 'surf rod, 12 ft',
    ...{ lengthM: 2.9, outsideTipM: 0.0028, outsideButtM: 0.019, wallM: 0.0011, ...carbon },
    ...{ bowPerM: [0.003, 0.003], ferrulesFromTipM: [1.8], buttDegrees: 60, side: 'under' },
    guides: { count: 8, firstM: 0.14, growth: 1.35, heightsM: [0.008, 0.045] },
    ...{ reel: { alongM: 0, offsetM: 0.1 }, tensionN: 30, pullDegrees: -30, tiedKg: 0 },
  },
  {
    name: 'two-handed fly rod, 13 ft, 8-weight',
    ...{ lengthM: 3.5, outsideTipM: 0.0022, outsideButtM: 0.0135, wallM: 0.00065, ...carbon },
    ...{ bowPerM: [-0.002, 0.01], ferrulesFromTipM: [1, 2, 3], buttDegrees: 45, side: 'under' },
    guides: { count: 12, firstM: 0.13, growth: 1.1, heightsM: [0.005, 0.015] },
    ...{ reel: { alongM: -0.25, offsetM: 0.06 }, tensionN: 7, pullDegrees: -60, tiedKg: 0.05 },
  },
];

export const realisticRods: RealisticRod[] = drafts.map((draft) => ({
  name: draft.name,
  request: requestOf(draft),
}));

function requestOf(draft: Draft): BendRequest {
  const places = [0];
  for (let k = 1; k < draft.guides.count; k++) {
    places.push(places[k - 1] + draft.guides.firstM * draft.guides.growth ** (k - 1));
  }
  const guides = places.map((fromTipM, k) => {
    const [tipM, buttM] = draft.guides.heightsM;
    const share = (k / (draft.guides.count - 1)) ** 2;
    return { fromTipM, ringHeightM: tipM + (buttM - tipM) * share, side: draft.side };
  });
  const masses = guides.map(({ fromTipM, ringHeightM }) => ({ fromTipM, massKg: 2e-4 + 0.06 * ringHeightM }));
  if (draft.tiedKg > 0) masses.push({ fromTipM: 0, massKg: draft.tiedKg });
  return {
    rod: rodOf(draft),
    buttAngleRad: (draft.buttDegrees * Math.PI) / 180,
    masses,
    guides,
    reel: draft.reel,
    load: { line: { tensionN: draft.tensionN, pullAngleRad: (draft.pullDegrees * Math.PI) / 180 } },
  };
}

function rodOf({ lengthM, bowPerM, ...draft }: Draft): Rod {
  const rows = 400;
  const stations = Array.from({ length: rows + 1 }, (_, i) => (lengthM * i) / rows);
  const between = (tip: number, butt: number, at: number) => tip + (butt - tip) * (at / lengthM);
  const outside = (at: number) => between(draft.outsideTipM, draft.outsideButtM, at);
  const inside = (at: number) => Math.max(0, outside(at) - 2 * draft.wallM);
  /** A sleeve 60 mm long adds 60 % of stiffness and 80 % of mass, with soft ends. */
  const ferrule = (at: number) =>
    draft.ferrulesFromTipM.reduce((sum, place) => sum + Math.exp(-(((at - place) / 0.035) ** 4)), 0);
  return {
    lengthM,
    stiffness: stations.map((fromTipM) => {
      const area = outside(fromTipM) ** 4 - inside(fromTipM) ** 4;
      return { fromTipM, EINm2: ((draft.modulusPa * Math.PI) / 64) * area * (1 + 0.6 * ferrule(fromTipM)) };
    }),
    massPerLength: stations.map((fromTipM) => {
      const area = outside(fromTipM) ** 2 - inside(fromTipM) ** 2;
      return {
        fromTipM,
        kgPerM: ((draft.densityKgPerM3 * Math.PI) / 4) * area * (1 + 0.8 * ferrule(fromTipM)),
      };
    }),
    restCurvature: [
      { fromTipM: 0, perM: bowPerM[1] },
      { fromTipM: lengthM, perM: bowPerM[0] },
    ],
  };
}
