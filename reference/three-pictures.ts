/**
 * Ways to measure one and the same invented blank, side by side: the tape protocol, one picture, three pictures each for
 * itself, three of one stand, three and a flag read by tape; and what goes wrong between pictures, named or not. Run by
 * `npm run pictures`; the numbers stand in docs/three-pictures.md.
 */
import { freeRod } from '../src/engine/bench/free-rod.ts';
import { markSureness, plusMinusOfMarks } from '../src/engine/flow/build-sureness.ts';
import { layout } from '../src/engine/layout/layout.ts';
import { fit, fitStiffness } from '../src/engine/stiffness/fit.ts';
import type { FitRequest, FitSetup, FitSolved } from '../src/engine/stiffness/request.ts';
import { plainStand } from '../test/render/plain-stand.ts';
import { standScene } from '../test/render/stand-photo.ts';
import { judgeStiffness, type StiffnessJudgement } from '../test/support/judge-stiffness.ts';
import { renderedStand } from '../test/support/rendered-stand.ts';
import {
  randomBlank,
  readBench,
  type SetupPlan,
  shortPlan,
  type TrueBlank,
} from '../test/support/simulated-bench.ts';
import { fitBlankOf, weightFor } from '../test/support/stand-blank.ts';
import { type Mishap, mishapCodes, standOf, together, withMishap } from '../test/support/stand-mishaps.ts';
import { askedLayout, gripM } from './calibration/asked-layout.ts';

export interface WayRow {
  way: string;
  median: number;
  nineOfTen: number;
  worst: number;
  held: number;
  stiffnessRms: number;
  findings: number;
  /** 95 % of a guide's best place, the middle of all guides found; where it was asked for. */
  marksPlusMinusM?: number;
}

/** With how sure the marks of a usual layout are after each. */
export function compareWays(count: number, firstSeed: number): WayRow[] {
  const results = new Map<string, Judged[]>();
  for (let i = 0; i < count; i++) {
    const seed = firstSeed + i;
    const { blank, thirdKg, setups } = standOf(seed, i);
    const tape = (plan: readonly SetupPlan[]): FitSetup[] => [
      ...readBench(blank, plan, seed + 11, 0).request.setups,
    ];
    const flags = [{ stationsM: [0, 0.3 * blank.lengthM], hungKg: [0, thirdKg], sigmaM: 0.002 }];
    const ways: Record<string, readonly FitSetup[]> = {
      'tape, 21 readings': tape(shortPlan(blank.lengthM)),
      'one picture': [setups[1]],
      'three pictures, each for itself': setups,
      'three pictures of one stand': together(setups),
      'the same and a flag by tape': [...together(setups), ...tape(flags)],
    };
    for (const [way, asked] of Object.entries(ways)) {
      const marks = marksAfter(blank, { blank: fitBlankOf(blank, seed + 9), setups: asked });
      const result = { ...judged(blank, asked, seed, 3 * thirdKg), marks };
      results.set(way, [...(results.get(way) ?? []), result]);
    }
  }
  return [...results].map(([way, rows]) => wayRow(way, rows));
}

/** The renderer that the tracer was developed on, and a plainer one that shares no code with it. */
export const renderers = { painted: standScene, plain: plainStand };

/** The same from rendered pictures, traced as the door traces them; every picture for itself beside it. */
export function* compareRendered(
  count: number,
  firstSeed: number,
  widthPx: number,
  renderer: keyof typeof renderers = 'painted',
): Generator<RenderedRow> {
  for (let i = 0; i < count; i++) {
    const seed = firstSeed + i;
    const blank = randomBlank(seed, { sweepSigmaPerM: 0, ferrules: i % 2 ? 0 : undefined });
    const thirdKg = weightFor(blank, 1 / 3);
    const hungKg = [0, thirdKg, 2.2 * thirdKg];
    const choice = { seed: seed + 3, widthPx, hungKg, toldM: 0.002, tapPx: 1, tiltRad: 0.7 * degree };
    const stand = renderedStand(blank, choice, (bent) =>
      renderers[renderer](bent, { seed, widthPx, marks: 6 }),
    );
    if (!stand) {
      yield { seed };
      continue;
    }
    const alone = stand.setups.map(({ shared: _, ...setup }) => setup);
    yield {
      seed,
      together: judged(blank, stand.setups, seed, 3 * thirdKg),
      alone: judged(blank, alone, seed, 3 * thirdKg),
    };
  }
}

