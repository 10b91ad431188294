import { describe, expect, test } from 'vitest';
import { boxesOverlap, textBox } from '../../test/support/text-boxes.ts';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { fourPiece } from '../engine/bench/test-bench.ts';
import { listMarks, markRound, marksInOrder, type PlaceRound } from '../engine/marks/marks-list.ts';
import type { TapeStep } from '../engine/units/tape-step.ts';
import { benchTasks } from '../words/bench-tasks.ts';
import { markRoundInWords, roundBriefly, roundOnTape } from '../words/round.ts';
import { roundWrapName } from '../words/wrap-name.ts';
import { shopWriter } from '../words/writer.ts';
import { benchSheet } from './bench-sheet.ts';
import { type Line, plainText, type Sheet, type Text } from './drawing.ts';
import { marksSheet } from './marks-sheet.ts';
import { stripsSheet } from './strips-sheet.ts';

const lineSide = { angleRad: Math.PI / 2 };
const blank = assembleBlank(fourPiece().sections.map((section) => ({ ...section, lineSide })));
const stations = [0.12, 0.25, 0.4, 0.6, 0.95, 1.3, 1.75];
const turned = [Math.PI, Math.PI, Math.PI, Math.PI, (2 * Math.PI) / 3, Math.PI / 3, 0];
const outsideM = 0.0127;
const diameters = [
  { fromTipM: 0, outsideM: 0.002 },
  { fromTipM: blank.lengthM, outsideM: 0.01 },
];
const marked = (by: PlaceRound['by'], step: TapeStep) =>
  listMarks(
    blank,
    stations.map((fromTipM, i) => ({
      ...{ name: 'ringed 8 mm', fromTipM },
      round: { fromTopRad: turned[i], by, outsideM },
    })),
    step,
    { diameters },
  );
const strips = (by: PlaceRound['by'], step: TapeStep) =>
  stripsSheet(blank, marked(by, step), [], { paper: 'a4', stamp: 'test' });
const texts = ({ pages }: Sheet) =>
  pages.map(({ marks }) => marks.filter((mark): mark is Text => mark.kind === 'text'));
const words = (sheet: Sheet) =>
  texts(sheet)
    .flat()
    .map(({ pieces }) => plainText(pieces));

describe('a second line to mark', () => {
  test('is the angle’s share of the way round: a half-inch blank is 39.9 mm round', () => {
    const { fromTopLineM, fromUnderLineM } = markRound({ fromTopRad: Math.PI / 3, by: 'left', outsideM });
    expect(6 * fromTopLineM).toBeCloseTo(0.0399, 5);
    expect(fromTopLineM + fromUnderLineM).toBeCloseTo(0.0399 / 2, 5);
  });

  test('says side and distance, to 1/32 in or half a millimetre', () => {
    const rows = marksInOrder(marked('left', '1/8 in')).map(
      ({ round }) => round && markRoundInWords(round, '1/8 in'),
    );
    expect(rows.slice(3)).toEqual(['under line', '120° left, 17⁄32 in', '60° left, 1⁄4 in', 'top line']);
    const back = markRound({ fromTopRad: -Math.PI / 6, by: 'left', outsideM });
    expect(markRoundInWords(back, '1 mm')).toBe('30° right, 3.5 mm');
    expect(roundOnTape(0.00665, '1 mm')).toBe('6.5 mm');
  });

  test.each(['left', 'right'] as const)(
    'on the strip: wrapped round the blank to the %s, its bar lies on the foot',
    (by) => {
      const lines = strips(by, '1 mm').pages.flatMap(({ marks }) =>
        marks.filter((mark): mark is Line => mark.kind === 'line'),
      );
      const bars = lines.filter(({ name }) => /^guide \d+ round$/.test(name ?? ''));
      expect(new Set(bars.map(({ name }) => name)).size).toBe(by === 'left' ? 3 : 6);
      for (const bar of bars) {
        const guide = Number(bar.name?.split(' ')[1]);
        const tick = lines.find(({ name, y1Mm }) => name === `guide ${guide}` && y1Mm > bar.y1Mm);
        if (!tick) throw new Error(`no tick for ${bar.name}`);
        expect((bar.x1Mm + bar.x2Mm) / 2).toBeCloseTo(tick.x1Mm, 9);
        // paper on a round blank: as many millimetres round as up the strip, from the line its edge lies on
        const turnedRad = (tick.y1Mm - bar.y1Mm) / 1000 / (outsideM / 2);
        expect(by === 'right' ? turnedRad : Math.PI - turnedRad).toBeCloseTo(turned[guide - 1], 9);
      }
    },
  );

  test('stands on list, strips, bench sheet, bench cards and wraps, and no text lies on another', () => {
    const list = marksSheet(marked('left', '1/16 in'), { paper: 'letter', stamp: 'x' });
    const strip = strips('left', '1/16 in');
    const round = '60° left, 1⁄4 in';
    const bench = benchSheet(
      {
        stages: [],
        facts: [],
        guides: [{ guide: '6  ringed', section: 'Lower', ownTip: '3', ownButt: '9', round, bag: '' }],
      },
      { paper: 'a4', stamp: 'x' },
    );
    for (const sheet of [list, strip, bench]) {
      expect(words(sheet).some((one) => /60° left, \D?1.4 in/.test(one))).toBe(true);
      for (const page of texts(sheet)) {
        const boxes = page.map(textBox);
        boxes.forEach((box, i) => {
          const under = boxes.findIndex((other, k) => k > i && boxesOverlap(box, other));
          expect(under < 0 ? '' : `${plainText(page[i].pieces)} on ${plainText(page[under].pieces)}`).toBe(
            '',
          );
        });
      }
    }
    expect(words(strip).some((one) => /line under the blank and wrap the strip round/.test(one))).toBe(true);
    expect(words(list).some((one) => /line side 90°.*round the blank/.test(one))).toBe(true);
    const [task] = benchTasks({
      ...{ blank, step: '1/32 in', writer: shopWriter({ system: 'inch' }), wraps: [], trimTurnsWord: '' },
      marks: [
        {
          ...{ guide: 6, name: 'ringed', section: 2, ownTipM: 0.1, ownButtM: 0.3 },
          round: markRound({ fromTopRad: Math.PI / 3, by: 'left', outsideM }),
        },
      ],
    });
    expect(task.lines[2]).toBe(`Round the blank, seen from behind the butt: ${round}.`);
    expect(roundWrapName('foot/6/tip', [...new Array<undefined>(5), roundBriefly(Math.PI / 3, 'left')])).toBe(
      'Guide 6, tip side (60° left)',
    );
  });

  test('all guides on one line: nothing of it anywhere', () => {
    const plain = listMarks(blank, [{ name: 'snake', fromTipM: 0.3 }], '1/16 in');
    const sheets = [
      marksSheet(plain, { paper: 'a4', stamp: 'x' }),
      stripsSheet(blank, plain, [], { paper: 'a4', stamp: 'x' }),
    ];
    for (const sheet of sheets)
      expect(words(sheet).join(' ')).not.toMatch(/round, from the top|wrap the strip/);
  });
});
