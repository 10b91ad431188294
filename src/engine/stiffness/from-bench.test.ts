import { describe, expect, it } from 'vitest';
import type { Bench, ClampSetup } from '../bench/bench.ts';
import { checkBench } from '../bench/check.ts';
import { fourPiece } from '../bench/test-bench.ts';
import { fitStiffness } from './fit.ts';
import { benchFit, recordPath } from './from-bench.ts';

describe('the bench as the fit takes it', () => {
  it('gives sections as stations, the clamp where it stood, and each reading once', () => {
    const { request } = benchFit(fourPiece());
    expect(request.blank.lengthM).toBeCloseTo(2.745, 12);
    expect(request.blank.sections?.[1].fromTipM).toBeCloseTo(0.69, 12);
    expect(request.blank.sections?.[0].balanceFromTipM).toBeCloseTo(0.42, 12);
    expect(request.blank).not.toHaveProperty('massKg');
    expect(request.setups).toHaveLength(1);
    expect(request.setups[0]).toMatchObject({
      clampFromTipM: 2.59,
      tests: [{ hung: [] }, { hung: [{ massKg: 0.1 }] }],
    });
  });
  it('falls back on the whole mass where a section was not weighed', () => {
    const bench = fourPiece();
    bench.sections[2].massKg = undefined;
    expect(benchFit(bench).request.blank).toMatchObject({ massKg: 0.0405 });
    expect(benchFit(bench).request.blank).not.toHaveProperty('sections');
  });
  it('leaves out tests without readings', () => {
    expect(benchFit(withoutFirstReadings()).request.setups[0].tests).toHaveLength(1);
  });
  it.each([
    ['setups[0].tests[0].readings[1].dropM', 'readings/r3/drop'],
    ['setups[0].tests[0]', 'tests/t1/hung'],
    ['setups[0]', 'setups/s/clampFromTip'],
    ['setups[0].flagChecks[1]', 'flagChecks/f2/fromClamp'],
    ['blank.massKg', 'blank/-/mass'],
    ['blank.sections[1].massKg', 'sections/ID1/mass'],
    ['blank.sections[0].balanceFromTipM', 'sections/ID0/balanceFromOwnTip'],
    ['blank.diameters[1].outsideM', 'diameters/DIAMETER/outside'],
    ['blank.sections[99].massKg', 'blank.sections[99].massKg'],
  ])('what is odd at %s of the fit is shown at the field %s', (path, field) => {
    const bench = withoutFirstReadings();
    const expected = field
      .replace(/ID(\d)/, (_, index) => bench.sections[Number(index)].id)
      .replace('DIAMETER', bench.sections[0].diameters[1].id);
    expect(recordPath(benchFit(bench), path)).toBe(expected);
  });
});

it('does without a second tape that reaches beyond the tip, and names it at its field', () => {
  const bench = withoutFirstReadings();
  const [good, bad] = (bench.setups[0] as ClampSetup).flagChecks ?? [];
  bad.fromClampM = 26;
  expect(benchFit(bench).request.setups[0]).toMatchObject({
    flagChecks: [{ fromTipM: good.fromTipM, fromClampM: good.fromClampM }],
  });
  expect(fitStiffness(benchFit(bench).request).answer.status).toBe('converged');
  const found = checkBench(bench).filter(({ path }) => path.startsWith('flagChecks'));
  expect(found).toMatchObject([{ path: 'flagChecks/f2/fromClamp', severity: 'doubt' }]);
});

function withoutFirstReadings(): Bench {
  const bench = fourPiece();
  const setup = bench.setups[0] as ClampSetup;
  setup.tests[0].readings = [];
  setup.flagChecks = ['f1', 'f2'].map((id, index) => ({
    id,
    fromTipM: 0.3 + index,
    fromClampM: 2.29 - index,
  }));
  return bench;
}
