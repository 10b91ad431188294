import type { RoundKinds } from '../../engine/flow/check-round.ts';
import type { Sentences } from './sentences.ts';

export const roundSentences: Sentences<RoundKinds> = {
  'round/starts-on-ferrule': ({ guide, zoneFromM, zoneToM }, w) =>
    `The spiral starts on a ferrule: guide ${guide}, where ${w.length(zoneFromM)} to ${w.length(zoneToM)} from the tip is kept free. Move the guide, or start one guide nearer the tip.`,
  'round/feet-overlap': ({ guide, next, intervalM, needM }, w) =>
    `Guides ${guide} and ${next} are ${w.length(intervalM)} apart; their feet need ${w.length(needM)}. Move one of them: turned apart, their wraps still cross.`,
  'round/turns-back': ({ guide, atRad, next, nextRad }, w) =>
    `Guide ${guide} is ${w.angle(atRad)} from the top, guide ${next} nearer the reel ${w.angle(nextRad)}: the line would turn back. Turn guide ${guide} on to ${w.angle(nextRad)} or more.`,
};
