/**
 * Butt and tip without taps, where the marks tell where the blank must be: it leaves the clamp at a known place and is
 * as long as it is.
 *
 * The cheapest smooth path from the clamp that has the blank's length is the blank; both ends are then slid along it to
 * where the picture across the line changes. Two paths as cheap, or none that is clear, are no answer: two taps are asked
 * for, and what was thought is given with them.
 */
import type { Finding } from '../../engine/finding.ts';
import { type Camera, cameraProject } from '../camera/camera-model.ts';
import { marksToCamera } from '../camera/marks-check.ts';
import { type Refused, refusedWith } from '../finding.ts';
import { imageFound } from '../image-kinds.ts';
import type { Pixels } from '../pixels.ts';
import { centrelineOf } from '../trace/centreline.ts';
import { type CoarseRidges, coarseRidges } from '../trace/coarse-path.ts';
import { rodLook } from '../trace/rod-look.ts';
import type { TraceRequest } from '../trace/trace-request.ts';
import type { EndsKnown } from './ends-known.ts';
import { type ClampLine, linesFromClamp } from './lines-from-clamp.ts';
import { type SlidEnds, slideEnds } from './slide-ends.ts';

export type EndsAnswer =
  | { status: 'found'; ends: TraceRequest['ends'] }
  /** `ends` is the best guess, where there is one: to be shown, never to be taken for granted. */
  | { status: 'unsure'; ends?: TraceRequest['ends']; findings: Finding[] }
  | Refused;

export interface EndsChoice {
  /** A path dearer than this for each pixel of the reduced picture is no clear line. */
  clearCostPerPx: number;
  /** Lines that cost up to so many times the cheapest are looked at; so much more like a rod is taken before it. */
  seenCost: number;
  clearLook: number;
  /** A rival of the cheapest costs at most so many times as much, and looks at most so much less like a rod. */
  rivalCost: number;
  rivalLook: number;
  /** The butt must show a change across the line that is this many times what is usual beside it. */
  leastChange: number;
  /** The tip must be told so well. */
  mostTipSigmaM: number;
}

export const endsChoice: EndsChoice = {
  clearCostPerPx: 0.3,
  seenCost: 1.35,
  clearLook: 0.2,
  rivalCost: 1.2,
  rivalLook: 0.05,
  leastChange: 1.2,
  mostTipSigmaM: 0.005,
};

/** `ridges`: the picture's lines where they were looked for already. */
export function findEnds(
  known: EndsKnown,
  pixels: Pixels,
  ridges?: CoarseRidges,
  choice = endsChoice,
): EndsAnswer {
  const marks = known.marks.map(({ px, atM }) => ({
    pixel: { x: px[0], y: px[1] },
    plane: { x: atM[0], y: atM[1] },
  }));
  const seen = marksToCamera(marks, { widthPx: pixels.width, heightPx: pixels.height });
  if (seen.status === 'refused') return refusedWith(seen.findings);
  const { camera } = seen.fit;
  const wrong = knownFindings(known, camera, pixels);
  if (wrong.length > 0) return refusedWith(wrong);
  const lines = ridges ?? coarseRidges(pixels);
  const candidates = linesFromClamp(lines, camera, known, choice.seenCost);
  const picked = pickLine(pixels, candidates, lines.factor, choice);
  if (!picked.line) return { status: 'unsure', findings: [imageFound('ends', 'ends/no-line', {})] };
  const slide = ({ path }: ClampLine) => slideEnds(pixels, camera, known, path, lines.factor);
  const slid = slide(picked.line);
  // a line that does not end where the blank should is no rival
  const rival = picked.rivals.find((line) => !unclearEnd(slide(line), choice));
  const ends: TraceRequest['ends'] = { butt: [slid.butt.x, slid.butt.y], tip: [slid.tip.x, slid.tip.y] };
  const doubt = doubtOf(picked.line, rival, slid, choice);
  return doubt ? { status: 'unsure', ends, findings: [doubt] } : { status: 'found', ends };
}

function knownFindings({ lengthM, clamp }: EndsKnown, camera: Camera, pixels: Pixels): Finding[] {
  const findings: Finding[] = [];
  const [leastM, mostM] = [0.3, 10];
  if (!(lengthM >= leastM && lengthM <= mostM))
    findings.push(imageFound('lengthM', 'ends/length', { lengthM, leastM, mostM }));
  const { x, y } = cameraProject(camera, { x: clamp.atM[0], y: clamp.atM[1] });
  if (!(x >= 0 && y >= 0 && x < pixels.width && y < pixels.height)) {
    findings.push(imageFound('clamp', 'ends/clamp-outside', { xPx: x, yPx: y }));
  }
  return findings;
}

/** The cheapest, unless one nearly as cheap looks more like a rod. */
function pickLine(
  pixels: Pixels,
  lines: readonly ClampLine[],
  factor: number,
  choice: EndsChoice,
): { line?: ClampLine; rivals: ClampLine[] } {
  if (lines.length < 2) return { line: lines[0], rivals: [] };
  const looks = lines.map(({ path }) => {
    const { seen, even, taper, thickFirst } = rodLook(pixels, centrelineOf(path, 2), factor);
    return seen + even + (thickFirst && taper > 1.2 ? 0.15 : 0);
  });
  const order = [...lines.keys()].sort((a, b) => looks[b] - looks[a]);
  const clear = looks[order[0]] - looks[order[1]] > choice.clearLook;
  if (clear) return { line: lines[order[0]], rivals: [] };
  const rivals = lines.filter(
    (line, i) =>
      i > 0 && line.cost < choice.rivalCost * lines[0].cost && looks[i] > looks[0] - choice.rivalLook,
  );
  return { line: lines[0], rivals };
}

function doubtOf(
  line: ClampLine,
  rival: ClampLine | undefined,
  slid: SlidEnds,
  choice: EndsChoice,
): Finding | undefined {
  if (line.costPerPx > choice.clearCostPerPx) return imageFound('ends', 'ends/no-line', {});
  if (rival) return imageFound('ends', 'ends/two-lines', {});
  const end = unclearEnd(slid, choice);
  return end && imageFound(`ends.${end}`, 'ends/end-unclear', { end });
}

function unclearEnd({ change, tipSigmaM }: SlidEnds, choice: EndsChoice): 'butt' | 'tip' | undefined {
  if (change < choice.leastChange) return 'butt';
  return tipSigmaM > choice.mostTipSigmaM ? 'tip' : undefined;
}
