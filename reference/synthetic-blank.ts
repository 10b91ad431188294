/**
 * The two synthetic blanks of check-values.json (rows `blank.*.def`; invented, not products): outside diameter
 * and wall linear from butt to tip, EI = E π/64 (OD⁴ - ID⁴), mass per length ρ π/4 (OD² - ID²).
 */
import type { Rod } from '../src/engine/bend/rod.ts';
import { checkRowsOf } from './check-values.ts';

export type SyntheticBlankName = 'SYN-FLY9' | 'SYN-GLASS6';

export interface SyntheticBlank {
  /** In front of the clamp. */
  rod: Rod;
  lengthM: number;
  clampM: number;
  outsideM(fromTipM: number): number;
}

interface Definition {
  L_m: number;
  clamp_m: number;
  OD_butt_tip_m: [number, number];
  wall_butt_tip_m: [number, number];
  E_Pa: number;
  rho: number;
}

/** Tables with `rows` + 1 rows; their linear interpolation errs by about 3/rows² of EI near the tip. */
export function syntheticBlank(name: SyntheticBlankName, rows = 2000): SyntheticBlank {
  const definition = checkRowsOf(`blank.${name}.def`)[0].inputs as unknown as Definition;
  const outsideM = (fromTipM: number) => fromButtToTip(definition.OD_butt_tip_m, definition, fromTipM);
  const insideM = (fromTipM: number) =>
    Math.max(0, outsideM(fromTipM) - 2 * fromButtToTip(definition.wall_butt_tip_m, definition, fromTipM));
  const freeM = definition.L_m - definition.clamp_m;
  const stations = Array.from({ length: rows + 1 }, (_, i) => (freeM * i) / rows);
  return {
    lengthM: definition.L_m,
    clampM: definition.clamp_m,
    outsideM,
    rod: {
      lengthM: freeM,
      stiffness: stations.map((fromTipM) => ({
        fromTipM,
        EINm2: ((definition.E_Pa * Math.PI) / 64) * (outsideM(fromTipM) ** 4 - insideM(fromTipM) ** 4),
      })),
      massPerLength: stations.map((fromTipM) => ({
        fromTipM,
        kgPerM: ((definition.rho * Math.PI) / 4) * (outsideM(fromTipM) ** 2 - insideM(fromTipM) ** 2),
      })),
    },
  };
}

function fromButtToTip([butt, tip]: [number, number], { L_m }: Definition, fromTipM: number): number {
  return tip + ((butt - tip) * fromTipM) / L_m;
}
