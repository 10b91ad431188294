/**
 * A picture of another blank, as evidence of two blanks: the other pictures' fit, and this picture's by itself, with a
 * stiffness of its own under the same beliefs.
 */
import type { Explained, Fitted, Named, Refit } from './explanation.ts';
import { type Trial, trialOf } from './trials.ts';

interface OtherBlankChoice {
  /** Curves of two blanks miss one blank's by more, root mean square; stretches that stray, by less. Judgement. */
  leastMissM: number;
  /** Above so many times the score of two blanks, and so much more, other explanations are given up. Judgement. */
  hopelessTimes: number;
  hopelessMore: number;
}

const otherBlankChoice: OtherBlankChoice = { leastMissM: 0.0008, hopelessTimes: 10, hopelessMore: 200 };

/** And above what Φ no other explanation need be sought, since two blanks explain the pictures so much better. */
export function otherBlankTrials(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  pictures: readonly number[],
  choice = otherBlankChoice,
): { trials: Trial[]; giveUpAt: number } {
  const trials: Trial[] = [];
  let giveUpAt = Number.POSITIVE_INFINITY;
  if (missM(fitted) < choice.leastMissM) return { trials, giveUpAt };
  for (const setup of pictures) {
    const trial = otherBlankTrial(explained, fitted, (next, from) => refit(next, from, giveUpAt), setup);
    if (!trial) continue;
    trials.push(trial);
    const scoreOfBoth = fitted.score - 0.5 * trial.fall;
    giveUpAt = Math.min(giveUpAt, choice.hopelessTimes * Math.max(0, scoreOfBoth) + choice.hopelessMore);
  }
  return { trials, giveUpAt };
}

/** Of all places, root mean square. */
function missM({ problem: { model, sigma }, best }: Fitted): number {
  const misses = model.data.flatMap(({ kind }, d) =>
    kind === 'place' && Number.isFinite(sigma[d]) ? [best.misfit[d] * sigma[d]] : [],
  );
  return Math.sqrt(misses.reduce((sum, one) => sum + one * one, 0) / misses.length);
}

function otherBlankTrial(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  setup: number,
): Trial | undefined {
  const { request, named } = explained;
  const isLeftOut = (s: number) => named.some((one) => one.kind === 'test' && one.setup === s);
  const others = request.setups.flatMap((_, s) => (s === setup || isLeftOut(s) ? [] : [s]));
  if (isLeftOut(setup) || others.length < 2) return undefined;
  const without = (setups: readonly number[]): Explained => ({
    request,
    named: [...named, ...setups.flatMap((s) => leftOut(explained, s))],
  });
  // a state that meets nothing is no better start than none
  const from = fitted.best.hopeless ? undefined : fitted;
  const rest = refit(without([setup]), from);
  if (rest.best.hopeless) return undefined;
  const alone = refit(without(others), from);
  if (alone.best.hopeless) return undefined;
  const trial = trialOf('stand-other', without([setup]), fitted, rest);
  return { ...trial, fall: trial.fall - 2 * alone.score };
}

function leftOut({ request: { setups } }: Explained, setup: number): Named[] {
  return setups[setup].tests.map((_, test) => ({ kind: 'test', setup, test }));
}
