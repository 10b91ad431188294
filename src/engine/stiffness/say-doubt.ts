/** What is odd, in the bench's words, at the row where it stands. */

import type { Finding } from '../finding.ts';
import { said } from '../finding.ts';
import { stationOf } from './doubts.ts';
import { type Explained, isCarried, type Named } from './explanation.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { sayStandSlip, standFinding } from './say-stand.ts';
import { degrees, grams, mm, orElse } from './slip-words.ts';
import { isOfStand } from './stand-trials.ts';

export function findingsOf(
  { named, request }: Explained,
  problem: FitProblem,
  best: MostProbable,
): Finding[] {
  let extra = 0;
  return named.flatMap((entry): Finding[] => {
    if (entry.kind === 'swap') return saySwap(entry.pair, request);
    if (entry.kind === 'test') return [sayTest(entry, request)];
    if (entry.kind === 'stand') return sayStandSlip(entry.slip, problem, best);
    const { doubt } = entry.suspicion;
    const [d] = doubt.data;
    const amplitude = isCarried(doubt)
      ? best.z[problem.unknowns.extra.start + extra++]
      : problem.model.data[d].value - best.prediction.value[d];
    return sayDoubt(entry, amplitude, problem);
  });
}

function saySwap(pair: Extract<Named, { kind: 'swap' }>['pair'], request: Explained['request']): Finding[] {
  const { setup, first, second } = pair;
  const owner = request.setups[setup];
  if (owner.kind === 'span') return [];
  // the request was swapped: say the weights as they were stated
  const [a, b] = [owner.tests[second], owner.tests[first]].map((test) => hungText(test.hung ?? []));
  return [first, second].map((test) =>
    said(
      `setups[${setup}].tests[${test}]`,
      `the drops noted with ${a} (test ${first + 1}) and with ${b} (test ${second + 1}) fit each other's weight: were the loads swapped? They are used the other way round; put the weights right`,
    ),
  );
}

function hungText(hung: readonly { massKg: number }[]): string {
  const kg = hung.reduce((sum, { massKg }) => sum + massKg, 0);
  return kg > 0 ? grams(kg) : 'nothing hung';
}

function sayTest(
  { setup, test }: Extract<Named, { kind: 'test' }>,
  { setups }: Explained['request'],
): Finding {
  if (isOfStand(setups[setup]))
    return standFinding(`setups[${setup}].tests[0]`, 'stand/other-blank', { picture: setup + 1 });
  return said(
    `setups[${setup}].tests[${test}]`,
    `the readings of test ${test + 1} do not agree with any blank that the others allow; it is left out. Check its weight and its unit, and read it again`,
  );
}

