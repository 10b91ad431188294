/**
 * Where each wrap lies along the rod.
 *
 * A wrap over a foot starts a little before the foot's end and runs towards the ring. Lengths by the place on the
 * rod (tip third 10 mm, middle 12, butt 16, stripping guide 20), ferrule wraps of 1.75 times the diameter ending
 * 1.5 mm from the edge: common practice, no source.
 */
import type { AssembledBlank, AssembledJoint } from '../bench/assemble.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import type { GuideToWrap, WrapChoices } from './wrap-choices.ts';

export interface WrapPlace {
  kind: 'foot' | 'ferrule' | 'check' | 'tip-top';
  name: string;
  fromTipM: number;
  toTipM: number;
  /** Record's field to change when it does not fit. */
  path: string;
  overFoot: boolean;
  trimmed: boolean;
  /** Of the guides given, from the tip; left out where it holds none. */
  guide?: number;
}

export interface PlacesInput {
  blank: AssembledBlank;
  profile: readonly DiameterRow[];
  guides: readonly GuideToWrap[];
  gripFrontFromButtM: number;
  choices: WrapChoices;
}

/** From the tip down. */
export function wrapPlaces(input: PlacesInput): WrapPlace[] {
  const { blank, choices, gripFrontFromButtM } = input;
  const checkToM = blank.lengthM - gripFrontFromButtM;
  const plain = { overFoot: false, trimmed: false } as const;
  const places: WrapPlace[] = [
    ...(choices.tipWrapM > 0
      ? [
          {
            ...plain,
            kind: 'tip-top' as const,
            name: 'Tip-top',
            fromTipM: tubeM,
            toTipM: tubeM + choices.tipWrapM,
            path: 'wraps/-/tipWrap',
          },
        ]
      : []),
    ...input.guides.flatMap((guide, index) => footPlaces(guide, index, input)),
    ...(choices.ferruleWraps ? blank.joints.flatMap((joint) => ferrulePlaces(joint, input)) : []),
    ...(choices.checkWrapM > 0
      ? [
          {
            ...plain,
            kind: 'check' as const,
            name: 'Winding check',
            fromTipM: checkToM - choices.checkWrapM,
            toTipM: checkToM,
            path: 'wraps/-/checkWrap',
          },
        ]
      : []),
  ];
  return places.sort((a, b) => a.fromTipM - b.fromTipM);
}

/** Length of a wrap over a foot by its place, where the builder says nothing. */
export function commonWrapM(stationM: number, rodM: number, stripping: boolean): number {
  if (stripping) return 0.02;
  return stationM < rodM / 3 ? 0.01 : stationM < (2 * rodM) / 3 ? 0.012 : 0.016;
}

/** A tip-top's tube on the blank; the wrap joins it. */
const tubeM = 0.01;
const ferruleEdgeM = 0.0015;
const ferruleLengths = 1.75;

function footPlaces(guide: GuideToWrap, index: number, { blank, choices }: PlacesInput): WrapPlace[] {
  const widthM = guide.wrapM ?? footWrapM(guide, blank.lengthM, choices);
  const startM = guide.stationM - guide.lengthM / 2 - choices.startBeforeFootM;
  const endM = guide.stationM + guide.lengthM / 2 + choices.startBeforeFootM;
  const common = {
    kind: 'foot' as const,
    path: `guides/${guide.id ?? index}/wrapLength`,
    overFoot: true,
    trimmed: choices.trimTurns > 0,
    guide: index,
  };
  const name = `Guide ${index + 1}`;
  if (guide.feet === 1) return [{ ...common, name, fromTipM: startM, toTipM: startM + widthM }];
  return [
    { ...common, name: `${name}, tip side`, fromTipM: startM, toTipM: startM + widthM },
    { ...common, name: `${name}, butt side`, fromTipM: endM - widthM, toTipM: endM },
  ];
}

/** Never further than the ring's own place: two feet leave a third of the guide free between them. */
function footWrapM(guide: GuideToWrap, rodM: number, choices: WrapChoices): number {
  const footM = guide.oneFootM ?? guide.lengthM * (guide.feet === 1 ? 0.7 : 1 / 3);
  const usual = commonWrapM(guide.stationM, rodM, guide.stripping);
  return Math.min(usual, footM + choices.startBeforeFootM);
}

function ferrulePlaces(joint: AssembledJoint, { blank, profile }: PlacesInput): WrapPlace[] {
  const { seat, kind, upper } = joint;
  const [above, below] = [blank.sections[upper].name, blank.sections[upper + 1].name];
  const place = (atM: number, towards: 'tip' | 'butt', name: string): WrapPlace => {
    const lengthM = ferruleLengths * (diameterAt(profile, atM) ?? 0.005);
    const edgeM = towards === 'tip' ? atM - ferruleEdgeM : atM + ferruleEdgeM;
    const [fromTipM, toTipM] = towards === 'tip' ? [edgeM - lengthM, edgeM] : [edgeM, edgeM + lengthM];
    return {
      kind: 'ferrule',
      name: `Ferrule of ${name}`,
      fromTipM,
      toTipM,
      path: 'wraps/-/ferruleWraps',
      overFoot: false,
      trimmed: false,
    };
  };
  if (kind === 'spigot') return [place(seat.fromTipM, 'tip', above), place(seat.toTipM, 'butt', below)];
  // The female end alone: above for a sleeve or put-over, below for a put-in.
  return kind === 'put-in' ? [place(seat.fromTipM, 'butt', below)] : [place(seat.toTipM, 'tip', above)];
}
