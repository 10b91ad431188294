/**
 * Every kind of guide, said once: what the record may hold, what is offered, how many feet, the typical numbers of its
 * sizes. A kind more is a row more here, and nothing anywhere else. Ids are kept in records and never change.
 * Numbers are common practice, no source, unless a row says otherwise; guides differ between makers.
 */
import { gramsOfRing, namedSizes, ringSizes, type SizeScale, straightBetween } from './guide-sizes.ts';

export interface GuideKindDeclaration {
  id: string;
  /** As it is called at the bench. */
  name: string;
  /** Where it stands: at the tip, along the blank, or ahead of the grip beside the line. */
  place: 'tip' | 'line' | 'keeper';
  feet(lengthM: number): 1 | 2;
  /** Bought singly and looked at on its own: no spare, not of the bag, wrapped longer. */
  single: boolean;
  /** Sizes to choose from, the smallest first; others of the kind's way of writing are understood too. */
  listed: readonly string[];
  /** One of them, as an example. */
  example: string;
  sizes: SizeScale;
  /** The line's friction on it as a share of that on a ring; left out: 1. */
  frictionShare?: number;
}

const two = () => 2 as const;
const one = () => 1 as const;

const snakeSizes = ['2/0', '1/0', '1', '2', '3', '4', '5', '6'];
/** Ring height: height over all less the wire and half the clear opening. */
const snakes = namedSizes({
  '2/0': [1.8, 19, 0.065, 3.15],
  '1/0': [2.0, 20.5, 0.08, 3.6],
  '1': [2.2, 22.5, 0.095, 4.1],
  '2': [2.4, 24.5, 0.115, 4.6],
  '3': [2.8, 27, 0.15, 5.25],
  '4': [3.3, 29.5, 0.205, 6],
  '5': [3.7, 32.5, 0.265, 7],
  '6': [4.2, 36, 0.34, 8],
});

/** A ring in a low frame: its middle no lower than leaves 3 mm under the ring. */
const lowHeightMm = straightBetween([
  [6, 6.5],
  [8, 8],
  [10, 9.5],
  [12, 11],
  [16, 12.5],
  [20, 14],
]);
const lowFrames = {
  heightMm: (ringMm: number) => Math.max(lowHeightMm(ringMm), ringMm / 2 + 3),
  lengthMm: straightBetween([
    [6, 14],
    [8, 22],
    [10, 33],
    [20, 44],
  ]),
  grams: (ringMm: number) => (ringMm < 8 ? 0.25 * (ringMm / 6) ** 2.4 : gramsOfRing(ringMm, 0.65)),
};
const strippingRows = {
  '8': [8, 30, 0.65],
  '10': [9.5, 33, 0.95],
  '12': [11, 36, 1.45],
  '16': [12.5, 40, 2.3],
  '20': [14, 44, 3.65],
} as const;

