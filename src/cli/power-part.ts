import { blanksThatFit } from '../engine/flow/build-sureness.ts';
import {
  type Power,
  powerQuestion,
  predictPower,
  type SwingPrediction,
  swingOf,
} from '../engine/flow/power.ts';
import { plusMinusHz } from '../engine/flow/swing-count.ts';
import { countInWords, hzInWords } from '../words/swings.ts';
import type { OpenBuild } from './open-build.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** How it swings and what drops its tip by a third. */
export function powerOfWork({ bench, choices, work }: WorkedBuild, { swings }: OpenBuild): Power {
  const { blank, diameters, question, standing, tables, posterior } = work;
  const at = { marksFromTipM: standing.fromTipM, freeLengthM: question.rod.lengthM };
  const asked = powerQuestion({ bench, choices, blank, diameters }, at, swings);
  return predictPower(asked, tables, posterior ? blanksThatFit(posterior) : []);
}

/** The frequencies with their ±, and every count beside what was predicted for it. */
export function swingPart(power: Power, { swings: counts, writer }: OpenBuild): string {
  const [bare, finished] = power.swings;
  const hz = ({ modes }: SwingPrediction) =>
    modes.map((mode) => hzInWords(mode.hz, plusMinusHz(mode))).join(', then ');
  const sure = bare.modes[0]?.range
    ? '± good on 95 of 100 blanks that fit your readings'
    : 'a guess from the diameters, of unknown range';
  const counted = counts.flatMap(({ rod, clampFromTipM = bare.clampFromTipM, counted: swung, seconds }) => {
    if (swung === undefined || seconds === undefined) return [];
    const words = countInWords({ counted: swung, seconds }, swingOf(power, { rod, clampFromTipM }), writer);
    return [`  ${rod}, held ${writer.length(clampFromTipM)} from the tip: ${words}`];
  });
  return [`Swing, held at the grip (${sure}): bare ${hz(bare)}; finished ${hz(finished)}.`, ...counted].join(
    '\n',
  );
}
