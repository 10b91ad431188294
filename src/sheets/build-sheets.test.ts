import { describe, expect, it } from 'vitest';
import { boxesOverlap, textBox } from '../../test/support/text-boxes.ts';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { planWraps } from '../engine/wraps/plan-wraps.ts';
import { wrapDefaults } from '../engine/wraps/wrap-choices.ts';
import { roundBriefly } from '../words/round.ts';
import { shopWriter } from '../words/writer.ts';
import { benchSheet } from './bench-sheet.ts';
import type { Area, Sheet, Text } from './drawing.ts';
import { plainText } from './drawing.ts';
import { type PaperName, standingPaper } from './paper-size.ts';
import { rackSheet } from './rack-sheet.ts';
import { pageSvg } from './svg.ts';
import { wrapSheet } from './wrap-sheet.ts';

const papers: PaperName[] = ['a4', 'letter'];
const textsOf = (sheet: Sheet) => sheet.pages[0].marks.filter((mark): mark is Text => mark.kind === 'text');

function onThePage(sheet: Sheet, paper: PaperName): void {
  expect(sheet.pages).toHaveLength(1);
  const lowest = Math.max(...textsOf(sheet).map(({ yMm }) => yMm));
  expect(lowest).toBeLessThanOrEqual(standingPaper[paper].heightMm - 10);
}

describe('the bench sheet', () => {
  const stages = Array.from({ length: 12 }, (_, index) => ({
    id: `s${index}`,
    name: `Stage ${index}`,
    status: index < 3 ? ('done' as const) : ('ready' as const),
  }));
  const facts = Array.from({ length: 10 }, (_, index) => ({ what: `What ${index}`, figure: `${index} mm` }));
  const guides = (count: number) =>
    Array.from({ length: count }, (_, index) => ({
      guide: `${index + 1}  snake 1`,
      section: 'middle',
      ownTip: '12 3⁄16 in',
      ownButt: '14 1⁄8 in',
      bag: '7',
    }));
  it.each(papers)('is one page of %s with 4 guides and with 20, its figures in letters of 12 pt', (paper) => {
    for (const count of [4, 20]) {
      const sheet = benchSheet({ stages, facts, guides: guides(count) }, { paper, stamp: 'Test' });
      onThePage(sheet, paper);
      const figures = textsOf(sheet).filter(({ pieces }) => /12|mm/.test(plainText(pieces)));
      expect(figures.length).toBeGreaterThan(count);
      // 12 pt is 12 × 25.4 / 72 mm.
      for (const { sizeMm } of figures) expect(sizeMm).toBeGreaterThanOrEqual((12 * 25.4) / 72);
    }
  });
});

describe('the rack sheet', () => {
  it.each(papers)('is one page of %s however many go back, and says how many are not listed', (paper) => {
    const bag = (count: number) =>
      Array.from({ length: count }, (_, index) => ({
        guide: { id: `r${index}`, size: '1' },
        reason: { code: 'guides/rejected', values: { why: 'rough ring' } },
      }));
    const places = Array.from({ length: 18 }, (_, index) => {
      return { guide: index + 1, size: '1', outsideM: 0.002, bagId: `b${index}` };
    });
    const sheet = rackSheet({ places, spare: [], rejects: bag(30), order: [], cost: 0 }, () => 7, {
      paper,
      stamp: 'Test',
      writer: shopWriter({ system: 'mm' }),
    });
    onThePage(sheet, paper);
    expect(textsOf(sheet).some(({ pieces }) => /^and \d+ more$/.test(plainText(pieces)))).toBe(true);
  });
});

describe('the wrap sheet', () => {
  const joint = { kind: 'sleeve' as const, overlapM: 0.04, gapM: 0, plugM: 0 };
  const section = (id: string, last = false) => ({
    id,
    name: id,
    lengthM: 0.72,
    diameters: [],
    joint: last ? undefined : joint,
  });
  const blank = assembleBlank([section('tip'), section('upper'), section('lower'), section('butt', true)]);
  const profile = [
    { fromTipM: 0, outsideM: 0.0018 },
    { fromTipM: blank.lengthM, outsideM: 0.0094 },
  ];
  const choices = {
    ...wrapDefaults,
    underwrap: true,
    thread: { colour: '#102030', name: 'dark blue', lot: '12' },
    trim: { colour: '#c0a020', name: 'gold' },
    under: { colour: '#777777', name: 'grey' },
  };
  const plan = planWraps({
    blank,
    profile,
    guides: [0.11, 0.23, 0.36, 0.5, 0.85, 1.05, 1.27, 1.5, 1.75, 1.9].map((stationM, index) => ({
      id: `g${index}`,
      name: 'snake 1',
      lengthM: 0.0225,
      feet: 2 as const,
      stripping: index === 9,
      stationM,
    })),
    gripFrontFromButtM: 0.26,
    choices,
  });
  const draw = (paper: PaperName) =>
    wrapSheet(plan, blank, {
      paper,
      tapeStep: '1/32 in',
      writer: shopWriter({ system: 'inch' }),
      stamp: 'Test',
      colours: choices,
    });
  it.each(papers)('holds %s all wraps of a four-piece on one page', (paper) => {
    expect(plan.wraps.length).toBeGreaterThan(20);
    onThePage(draw(paper), paper);
  });
  it('has room for where the guides of a spiral stand: no text lies on another', () => {
    const round = Array.from({ length: 10 }, (_, i) => roundBriefly(i < 9 ? 2.09 : 0, 'right'));
    const options = { paper: 'letter', tapeStep: '1/32 in', stamp: 'Test', colours: choices, round } as const;
    const texts = textsOf(wrapSheet(plan, blank, { ...options, writer: shopWriter({ system: 'inch' }) }));
    expect(texts.filter(({ pieces }) => plainText(pieces) === '119.5° right').length).toBeGreaterThan(8);
    const boxes = texts.map(textBox);
    boxes.forEach((box, i) => {
      const under = boxes.findIndex((other, k) => k > i && boxesOverlap(box, other));
      expect(under < 0 ? '' : `${plainText(texts[i].pieces)} on ${plainText(texts[under].pieces)}`).toBe('');
    });
  });
  it('draws thread, trim and underwrap in their colours, and names each so that it reads without them', () => {
    const sheet = draw('a4');
    const fills = sheet.pages[0].marks
      .filter((mark): mark is Area => mark.kind === 'area')
      .map(({ fill }) => fill);
    for (const { colour } of [choices.thread, choices.trim, choices.under]) expect(fills).toContain(colour);
    const words = textsOf(sheet).map(({ pieces }) => plainText(pieces));
    expect(words.some((line) => /^A {2}Thread, dark blue, lot 12: [\d.]+ yd/.test(line))).toBe(true);
    expect(words.some((line) => /^B {2}Trim, gold, 4 turns at each end: /.test(line))).toBe(true);
    expect(words.some((line) => /^C {2}Underwrap, grey: /.test(line))).toBe(true);
    // Without colour the three still differ: by how tall they are drawn.
    const tall = (colour: string) =>
      new Set(
        sheet.pages[0].marks.flatMap((mark) =>
          mark.kind === 'area' && mark.fill === colour && mark.yMm < 60 ? [mark.heightMm] : [],
        ),
      );
    expect([tall('#102030'), tall('#c0a020'), tall('#777777')]).toEqual([
      new Set([3.2]),
      new Set([4]),
      new Set([2.2]),
    ]);
  });
  it('is the same on the screen: the colour stands in its drawing', () => {
    expect(pageSvg(draw('a4').pages[0])).toContain('fill="#c0a020" stroke="#000000"');
  });
});
