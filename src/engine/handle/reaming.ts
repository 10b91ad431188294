/**
 * Opening a grip's bore to the blank's taper.
 *
 * At a distance x from the butt end the bore must be b(x) = D(x) + 2 g, D the blank's diameter and g the glue
 * line. The reamer enters at the grip's butt-side face, where the blank is thickest, and each width w is opened
 * down to the depth where b falls to w; beyond, the next narrower one goes on.
 * Steps of a quarter of a millimetre, and stopping 8 mm short to finish by hand, are common practice, no source.
 */
export interface ReamingStep {
  /** Width to open to. */
  widthM: number;
  /** How deep, from the grip's butt-side face; 0: at the face alone. */
  depthM: number;
  /** The last one goes through: this is where to stop with the reamer and ease the rest by hand. */
  stopAtM?: number;
}
interface ReamingJob {
  grip: { fromM: number; toM: number };
  /** Bore as bought; left out: a rod-thin pilot hole. */
  gripBoreM?: number;
  glueLineM: number;
  /** Where the reamer stops, short of the far end. */
  reamShortM: number;
  /** Blank's diameter by distance from the butt end; does not grow away from it. */
  outsideM(fromButtM: number): number;
}

/** Narrow to wide, as they are reamed; empty where the bore as bought is wide enough all along. */
export function reamingSteps(job: ReamingJob): ReamingStep[] {
  const { grip } = job;
  const wanted = (fromButtM: number) => job.outsideM(fromButtM) + 2 * job.glueLineM;
  const widest = wanted(grip.fromM);
  const narrowest = Math.max(wanted(grip.toM), job.gripBoreM ?? 0);
  if (widest <= narrowest + 1e-9)
    return job.gripBoreM !== undefined && job.gripBoreM >= widest ? [] : [through(job, widest)];
  const inner: ReamingStep[] = [];
  for (let width = Math.ceil(narrowest / stepM + 1e-6) * stepM; width < widest - 1e-9; width += stepM) {
    inner.push({ widthM: width, depthM: depthOf(width, job, wanted) });
  }
  const first =
    job.gripBoreM !== undefined && job.gripBoreM >= wanted(grip.toM) ? [] : [through(job, wanted(grip.toM))];
  const mouth = { widthM: widest, depthM: 0 };
  return [...first, ...inner, mouth];
}
const stepM = 0.00025;

function through({ grip, reamShortM }: ReamingJob, widthM: number): ReamingStep {
  const depthM = grip.toM - grip.fromM;
  return { widthM, depthM, stopAtM: Math.max(0, depthM - reamShortM) };
}

/** Where the wanted bore has narrowed to a width, by halving; 50 halvings of a grip are far below a micron. */
function depthOf(widthM: number, { grip }: ReamingJob, wanted: (fromButtM: number) => number): number {
  let [low, high] = [grip.fromM, grip.toM];
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2;
    if (wanted(middle) > widthM) low = middle;
    else high = middle;
  }
  return low - grip.fromM;
}
