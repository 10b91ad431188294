/** What is odd, as data, at the row where it stands. */

import type { Finding } from '../finding.ts';
import { stationOf } from './doubts.ts';
import { type Explained, isCarried, type Named } from './explanation.ts';
import { fitFound } from './fit-kinds.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { sayStandSlip, standFinding } from './say-stand.ts';
import { otherwise } from './slip-parts.ts';
import { isOfStand } from './stand-trials.ts';

export function findingsOf(
  { named, request }: Explained,
  problem: FitProblem,
  best: MostProbable,
): Finding[] {
  let extra = 0;
  const smeared = smearedPictures(named, problem);
  const said = named.flatMap((entry): Finding[] => {
    if (entry.kind === 'swap') return swapFindings(entry.pair, request);
    if (entry.kind === 'test') return [testFinding(entry, request)];
    if (entry.kind === 'stand') return sayStandSlip(entry.slip, problem, best);
    const { doubt } = entry.suspicion;
    const [d] = doubt.data;
    const amplitude = isCarried(doubt)
      ? best.z[problem.unknowns.extra.start + extra++]
      : problem.model.data[d].value - best.prediction.value[d];
    const isSmear = doubt.kind === 'stretch' && smeared.has(doubt.setup);
    return isSmear ? [] : doubtFindings(entry, amplitude, problem);
  });
  return [...said, ...[...smeared].map(sayStillSwings)];
}

/** So many stretches that stray more in the outer share of one picture's curve than elsewhere: its tip is smeared. Judgement. */
const smear = { more: 3, share: 0.2 };

function smearedPictures(named: Explained['named'], { model: { data, request } }: FitProblem): Set<number> {
  const { lengthM } = request.blank;
  const count = new Map<number, number>();
  for (const entry of named) {
    if (entry.kind !== 'doubt' || entry.suspicion.doubt.kind !== 'stretch') continue;
    const { doubt } = entry.suspicion;
    const isOuter = stationOf(request.setups, data[doubt.data[0]]) < smear.share * lengthM;
    count.set(doubt.setup, (count.get(doubt.setup) ?? 0) + (isOuter ? 1 : -1));
  }
  return new Set([...count].flatMap(([setup, many]) => (many >= smear.more ? [setup] : [])));
}

function sayStillSwings(setup: number): Finding {
  return standFinding(`setups[${setup}].tests[0]`, 'stand/tip-smeared', { picture: setup + 1 });
}

function swapFindings(
  { setup, first, second }: Extract<Named, { kind: 'swap' }>['pair'],
  request: Explained['request'],
): Finding[] {
  const owner = request.setups[setup];
  if (owner.kind === 'span') return [];
  // the request was swapped: say the weights as they were stated
  const [firstKg, secondKg] = [owner.tests[second], owner.tests[first]].map(({ hung = [] }) =>
    hung.reduce((sum, { massKg }) => sum + massKg, 0),
  );
  const values = { firstKg, secondKg, first: first + 1, second: second + 1 };
  return [first, second].map((test) =>
    fitFound(`setups[${setup}].tests[${test}]`, 'fit/loads-swapped', values),
  );
}

function testFinding(
  { setup, test }: Extract<Named, { kind: 'test' }>,
  { setups }: Explained['request'],
): Finding {
  const path = `setups[${setup}].tests[${test}]`;
  return isOfStand(setups[setup])
    ? standFinding(path, 'stand/other-blank', { picture: setup + 1 })
    : fitFound(path, 'fit/test-left-out', { test: test + 1 });
}

/** A stretch that strays by less is carried and not said: beside it nobody sees where the drawn curve leaves the blank. */
const leastStrayM = 0.0015;

function doubtFindings(
  { suspicion, alternatives }: Extract<Named, { kind: 'doubt' }>,
  amplitude: number,
  problem: FitProblem,
): Finding[] {
  const { doubt } = suspicion;
  const { data, request } = problem.model;
  const or = otherwise(suspicion, alternatives, problem);
  const path = `setups[${doubt.setup}].tests[${doubt.test}]`;
  const test = doubt.test + 1;
  const datum = data[doubt.data[0]];
  switch (doubt.kind) {
    case 'reading':
      return [readingFinding(datum, amplitude, problem, or)];
    case 'stretch': {
      if (Math.abs(amplitude) < leastStrayM) return [];
      const values = { fromTipM: stationOf(request.setups, datum), offM: amplitude, ...or };
      return [fitFound(datum.path, 'fit/curve-strays', values)];
    }
    case 'mass':
      return [massFinding(datum, amplitude)];
    case 'flag':
      return doubt.data.map((d) => {
        const values = { fromTipM: stationOf(request.setups, data[d]), offM: amplitude, ...or };
        return fitFound(data[d].path, 'fit/flag-off', values);
      });
    case 'stations':
      return [fitFound(path, 'fit/flags-off', { test, offM: amplitude, ...or })];
    case 'slip':
      return [fitFound(path, 'fit/clamp-slipped', { test, tiltRad: amplitude, ...or })];
    case 'load':
      return [fitFound(path, 'fit/load-odd', { test, share: amplitude, ...or })];
    case 'sway':
      return [standFinding(path, 'stand/still-swings', { picture: doubt.setup + 1, offM: amplitude, ...or })];
    case 'edge': {
      const at = doubt.test < 0 ? `setups[${doubt.setup}]` : path;
      return [fitFound(at, 'fit/edge', { radii: amplitude, ...or })];
    }
  }
}

type Datum = FitProblem['model']['data'][number];

function readingFinding(
  datum: Datum,
  offM: number,
  { model: { request } }: FitProblem,
  or: ReturnType<typeof otherwise>,
): Finding {
  const { path, value, kind } = datum;
  if (kind === 'length') return fitFound(path, 'fit/curve-too-long', { excessM: value });
  if (kind === 'station') {
    const values = { fromTipM: stationOf(request.setups, datum), missM: value, ...or };
    return fitFound(path, 'fit/flag-check-odd', values);
  }
  const quantity = kind === 'sag' ? 'sag' : 'drop';
  return fitFound(path, 'fit/reading-odd', { quantity, readM: value, offM, ...or });
}

/** Of a mass, a balance point, or swings whose frequency is carried as a logarithm. */
function massFinding({ path, value, kind }: Datum, amplitude: number): Finding {
  if (kind === 'swing') {
    const [countedHz, wantedHz] = [Math.exp(value), Math.exp(value - amplitude)];
    return fitFound(path, 'fit/swings-odd', { countedHz, wantedHz });
  }
  return path.endsWith('balanceFromTipM')
    ? fitFound(path, 'fit/balance-odd', { balanceM: value })
    : fitFound(path, 'fit/mass-odd', { massKg: value });
}
