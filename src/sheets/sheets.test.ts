import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxesOverlap, textBox } from '../../test/support/text-boxes.ts';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { keepOutZones } from '../engine/bench/ferrule-zones.ts';
import { planProtocol } from '../engine/bench/protocol.ts';
import { arithmeticRule } from '../engine/bench/start-list.ts';
import { fourPiece, section, sleeveJoint } from '../engine/bench/test-bench.ts';
import { type GuideToMark, listMarks, type MarksList, marksInOrder } from '../engine/marks/marks-list.ts';
import type { TapeStep } from '../engine/units/tape-step.ts';
import { setupPlaces } from '../record/fields/readings.ts';
import { type Line, type Page, plainText, type Text, textPieces } from './drawing.ts';
import { placeInLanes } from './label-lanes.ts';
import { marksSheet } from './marks-sheet.ts';
import { correctPage, printCorrection } from './print-correction.ts';
import { protocolSheet } from './protocol-sheet.ts';
import { stripsSheet } from './strips-sheet.ts';
import { pageSvg } from './svg.ts';

const blank = assembleBlank(fourPiece().sections);
const inch = 0.0254;

function ruleGuides(): GuideToMark[] {
  const rule = arithmeticRule({ count: 10, firstFromTipM: 4.5 * inch, strippingFromTipM: 78 * inch });
  return (rule.ok ? rule.fromTipM : []).map((fromTipM) => ({ name: 'snake 1', fromTipM }));
}
function strips(tapeStep: TapeStep, paper: 'a4' | 'letter', guides = ruleGuides(), on = blank) {
  const list = listMarks(on, guides, tapeStep);
  return { list, sheet: stripsSheet(on, list, keepOutZones(on), { paper, stamp: 'test' }) };
}
/** Two sections of 1.4 m, which no sheet takes whole. */
const longTwoPiece = assembleBlank([
  section('upper', 1.4, { joint: sleeveJoint(0.06) }),
  section('lower', 1.4),
]);

/** The piece a tick stands on: where its left end stands on the section, by every line that tells it. */
function pieceUnder(page: Page, tick: Line, list: MarksList) {
  const onEdge = ({ y1Mm, y2Mm }: Line) => Math.max(y1Mm, y2Mm) === tick.y1Mm;
  const edge = lines(page, /^edge/).filter(onEdge)[0];
  const titles = texts(page).filter(
    ({ pieces, yMm }) => yMm < edge.y1Mm && / strip \d of /.test(plainText(pieces)),
  );
  const name = plainText(titles.at(-1)?.pieces ?? []).split(', strip')[0];
  const found = list.sections.find((one) => one.name === name);
  if (!found) throw new Error(`no section ${name}`);
  const anchors = [
    ...lines(page, /^tip end/)
      .filter(onEdge)
      .map(() => 0),
    ...lines(page, /^butt end/)
      .filter(onEdge)
      .map((end) => found.lengthM * 1000 - (end.x1Mm - edge.x1Mm)),
    ...lines(page, /^join /)
      .filter(({ y2Mm }) => Math.abs(y2Mm - tick.y1Mm) < 2)
      .map((join) => Number(join.name?.slice(5)) - (join.x1Mm - edge.x1Mm)),
  ];
  return { anchors, edge, section: found };
}
const lines = (page: Page, name: RegExp) =>
  page.marks.filter((mark): mark is Line => mark.kind === 'line' && name.test(mark.name ?? ''));
const texts = (page: Page) => page.marks.filter((mark): mark is Text => mark.kind === 'text');

