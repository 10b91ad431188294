import { blanksThatFit } from '../engine/flow/build-sureness.ts';
import { type Power, predictPower, type SwingingRod } from '../engine/flow/power.ts';
import { plusMinusHz } from '../engine/flow/swing-count.ts';
import { countInWords, hzInWords } from '../words/swings.ts';
import type { OpenBuild } from './open-build.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** How it swings and what drops its tip by a third, at the builder's own marks where there are, else the proposed ones. */
export function powerOfWork({ bench, choices, work }: WorkedBuild, { swings }: OpenBuild): Power {
  const { blank, diameters, question, best, tables, posterior } = work;
  const freeLengthM = question.rod.lengthM;
  const counted = swings.map(
    ({ rod, clampFromTipM = freeLengthM }): SwingingRod => ({
      rod,
      clampFromTipM: Math.min(clampFromTipM, blank.lengthM),
    }),
  );
  return predictPower(
    {
      parts: { bench, choices, blank, diameters },
      marksFromTipM: question.ownFromTipM ?? best.fromTipM,
      swinging: [
        { rod: 'bare', clampFromTipM: freeLengthM },
        { rod: 'finished', clampFromTipM: freeLengthM },
        ...counted,
      ],
      freeLengthM,
    },
    tables,
    posterior ? blanksThatFit(posterior) : [],
  );
}

/** The frequencies with their ±, and every count beside what was predicted for it. */
export function swingPart({ swings }: Power, { swings: counts, writer }: OpenBuild): string {
  const [bare, finished, ...predicted] = swings;
  const hz = ({ modes }: (typeof swings)[number]) =>
    modes.map((mode) => hzInWords(mode.hz, plusMinusHz(mode))).join(', then ');
  const sure = bare.modes[0]?.range
    ? '± good on 95 of 100 blanks that fit your readings'
    : 'a guess from the diameters, of unknown range';
  const counted = counts.flatMap(({ counted: swung, seconds }, index) =>
    swung === undefined || seconds === undefined
      ? []
      : [
          `  ${predicted[index].rod}, held ${writer.length(predicted[index].clampFromTipM)} from the tip: ${countInWords({ counted: swung, seconds }, predicted[index], writer)}`,
        ],
  );
  return [`Swing, held at the grip (${sure}): bare ${hz(bare)}; finished ${hz(finished)}.`, ...counted].join(
    '\n',
  );
}
