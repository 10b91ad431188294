import type { FitKinds, FitReasons, LookKind, Shortly, ToTell } from '../../engine/stiffness/fit-kinds.ts';
import type { Writer } from '../writer.ts';
import type { Sentences } from './sentences.ts';

export const fitSentences: Sentences<FitKinds & FitReasons> = {
  'fit/ends-order': ({ fromM, toM, lengthM }, w) =>
    `Give two stations in order, from 0 to ${w.length(lengthM)}. ${w.length(fromM)} to ${w.length(toM)} is not on the blank.`,
  'fit/not-after': ({ fromTipM, beforeM }, w) =>
    `List each station once, from the tip down. ${w.length(fromTipM)} follows ${beforeM > -1 ? w.length(beforeM) : 'nothing'}.`,
  'fit/supports': ({ tipSideM, buttSideM }, w) =>
    `Give two supports on the blank, at least ${w.length(0.02)} apart, not ${w.length(tipSideM)} and ${w.length(buttSideM)}.`,
  'fit/few-points': ({ points }) =>
    `Give at least 8 points, from the hold to the tip. ${points} make no curve.`,
  'fit/curve-length': ({ curveM, blankM }, w) =>
    `Check the marks' distances and the taps on butt and tip. The curve is ${w.length(curveM)} long, the blank ${w.length(blankM)} from hold to tip.`,
  'fit/rings': () =>
    'Give the tip-top at 0 first, then the rings toward the butt, each in front of the hold.',
  'fit/nothing-read': () =>
    'Hang one weight and read the drop at the tip and at three flags. Until then the stiffness is a guess from diameters and mass, good to a factor of two.',
  'fit/scatter': ({ times }) =>
    `Your readings scatter ${times.toFixed(1)} times as much as you said; the band allows for it. Look for a blank that creeps, a draught or a moving clamp. Or give a wider ±.`,
  'fit/loads-swapped': ({ firstKg, secondKg, first, second }, w) =>
    `Did you swap the loads of tests ${first} and ${second}? The drops with ${hung(firstKg, w)} and with ${hung(secondKg, w)} fit each other's weight. They count the other way round until you put the weights right.`,
  'fit/test-left-out': ({ test }) =>
    `Check the weight and unit of test ${test}, and read it again. No blank that fits the others gives these readings. It is left out.`,
  'fit/reading-odd': ({ quantity, readM, offM, ...or }, w) =>
    `Read this ${quantity} again: ${w.length(readM)} is ${w.length(Math.abs(offM))} ${offM > 0 ? 'more' : 'less'} than the others allow.${misread(offM)} About ${w.length(readM - offM)} would fit. It is left out.${orElse(or, w)}`,
  'fit/curve-strays': ({ fromTipM, offM, ...or }, w) =>
    `Look at the drawn curve about ${w.length(fromTipM)} from the tip. It strays ${w.length(Math.abs(offM))} from any bend of this blank. Does it follow a cable or a shadow? Until then that stretch counts for little.${orElse(or, w)}`,
  'fit/balance-odd': ({ balanceM }, w) =>
    `Measure this balance point again. ${w.length(balanceM)} from the blank's tip disagrees with the other weights and balance points. It is left out.`,
  'fit/mass-odd': ({ massKg }, w) =>
    `Weigh this again. ${w.mass(massKg)} disagrees with the other weights and balance points. It is left out.`,
  'fit/swings-odd': ({ countedHz, wantedHz }) =>
    `Count the swings again, the hold pressed firm. Check where you hold it. You counted ${countedHz.toFixed(2)} Hz; ${wantedHz.toFixed(2)} Hz would fit the drops. The count is left out.`,
  'fit/flag-off': ({ fromTipM, offM, ...or }, w) =>
    `Measure the flag at ${w.length(fromTipM)} again. In every test it reads as if it were ${w.length(Math.abs(offM))} nearer the ${end(offM)}. Until then it counts for little.${orElse(or, w)}`,
  'fit/flags-off': ({ test, offM, ...or }, w) =>
    `Measure the flags of test ${test} again. All read as if they were ${w.length(Math.abs(offM))} nearer the ${end(offM)}. Was the tape hooked elsewhere?${orElse(or, w)}`,
  'fit/clamp-slipped': ({ test, tiltRad, ...or }, w) =>
    `Did the clamp slip? From test ${test} on, the blank points ${w.lineAngle(Math.abs(tiltRad))} ${tiltRad > 0 ? 'higher' : 'lower'}. These tests get a tilt of their own. Read one of the earlier tests again.${orElse(or, w)}`,
  'fit/load-odd': ({ test, share, ...or }, w) =>
    `Weigh the weight of test ${test} again. Its drops want ${w.percent(Math.abs(share))} ${share > 0 ? 'more' : 'less'}. Until then this test tells little.${orElse(or, w)}`,
  'fit/edge': ({ radii, ...or }, w) =>
    `Say which edge you read. The readings are ${Math.abs(radii).toFixed(1)} radii too ${radii > 0 ? 'low' : 'high'}, most where the blank is thick: the ${radii > 0 ? 'lower' : 'upper'} edge?${orElse(or, w)}`,
  'fit/flag-check-odd': ({ fromTipM, missM, ...or }, w) =>
    `Measure the flag at ${w.length(fromTipM)} again, from tip and clamp. The two together are ${w.length(Math.abs(missM))} ${missM > 0 ? 'short of' : 'more than'} what lies between. Its drops fit the distance from the tip.${orElse(or, w)}`,
  'fit/clamp-moved': ({ statedM, toldM, flags }, w) =>
    `The clamp should stand ${w.length(statedM)} from the tip, but ${flags} flags measured from it say ${w.length(toldM)}. The fit takes ${w.length(toldM)}. Measure from the tip to the clamp's edge again.`,
  'fit/diameter-odd': ({ fromTipM, outsideM, toldM }, w) =>
    `${w.calliper(outsideM)} at ${w.length(fromTipM)} does not fit this blank: the other diameters say about ${w.calliper(toldM)} there. It is left out. Measure it again.`,
  'fit/far-from-belief': ({ times, stiff }) =>
    `These readings make the blank ${times} times as ${stiff ? 'stiff' : 'soft'} as its diameters and mass suggest. Its stiffness is not known. Check the units of weights, drops and diameters, and that the weight moved the blank.`,
  'fit/curve-too-long': ({ excessM }, w) =>
    `Check the marks' distances and where you tapped the hold. The curve is ${w.length(Math.abs(excessM))} ${excessM > 0 ? 'longer' : 'shorter'} than the blank. Its length is left out.`,
  'fit/unsettled': ({ steps }) =>
    `The search for the likeliest stiffness did not settle in ${steps} steps. Look for an odd reading.`,
  'fit/no-bend': () =>
    'Check weights and units. Under some test no bend of this blank could give the readings.',
};

