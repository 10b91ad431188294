import type { StrainLevels } from '../../../engine/bench/strain.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { strainWords } from '../../../words/strain.ts';
import { Caution } from './caution.tsx';

interface LoadTestCautionProps {
  names: readonly string[];
  loads: readonly RuledLoad[];
  strain: StrainLevels;
  /** The builder's word that the ferrules are wrapped or tightly bound. */
  ferrulesBound: boolean;
}

/** What to mind before the weight is really hung; the strain that is to be expected beside its level. */
export function LoadTestCaution({ names, loads, strain, ferrulesBound }: LoadTestCautionProps) {
  const percent = loads.map((load) => load.strain.percent);
  const beyond = strainWords(names, percent, strain);
  return (
    <Caution
      about="load"
      grade={beyond}
      brief={beyond || 'Eyes covered, out of the rod’s plane, weights low.'}
      grave={beyond !== ''}
      source={`Handling: common practice of bench load tests, no standard. Strain levels: ${strain.own ? 'your own' : 'judgement by material from published strengths of laminates (0.56 % for standard carbon, doi 10.2478/ama-2025-0022; 0.3 % for the stiffest, Zweben 1989)'}.`}
    >
      Before a weight is hung: eye protection on, stand out of the rod’s plane and never in line with the tip,
      hang it gently and in stages, keep it low over the floor and clear of feet. The blank maker’s own limits
      go before; no level here promises that a blank will hold.
      {!ferrulesBound &&
        ' Wrap or tightly bind sleeve ferrules before heavy loads: unwrapped ones can split.'}
      {!beyond && ` Caution level of the surface strain: ${strain.cautionPercent} %.`}
    </Caution>
  );
}
