import { describe, expect, test } from 'vitest';
import type { RoundAtLoad } from '../engine/flow/round-answer.ts';
import { ladderWriter } from './ladder-writer.ts';
import {
  clearInWords,
  handInWords,
  roundInWords,
  spiralInWords,
  stretchInWords,
  turnInWords,
} from './round.ts';
import { shopWriter } from './writer.ts';

const writer = (system: 'inch' | 'mm') => ladderWriter(shopWriter({ system }), [0.25, 0.8]);
const at = (more: Partial<RoundAtLoad>): RoundAtLoad => ({
  status: 'converged',
  stable: true,
  lineAngleRad: [0.9, 0.1, 0.15],
  clearM: [0.006, 0.004, 0.005],
  handTorqueNm: 0,
  tipTwistRad: 0,
  ...more,
});

describe('guides round the blank in words', () => {
  test('the tip-top’s turn is the pull’s; the first guide counts by a limit of its own', () => {
    const loads = [at({}), at({ lineAngleRad: [1.2, 0.2, 0.25] })];
    const degree = Math.PI / 180;
    const said = (firstLineAngleRad?: number) =>
      turnInWords(loads, { lineAngleRad: 15 * degree, firstLineAngleRad }, writer('mm'));
    expect(said(15 * degree)).toBe('Closest: guide 2 at 800 g, the line turns 14.3° of 15°.');
    expect(said(20 * degree)).toBe('Closest: guide 1 at 800 g, the line turns 11.5° of 15°.');
    expect(said()).toBe(said(20 * degree));
  });

  test('a foregrip that the line rubs on is said with its remedy and its lightest load', () => {
    const gripped = (...clearM: number[]) => clearM.map((foregripClearM) => at({ foregripClearM }));
    expect(clearInWords(gripped(0.006, 0.004), true, writer('mm'))).toMatch(
      /It clears the foregrip by 4 mm or more\.$/,
    );
    expect(clearInWords(gripped(0.002, -0.001), true, writer('mm'))).toMatch(
      /Take a thinner or shorter foregrip or a higher first guide: the line rubs on the foregrip from 800 g\.$/,
    );
  });

  test('other angles are proposed with what they change', () => {
    const judged = (fromTopRad: number[], valueRad: number) => ({
      fromTopRad,
      turn: { ratio: 0.8, ring: 1, load: 0, valueRad },
      clearM: 0.003,
      handTorqueNm: 0.02,
    });
    const now = judged([Math.PI, Math.PI / 3], 0.25);
    const said = spiralInWords({ now, best: judged([Math.PI, Math.PI / 4], 0.2) }, writer('mm'));
    expect(said.deed).toBe('Turn guide 2 to 45°.');
    expect(said.why).toMatch(/turns 11\.5° at most there \(now 14\.3°\), clears by 3 mm/);
    expect(spiralInWords({ now, best: now }, writer('mm')).better).toBe(false);
  });

  test('where the line would lie on the blank the remedy comes first, with the lightest load that does it', () => {
    const loads = [at({ clearM: [0.006, -0.001, 0.005] }), at({ clearM: [0.006, -0.003, 0.005] })];
    expect(clearInWords(loads, false, writer('mm'))).toBe(
      'Put these guides closer, add one, or take higher rings. The line lies on the blank between guides 1 and 2, from 250 g.',
    );
    expect(clearInWords([at({}), at({})], true, writer('inch'))).toBe(
      'The line clears the blank at every load, by 5⁄32 in at the least: between guides 1 and 2, at 250 g.',
    );
    expect(stretchInWords(2, 2)).toBe('between guide 2 and the reel');
  });

  test('torque is in the shop’s units: 0.1 N·m is 0.89 in·lb', () => {
    const loads = [at({}), at({ handTorqueNm: -0.1, tipTwistRad: 0.0349 })];
    expect(handInWords(loads, writer('inch'))).toBe(
      'Pulled straight at 800 g, your hand holds 0.89 in·lb and the tip twists by 2°.',
    );
    expect(handInWords(loads, writer('mm'))).toMatch(/0\.1(00)? N·m/);
    expect(handInWords([at({})], writer('mm'))).toBe('Pulled straight, the rod does not turn in the hand.');
    expect(handInWords([at({ stable: false })], writer('mm'))).toBe(
      'At 250 g a small push turns the rod over.',
    );
  });

  test('places are counted from the top', () => {
    const mm = writer('mm');
    expect(roundInWords(0, 'left', mm)).toBe('on top');
    expect(roundInWords(Math.PI, 'left', mm)).toBe('under');
    expect(roundInWords(Math.PI / 3, 'left', mm)).toBe('60° to the left of the top');
    expect(roundInWords(-Math.PI / 6, 'left', mm)).toBe('30° to the right of the top');
  });
});
