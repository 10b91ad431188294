/**
 * What a builder did at one go. The record keeps the id of it, `addSection` or `moveGuide:7`, and of one changed field
 * `set:sections:length`; the words are made here. Gestures of earlier versions are English already and stay as they are.
 */

import type { Path } from '../record/operation.ts';
import type { DocumentKind } from '../record/schema.ts';
import { capital } from './capital.ts';
import { fieldName } from './history.ts';

/** `{}` stands for what follows the colon. */
export const deedWords = {
  acceptTest: 'accept a load test',
  addDiameter: 'another diameter',
  addFlagChecks: 'measure the flags again',
  addGuide: 'add a guide',
  addHours: 'add hours to the quote',
  addMark: 'another mark of the wall',
  addLine: 'add a line to the quote',
  addLoad: 'add a load',
  addPart: 'add a part',
  addPicture: 'add a picture',
  addPrinter: 'add a printer',
  addReading: 'add the next reading',
  addSection: 'add a section',
  addStation: 'another station',
  addSwings: 'count swings',
  addToBag: 'add a guide to the bag',
  addTwist: 'another reading of the bar',
  addToRack: 'add a guide to the shop’s',
  addWeight: 'another weight',
  addWall: 'add a wall',
  allWell: 'all well on a guide',
  bringBack: 'bring back an earlier state',
  brushCoat: 'brush on coat {}',
  chooseValue: 'choose one of two values',
  chooseGuide: 'choose guide {}',
  chooseKeeper: 'choose the keeper',
  chooseTipTop: 'choose the tip-top',
  create: 'begin',
  editedInFile: 'edit the file',
  erase: 'erase for good',
  fileHabits: 'habits of its shop',
  findEnds: 'find butt and tip',
  findMarks: 'find printed marks',
  firstStart: 'say how the shop measures',
  glueHandle: 'glue the handle',
  glueTipTop: 'glue the tip-top',
  hearAlarm: 'hear an alarm',
  import: 'open a file',
  inspectionList: 'lay out the inspection',
  joinBuild: 'name the build on record',
  keepHabit: 'use as the shop’s default',
  layOutSections: 'lay out the sections',
  logQuarter: 'log a quarter of an hour',
  lookAtGuide: 'look at a guide',
  keepLive: 'keep what the live view shows',
  makeProof: 'predict a weight',
  layGuides: 'use another number of guides',
  makeStand: 'begin pictures of one stand',
  makeTest: 'begin a load test',
  measureBetween: 'measure between marks',
  moveGuide: 'move guide {}',
  movePlace: 'move a place in the picture',
  ownLadder: 'own load ladder',
  partsFromBuild: 'parts from the build',
  partsFromOrder: 'parts from the order',
  pinGuide: 'pin guide {}',
  placeAll: 'place the guides',
  placeAsStart: 'use the start’s marks',
  setPlace: 'set a place in the picture',
  print: 'print {}',
  protocol: 'lay out the {} readings',
  quote: 'quote',
  quoteHours: 'usual hours',
  readCurve: 'read the curve',
  readingAside: 'set a reading aside',
  removeDistance: 'remove a distance',
  removeFromBag: 'take a guide out of the bag',
  removeFromRack: 'remove a guide of the shop',
  removeGuide: 'remove a guide',
  removeHours: 'remove hours',
  removeLine: 'remove a line of the quote',
  removeLoad: 'remove a load',
  removeMark: 'remove a mark of the wall',
  removePart: 'remove a part',
  removePicture: 'remove a picture',
  removePlace: 'remove a place in the picture',
  removePoint: 'remove a point',
  removePrinter: 'remove a printer',
  removeProof: 'remove a proof',
  removeReading: 'remove a reading',
  removeScan: 'remove a scan',
  removeSection: 'remove a section',
  removeSetup: 'remove a set-up',
  removeStand: 'put pictures of one stand away',
  removeSwings: 'remove a count of swings',
  removeTest: 'remove a load test',
  removeTwist: 'remove a reading of the bar',
  removeTurning: 'remove a turning',
  removeWall: 'remove a wall',
  reset: 'bring the demo back',
  scanBag: 'take the guides of a scan',
  setAsideGuide: 'put a guide aside',
  strippingByReach: 'stripping guide by reach',
  tag: 'add a tag',
  takeAcceptanceBack: 'take an acceptance back',
  takeFirstRing: 'take a first guide',
  takeRingSizes: 'take stepping rings',
  takeGuides: 'take the guides over',
  takeGuideAgain: 'take guide {} from the shop’s again',
  tickOff: 'done: {}',
  turnGuide: 'turn guide {} round the blank',
  turnSpiral: 'turn the guides of the spiral',
  turnSection: 'turn a section',
  twoSupports: 'two supports',
  unpinGuide: 'unpin guide {}',
  untag: 'take a tag off',
  untick: 'not done: {}',
} as const;
type Deed = keyof typeof deedWords;
export type DeedId = Deed | `${Deed}:${string | number}` | `set:${string}:${string}`;

/** One field was changed. */
export function fieldDeed([collection, , field]: Path): DeedId {
  return `set:${collection}:${field}`;
}

/** "move guide 7" of `moveGuide:7.k3p9x2ab`. */
export function deedText(gesture: string, kind: DocumentKind): string {
  const [deed, ...of] = gesture.replace(/\.[^.]*$/, '').split(':');
  if (deed === 'set' && of.length === 2) return fieldName([of[0], '-', of[1]], { kind });
  if (Object.hasOwn(deedWords, deed)) return deedWords[deed as Deed].replace('{}', of.join(' ')).trim();
  return [deed, ...of].join(':');
}

/** As History tells it; an undo by what it took back. */
export function pastDeedText(gesture: string, kind: DocumentKind): string {
  const [, verb, target] = /^(undo|redo):\d+:(.*)$/s.exec(gesture) ?? [];
  const text = deedText(target ?? gesture, kind);
  if (verb) return `${verb === 'undo' ? 'Undid' : 'Did again'}: ${text}`;
  return capital(text);
}
