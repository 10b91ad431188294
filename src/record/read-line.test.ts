import { describe, expect, test } from 'vitest';
import { sentenceOf } from '../words/sentence.ts';
import { shopWriter } from '../words/writer.ts';
import { readBuildFile } from './file-read.ts';
import { readBuild } from './read-build.ts';

const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
const g = (value: number) => ({ si: value / 1000, text: `${value} g` });

function read(
  rodKind: string,
  rest: { line?: object; handle?: object; layout?: object; about?: object } = {},
) {
  const build = {
    about: { rodKind, ...rest.about },
    sections: [{ id: 's', order: 1, length: mm(2134), mass: g(60) }],
    diameters: [0, 2134].map((at, i) => {
      return { id: `d${i}`, section: 's', fromOwnTip: mm(at), outside: mm(i === 0 ? 2 : 12) };
    }),
    handle: { gripFront: mm(400), reelFromButt: mm(318), ...rest.handle },
    line: rest.line ?? {},
    layout: rest.layout ?? {},
  };
  const text = JSON.stringify({ format: 'fairbend build', version: 1, build });
  const file = readBuildFile(text, '2026-01-01T00:00:00Z');
  if (file.status === 'refused') throw new Error(file.findings[0].message);
  return readBuild(file.build.state);
}
const codes = (reading: ReturnType<typeof read>) =>
  reading.findings.map(({ path, code }) => `${path} ${code}`);

describe('the line of a rod', () => {
  test('a fly rod has none, whatever its record says', () => {
    const reading = read('fly', { line: { lipDiameter: mm(46), test: g(4500) } });
    expect(reading.choices?.line).toBeUndefined();
    expect(reading.choices?.limits.firstLineAngleRad).toBeUndefined();
  });

  test('a spinning rod’s spool has its lip, and a typical tilt that says so', () => {
    const { choices } = read('spinning', { line: { lipDiameter: mm(46), test: g(4500) } });
    expect(choices?.line?.reel).toMatchObject({
      kind: 'fixed spool',
      lipDiameterM: 0.046,
      tiltIs: 'typical',
    });
    expect(choices?.line?.dragKg).toBeCloseTo(0.3 * 4.5, 9);
    expect(choices?.side).toBe('under');
  });

  test('two sightings stand before a typed tilt, and put the reel where they meet its lip', () => {
    const line = {
      tilt: { si: 0.1, text: '' },
      nearAt: mm(500),
      nearHeight: mm(45),
      farAt: mm(900),
      farHeight: mm(25),
    };
    const { bench, choices, assumed } = read('spinning', { line });
    // blank 2 to 12 mm over 2134 mm: 1634 and 1234 mm from the tip it is 4.83 and 3.89 mm thick, halved and added
    const fall = (45 + 4.829 - 25 - 3.891) / 400;
    expect(choices?.line?.reel).toMatchObject({ tiltIs: 'sighted' });
    const reel = choices?.line?.reel;
    expect(reel?.kind === 'fixed spool' && Math.tan(reel.tiltRad)).toBeCloseTo(fall, 4);
    expect(bench?.handle.reelOffsetM).toBeCloseTo((45 + 4.829 + fall * 182) / 1000, 5);
    expect(assumed.map(({ path }) => path)).not.toContain('handle/-/reelOffset');
  });

  test('a surf rod with its reel on top has a level-wind and its guides on top', () => {
    const { choices } = read('surf', { handle: { reelSide: 'over' }, line: { windWidth: mm(40) } });
    expect(choices?.line?.reel).toEqual({ kind: 'multiplier', windWidthM: 0.04 });
    expect(choices?.side).toBe('over');
  });
});

