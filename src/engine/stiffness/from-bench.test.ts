import { describe, expect, it } from 'vitest';
import type { ClampSetup } from '../bench/bench.ts';
import { fourPiece } from '../bench/test-bench.ts';
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
  it('leaves out tests without readings and leads findings back to their rows', () => {
    const bench = fourPiece();
    (bench.setups[0] as ClampSetup).tests[0].readings = [];
    const { request, rows } = benchFit(bench);
    expect(request.setups[0].tests).toHaveLength(1);
    expect(recordPath(rows, 'setups[0].tests[0].readings[1].dropM')).toBe('readings/r3/drop');
    expect(recordPath(rows, 'setups[0].tests[0]')).toBe('tests/t1');
    expect(recordPath(rows, 'setups[0]')).toBe('setups/s');
    expect(recordPath(rows, 'blank.massKg')).toBe('blank.massKg');
  });
});