const declared = [
  {
    id: 'snake',
    name: 'snake',
    place: 'line',
    feet: two,
    single: false,
    listed: snakeSizes,
    example: '1/0',
    sizes: snakes,
  },
  {
    id: 'single-foot',
    name: 'single-foot',
    place: 'line',
    feet: one,
    single: false,
    listed: snakeSizes,
    example: '1/0',
    /** Taken as the snake of its number with one foot less, own estimate. */
    sizes: (size) => {
      const like = snakes(size);
      return like && { ...like, lengthM: 0.7 * like.lengthM, massKg: 0.9 * like.massKg };
    },
  },
  {
    id: 'ringed',
    name: 'ringed',
    place: 'line',
    /** Small running rings stand on one foot. */
    feet: (lengthM) => (lengthM < 0.018 ? 1 : 2),
    single: false,
    listed: ['5.5', '6', '7', '8', '10', '12', '16', '20', '25', '30'],
    example: '8 mm',
    sizes: ringSizes({
      fromMm: 4,
      toMm: 40,
      ...lowFrames,
      rows: { ...strippingRows, '6': [6.5, 14, 0.25], '8': [9, 22, 0.5] },
    }),
  },
  {
    id: 'ringed-one-foot',
    name: 'ringed, one foot',
    place: 'line',
    feet: one,
    single: false,
    listed: ['4', '5', '5.5', '6', '7', '8', '10', '12'],
    example: '5.5 mm',
    sizes: ringSizes({
      fromMm: 3,
      toMm: 16,
      heightMm: (ringMm) => ringMm + 0.5,
      lengthMm: (ringMm) => 4 + (10 / 6) * ringMm,
      grams: (ringMm) => gramsOfRing(ringMm, 0.43),
    }),
  },
  {
    id: 'ringed-high',
    name: 'ringed, high frame',
    place: 'line',
    feet: two,
    single: true,
    listed: ['8', '10', '12', '16', '20', '25', '30', '40', '50'],
    example: '25 mm',
    /** The ring's middle one ring above the blank; own estimate, as its mass: a quarter more than a low frame. */
    sizes: ringSizes({
      fromMm: 8,
      toMm: 60,
      heightMm: (ringMm) => ringMm,
      lengthMm: (ringMm) => 16 + 1.6 * ringMm,
      grams: (ringMm) => gramsOfRing(ringMm, 0.8),
    }),
  },
  {
    id: 'stripping',
    name: 'stripping',
    place: 'line',
    feet: two,
    single: true,
    listed: ['8', '10', '12', '16', '20', '25'],
    example: '12 mm',
    sizes: ringSizes({ fromMm: 6, toMm: 40, ...lowFrames, rows: strippingRows }),
  },
  {
    id: 'roller',
    name: 'roller',
    place: 'line',
    feet: two,
    single: true,
    listed: ['8', '10', '12', '16', '20'],
    example: '12 mm',
    /** It turns with the line on a pin of about a fifth of its radius: own judgement. One that is stuck rubs like a ring. */
    frictionShare: 0.2,
    /** Size: the roller's width. Line runs on top of the roller; heavy frames, own estimate. */
    sizes: ringSizes({
      fromMm: 6,
      toMm: 30,
      heightMm: (widthMm) => 0.9 * widthMm,
      lengthMm: (widthMm) => 30 + 1.5 * widthMm,
      grams: (widthMm) => gramsOfRing(widthMm, 4),
    }),
  },
  {
    id: 'tip-top',
    name: 'tip-top',
    place: 'tip',
    feet: one,
    single: true,
    listed: ['fly', '4.5', '5', '5.5', '6', '7', '8', '10', '12'],
    example: '6 mm',
    /** By its ring; a tube's bore in 64ths may stand before it. A fly rod's loop has no ring. */
    sizes: (size) =>
      size === 'fly' ? tipLoop(size) : tipRing(size.replace(/^\d+(?:\.5)?\/64(?: in)?[, ]+/, '')),
  },
  {
    id: 'keeper',
    name: 'hook keeper',
    place: 'keeper',
    feet: two,
    single: true,
    listed: [],
    example: '',
    sizes: () => undefined,
  },
] as const satisfies readonly GuideKindDeclaration[];

const tipLoop = namedSizes({ fly: [2.5, 12, 0.25, 4] });
const tipRing = ringSizes({
  fromMm: 3,
  toMm: 20,
  heightMm: (ringMm) => (4 / 6) * ringMm,
  lengthMm: (ringMm) => 8 + ringMm,
  grams: (ringMm) => 0.4 * (ringMm / 6) ** 1.9,
});

export const guideKinds: readonly GuideKindDeclaration[] = declared;

type Declared = (typeof declared)[number];
/** A kind that a rack may hold. */
export type RackKind = Declared['id'];
/** A kind that stands on the line. */
export type GuideKind = Exclude<Declared, { place: 'keeper' }>['id'];

export const rackKindIds = declared.map(({ id }) => id);
export const guideKindIds = declared.flatMap((kind) => (kind.place === 'keeper' ? [] : [kind.id]));
