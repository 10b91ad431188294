/** The invented spinning and surf rods, whole: the fan against a brute count of it, the region, the stepping rings. */
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { openBuild } from '../src/cli/open-build.ts';
import { reelLineOfWork, reelLinePart } from '../src/cli/reel-line-part.ts';
import { workBuildFile } from '../src/cli/work-build-file.ts';
import { diameterAt } from '../src/engine/bench/diameter-profile.ts';
import { fanUnderLoad } from '../src/engine/flow/fan-under-load.ts';
import { readReelLine } from '../src/engine/flow/reel-line.ts';
import type { ReelLineQuestion } from '../src/engine/flow/reel-line-question.ts';
import { guideNumbers } from '../src/engine/kinds/guides.ts';
import { ladderWriter } from '../src/words/ladder-writer.ts';
import { shopWriter } from '../src/words/writer.ts';

describe.each(['demo-spinning', 'demo-surf'])('%s', (name) => {
  const opened = openBuild(fileURLToPath(new URL(`../examples/${name}.json`, import.meta.url)));
  const worked = workBuildFile(opened);
  const read = reelLineOfWork(worked);
  if (!read) throw new Error('no line off the reel');
  const { question, answer } = read;

  test('is marked as invented and has nothing said against it', () => {
    expect(worked.choices.demo).toBe(true);
    expect(opened.findings).toEqual([]);
    expect(worked.choices.title).toMatch(/^Demo: /);
  });

  test('the fan is what counting it line by line gives', () => {
    const { turns, clearM } = counted(question);
    const { lineAngleRad, clearance } = answer.first;
    expect(lineAngleRad.least).toBeCloseTo(Math.min(...turns), 4);
    expect(lineAngleRad.largest).toBeCloseTo(Math.max(...turns), 4);
    expect(clearance.clearanceM).toBeCloseTo(clearM, 4);
    expect(answer.keeps).toBe(true);
  });

  test('a rod that does not bend has the same fan under load', () => {
    const { ladder, source, surface, freeM, guides } = question;
    const butt = { ...ladder, buttAngleRad: 0 };
    const at = (fromTipM: number, heightM: number) => ({
      xM: freeM - fromTipM,
      yM: -heightM,
      lineAngleRad: 0,
    });
    const nodes = Array.from({ length: 81 }, (_, i) => (freeM * i) / 80);
    const straight = {
      status: 'converged' as const,
      fromTipM: Float64Array.from(nodes),
      xM: Float64Array.from(nodes, (fromTipM) => freeM - fromTipM),
      yM: new Float64Array(81),
      angleRad: new Float64Array(81),
      rings: guides.map(({ fromTipM }, i) => at(fromTipM, ladder.guides.ringHeightsM[i])),
    };
    const firstFromTipM = guides[guides.length - 1].fromTipM;
    const fan = fanUnderLoad(straight as never, { ladder: butt, source, surface, firstFromTipM });
    // the ladder's ring heights are those at the start's places: a tenth of a millimetre
    expect(Math.abs((fan?.lineAngleRad.largest ?? 9) - answer.first.lineAngleRad.largest)).toBeLessThan(1e-3);
    expect(fan?.clearanceM).toBeCloseTo(answer.first.clearance.clearanceM, 4);
  });

  test('under load the first guide goes with the blank, and the line turns more in it', () => {
    const turns = answer.loads.map((load) => load?.lineAngleRad.largest ?? Number.NaN);
    expect(turns.length).toBe(worked.work.question.loads.kg.length);
    turns.slice(1).forEach((turn, i) => {
      expect(turn).toBeGreaterThan(turns[i]);
    });
    expect(turns.at(-1)).toBeGreaterThan(3 * answer.first.lineAngleRad.largest);
  });

  test('a first guide out of its place is told where to go, and there it keeps the limits', () => {
    const last = question.guides.length - 1;
    const moved = (fromTipM: number): ReelLineQuestion => ({
      ...question,
      guides: question.guides.map((guide, i) => (i === last ? { ...guide, fromTipM } : guide)),
    });
    const away = readReelLine(moved(question.guides[last].fromTipM + 0.22));
    expect(away.keeps).toBe(false);
    expect(away.better?.ring.size).toBe(question.guides[last].size);
    expect(readReelLine(moved(away.better?.fromTipM ?? 0)).keeps).toBe(true);
  });

  test('stepping rings are never wider than the one before and as wide as the funnel; taken, they stay', () => {
    let beforeM = question.guides.at(-1)?.insideM ?? 0;
    for (const { ring, neededM, because } of answer.steps) {
      if (because === 'funnel') expect(ring?.insideM).toBeGreaterThanOrEqual(neededM - 1e-5);
      expect(ring?.insideM).toBeLessThanOrEqual(beforeM + 1e-5);
      beforeM = ring?.insideM ?? 0;
    }
    const taken = new Map(answer.steps.map(({ guide, ring }) => [guide, ring]));
    const guides = question.guides.map((guide, i) => ({ ...guide, ...taken.get(i) }));
    expect(readReelLine({ ...question, guides }).steps.every(({ already }) => already)).toBe(true);
  });

  test('the report says it, an inch shop without a metric figure but the rings’', () => {
    const w = ladderWriter(shopWriter({ system: 'inch' }), worked.work.question.loads.kg);
    const part = reelLinePart(worked, read, w);
    expect(part).toMatch(/^The line off the reel: The first guide suits this reel\./);
    expect(part).toMatch(/Its line meets the blank .* in from the lip/);
    expect(part).toMatch(/The drag slips at/);
    for (const line of part.split('\n').slice(0, 2)) expect(line).not.toMatch(/\d mm/);
    expect(part.split('\n').length).toBe(2 + answer.steps.length + answer.loads.length + 1);
  });
});

