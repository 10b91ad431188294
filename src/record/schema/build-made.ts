/** How it is to be made: handle, wraps, finish, guides and where they stand. */
import { guideKindIds } from '../../engine/kinds/guide-kinds.ts';
import {
  angle,
  choice,
  count,
  type DocumentSchema,
  flag,
  instant,
  length,
  mass,
  order,
  real,
  row,
  text,
} from './field-kinds.ts';
import {
  finishHabits,
  guideLooks,
  guideNumbers,
  handleHabits,
  layoutHabits,
  sortingHabits,
  wrapHabits,
} from './habits.ts';

export const madeCollections: DocumentSchema = {
  handle: {
    single: true,
    fields: {
      /** Butt end of the blank to the front of the grip: where the bend begins. */
      gripFront: length(),
      /** Where the line leaves the reel: from the butt end, and off the axis to the guides' side. */
      reelFromButt: length(),
      reelOffset: length(0, 0.5),
      reelMass: mass(),
      gripShape: text(80),
      gripLength: length(0, 1),
      gripBore: length(0, 0.1),
      gripMass: mass(),
      seatLength: length(0, 1),
      seatBore: length(0, 0.1),
      seatMass: mass(),
      ...handleHabits,
      /** How far the fighting butt stands out behind the blank's end. */
      fightingButt: length(0, 0.5),
      /** Front of the grip to the keeper. */
      keeperAhead: length(0, 0.5),
      keeperMass: mass(0, 0.1),
      /** Butt end to the stripping guide: as far as the line hand reaches. */
      reach: length(0, 3),
      /** The builder's word, before glue: seat, guides and tip-top stand on one line. */
      seatOnLine: flag,
      guidesOnLine: flag,
      tipTopOnLine: flag,
      dryFitted: flag,
      gluedAt: instant,
      tipTopGluedAt: instant,
    },
  },
  wraps: {
    single: true,
    fields: {
      ...wrapHabits,
      /** As the spool says, for the day it has to be matched. */
      threadLot: text(80),
      trimLot: text(80),
      /** From the butt end to the signature's butt side, and its length. */
      signatureFrom: length(),
      signatureLength: length(0, 1),
      signatureText: text(200),
    },
  },
  finish: {
    single: true,
    fields: {
      ...finishHabits,
      roomC: real(-20, 60),
      /** The builder's word before the first coat, which cannot be taken off. */
      guidesChecked: flag,
      wrapsChecked: flag,
      levelChecked: flag,
      dustFree: flag,
    },
  },
  coats: {
    single: false,
    fields: {
      order,
      brushedAt: instant,
      roomC: real(-20, 60),
      note: text(400),
      /** What went wrong with it, by its name in the list of faults. */
      fault: text(60),
      gone: flag,
    },
  },
  /** Alarms that were heard and put off, one row each: the coat and what was due. */
  alarmsHeard: {
    single: false,
    fields: { coat: row('coats'), due: text(40), gone: flag },
  },
  /** The guides in the bag, as they were looked at one by one. */
  bag: {
    single: false,
    fields: {
      order,
      size: text(40),
      straightness: choice('straight', 'slight', 'bent'),
      /** Measured on a scan: feet out of line, the angle between them, length; and which scan. */
      feetOffset: length(0, 0.02),
      feetAngle: angle(),
      length: length(0, 0.2),
      scan: text(80),
      /** Its number on that scan, and the scan kept with the build. */
      onScan: count(1, 10_000),
      scanRow: row('scans'),
      ...guideLooks,
      /** Cracked plating, a twist, a rough ring: the eye's verdict, whatever its feet are like. */
      reject: text(200),
      gone: flag,
    },
  },
  /** Pictures that guides were measured on; a discarded one is `gone`, and what was read on it stays in the bag. */
  scans: {
    single: false,
    fields: {
      order,
      attachment: row('attachments'),
      /** A telephone's picture of the reference sheet, or a flatbed's scan; and the resolution it was read with. */
      takenBy: choice('flatbed', 'phone'),
      dpi: real(1, 10_000),
      readAt: instant,
      gone: flag,
    },
  },
  sorting: { single: true, fields: sortingHabits },
  /** Time spent, logged by one tap. */
  hours: {
    single: false,
    fields: { order, stage: text(40), minutes: real(0, 10_000), loggedAt: instant, gone: flag },
  },
  /** Guides from the tip down; the tip-top has kind 'tip-top' and stands at the datum. */
  guides: {
    single: false,
    fields: {
      order,
      kind: choice(...guideKindIds),
      ...guideNumbers,
      /** The shop's rack it was taken from; its numbers were written here then, and stay. */
      fromRack: text(40),
      ...guideLooks,
      /** Of the wrap over one foot, where the builder wants his own. */
      wrapLength: length(0, 0.2),
      /** The chosen mark. */
      station: length(),
      pinned: flag,
      gone: flag,
    },
  },
  layout: {
    single: true,
    fields: {
      startKind: choice('rule', 'chart', 'own'),
      startCount: count(2, 30),
      startFirst: length(),
      startStripping: length(),
      /** The list as typed or pasted, one station after the other, and how to read it. */
      startText: text(4000),
      startUnit: choice('inch', 'mm'),
      startFrom: choice('tip', 'butt'),
      guidesSide: choice('under', 'over'),
      loadBy: choice('line', 'tied'),
      ...layoutHabits,
      tapeStep: choice('1 mm', '1/8 in', '1/16 in', '1/32 in'),
    },
  },
  /** Load ladder; empty: the default that follows the blank's power. */
  ladder: {
    single: false,
    fields: { order, load: mass(), gone: flag },
  },
};
