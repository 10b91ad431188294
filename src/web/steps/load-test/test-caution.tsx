import { Caution } from '../../parts/cautions/caution.tsx';

/** What the bench cautions do not say yet: the angle, the rate, and lines overhead. */
export function TestCaution() {
  return (
    <Caution
      about="load-test"
      brief="A blank can shatter. Outdoors keep 30 m (100 ft) from power lines."
      source="Bench handling: common practice, no standard. Overhead lines: 30 m from fishing notices of the UK’s Energy Networks Association and its operators; working near them: HSE guidance note GS6, “Avoiding danger from overhead power lines”; carbon rods: notice of the Finnish safety authority (Tukes). From memory of these texts."
    >
      A carbon blank can shatter under load. Never pull the tip past a right angle to the butt. Nobody stands
      in line with the tip or under the weight. Outdoors look up first: carbon conducts, and a line can arc to
      a rod that does not touch it. Keep at least 30 m (100 ft) from overhead lines, and take the rod down
      when thunder is heard. Distances differ by country and voltage: the local operator’s rule goes before.
    </Caution>
  );
}
