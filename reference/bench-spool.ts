/** The work on the line off the reel that `npm run bench` times: an invented 7 ft spinning rod. */
import { type FirstRingQuestion, fanLimitsDefault, firstRingRegion } from '../src/engine/spool/first-ring.ts';
import { spool } from '../src/engine/spool/spool.ts';

const fixedSpool = { lipDiameterM: 0.046, alongM: -0.08, offsetM: 0.06, tiltRad: 0.051 };
const lengthM = 1.73;
const surface = [
  { fromTipM: 0, radiusM: 0.001 },
  { fromTipM: lengthM, radiusM: 0.0051 },
  { fromTipM: lengthM, radiusM: 0.012 },
];
const sizesMm = [8, 10, 12, 16, 20, 25, 30, 40, 50];
const question: FirstRingQuestion = {
  lengthM,
  source: fixedSpool,
  surface,
  next: { fromTipM: 1.11, ringHeightM: 0.02 },
  rings: sizesMm.map((mm) => ({
    name: `${mm}`,
    ringHeightM: mm / 1000 + 0.004,
    insideM: (0.67 * mm) / 1000,
  })),
  limits: fanLimitsDefault,
  axisThroughRing: true,
};

export function spoolOnce(): () => unknown {
  const rings = [1.31, 1.11, 0.91, 0.71].map((fromTipM, i) => {
    const mm = [25, 16, 10, 6][i];
    return { fromTipM, ringHeightM: mm / 1000 + 0.004, insideM: (0.67 * mm) / 1000 };
  });
  return () => spool({ lengthM, spool: fixedSpool, surface, rings });
}

export function regionOnce(): () => unknown {
  return () => firstRingRegion(question);
}
