/**
 * Blank and grip as a surface of revolution about the straight axis: a profile of straight pieces between rows,
 * constant beyond them. Two rows at one place are a step, as at the front of a grip.
 */
export interface SurfaceRow {
  fromTipM: number;
  radiusM: number;
}

/** Rows ascend from the tip. */
export type Surface = readonly SurfaceRow[];

/** Straight pieces of the profile, from the tip. */
export type Profile = readonly {
  fromTipM: number;
  radiusM: number;
  runM: number;
  riseM: number;
}[];

export function profileOf(surface: Surface): Profile {
  const first = surface[0];
  const last = surface[surface.length - 1];
  const rows = [
    { ...first, fromTipM: first.fromTipM - beyondM },
    ...surface,
    { ...last, fromTipM: last.fromTipM + beyondM },
  ];
  return rows.slice(1).map((to, i) => ({
    ...rows[i],
    runM: to.fromTipM - rows[i].fromTipM,
    riseM: to.radiusM - rows[i].radiusM,
  }));
}

/** How far the constant ends reach: beyond any place that could be nearest. */
const beyondM = 1e3;

/** Distance of a place beside the axis from the surface; negative inside. */
export function clearanceFrom(profile: Profile, fromTipM: number, fromAxisM: number): number {
  let least = Number.POSITIVE_INFINITY;
  let radiusM = 0;
  for (const piece of profile) {
    const [x, y] = [fromTipM - piece.fromTipM, fromAxisM - piece.radiusM];
    const squared = piece.runM * piece.runM + piece.riseM * piece.riseM;
    const along = squared === 0 ? 0 : (x * piece.runM + y * piece.riseM) / squared;
    const share = Math.min(1, Math.max(0, along));
    least = Math.min(least, Math.hypot(x - share * piece.runM, y - share * piece.riseM));
    // at a step the wider of the two counts
    if (x >= 0 && x <= piece.runM) {
      const here =
        piece.radiusM + (piece.runM > 0 ? (x / piece.runM) * piece.riseM : Math.max(0, piece.riseM));
      radiusM = Math.max(radiusM, here);
    }
  }
  return fromAxisM < radiusM ? -least : least;
}
