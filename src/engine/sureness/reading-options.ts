/**
 * What the builder could read next: further drops in the set-up that still stands, a new set-up with the clamp
 * moved, or with the blank turned half over, a stretch on two supports, or swings counted. In a new set-up the tilt is
 * unknown again, so that it is read with nothing hung first and then under its weight.
 *
 * Minutes: a bench's habit, not measured (common practice, no source).
 */

import { commonHeldM, dropShareAt, weights } from '../bench/protocol.ts';
import { type LevelLoad, predictedTipDrop } from '../bend/predicted-tip-drop.ts';
import { isClamped } from '../stiffness/how-read.ts';
import type { FitClampSetup, FitRequest } from '../stiffness/request.ts';
import { stopwatchSigmaS } from '../stiffness/swing-data.ts';
import type { OptionsQuestion, ReadingOption } from './reading-option.ts';
import { type SpanOnOffer, spansOnOffer } from './span-offers.ts';
import { type SwingOnOffer, swingsOnOffer } from './swing-offers.ts';

/** What could be read, and which of it goes together. */
export type Offer = SetupOnOffer | SpanOnOffer | SwingOnOffer;

/** A set-up with everything that could be read in it, and which of that goes together. */
export interface SetupOnOffer {
  kind: 'clamp';
  standing?: number;
  /** Its drops are still to be read. */
  setup: FitClampSetup & { clampFromTipM: number };
  /** `rows`: readings of the set-up, counted through its tests. */
  options: { rows: number[]; option: ReadingOption }[];
}

export function readingsOnOffer(question: OptionsQuestion): Offer[] {
  return [
    ...setupsOnOffer(question),
    ...spansOnOffer(question),
    ...swingsOnOffer(question, { gripM: commonGripM, stopwatchSigmaS }),
  ];
}

/** Held where a grip would begin; common practice, no source. */
const commonGripM = 0.25;

export function setupsOnOffer(question: OptionsQuestion): SetupOnOffer[] {
  const standing = standingSetup(question);
  return [...(standing ? [standing] : []), ...newSetups(question)];
}

/** `turnMin`: to come to the tablet and back, whatever is read. */
const effort = { turnMin: 1.5, setupMin: 3, hangMin: 1, readMin: 0.5 };
/** Places of the clamp over the blank's length; the first stands for the clamp at the butt. */
const clampShares = [1, 0.75, 0.5, 0.35, 0.25, 0.16, 1 / 9];
/** Stations over the length in front of the clamp. */
const stationShares = [0, 1 / 9, 1 / 4, 1 / 2, 3 / 4];

function newSetups(question: OptionsQuestion): SetupOnOffer[] {
  const { lengthM, sweepSigmaPerM } = question.fit.blank;
  const turns = sweepSigmaPerM === 0 ? [0] : [0, Math.PI];
  return clampShares.flatMap((share) => {
    const clampFromTipM = onMillimetre(share === 1 ? lengthM - commonHeldM : share * lengthM);
    const [, full] = weightsAt(question, clampFromTipM);
    const stations = stationShares.map((along) => onMillimetre(along * clampFromTipM));
    return turns.map((turnedRad): SetupOnOffer => {
      const setup = {
        nominalAngleRad: 0,
        tiltSigmaRad: lastClamped(question.fit)?.tiltSigmaRad,
        clampFromTipM,
        turnedRad,
        tests: testsOf([0, full], stations, question.fit),
      };
      const loads = stationSets(stations).map((read) =>
        [0, full].map((massKg) => ({ massKg, readFromTipM: read })),
      );
      return { kind: 'clamp', setup, options: loads.map((each) => onOffer(setup, each, {})) };
    });
  });
}

