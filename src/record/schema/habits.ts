/** How a shop works and what a guide is: fields that stand in more than one place of the record. */

import {
  angle,
  choice,
  count,
  duration,
  type FieldKind,
  flag,
  length,
  mass,
  money,
  real,
  text,
} from './field-kinds.ts';
import { limitFields } from './limit-fields.ts';

/** How wraps are laid; a build's own word stands before the shop's. */
export const wrapHabits: Record<string, FieldKind> = {
  /** Turns counted over a measured width of close wrap: the thread as it lies on this bench. */
  turnsCounted: real(0, 10_000),
  turnsOver: length(0, 1),
  startBeforeFoot: length(0, 0.05),
  lockTurns: count(0, 100),
  underwrap: flag,
  underwrapBeyond: length(0, 0.05),
  trimTurns: count(0, 60),
  ferruleWraps: choice('yes', 'no'),
  /** Length of a ferrule wrap in diameters, and how far it stays from the edge. */
  ferruleDiameters: real(0.1, 10),
  ferruleEdge: length(0, 0.02),
  checkWrap: length(0, 0.2),
  tipWrap: length(0, 0.1),
  /** Wrap over a foot on the tip section, the sections between, the butt section, and at the stripping guide. */
  wrapTip: length(0, 0.1),
  wrapMiddle: length(0, 0.1),
  wrapButt: length(0, 0.1),
  wrapStripping: length(0, 0.1),
  /** Thread cut off or held at each wrap. */
  tagPerWrap: length(0, 5),
  spoolLength: length(1, 20_000),
  reservePercent: real(0, 300),
  threadColour: text(20),
  threadName: text(80),
  trimColour: text(20),
  trimName: text(80),
  underwrapColour: text(20),
  underwrapName: text(80),
};
/** The finish and how it is mixed; a build's own word stands before the shop's. */
export const finishHabits: Record<string, FieldKind> = {
  product: text(120),
  /** From the product's data sheet, at the temperature it states. */
  statedAtC: real(-20, 60),
  potLife: duration,
  turnFor: duration,
  recoatFrom: duration,
  recoatUntil: duration,
  flexAfter: duration,
  fishAfter: duration,
  mixBy: choice('volume', 'mass'),
  partA: real(0, 1000),
  partB: real(0, 1000),
  /** Needed to mix by mass; g/ml. */
  densityA: real(0, 5),
  densityB: real(0, 5),
  /** The syringe's or scale's smallest division, ml or g. */
  measureStep: real(0, 100),
  /** How far one division may put the ratio off, and the share of the pot life that is brushed. */
  ratioErrorPercent: real(0.1, 50),
  brushedPercent: real(1, 100),
  /** Times what the rod takes, for what stays in cup and brush. */
  mixTimes: real(1, 20),
  coatThickness: length(0, 0.005),
  /** Coats on the finished rod, height of a foot beside which finish fills in, and the degrees that halve a time. */
  coatsPlanned: count(1, 15),
  footHeight: length(0, 0.005),
  halvesPerC: real(2, 100),
  minutesPerWrap: real(0, 60),
};
export const handleHabits: Record<string, FieldKind> = {
  arborCount: count(1, 12),
  arborWidth: length(0.001, 0.1),
  /** Glue between blank and grip, all round. */
  glueLine: length(0, 0.005),
  /** Where the reamer stops, short of the end. */
  reamShort: length(0, 0.1),
  /** From mixing to bending. */
  glueCure: duration,
  /** From the seat's ends to its outer arbors, for glue. */
  arborShort: length(0, 0.05),
  /** Radial gap over which tape no longer carries the seat. */
  tapedGap: length(0.0001, 0.01),
  /** Room in the winding check over the blank, and what the tip-top's tube leaves for glue. */
  checkLeast: length(0, 0.002),
  checkMost: length(0, 0.005),
  tubeLeast: length(0, 0.001),
  tubeMost: length(0, 0.002),
  seatLock: choice('up', 'down'),
  /** The keeper over its feet, one or two. */
  keeperLength: length(0, 0.1),
  keeperFeet: count(1, 2),
};
/** How straight a guide of the bag must be; a build's own word stands before the shop's. */
export const sortingHabits: Record<string, FieldKind> = {
  /** Tolerance in percent of the blank's diameter, and how many of them a guide may use up. */
  ofDiameterPercent: real(0.1, 100),
  mostTolerances: real(0.1, 20),
  /** Feet beside each other, and the angle between them, that count as slightly out. */
  usualOffset: length(0.00001, 0.005),
  usualAngle: angle(),
  /** What the eye's three classes stand for. */
  straightOut: length(0, 0.005),
  slightOut: length(0.00001, 0.005),
  bentOut: length(0, 0.005),
};
/** What a layout is judged by and how the rod is held for it; a build's own word stands before the shop's. */
export const layoutHabits: Record<string, FieldKind> = {
  /** The thickest knot that has to pass every ring. */
  knot: length(0, 0.05),
  buttAngle: angle(),
  /** Tension that keeps the line just taut when the weight is tied to the tip (as a mass). */
  tautLine: mass(),
  intervals: choice('growing', 'free'),
  ...Object.fromEntries(Object.values(limitFields).map(({ field, kind }) => [field, kind])),
  /** Coefficient of friction of the line on the rings: both ends of what it may be. */
  frictionLowest: real(0, 2),
  frictionHighest: real(0, 2),
  /** Clear distance kept between a guide's foot and a ferrule's edge. */
  ferruleClear: length(0, 0.2),
};
/** What is looked at and done on one guide before it is bound on. */
export const guideLooks: Record<string, FieldKind> = {
  platingWhole: flag,
  notTwisted: flag,
  ringSmooth: flag,
  footRamped: flag,
  footFlat: flag,
  noBurr: flag,
};
/** A guide's own numbers, as measured, or as its packet states them. */
export const guideNumbers: Record<string, FieldKind> = {
  size: text(40),
  wire: length(0, 0.01),
  ringHeight: length(0, 0.1),
  /** Over all feet. */
  foot: length(0, 0.2),
  mass: mass(0, 0.1),
  /** Clear opening of the ring, and width of a foot. */
  opening: length(0, 0.1),
  footWidth: length(0, 0.05),
  feet: count(1, 2),
  /** Length of one foot. */
  oneFoot: length(0, 0.1),
};
/** How a rod is priced; a build's own word stands before the shop's. */
export const quoteRates: Record<string, FieldKind> = {
  hourlyRate: money,
  overheadPercent: real(0, 1000),
  reservePercent: real(0, 1000),
  depositPercent: real(0, 100),
  taxPercent: real(0, 100),
  validDays: count(0, 3650),
  leadWeeks: real(0, 520),
};
