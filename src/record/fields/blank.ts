/** The blank and its sections, as they come out of the tube. Stations count from the tip unless a name says otherwise. */
import type { JointKind } from '../../engine/bench/bench.ts';
import type { Material } from '../../engine/bench/materials.ts';
import {
  angle,
  calliper,
  choice,
  flag,
  length,
  many,
  mass,
  order,
  ours,
  percent,
  real,
  row,
  rule,
  single,
  text,
  trade,
} from './declare.ts';

export const blank = single('Blank', {
  label: text('written on it', 200, { empty: 'label, number' }),
  /** Blanks of one name are learnt from together. */
  series: text('series, as you call it', 120, { empty: 'one name, one series' }),
  withSeries: flag('read this blank together with the others of its series: then fewer readings are enough'),
  material: choice(
    'material',
    {
      carbon: 'carbon, kind not known',
      'carbon-standard': 'carbon, standard modulus',
      'carbon-intermediate': 'carbon, intermediate modulus',
      'carbon-high': 'carbon, high modulus',
      glass: 'glass',
      bamboo: 'bamboo',
      unknown: 'not known',
    } satisfies Record<Material, string>,
    { usual: 'unknown' },
  ),
  /** Surface strain; empty: the documented default of the material. */
  strainCautionPercent: percent('warn from', [0.01, 5], { origin: ours, empty: 'by material' }),
  strainStopPercent: percent('stop at', [0.01, 5], { origin: ours, empty: 'by material' }),
  mass: mass('mass of all sections, if not weighed singly'),
  /** GJ over EI. */
  twistShare: real('stiffness in twist, share of that in bending', [0.01, 1], {
    empty: 'by material',
    hint: 'As a share, such as 0.2. A tube of one material has 0.77; none has nought.',
  }),
  ferrulesBound: flag('the ferrules are wrapped, or tightly bound with tape or thread'),
});

export const jointKinds: Readonly<Record<JointKind, string>> = {
  sleeve: 'sleeve: upper over lower',
  spigot: 'spigot: a plug glued in',
  'put-in': 'put-in: upper into lower',
  'put-over': 'put-over: a sleeve of its own',
};

/** What a section is until the builder gives it a name of his own; counted from the tip. */
export const sectionParts = {
  blank: 'blank',
  tip: 'tip',
  second: 'second',
  third: 'third',
  fourth: 'fourth',
  fifth: 'fifth',
  sixth: 'sixth',
  butt: 'butt',
  added: 'new butt',
} as const;
export type SectionPart = keyof typeof sectionParts;

export const sections = many('Section', {
  order: order('place in the blank'),
  name: text('name', 60),
  part: choice('part of the blank', sectionParts),
  length: length('length'),
  mass: mass('mass'),
  /** From this section's own tip-side end. */
  balanceFromOwnTip: length('balance point'),
  /** At this section's butt end, to the next section down. */
  joint: choice('kind of ferrule', jointKinds, { folded: true, empty: 'say which kind' }),
  overlap: rule('overlap when seated', [0, 10]),
  spigotGap: rule('gap when seated', [0, 10], { usual: 0.006, origin: trade() }),
  spigotLength: rule('length of the plug', [0, 10], { usual: 0.06, origin: trade() }),
  jointStiffness: real('joint stiffness, times the blank', [0.1, 20], { unit: '×', empty: 'not known' }),
  lineSideAngle: angle('line side', { empty: 'degrees from the mark' }),
  lineSideReference: text('line side counted from', 200, { empty: 'what stands at 0' }),
  lineSideMethod: text('how you chose the line side', 200, { empty: 'your rule' }),
  wrapLength: rule('wraps over its feet', [0, 0.1], { empty: 'as for all' }),
});

export const diameters = many('Diameter', {
  section: row('section', 'sections'),
  fromOwnTip: length('from the section’s own tip end'),
  outside: calliper('outside diameter', [0, 0.1], { likely: [0.0006, 0.026] }),
});