/** Another weight in the set-up that stands, or more stations under one that was hung. */
function standingSetup(question: OptionsQuestion): SetupOnOffer | undefined {
  const { fit, standing } = question;
  const owner = standing === undefined ? undefined : fit.setups[standing];
  if (!owner || !isClamped(owner)) return undefined;
  const clampFromTipM = owner.clampFromTipM ?? fit.blank.lengthM;
  const hung = owner.tests.map((test) => hungAtTip(test.hung ?? []));
  const handy = [...hung, ...weightsAt(question, clampFromTipM)].filter(Number.isFinite);
  const masses = [...new Set([0, ...handy])].sort((a, b) => a - b);
  const read = owner.tests.flatMap(({ readings }) => readings.map(({ fromTipM }) => fromTipM));
  const stations = apart([...read, ...stationShares.map((along) => onMillimetre(along * clampFromTipM))]);
  const setup = { ...owner, clampFromTipM, tests: testsOf(masses, stations, fit) };
  const sets = [...stationSets(stations), ...stations.slice(1).map((station) => [station])];
  const options = masses.flatMap((massKg) =>
    sets.map((readFromTipM) => {
      const stands = { standing, hangsKg: hung.at(-1) };
      return onOffer(setup, [{ massKg, readFromTipM }], stands);
    }),
  );
  return { kind: 'clamp', standing, setup, options };
}

function onOffer(
  setup: SetupOnOffer['setup'],
  loads: ReadingOption['loads'],
  { standing, hangsKg }: { standing?: number; hangsKg?: number },
): SetupOnOffer['options'][number] {
  const rows = loads.flatMap(({ massKg, readFromTipM }) =>
    readFromTipM.map((station) => rowOf(setup, massKg, station)),
  );
  const changes = loads.filter(({ massKg }) => massKg !== hangsKg).length;
  const minutes =
    effort.turnMin +
    (standing === undefined ? effort.setupMin : 0) +
    changes * effort.hangMin +
    rows.length * effort.readMin;
  const { clampFromTipM, turnedRad = 0 } = setup;
  return { rows, option: { standing, clampFromTipM, turnedRad, loads, readings: rows.length, minutes } };
}

function rowOf({ tests }: FitClampSetup, massKg: number, station: number): number {
  const test = tests.findIndex(({ hung = [] }) => hungAtTip(hung) === massKg);
  const before = tests.slice(0, test).reduce((sum, { readings }) => sum + readings.length, 0);
  return before + tests[test].readings.findIndex(({ fromTipM }) => fromTipM === station);
}

/** Readings to come are as good as the last set-up's. */
function testsOf(masses: readonly number[], stations: readonly number[], fit: FitRequest) {
  const sigmaM = lastClamped(fit)?.tests.at(-1)?.sigmaM;
  return masses.map((massKg) => ({
    hung: massKg > 0 ? [{ fromTipM: 0, massKg }] : [],
    readings: stations.map((fromTipM) => ({ fromTipM, dropM: 0 })),
    sigmaM,
  }));
}

function lastClamped({ setups }: FitRequest): FitClampSetup | undefined {
  return setups.findLast(isClamped);
}

function weightsAt(question: OptionsQuestion, clampFromTipM: number): number[] {
  const { fit, tables, clampHeightM } = question;
  const share = dropShareAt(clampFromTipM, fit.blank.lengthM);
  const tipDropM = (loaded: LevelLoad) => predictedTipDrop(tables, loaded);
  return weights({ tipDropM, clampHeightM }, { clampM: clampFromTipM, share });
}

/** NaN where the weight does not hang from the tip alone. */
function hungAtTip(hung: readonly { fromTipM: number; massKg: number }[]): number {
  if (hung.length === 0) return 0;
  return hung.length === 1 && hung[0].fromTipM === 0 ? hung[0].massKg : Number.NaN;
}

/** The tip alone; every other station; all. */
function stationSets(stations: readonly number[]): number[][] {
  return [[stations[0]], stations.filter((_, i) => i % 2 === 0), [...stations]];
}

/** Ascending, none nearer than 20 mm to the one before. */
function apart(stations: readonly number[]): number[] {
  const ascending = [...stations].sort((a, b) => a - b);
  return ascending.filter((station, i) => i === 0 || station - ascending[i - 1] > 0.02);
}

function onMillimetre(lengthM: number): number {
  return Math.round(lengthM * 1000) / 1000;
}
