/** A slip in few words with its place, what would show whether it happened, and the numbers in both. */
import { type Doubt, stationOf } from './doubts.ts';
import type { FitProblem } from './most-probable.ts';
import type { Suspicion } from './suspicion.ts';

/** `. Or, nearly as likely, the stations of test 2 are off by 25.1 mm. To tell them apart: …`; empty without one. */
export function orElse(
  suspicion: Suspicion,
  alternatives: readonly Suspicion[],
  problem: FitProblem,
): string {
  const [other] = alternatives;
  if (!other) return '';
  const checks = [checkOf(suspicion, problem), checkOf(other, problem)];
  const look = checks[0] === checks[1] ? checks[0] : checks.join('; ');
  return `. Or, nearly as likely, ${inShort(other, problem)}. To tell them apart: ${look}`;
}

function inShort({ doubt, amplitude }: Suspicion, problem: FitProblem): string {
  const { data, request } = problem.model;
  const test = testName(doubt.test);
  switch (doubt.kind) {
    case 'stretch':
      return `the curve strays ${mm(Math.abs(amplitude))}`;
    case 'reading': {
      const datum = data[doubt.data[0]];
      const at = stationOf(request.setups, datum);
      if (datum.kind === 'station')
        return `the second measurement of the flag at ${mm(at)} is off by ${mm(Math.abs(amplitude))}`;
      const where = at === 0 ? 'at the tip' : `${mm(at)} from the tip`;
      return `the reading ${where} in ${test} is off by ${mm(Math.abs(amplitude))}`;
    }
    case 'flag':
      return `the flag at ${mm(stationOf(request.setups, data[doubt.data[0]]))} stands ${mm(Math.abs(amplitude))} off`;
    case 'stations':
      return `the stations of ${test} are off by ${mm(Math.abs(amplitude))}`;
    case 'slip':
      return `the clamp slipped by ${degrees(Math.abs(amplitude))} before ${test}`;
    case 'load':
      return `the weight of ${test} is off by ${Math.abs(100 * amplitude).toFixed(0)} %`;
    case 'edge':
      return `another edge was read${doubt.test < 0 ? '' : ` in ${test}`}`;
    case 'mass':
      return 'a mass is off';
  }
}

function checkOf({ doubt }: Suspicion, { model: { data, request } }: FitProblem): string {
  const test = testName(doubt.test);
  switch (doubt.kind) {
    case 'stretch':
      return `read ${test} again there`;
    case 'reading':
      if (data[doubt.data[0]].kind !== 'station') return `read ${test} again there`;
      return flagCheck(doubt, { data, request });
    case 'flag':
      return flagCheck(doubt, { data, request });
    case 'stations':
      return `measure the stations of ${test} again, the tape hooked at the tip`;
    case 'slip':
      return `hang the weight of ${testName(doubt.test - 1)} again and read the tip: another drop than before means the clamp slipped before ${test}`;
    case 'load':
      return `put the weight of ${test} on a scale`;
    case 'edge':
      return 'look which edge of the blank is read';
    case 'mass':
      return 'weigh again';
  }
}

function flagCheck({ data: [d] }: Doubt, { data, request }: Pick<FitProblem['model'], 'data' | 'request'>) {
  return `measure the station of the flag at ${mm(stationOf(request.setups, data[d]))} again`;
}

export function testName(test: number): string {
  return `test ${test + 1}`;
}

export function mm(metres: number): string {
  const value = 1000 * metres;
  return `${value.toFixed(Math.abs(value) < 100 ? 1 : 0)} mm`;
}
export function grams(kg: number): string {
  return `${Number((1000 * kg).toPrecision(4))} g`;
}
export function degrees(rad: number): string {
  return `${((180 / Math.PI) * rad).toFixed(2)}°`;
}