const end = (offM: number) => (offM > 0 ? 'butt' : 'tip');
const hung = (massKg: number, w: Writer) => (massKg > 0 ? w.mass(massKg) : 'nothing hung');

/** Where the error is about a round step of a tape, in the tape's own words. */
function misread(offM: number): string {
  const size = Math.abs(offM);
  const steps = [
    { m: 0.0254, words: 'an inch' },
    { m: 0.0508, words: 'two inches' },
    { m: 0.01, words: 'a centimetre' },
    { m: 0.1, words: 'ten centimetres' },
    { m: 0.3048, words: 'a foot' },
  ];
  const step = steps.find(({ m }) => Math.abs(size - m) < 0.16 * m);
  return step ? ` Did you misread ${step.words}?` : '';
}

export function orElse(or: Partial<Shortly & ToTell>, w: Writer): string {
  if (or.orKind === undefined) return '';
  const { lookKind = 'read', lookTest = 0, lookFromTipM = 0, elseKind = 'read' } = or;
  const looks = [
    look(lookKind, lookTest, lookFromTipM, w),
    look(elseKind, or.elseTest ?? 0, or.elseFromTipM ?? 0, w),
  ];
  const both = looks[0] === looks[1] ? looks[0] : looks.join('. Then ');
  return ` Nearly as likely: ${shortly(or as Shortly, w)}. To tell them apart, ${both}.`;
}

function shortly({ orKind, orOffM, orTurnRad, orShare, orFromTipM, orTest }: Shortly, w: Writer): string {
  const off = w.length(orOffM);
  switch (orKind) {
    case 'stretch':
      return `the curve strays ${off}`;
    case 'flag-check':
      return `the second measurement of the flag at ${w.length(orFromTipM)} is off by ${off}`;
    case 'reading':
      return `the reading ${orFromTipM === 0 ? 'at the tip' : `${w.length(orFromTipM)} from the tip`} in test ${orTest} is off by ${off}`;
    case 'flag':
      return `the flag at ${w.length(orFromTipM)} is ${off} off`;
    case 'stations':
      return `the flags of test ${orTest} are off by ${off}`;
    case 'slip':
      return `the clamp slipped by ${w.lineAngle(orTurnRad)} before test ${orTest}`;
    case 'load':
      return `the weight of test ${orTest} is off by ${w.percent(orShare)}`;
    case 'sway':
      return `the blank still swung in picture ${orTest}`;
    case 'edge':
      return `you read another edge${orTest < 1 ? '' : ` in test ${orTest}`}`;
    default:
      return 'a mass is off';
  }
}

function look(kind: LookKind, test: number, fromTipM: number, w: Writer): string {
  switch (kind) {
    case 'read':
      return `read test ${test} again there`;
    case 'flag':
      return `measure the place of the flag at ${w.length(fromTipM)} again`;
    case 'flags':
      return `measure the flags of test ${test} again, the tape hooked at the tip`;
    case 'slip':
      return `hang the weight of test ${test - 1} again and read the tip. Another drop than before means the clamp slipped before test ${test}`;
    case 'load':
      return `put the weight of test ${test} on a scale`;
    case 'still':
      return 'take the picture again once the tip is still';
    case 'edge':
      return 'look which edge of the blank you read';
    default:
      return 'weigh again';
  }
}