describe('what does not go together is said at its field', () => {
  const cases: [string, Parameters<typeof read>, string][] = [
    [
      'a boat rod with a fly line',
      ['boat', { about: { lineWeight: 'WF8F' } }],
      'about/-/lineWeight record/fly-line-on-rod',
    ],
    [
      'a fly line by its number alone',
      ['surf', { about: { lineWeight: '#8' } }],
      'about/-/lineWeight record/fly-line-on-rod',
    ],
    [
      'a drag over the line’s test',
      ['spinning', { line: { test: g(2000), drag: g(2500) } }],
      'line/-/drag record/drag-over-test',
    ],
    [
      'lures the wrong way about',
      ['spinning', { line: { lureLeast: g(30), lureMost: g(7) } }],
      'line/-/lureMost record/lure-order',
    ],
    [
      'half a sighting',
      ['spinning', { line: { nearAt: mm(500) } }],
      'line/-/nearHeight record/sighting-half',
    ],
    [
      'sightings side by side',
      ['spinning', { line: { nearAt: mm(500), nearHeight: mm(45), farAt: mm(540), farHeight: mm(43) } }],
      'line/-/farAt record/sightings-close',
    ],
    [
      'sightings that miss the reel',
      [
        'spinning',
        {
          handle: { reelOffset: mm(40) },
          line: { nearAt: mm(500), nearHeight: mm(45), farAt: mm(900), farHeight: mm(25) },
        },
      ],
      'handle/-/reelOffset record/sightings-off-reel',
    ],
    [
      'guides on top of a spinning rod',
      ['spinning', { layout: { guidesSide: 'over' } }],
      'layout/-/guidesSide record/reel-and-guides',
    ],
    [
      'a spool in front of its ring',
      ['spinning', { line: { lipDiameter: mm(46) }, layout: { startStripping: mm(1830) } }],
      'handle/-/reelFromButt spool/reel-past-guide',
    ],
    [
      'a first ring smaller than the knot',
      ['spinning', { layout: { knot: mm(18) } }],
      'layout/-/knot spool/ring-smaller-than-knot',
    ],
    [
      'a spindle that points away',
      ['spinning', { line: { tilt: { si: -0.03, text: '-1.7°' } } }],
      'line/-/tilt spool/axis-away',
    ],
  ];
  test.each(cases)('%s', (_, asked, expected) => {
    const found = codes(read(...asked));
    expect(found).toContain(expected);
    expect(found.length).toBe(1);
  });

  test.each([
    ['a boat rod with a fly line', /Clear it and give the line's test under Layout, or choose a fly rod/],
    [
      'a spool in front of its ring',
      /spool 12.{0,5} in, guide 11.{0,7} in\. Measure the reel again, or move the guide/,
    ],
    ['a first ring smaller than the knot', /Take a wider ring or a slimmer knot/],
  ])('%s: with the values and the remedy', (name, remedy) => {
    const [, asked] = cases.find(([one]) => one === name)!;
    expect(sentenceOf(read(...asked).findings[0], shopWriter({ system: 'inch' }))).toMatch(remedy);
  });

  test('a good spinning rod has nothing said of it', () => {
    const line = { test: g(4500), drag: g(1300), lureLeast: g(7), lureMost: g(21), lipDiameter: mm(46) };
    expect(codes(read('spinning', { line, about: { lineWeight: '8-17 lb' } }))).toEqual([]);
  });
});

test('a grip a tenth of an inch longer leaves the reel and moves the first guide by less than an inch', () => {
  for (const rodKind of ['spinning', 'casting', 'surf', 'boat', 'fly']) {
    for (let front = 300; front < 700; front += 5) {
      const at = (frontMm: number) => {
        const { choices, bench } = read(rodKind, {
          handle: { gripFront: mm(frontMm), reelFromButt: undefined },
        });
        const start = choices?.start;
        return {
          reel: bench?.handle.reelFromButtM ?? 0,
          first: start?.kind === 'rule' ? start.strippingFromTipM : 0,
        };
      };
      const [shorter, longer] = [at(front), at(front + 2.54)];
      expect(longer.reel).toBe(shorter.reel);
      expect(Math.abs(longer.first - shorter.first)).toBeLessThan(0.0254);
    }
  }
});
