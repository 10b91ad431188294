/** What the next best reading is asked of one bench. */
import type { Bench } from '../bench/bench.ts';
import type { FitRequest } from '../stiffness/request.ts';
import type { OptionsQuestion } from '../sureness/reading-option.ts';

/** The set-up read last is taken to stand still, with its clamp as high as it was. */
export function standingSetup(bench: Bench): Pick<OptionsQuestion, 'standing' | 'clampHeightM'> {
  const read = bench.setups.filter((setup) => wasRead(setup));
  const last = read.at(-1);
  if (!last || last.kind === 'span') return {};
  return { standing: read.length - 1, clampHeightM: last.clampHeightM };
}

function wasRead(setup: Bench['setups'][number]): boolean {
  return setup.kind === 'span'
    ? setup.tests.length > 0
    : setup.tests.some(({ readings }) => readings.length > 0);
}

/** Before a weight was hung there is no fit to ask. */
export function wasLoaded({ setups }: FitRequest): boolean {
  return setups.some(({ tests }) =>
    tests.some((test) =>
      'massKg' in test ? test.massKg > 0 : (test.hung ?? []).some(({ massKg }) => massKg > 0),
    ),
  );
}
