/**
 * Where each wrap lies along the rod.
 *
 * A wrap over a foot starts a little before the foot's end and runs towards the ring. Lengths by the section (tip
 * 10 mm, those between 12, butt 16, stripping guide 20; on a rod of one piece by its thirds), ferrule wraps of 1.75
 * times the diameter ending 1.5 mm from the edge: common practice, no source, and the builder's to change.
 */
import { type AssembledBlank, type AssembledJoint, locateMark } from '../bench/assemble.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import type { GuideToWrap, WrapChoices } from './wrap-choices.ts';

export interface WrapPlace {
  kind: 'foot' | 'ferrule' | 'check' | 'tip-top' | 'keeper';
  /** Which it is: `foot/3/tip`, `ferrule/Upper middle`, `check`; guides count from 1. */
  id: string;
  fromTipM: number;
  toTipM: number;
  /** Record's field to change when it does not fit. */
  path: string;
  overFoot: boolean;
  trimmed: boolean;
  /** Of the guides given, from the tip; left out where it holds none. */
  guide?: number;
}

export interface WrapsInput {
  blank: AssembledBlank;
  profile: readonly DiameterRow[];
  guides: readonly GuideToWrap[];
  /** The hook keeper, where there is one. */
  keeper?: GuideToWrap;
  gripFrontFromButtM: number;
  choices: WrapChoices;
}

/** From the tip down. */
export function wrapPlaces(input: WrapsInput): WrapPlace[] {
  const { blank, choices, gripFrontFromButtM, keeper } = input;
  const checkToM = blank.lengthM - gripFrontFromButtM;
  const places: WrapPlace[] = [
    ...plainPlace('tip-top', tubeM, choices.tipWrapM),
    ...input.guides.flatMap((guide, index) =>
      footPlaces(guide, input, {
        ...overFoot(choices),
        kind: 'foot',
        id: `foot/${index + 1}`,
        path: `guides/${guide.id ?? index}/wrapLength`,
        guide: index,
      }),
    ),
    ...(choices.ferruleWraps ? blank.joints.flatMap((joint) => ferrulePlaces(joint, input)) : []),
    ...(keeper ? footPlaces(keeper, input, { ...overFoot(choices), ...keeperNames }) : []),
    ...plainPlace('check', checkToM - choices.checkWrapM, choices.checkWrapM),
  ];
  return places.sort((a, b) => a.fromTipM - b.fromTipM);
}

/** A tip-top's tube on the blank; the wrap joins it. */
const tubeM = 0.01;
const keeperNames = { kind: 'keeper', id: 'keeper', path: 'handle/-/keeperLength' } as const;
const plainPaths = { 'tip-top': 'wraps/-/tipWrap', check: 'wraps/-/checkWrap' };

/** A wrap over the bare blank; none of no length. */
function plainPlace(kind: 'tip-top' | 'check', fromTipM: number, lengthM: number): WrapPlace[] {
  if (!(lengthM > 0)) return [];
  const path = plainPaths[kind];
  return [{ kind, id: kind, path, fromTipM, toTipM: fromTipM + lengthM, overFoot: false, trimmed: false }];
}

const overFoot = ({ trimTurns }: WrapChoices) => ({ overFoot: true, trimmed: trimTurns > 0 });

type FootNames = Omit<WrapPlace, 'fromTipM' | 'toTipM'>;

function footPlaces(
  guide: GuideToWrap,
  { blank, choices }: WrapsInput,
  { id, ...common }: FootNames,
): WrapPlace[] {
  const widthM = guide.wrapM ?? footWrapM(guide, blank, choices);
  const startM = guide.stationM - guide.lengthM / 2 - choices.startBeforeFootM;
  const endM = guide.stationM + guide.lengthM / 2 + choices.startBeforeFootM;
  if (guide.feet === 1) return [{ ...common, id, fromTipM: startM, toTipM: startM + widthM }];
  return [
    { ...common, id: `${id}/tip`, fromTipM: startM, toTipM: startM + widthM },
    { ...common, id: `${id}/butt`, fromTipM: endM - widthM, toTipM: endM },
  ];
}

/** Never further than the ring's own place: two feet leave a third of the guide free between them. */
function footWrapM(guide: GuideToWrap, blank: AssembledBlank, choices: WrapChoices): number {
  const footM = guide.oneFootM ?? guide.lengthM * (guide.feet === 1 ? 0.7 : 1 / 3);
  return Math.min(usualWrapM(guide, blank, choices), footM + choices.startBeforeFootM);
}

/** Length of a wrap over a foot by its section, where the builder says nothing of this guide. */
function usualWrapM(
  { stationM, stripping }: Pick<GuideToWrap, 'stationM' | 'stripping'>,
  blank: AssembledBlank,
  { footWraps }: Pick<WrapChoices, 'footWraps'>,
): number {
  const { tipM, middleM, buttM, strippingM, ownM } = footWraps;
  const { onSection } = locateMark(blank, stationM);
  const own = onSection === 'none' ? undefined : ownM[onSection];
  if (own !== undefined) return own;
  if (stripping) return strippingM;
  const last = blank.sections.length - 1;
  if (last > 0) return onSection === 0 ? tipM : onSection === last ? buttM : middleM;
  const share = stationM / blank.lengthM;
  return share < 1 / 3 ? tipM : share < 2 / 3 ? middleM : buttM;
}

function ferrulePlaces(joint: AssembledJoint, { blank, profile, choices }: WrapsInput): WrapPlace[] {
  const { seat, kind, upper } = joint;
  const { ferruleDiameters, ferruleEdgeM } = choices;
  const [above, below] = [blank.sections[upper].name, blank.sections[upper + 1].name];
  const place = (atM: number, towards: 'tip' | 'butt', name: string): WrapPlace => {
    const lengthM = ferruleDiameters * (diameterAt(profile, atM) ?? 0.005);
    const edgeM = towards === 'tip' ? atM - ferruleEdgeM : atM + ferruleEdgeM;
    const [fromTipM, toTipM] = towards === 'tip' ? [edgeM - lengthM, edgeM] : [edgeM, edgeM + lengthM];
    return {
      kind: 'ferrule',
      id: `ferrule/${name}`,
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