test('a spinning rod whose spool was not measured is asked for it, and a fly rod has no such part', () => {
  const path = (name: string) => fileURLToPath(new URL(`../examples/${name}.json`, import.meta.url));
  const spinning = workBuildFile(openBuild(path('demo-spinning')));
  const line = spinning.choices.line;
  if (!line) throw new Error('no line');
  const unmeasured = {
    ...spinning,
    choices: { ...spinning.choices, line: { ...line, reel: { ...line.reel, lipDiameterM: undefined } } },
  };
  const w = ladderWriter(shopWriter({ system: 'mm' }), []);
  expect(reelLineOfWork(unmeasured)).toBeUndefined();
  expect(reelLinePart(unmeasured, undefined, w)).toMatch(/measure the spool’s lip/);
  const fly = { ...spinning, choices: { ...spinning.choices, line: undefined } };
  expect(reelLinePart(fly, reelLineOfWork(fly), w)).toBe('');
});

/** Every line of the fan by itself: 1440 places round the lip, 2000 along each; nothing of the engine's but tables. */
function counted({ source, guides, freeM, surface }: ReelLineQuestion) {
  if (!('lipDiameterM' in source)) throw new Error('no fixed spool');
  const thick = surface.slice(0, -1).map(({ fromTipM, radiusM }) => ({ fromTipM, outsideM: 2 * radiusM }));
  const gripM = surface[surface.length - 1].radiusM;
  const [next, ring] = guides.slice(-2).map(({ fromTipM, kind, size }) => {
    const height = guideNumbers(kind, size)?.ringHeightM ?? 0;
    return [freeM - fromTipM, height + (diameterAt(thick, fromTipM) ?? 0) / 2, 0];
  });
  const [s, c] = [Math.sin(source.tiltRad), Math.cos(source.tiltRad)];
  const minus = (a: number[], b: number[]) => a.map((v, i) => v - b[i]);
  const turns: number[] = [];
  let clearM = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 1440; i++) {
    const [u, v] = [Math.cos((i * Math.PI) / 720), Math.sin((i * Math.PI) / 720)];
    const r = source.lipDiameterM / 2;
    const from = [source.alongM + r * u * s, source.offsetM + r * u * c, r * v];
    const [a, b] = [minus(ring, from), minus(next, ring)];
    const dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    turns.push(Math.acos(dot / (Math.hypot(...a) * Math.hypot(...b))));
    for (let k = 0; k <= 2000; k += 1) {
      const [x, y, z] = from.map((p, axis) => p + (a[axis] * k) / 2000);
      const off = Math.hypot(y, z);
      // the grip's own round, its front edge, and the blank ahead of it, whose taper is too little to lean by
      const blank = x >= 0 ? off - (diameterAt(thick, freeM - x) ?? 0) / 2 : Number.POSITIVE_INFINITY;
      const grip = x <= 0 ? off - gripM : Math.hypot(x, off - gripM);
      clearM = Math.min(clearM, blank, grip);
    }
  }
  return { turns, clearM };
}
