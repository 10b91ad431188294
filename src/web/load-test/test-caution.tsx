import { Caution } from '../shell/caution.tsx';

/** What the bench cautions do not say yet: the angle, the rate, and lines overhead. */
export function TestCaution() {
  return (
    <Caution source="Bench handling: common practice, no standard. Overhead lines: safety notices of European network operators and angling bodies; distances differ by country and voltage, the operator’s rule goes before.">
      A carbon blank can shatter under load. Never pull the tip past a right angle to the butt. Nobody stands
      in line with the tip or under the weight. Outdoors look up first: carbon conducts, and a line can arc to
      a rod that does not touch it. Keep at least 30 m from overhead lines, and take the rod down when thunder
      is heard.
    </Caution>
  );
}