describe('marks list', () => {
  it('the two distances of a mark add up to its section, and lead back to the station within half a tick', () => {
    for (const step of ['1 mm', '1/8 in', '1/16 in', '1/32 in'] as const) {
      const list = listMarks(blank, ruleGuides(), step);
      for (const { rows, lengthM, fromTipM } of list.sections) {
        for (const row of rows) {
          expect(row.fromOwnTipM + row.fromOwnButtM).toBeCloseTo(lengthM, 12);
          expect(fromTipM + row.fromOwnTipM).toBeCloseTo(row.fromTipM, 12);
          expect(Math.abs(row.fromTipM - row.exactFromTipM)).toBeLessThanOrEqual(0.0016);
        }
      }
      expect(marksInOrder(list).map(({ guide }) => guide)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    }
  });
  it('intervals between marks add up to the last mark', () => {
    const rows = marksInOrder(listMarks(blank, ruleGuides(), '1/16 in'));
    const sum = rows.reduce((total, { intervalM }) => total + intervalM, 0);
    expect(sum).toBeCloseTo(rows.at(-1)?.fromTipM ?? 0, 12);
  });
  it('a guide over a spigot gap is named instead of marked', () => {
    const spigot = { kind: 'spigot', overlapM: 0, gapM: 0.006, plugM: 0.06 } as const;
    const two = assembleBlank([section('u', 1, { joint: spigot }), section('l', 1)]);
    const list = listMarks(two, [{ name: '', fromTipM: 1.003 }], '1 mm');
    expect(list.findings[0]).toMatchObject({ path: 'guides/0/station' });
    expect(marksInOrder(list)).toEqual([]);
  });
});

describe('strips', () => {
  const cases = (['a4', 'letter'] as const).flatMap((paper) =>
    (['1 mm', '1/16 in', '1/32 in'] as const).map((step) => [paper, step] as const),
  );
  it.each(cases)(
    '%s, %s: every guide stands at its distance from the section’s ends, in full on one piece, true to 1e-6 mm',
    (paper, step) => {
      const { list, sheet } = strips(step, paper);
      const told = new Set<number>();
      for (const page of sheet.pages) {
        for (const tick of lines(page, /^guide /)) {
          const { anchors, edge, section } = pieceUnder(page, tick, list);
          const row = section.rows.find(({ guide }) => guide === Number(tick.name?.slice(6)));
          expect(anchors.length).toBeGreaterThan(0);
          for (const startMm of anchors)
            expect(tick.x1Mm - edge.x1Mm + startMm).toBeCloseTo((row?.fromOwnTipM ?? 0) * 1000, 6);
          const label = texts(page).find(
            ({ pieces, yMm }) => yMm < tick.y1Mm && plainText(pieces).startsWith(`${row?.guide}: `),
          );
          if (label) told.add(row?.guide ?? 0);
        }
      }
      expect(told.size).toBe(10);
    },
  );

  it('pieces that are taped together share their join, at full centimetres or half inches of the section', () => {
    for (const step of ['1 mm', '1/8 in'] as const) {
      const { sheet } = strips(step, 'letter', ruleGuides(), longTwoPiece);
      const joins = sheet.pages.flatMap((page) => lines(page, /^join/)).map(({ name }) => name ?? '');
      expect(joins.length).toBeGreaterThan(3);
      for (const name of joins) {
        expect(joins.filter((other) => other === name).length % 2).toBe(0);
        const inUnits = Number(name.slice(5)) / (step === '1 mm' ? 10 : 12.7);
        expect(inUnits).toBeCloseTo(Math.round(inUnits), 9);
      }
      const said = sheet.pages.flatMap(texts).map(({ pieces }) => plainText(pieces));
      const inUnits = step === '1 mm' ? /^join at \d+ mm$/ : /^join at \d+( 1\/2)? in$/;
      for (const words of said.filter((one) => one.startsWith('join'))) expect(words).toMatch(inUnits);
    }
  });

  it('a title stands nearer to its own strip than to the one above', () => {
    for (const page of strips('1/16 in', 'a4').sheet.pages) {
      const titles = texts(page).filter(({ pieces }) => /, strip \d of/.test(plainText(pieces)));
      const under = texts(page).filter(({ pieces }) => /^(tip end|butt end|join at)/.test(plainText(pieces)));
      for (const title of titles) {
        const above = under.map(textBox).filter(({ bottomMm }) => bottomMm < title.yMm);
        const ownMm = Math.min(
          ...texts(page)
            .filter(({ yMm, pieces }) => yMm > title.yMm && /^\d+: /.test(plainText(pieces)))
            .map((label) => textBox(label).topMm - title.yMm),
        );
        for (const { bottomMm } of above) expect(textBox(title).topMm - bottomMm).toBeGreaterThan(ownMm + 2);
      }
    }
  });

  it('every page carries both rules on both axes and says to check them', () => {
    for (const paper of ['a4', 'letter'] as const) {
      for (const page of strips('1/16 in', paper).sheet.pages) {
        const length = (name: RegExp) =>
          Math.max(...lines(page, name).map((l) => Math.hypot(l.x2Mm - l.x1Mm, l.y2Mm - l.y1Mm)));
        expect(length(/^rule across 100 mm/)).toBeCloseTo(100, 9);
        expect(length(/^rule along 100 mm/)).toBeCloseTo(100, 9);
        expect(length(/^rule across 4 in/)).toBeCloseTo(101.6, 9);
        expect(length(/^rule along 4 in/)).toBeCloseTo(101.6, 9);
        expect(
          texts(page)
            .map(({ pieces }) => plainText(pieces))
            .join(),
        ).toMatch(/Print at 100 %.*measure all four rules/);
      }
    }
  });

  it('nothing leaves the page, no label lies on another, no tick crosses a label', () => {
    const gaps = fc.array(fc.integer({ min: 30, max: 300 }), { minLength: 4, maxLength: 14 });
    const steps = fc.constantFrom<TapeStep>('1 mm', '1/16 in', '1/32 in');
    fc.assert(
      fc.property(gaps, steps, fc.constantFrom('a4', 'letter'), (intervals, step, paper) => {
        const guides = intervals.map((_, k) => ({
          name: 'g',
          fromTipM: intervals.slice(0, k + 1).reduce((sum, mm) => sum + mm / 1000, 0),
        }));
        const free = ({ fromTipM }: GuideToMark) =>
          fromTipM < blank.lengthM - 0.26 &&
          keepOutZones(blank).every((zone) => fromTipM < zone.fromTipM || fromTipM > zone.toTipM);
        const inside = guides.filter(free);
        for (const page of strips(step, paper as 'a4' | 'letter', inside).sheet.pages)
          expectUncluttered(page);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('the sheets of marks and of the protocol keep inside the page', () => {
    const { setups, ...rest } = planProtocol({
      kind: 'twenty-minute',
      blankLengthM: 2.743,
      tipDropM: ({ massKg }) => massKg * 8,
    });
    const plan = { ...rest, setups: setups.map((one) => ({ ...one, name: setupPlaces[one.stand] })) };
    const shorter =
      'Half the protocol: 12 measured blanks of its series say the rest. If it is unlike them, read it in full.';
    const sheets = [
      marksSheet(listMarks(blank, ruleGuides(), '1/32 in'), { paper: 'letter', stamp: 'x' }),
      protocolSheet(plan, { paper: 'a4', stamp: 'x', tapeStep: '1/16 in' }),
      protocolSheet(plan, { paper: 'letter', stamp: 'x', tapeStep: '1/16 in', shorter }),
    ];
    for (const page of sheets.flatMap(({ pages }) => pages)) expectUncluttered(page);
  });
});

/** Every label inside the page, none on another, no guide's tick through one (its own number aside). */
function expectUncluttered(page: Page): void {
  const boxes = texts(page)
    .map((one) => ({ words: plainText(one.pieces), box: textBox(one) }))
    .filter(({ words }) => words !== '');
  const ticks = lines(page, /^guide /);
  const faults = boxes.flatMap(({ words, box }, k) => {
    const outside =
      box.leftMm < 5 || box.rightMm > page.widthMm - 5 || box.topMm < 5 || box.bottomMm > page.heightMm - 5;
    const under = boxes.slice(k + 1).filter((other) => boxesOverlap(box, other.box));
    const crossing = ticks.filter((tick) => {
      const high = Math.min(tick.y1Mm, tick.y2Mm);
      const low = Math.max(tick.y1Mm, tick.y2Mm);
      const across = tick.x1Mm > box.leftMm && tick.x1Mm < box.rightMm;
      return across && high < box.bottomMm && low > box.topMm && !/^\d+$/.test(words);
    });
    return [
      ...(outside ? [`"${words}" leaves the page`] : []),
      ...under.map((other) => `"${words}" lies on "${other.words}"`),
      ...crossing.map((tick) => `${tick.name} crosses "${words}"`),
    ];
  });
  const strays = lines(page, /./).filter(
    ({ x1Mm, x2Mm, y1Mm, y2Mm }) =>
      Math.min(x1Mm, x2Mm, y1Mm, y2Mm) < 5 ||
      Math.max(x1Mm, x2Mm) > page.widthMm - 5 ||
      Math.max(y1Mm, y2Mm) > page.heightMm - 5,
  );
  expect([...faults, ...strays.map(({ name }) => `${name} leaves the page`)]).toEqual([]);
}

describe('labels in lanes', () => {
  it('never touch in one lane', () => {
    const requests = fc.array(
      fc.record({
        tickMm: fc.double({ min: 0, max: 250, noNaN: true }),
        widthMm: fc.double({ min: 3, max: 40, noNaN: true }),
      }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(requests, (labels) => {
        const places = placeInLanes(labels);
        places.forEach((a, i) => {
          places.forEach((b, j) => {
            if (i >= j || a.lane !== b.lane) return;
            const apart = a.leftMm + labels[i].widthMm < b.leftMm || b.leftMm + labels[j].widthMm < a.leftMm;
            expect(apart).toBe(true);
          });
        });
      }),
      { seed: 9, numRuns: 300 },
    );
  });
});

describe('correction for the printer', () => {
  it('stretches by what the 100 mm rule measured, on top of what the print already had', () => {
    const first = printCorrection({ acrossM: 0.0995, alongM: 0.1004 });
    expect(first).toMatchObject({ ok: true });
    if (!first.ok) return;
    expect(first.factors.across).toBeCloseTo(100 / 99.5, 12);
    const again = printCorrection({ acrossM: 0.1, alongM: 0.1, printedWith: first.factors });
    expect(again).toEqual(first);
  });
  it.each([0.094, 0.1016 * 1.02, 0.05])('refuses %f m: that is a setting, not the printer', (measured) => {
    const result = printCorrection({ acrossM: measured });
    expect(result.ok).toBe(false);
    if (!result.ok)
      expect(result.findings[0]).toMatchObject({
        path: 'ruleAcross',
        code: 'print/rule-off',
        values: { measuredM: measured },
      });
  });
  it('moves every mark and leaves the given page alone', () => {
    const [page] = strips('1 mm', 'a4').sheet.pages;
    const before = structuredClone(page);
    const corrected = correctPage(page, { across: 1.01, along: 0.99 });
    const [a, b] = [lines(page, /^guide/)[0], lines(corrected, /^guide/)[0]];
    expect(b.x1Mm).toBeCloseTo(a.x1Mm * 1.01, 9);
    expect(b.y1Mm).toBeCloseTo(a.y1Mm * 0.99, 9);
    expect(page).toEqual(before);
  });
});

describe('svg', () => {
  it('is true to the millimetre and sets fractions from their parts', () => {
    const [page] = strips('1/16 in', 'a4').sheet.pages;
    const svg = pageSvg(page);
    expect(svg).toMatch(/^<svg [^>]*width="297mm" height="210mm" viewBox="0 0 297 210"/);
    expect(svg).toMatch(/<tspan[^>]*>1<\/tspan><tspan[^>]*>⁄<\/tspan><tspan[^>]*>2<\/tspan>/);
    expect(svg).not.toMatch(/NaN|undefined/);
  });
  it('escapes what people write', () => {
    const page = {
      widthMm: 10,
      heightMm: 10,
      marks: [
        { kind: 'text', xMm: 1, yMm: 1, pieces: ['<b>&"'], sizeMm: 3, align: 'start', ink: 'black' } as const,
      ],
    };
    expect(pageSvg(page)).toContain('&lt;b&gt;&amp;&quot;');
  });
  it('splits true fractions from words', () => {
    expect(textPieces('12 3⁄16 in')).toEqual(['12 ', { numerator: 3, denominator: 16 }, ' in']);
    expect(plainText(textPieces('12 3⁄16 in'))).toBe('12 3/16 in');
  });
});

it('a sleeve strip says what lies inside the ferrule', () => {
  const two = assembleBlank([section('u', 0.5, { joint: sleeveJoint(0.05) }), section('l', 0.5)]);
  const { sheet } = strips(
    '1 mm',
    'a4',
    [0.1, 0.38, 0.55].map((fromTipM) => ({ name: 'g', fromTipM })),
    two,
  );
  const words = sheet.pages.flatMap(texts).map(({ pieces }) => plainText(pieces));
  expect(words).toContain('inside the ferrule');
  expect(words.filter((one) => one === 'no guide here').length).toBeGreaterThan(0);
});
