import { describe, expect, it, test } from 'vitest';
import reference from '../../../reference/thread-values.json' with { type: 'json' };
import { assembleBlank } from '../bench/assemble.ts';
import type { Section } from '../bench/bench.ts';
import { planWraps } from './plan-wraps.ts';
import { closeWrap } from './thread.ts';
import { wrapDefaults } from './wrap-choices.ts';

const rowsOf = (start: string) => {
  const rows = reference.rows.filter(({ id }) => id.startsWith(start));
  expect(rows.length).toBeGreaterThan(2);
  return rows;
};
const section = (id: string, overlapM?: number): Section => ({
  id,
  name: id,
  lengthM: 1.2,
  diameters: [],
  joint: overlapM ? { kind: 'sleeve', overlapM, gapM: 0, plugM: 0 } : undefined,
});
const blank = assembleBlank([section('tip', 0.05), section('butt')]);
const profile = [
  { fromTipM: 0, outsideM: 0.002 },
  { fromTipM: blank.lengthM, outsideM: 0.009 },
];
const guide = { name: 'snake 1', lengthM: 0.0225, feet: 2 as const, stripping: false };
const plan = (change: object = {}, stations = [0.11, 0.4, 0.8, 1.5]) =>
  planWraps({
    blank,
    profile,
    guides: stations.map((stationM, index) => ({ ...guide, id: `g${index}`, stationM })),
    gripFrontFromButtM: 0.26,
    choices: { ...wrapDefaults, ...change },
  });

test('turns and thread of a close wrap agree with the geometry worked elsewhere', () => {
  for (const { inputs, value } of rowsOf('wrap.')) {
    const { OD_mm, thread_mm, width_mm } = inputs as Record<string, number>;
    const { turns, threadM } = closeWrap(OD_mm / 1000, width_mm / 1000, thread_mm / 1000);
    expect(turns).toBeCloseTo(value[0], 5);
    expect(threadM * 1000).toBeCloseTo(value[1], 4);
  }
});

test('a turn is the length of its helix, traced point by point', () => {
  const [under, laid] = [0.004, 0.00025];
  let traced = 0;
  const at = (k: number) => {
    const angle = (2 * Math.PI * k) / 4000;
    const radius = (under + laid) / 2;
    return [radius * Math.cos(angle), radius * Math.sin(angle), (laid * k) / 4000];
  };
  for (let k = 0; k < 4000; k++) traced += Math.hypot(...at(k).map((x, axis) => x - at(k + 1)[axis]));
  expect(closeWrap(under, laid, laid).threadM).toBeCloseTo(traced, 7);
});

