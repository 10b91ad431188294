import { commonSigmaM } from './bench-model.ts';
import type { Doubt } from './doubts.ts';
import type { Named } from './explanation.ts';
import type { PreparedRequest, PreparedSetup } from './prepared-request.ts';

/** A point cannot be further from the line through the clamp than along the blank; a tenth is left for error. */
export function impossibleReadings({ blank, setups }: PreparedRequest): Named[] {
  let datum = 0;
  return setups.flatMap((setup, s) => {
    const first = datum;
    datum += dataOf(setup);
    if (setup.kind === 'span' || setup.curve) return [];
    let d = first - 1;
    return setup.tests.flatMap(({ readings, sigmaM = commonSigmaM }, t) =>
      readings.flatMap(({ fromTipM, dropM }): Named[] => {
        d++;
        const reach = Math.max(0, (setup.clampFromTipM ?? blank.lengthM) - fromTipM);
        return Math.abs(dropM) <= 1.1 * reach + 6 * sigmaM ? [] : [impossible(d, s, t, dropM)];
      }),
    );
  });
}

function dataOf(setup: PreparedSetup): number {
  if (setup.kind === 'span') return setup.tests.length;
  const readings = setup.tests.reduce((sum, test) => sum + test.readings.length, 0);
  return setup.curve ? readings + 1 : readings;
}

function impossible(datum: number, setup: number, test: number, dropM: number): Named {
  const pattern = [{ datum, amount: 1 }];
  const doubt: Doubt = { kind: 'reading', data: [datum], setup, test, pattern, sigma: 1 };
  const suspicion = { doubt, gain: Number.POSITIVE_INFINITY, amplitude: dropM };
  return { kind: 'doubt', suspicion, alternatives: [] };
}
