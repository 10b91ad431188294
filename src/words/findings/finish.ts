import type { FinishKinds } from '../../engine/finish/finish-kinds.ts';
import type { Sentences } from './sentences.ts';

export const finishSentences: Sentences<FinishKinds> = {
  'finish/nothing-given': ({ what, value }) =>
    `${given[what]} is ${value}. Give more than 0; the data sheet has it.`,
  'finish/densities-needed': () =>
    'Give the density of both parts (g/ml, on the data sheet). By mass and by volume one ratio is two mixes. Or measure as the ratio is stated.',
  'finish/ratio-by-what': () =>
    'Is the ratio by volume or by mass? The data sheet says. On a scale the two differ: 1 to 1 by volume can be 54 to 46 by mass.',
  'finish/recoat-window': ({ fromS, untilS }, w) =>
    `The recoat window closes (${w.duration(untilS)}) before it opens (${w.duration(fromS)}). Read both off the data sheet again.`,
  'finish/turning-short': ({ turnForS }, w) =>
    `Turn for 4 to 8 h. After ${w.duration(turnForS)} the finish has not gelled: it would sag.`,
  'finish/fish-before-flex': ({ fishAfterS, flexAfterS }, w) =>
    `Fishing after ${w.duration(fishAfterS)} comes before bending after ${w.duration(flexAfterS)}. Make it the later one.`,
  'finish/coat-in-future': ({ coat }) =>
    `Coat ${coat} is dated in the future. Set it to when you brushed it.`,
  'finish/coat-order': ({ coat }) =>
    `Coat ${coat} is dated before coat ${coat - 1}. Correct the one that is wrong.`,
  'finish/coat-too-early': ({ coat }) =>
    `Give coat ${coat} double the time before bending. It went on before coat ${coat - 1} was ready: it may wrinkle or stay soft.`,
  'finish/coat-too-late': ({ coat }) =>
    `Watch coat ${coat} for peeling if you did not scuff first. It went on after the recoat window of coat ${coat - 1}.`,
  'finish/room-outside-rule': ({ roomC }, w) =>
    `Bring the room to ${w.temperature(21)} to ${w.temperature(27)}, or go by the data sheet. At ${w.temperature(roomC)} the finish ${roomC < 15 ? 'stays thick, holds bubbles and may not cure through' : 'gels in minutes'}. These times hold from ${w.temperature(15)} to ${w.temperature(30)}.`,
  'finish/room-off-sheet': ({ roomC, sheetC }, w) =>
    `Take these times as a guess. The room is ${w.temperature(roomC)}, the data sheet's times are for ${w.temperature(sheetC)}: more than ${w.warmer(10)} apart.`,
};

const given = {
  partA: 'The share of part A',
  partB: 'The share of part B',
  measureStep: 'The smallest mark',
  potLife: 'The pot life',
  minutesPerWrap: 'The time for one wrap',
};