function sayDoubt(
  { suspicion, alternatives }: Extract<Named, { kind: 'doubt' }>,
  amplitude: number,
  problem: FitProblem,
): Finding[] {
  const { doubt } = suspicion;
  const { data, request } = problem.model;
  const or = orElse(suspicion, alternatives, problem);
  const test = `setups[${doubt.setup}].tests[${doubt.test}]`;
  switch (doubt.kind) {
    case 'reading': {
      const datum = data[doubt.data[0]];
      const { path, value, kind } = datum;
      if (kind === 'length') return [sayLength(path, value)];
      if (kind === 'station') return [sayCheck(path, stationOf(request.setups, datum), value, or)];
      const what = kind === 'sag' ? 'sag' : 'drop';
      return [
        said(
          path,
          `the ${what} of ${mm(value)} reads ${mm(Math.abs(amplitude))} ${amplitude > 0 ? 'more' : 'less'} than the others allow, about ${mm(value - amplitude)}${slipText(amplitude)} It is left out; read it again${or}`,
        ),
      ];
    }
    case 'stretch': {
      const datum = data[doubt.data[0]];
      const at = mm(stationOf(problem.model.request.setups, datum));
      return [
        said(
          datum.path,
          `about ${at} from the tip the traced curve strays ${mm(Math.abs(amplitude))} from any bend of this blank: does it follow a cable or a shadow there? Look at the overlay; until then that stretch counts for little${or}`,
        ),
      ];
    }
    case 'mass': {
      const { path, value, kind } = data[doubt.data[0]];
      if (kind === 'swing') return [saySwing(path, value, amplitude)];
      const [what, remedy] = path.endsWith('balanceFromTipM')
        ? [`the balance point, ${mm(value)} from the blank's tip,`, 'Measure it again']
        : [`the mass of ${grams(value)}`, 'Weigh it again'];
      return [
        said(
          path,
          `${what} does not agree with the other weights and balance points; it is left out. ${remedy}`,
        ),
      ];
    }
    case 'flag':
      return doubt.data.map((d) => {
        const station = stationOf(problem.model.request.setups, data[d]);
        return said(
          data[d].path,
          `the flag at ${mm(station)} reads in every test as if it stood ${mm(Math.abs(amplitude))} nearer the ${amplitude > 0 ? 'butt' : 'tip'}. Measure its station again; until then its readings count for little${or}`,
        );
      });
    case 'stations':
      return [
        said(
          test,
          `all stations of test ${doubt.test + 1} read as if they stood ${mm(Math.abs(amplitude))} nearer the ${amplitude > 0 ? 'butt' : 'tip'}: was the tape hooked elsewhere? Measure them again${or}`,
        ),
      ];
    case 'slip':
      return [
        said(
          test,
          `from test ${doubt.test + 1} on the blank points ${degrees(Math.abs(amplitude))} ${amplitude > 0 ? 'higher' : 'lower'} at the clamp than before: did the clamp slip? These tests are taken with a tilt of their own; read one of the earlier tests again${or}`,
        ),
      ];
    case 'load':
      return [
        said(
          test,
          `the drops of test ${doubt.test + 1} want ${Math.abs(100 * amplitude).toFixed(0)} % ${amplitude > 0 ? 'more' : 'less'} weight than stated. Weigh it again; until then the test says little${or}`,
        ),
      ];
    case 'edge':
      return [
        said(
          doubt.test < 0 ? `setups[${doubt.setup}]` : test,
          `the readings stand ${Math.abs(amplitude).toFixed(1)} radii too ${amplitude > 0 ? 'low' : 'high'}, most where the blank is thick: was the ${amplitude > 0 ? 'lower' : 'upper'} edge read? Say which edge was read${or}`,
        ),
      ];
  }
}

function saySwing(path: string, value: number, amplitude: number): Finding {
  const [counted, wanted] = [value, value - amplitude].map((log) => `${Math.exp(log).toFixed(2)} Hz`);
  return said(
    path,
    `the swings counted, ${counted}, do not agree with what bends: ${wanted} would. They are left out; count again, the hold pressed firm, and look where it is held`,
  );
}

function sayCheck(path: string, station: number, missM: number, or: string): Finding {
  return said(
    path,
    `the flag at ${mm(station)} was measured from the tip and from the clamp, and the two together are ${mm(Math.abs(missM))} ${missM > 0 ? 'short of' : 'more than'} what lies between them; its drops fit its distance from the tip. Measure it again from both${or}`,
  );
}

function sayLength(path: string, excessM: number): Finding {
  const which = excessM > 0 ? 'longer' : 'shorter';
  return said(
    path,
    `the traced curve is ${mm(Math.abs(excessM))} ${which} than the blank from its hold to the tip: do the marks' distances hold, and was the hold tapped where it says? The length is left out`,
  );
}

/** Where the error is about a round step of a tape. */
function slipText(amplitudeM: number): string {
  const size = Math.abs(amplitudeM);
  const steps = [
    { m: 0.0254, text: 'an inch misread?' },
    { m: 0.0508, text: 'two inches misread?' },
    { m: 0.01, text: 'a centimetre misread?' },
    { m: 0.1, text: 'ten centimetres misread?' },
    { m: 0.3048, text: 'a foot misread?' },
  ];
  const step = steps.find(({ m }) => Math.abs(size - m) < 0.16 * m);
  return step ? `: ${step.text}` : '.';
}