describe('the wraps of a rod', () => {
  it('lie on their own section, and both distances add up to its length', () => {
    const { wraps, findings } = plan();
    expect(findings).toEqual([]);
    // Tip-top, four guides of two feet, one ferrule, the check.
    expect(wraps).toHaveLength(1 + 8 + 1 + 1);
    for (const wrap of wraps) {
      expect(wrap.startFromOwnTipM + wrap.startFromOwnButtM).toBeCloseTo(1.2, 9);
      expect(wrap.endFromOwnTipM - wrap.startFromOwnTipM).toBeCloseTo(wrap.toTipM - wrap.fromTipM, 9);
    }
  });
  it('ask for one metre more thread where one metre more is laid', () => {
    const plainly = plan({ trimTurns: 0, reservePercent: 0 });
    const laid = plainly.wraps.reduce((sum, { threadM }) => sum + threadM, 0);
    expect(plainly.colours).toHaveLength(1);
    expect(plainly.colours[0].threadM).toBeCloseTo(
      laid + (0.24 + 14 * (0.0254 / 165)) * plainly.wraps.length,
      9,
    );
    const reserved = plan({ trimTurns: 0, reservePercent: 50 });
    expect(reserved.colours[0].threadM).toBeCloseTo(1.5 * plainly.colours[0].threadM, 9);
  });
  it('take the trim from the main colour, not on top of it', () => {
    const total = (list: ReturnType<typeof plan>) =>
      list.wraps.reduce((sum, wrap) => sum + wrap.threadM + wrap.trimThreadM, 0);
    expect(total(plan({ trimTurns: 6 }))).toBeCloseTo(total(plan({ trimTurns: 0 })), 9);
  });
  it('run their tags under the lock turns at both ends: more turns, more thread, none on the blank', () => {
    const [few, many] = [
      plan({ lockTurns: 5, reservePercent: 0 }),
      plan({ lockTurns: 9, reservePercent: 0 }),
    ];
    const main = (found: ReturnType<typeof plan>) => found.colours[0].threadM;
    expect(main(many) - main(few)).toBeCloseTo(8 * (0.0254 / 165) * few.wraps.length, 9);
    expect(many.wraps).toEqual(few.wraps);
  });
  it('are longer from the tip section to the butt section, or as the builder wants them there', () => {
    const footWraps = { ...wrapDefaults.footWraps, tipM: 0.007, buttM: 0.009 };
    const widths = (found: ReturnType<typeof plan>) =>
      found.wraps.filter(({ kind }) => kind === 'foot').map(({ fromTipM, toTipM }) => toTipM - fromTipM);
    const bySection = widths(plan({ footWraps }));
    expect(bySection.slice(0, 6).every((width) => Math.abs(width - 0.007) < 1e-9)).toBe(true);
    expect(bySection.slice(6).every((width) => Math.abs(width - 0.009) < 1e-9)).toBe(true);
    const own = widths(plan({ footWraps: { ...footWraps, ownM: [undefined, 0.005] } }));
    expect(own[0]).toBeCloseTo(0.007, 9);
    expect(own[7]).toBeCloseTo(0.005, 9);
  });
  it('bind the keeper on too, in front of the check', () => {
    const found = planWraps({
      blank,
      profile,
      guides: [],
      keeper: {
        name: 'keeper',
        stationM: blank.lengthM - 0.26 - 0.03,
        lengthM: 0.022,
        feet: 2,
        stripping: false,
      },
      gripFrontFromButtM: 0.26,
      choices: wrapDefaults,
    });
    expect(found.findings).toEqual([]);
    expect(found.wraps.map(({ id }) => id)).toEqual([
      'tip-top',
      'ferrule/tip',
      'keeper/tip',
      'keeper/butt',
      'check',
    ]);
  });
  it('count the underwrap in its own colour and leave the thread over it alone', () => {
    const found = plan({ underwrap: true, reservePercent: 0, trimTurns: 0, tagPerWrapM: 0, lockTurns: 0 });
    const { length } = found.colours;
    expect(found.colours.map(({ part }) => part)).toEqual(['thread', 'underwrap']);
    const laid = found.wraps.reduce((sum, { threadM }) => sum + threadM, 0);
    expect(length && found.colours[0].threadM + found.colours[1].threadM).toBeCloseTo(laid, 9);
    const under = found.wraps.find(({ underwrapM }) => underwrapM > 0);
    expect(under?.underThreadM).toBeCloseTo(
      closeWrap(under?.outsideM ?? 0, under?.underwrapM ?? 0, wrapDefaults.laidWidthM).threadM,
      9,
    );
  });
  it('bind a ferrule over as many diameters as wanted, and as far off its edge', () => {
    const found = plan({ ferruleDiameters: 2, ferruleEdgeM: 0.002 });
    const ferrule = found.wraps.find(({ kind }) => kind === 'ferrule');
    expect((ferrule?.toTipM ?? 0) - (ferrule?.fromTipM ?? 0)).toBeCloseTo(
      2 * (0.002 + (0.007 * 1.2) / blank.lengthM),
      6,
    );
    expect(1.2 - (ferrule?.toTipM ?? 0)).toBeCloseTo(0.002, 9);
  });
  it('take more thread with an underwrap', () => {
    const under = plan({ underwrap: true });
    expect(under.wraps[1].threadM).toBeGreaterThan(2 * plan().wraps[1].threadM);
    expect(under.wraps[1].underwrapM).toBeCloseTo(under.wraps[1].toTipM - under.wraps[1].fromTipM + 0.016, 9);
  });
});

describe('what cannot be wrapped is named', () => {
  const pathsOf = (found: ReturnType<typeof plan>) => found.findings.map(({ path }) => path);
  it('no turns counted', () => {
    expect(pathsOf(plan({ laidWidthM: Number.POSITIVE_INFINITY }))).toEqual(['wraps/-/turnsCounted']);
    expect(pathsOf(plan({ laidWidthM: 0.002 }))[0]).toBe('wraps/-/turnsCounted');
  });
  it('a wrap too short to lock both its tags', () => {
    expect(pathsOf(plan({ lockTurns: 40 }))).toEqual(['wraps/-/tipWrap']);
    expect(plan({ lockTurns: 40 }).findings).toMatchObject([
      { code: 'wraps/cannot-lock', values: { wrap: 'tip-top', lockTurns: 40 } },
    ]);
  });
  it('a signature under the grip, or under a wrap', () => {
    expect(pathsOf(plan({ signature: { fromButtM: 0.2, lengthM: 0.1 } }))).toEqual(['wraps/-/signatureFrom']);
    const checkedM = blank.lengthM - 1.5 - 0.02;
    expect(plan({ signature: { fromButtM: checkedM, lengthM: 0.1 } }).findings[0]).toMatchObject({
      code: 'wraps/over-signature',
      values: { wrap: expect.stringMatching(/^foot\/4\//) },
    });
    expect(pathsOf(plan({ signature: { fromButtM: 0.3, lengthM: 0.1 } }))).toEqual([]);
  });
  it('a guide whose wrap runs over the edge of its section, or into the next wrap', () => {
    expect(pathsOf(plan({}, [0.11, 1.195]))).toContain('guides/g1/wrapLength');
    expect(plan({}, [0.4, 0.41]).findings[0]).toMatchObject({ code: 'wraps/overlap' });
  });
});