/** Without judgements where a picture could not be traced. */
export interface RenderedRow {
  seed: number;
  together?: ReturnType<typeof judged>;
  alone?: ReturnType<typeof judged>;
}
const degree = Math.PI / 180;

export function renderedRows(rows: readonly RenderedRow[], renderer: string): WayRow[] {
  const of = (pick: (row: RenderedRow) => RenderedRow['alone']) => rows.flatMap((row) => pick(row) ?? []);
  return [
    wayRow(
      `${renderer}, three of one stand`,
      of(({ together: one }) => one),
    ),
    wayRow(
      `${renderer}, each for itself`,
      of(({ alone }) => alone),
    ),
  ];
}

type Judged = StiffnessJudgement & { findings: number; marks?: readonly number[] };

/** ± of every guide that is found, as the layout says it. */
function marksAfter(blank: TrueBlank, request: FitRequest): number[] {
  const { answer, posterior } = fitStiffness(request);
  if (answer.status === 'refused' || !posterior) return [];
  const asked = { ...askedLayout(blank), rod: freeRod(answer, blank.lengthM - gripM) };
  const placed = layout(asked);
  if (placed.status === 'refused') return [];
  const { ladder, limits, fromTipM: proposedFromTipM } = placed;
  const spread = markSureness({ request: { ...asked, ladder, limits }, proposedFromTipM }, posterior);
  return plusMinusOfMarks({}, spread).flatMap((m) => m ?? []);
}

function judged(blank: TrueBlank, setups: readonly FitSetup[], seed: number, hungKg: number) {
  const answer = fit({ blank: fitBlankOf(blank, seed + 9), setups });
  if (answer.status === 'refused') throw new Error(answer.findings[0].path);
  return { ...judgeStiffness(blank, answer as FitSolved, hungKg), findings: answer.findings.length };
}

function wayRow(way: string, rows: readonly Judged[]): WayRow {
  const unseen = rows.map((row) => row.unseen).sort((a, b) => a - b);
  const marks = rows.flatMap((row) => row.marks ?? []).sort((a, b) => a - b);
  const mean = (of: (row: StiffnessJudgement) => number) =>
    rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
  return {
    way,
    median: unseen[unseen.length >> 1],
    nineOfTen: unseen[Math.floor(0.9 * unseen.length)],
    worst: unseen[unseen.length - 1],
    held: mean((row) => row.held),
    stiffnessRms: Math.sqrt(mean((row) => row.stiffnessRms ** 2)),
    findings: rows.filter((row) => row.findings > 0).length,
    ...(marks.length > 0 ? { marksPlusMinusM: marks[marks.length >> 1] } : {}),
  };
}

export interface MishapRow {
  mishap: Mishap;
  tried: number;
  named: number;
  /** With any finding at all. */
  alarms: number;
}

export function nameMishaps(mishap: Mishap, count: number, firstSeed: number): MishapRow {
  const row: MishapRow = { mishap, tried: count, named: 0, alarms: 0 };
  for (let i = 0; i < count; i++) {
    const { blank, setups, seed } = withMishap(mishap, firstSeed + i, i);
    const { findings } = fit({ blank: fitBlankOf(blank, seed + 9), setups });
    if (findings.length > 0) row.alarms++;
    if (mishap !== 'none' && findings.some(({ code }) => mishapCodes[mishap].includes(code))) row.named++;
  }
  return row;
}
