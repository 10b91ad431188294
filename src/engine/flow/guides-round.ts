/** Where each guide of a build stands round the blank, and its ring off the axis. */
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import type { Guide } from '../kinds/guides.ts';
import { type MarkRound, markRound, type PlaceRound } from '../marks/marks-list.ts';
import { spiralAngles } from '../space/spiral.ts';
import type { Choices, ChosenGuide } from './choices.ts';

export interface GuideRoundBlank {
  /** Of its foot, from the top towards the side that the spiral goes. */
  fromTopRad: number;
  /** What the spiral proposes. */
  proposedRad: number;
  /** Of its ring, in the frame of a bend in space: 0 under, +π/2 right. */
  aroundRad: number;
  /** The ring's middle off the blank's axis. */
  ringHeightM: number;
}
type Placed = Guide & Partial<Pick<ChosenGuide, 'fromTopRad' | 'ringBesideM'>>;

/** From the tip down; `heightsM` are those of the rings off the axis over their feet. Empty without a spiral. */
export function guidesRound(
  { spiral }: Pick<Choices, 'spiral'>,
  guides: readonly Placed[],
  heightsM: readonly number[],
): GuideRoundBlank[] {
  if (!spiral) return [];
  const toward = spiral.by === 'left' ? -1 : 1;
  return spiralAngles(guides.length, spiral).map((proposed, i) => {
    const proposedRad = Math.PI - Math.abs(proposed);
    const { fromTopRad = proposedRad, ringBesideM = 0 } = guides[i];
    const ringFromTopRad = fromTopRad + Math.atan2(ringBesideM, heightsM[i]);
    return {
      fromTopRad,
      proposedRad,
      aroundRad: toward * (Math.PI - ringFromTopRad),
      ringHeightM: Math.hypot(heightsM[i], ringBesideM),
    };
  });
}

/** What the marks need of it; undefined for each guide where all stand on one line. */
export function placesRound(
  choices: Pick<Choices, 'spiral' | 'guides'>,
  fromTipM: readonly number[],
  diameters: readonly DiameterRow[],
): (PlaceRound | undefined)[] {
  const { guides, spiral } = choices;
  const round = guidesRound(
    choices,
    guides,
    guides.map(({ ringHeightM }) => ringHeightM),
  );
  return guides.map((_, i) => {
    const outsideM = diameterAt(diameters, fromTipM[i]);
    if (!spiral || outsideM === undefined) return undefined;
    return { fromTopRad: round[i].fromTopRad, by: spiral.by, outsideM };
  });
}

/** Of the guides as they stand in the record; undefined for one without a mark. */
export function marksRound(
  choices: Pick<Choices, 'spiral' | 'guides'>,
  diameters: readonly DiameterRow[],
): (MarkRound | undefined)[] {
  const fromTipM = choices.guides.map(({ stationM = Number.NaN }) => stationM);
  return placesRound(choices, fromTipM, diameters).map((place, i) =>
    place && Number.isFinite(fromTipM[i]) ? markRound(place) : undefined,
  );
}
