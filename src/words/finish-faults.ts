import { type CoatFault, coatFaults } from '../record/fields/finish.ts';

/** What goes wrong with a coat and what is usually done about it. Common practice, no source. */
interface FinishFault {
  fault: string;
  cause: string;
  remedy: string;
}

const remedies: Record<CoatFault, Omit<FinishFault, 'fault'>> = {
  bubbles: {
    cause: 'stirred fast, cold and thick, or air from the tunnels beside the feet',
    remedy:
      'Warm the bottles, rest the mix two minutes. While it turns, a second of hair-dryer; no flame near solvents.',
  },
  sags: {
    cause: 'too much at once, or the turning stopped before it had gelled',
    remedy: 'Turn on; once it is hard, cut the run level with a new blade, scuff, and lay a thin coat.',
  },
  'thick-middle': {
    cause: 'one heavy coat',
    remedy: 'Sand level when hard, then a thin coat; next time two thin ones.',
  },
  craters: {
    cause: 'silicone, wax or skin oil on the wrap or in the brush',
    remedy: 'Let it harden, scuff, clean, and coat again with a new brush; keep softener-washed rags away.',
  },
  tacky: {
    cause: 'ratio off, not mixed to the walls of the cup, or a cold room',
    remedy: 'Keep it warm two days. Still tacky: one more coat, measured and mixed well, over it.',
  },
  haze: {
    cause: 'cold, moisture in an unfilled tunnel, or too much colour preserver',
    remedy:
      'Warm the room; fill every tunnel in the first coat. A haze under the finish means strip and wrap again.',
  },
  fuzz: {
    cause: 'loose filaments not burnished or singed',
    remedy: 'Shave flush after the first coat, sand lightly, then the second coat.',
  },
  waves: {
    cause: 'brushed on after it began to gel, or too much at once',
    remedy: 'Let it harden, sand level, then a thin coat from a fresh mix; stop as soon as it pulls strings.',
  },
  'uneven-colour': {
    cause: 'the mix thickened while it was brushed, so that later wraps soaked up less',
    remedy:
      'Test wraps first; a fresh batch for each section, or preserver on all of them before the finish.',
  },
  'crack-at-foot': {
    cause: 'a steep ramp, a foot that rocks, or a finish too hard for the bend',
    remedy: 'Cut the wrap off on top of the foot, dress the ramp, wrap and finish again.',
  },
};

export const finishFaults = Object.entries(coatFaults).map(
  ([id, fault]): FinishFault => ({ fault, ...remedies[id as CoatFault] }),
);

/** By what the record keeps: an id, or in older files the name. */
export function finishFaultOf(kept: string | undefined): FinishFault | undefined {
  return finishFaults.find(({ fault }) => fault === kept || fault === coatFaults[kept as CoatFault]);
}
