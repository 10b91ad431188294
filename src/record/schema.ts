/**
 * The build record: every place a value can stand, and what may stand there.
 *
 * A document is a flat map from a path (collection, row, field) to a value. Collections marked `single`
 * have one row, named '-'. Other rows are made by writing a field of a new row id and put away by writing
 * `gone: true`. A row points to another row by its id. Adding a field or a collection here needs no
 * migration; changing the meaning of one does (see file.ts).
 *
 * Quantities are stored in SI beside the text as typed: { si: 0.1143, text: '4 1/2 in' }.
 */
export interface QuantityValue {
  si: number;
  text: string;
}
export type FieldValue = string | number | boolean | QuantityValue | null;

export type FieldKind =
  | { kind: 'text'; maxLength: number }
  | { kind: 'flag' }
  | { kind: 'choice'; of: readonly string[] }
  | { kind: 'number'; min: number; max: number; integer?: boolean }
  /** SI: m, kg, rad, s; bounds are sanity limits of the record, tighter ones belong to the bench checks. */
  | { kind: 'quantity'; dimension: 'length' | 'mass' | 'angle' | 'duration'; min: number; max: number }
  | { kind: 'row'; collection: string }
  /** SHA-256 in lower-case hex of a stored attachment. */
  | { kind: 'attachment' }
  /** ISO 8601 instant in UTC. */
  | { kind: 'instant' };

export interface CollectionSchema {
  single: boolean;
  fields: Record<string, FieldKind>;
}
export type DocumentSchema = Record<string, CollectionSchema>;

const text = (maxLength = 400): FieldKind => ({ kind: 'text', maxLength });
const flag: FieldKind = { kind: 'flag' };
const choice = (...of: string[]): FieldKind => ({ kind: 'choice', of });
const order: FieldKind = { kind: 'number', min: -1e9, max: 1e9 };
const count = (min: number, max: number): FieldKind => ({ kind: 'number', min, max, integer: true });
const real = (min: number, max: number): FieldKind => ({ kind: 'number', min, max });
const length = (min = 0, max = 10): FieldKind => ({ kind: 'quantity', dimension: 'length', min, max });
const mass = (min = 0, max = 50): FieldKind => ({ kind: 'quantity', dimension: 'mass', min, max });
const angle = (): FieldKind => ({
  kind: 'quantity',
  dimension: 'angle',
  min: -Math.PI * 2,
  max: Math.PI * 2,
});
const duration: FieldKind = { kind: 'quantity', dimension: 'duration', min: 0, max: 60 * 86_400 };
const row = (collection: string): FieldKind => ({ kind: 'row', collection });
const instant: FieldKind = { kind: 'instant' };

/** How wraps are laid; a build's own word stands before the shop's. */
const wrapHabits: Record<string, FieldKind> = {
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
const finishHabits: Record<string, FieldKind> = {
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
const handleHabits: Record<string, FieldKind> = {
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
const sortingHabits: Record<string, FieldKind> = {
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
const layoutHabits: Record<string, FieldKind> = {
  /** The thickest knot that has to pass every ring. */
  knot: length(0, 0.05),
  buttAngle: angle(),
  /** Tension that keeps the line just taut when the weight is tied to the tip (as a mass). */
  tautLine: mass(),
  intervals: choice('growing', 'free'),
  limitLineAngle: angle(),
  limitGap: length(0, 1),
  limitExtraBendPerM: real(0, 10),
  /** Coefficient of friction of the line on the rings: both ends of what it may be. */
  frictionLowest: real(0, 2),
  frictionHighest: real(0, 2),
  /** Clear distance kept between a guide's foot and a ferrule's edge. */
  ferruleClear: length(0, 0.2),
};
/** What is looked at and done on one guide before it is bound on. */
const guideLooks: Record<string, FieldKind> = {
  platingWhole: flag,
  notTwisted: flag,
  ringSmooth: flag,
  footRamped: flag,
  footFlat: flag,
  noBurr: flag,
};
/** A guide's own numbers, as measured, or as its packet states them. */
const guideNumbers: Record<string, FieldKind> = {
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

/** In the currency's smallest unit. */
export const money: FieldKind = { kind: 'number', min: 0, max: 1e11, integer: true };

const tags: CollectionSchema = { single: false, fields: { text: text(60), gone: flag } };
const attachments: CollectionSchema = {
  single: false,
  fields: {
    content: { kind: 'attachment' },
    name: text(200),
    type: text(100),
    note: text(2000),
    gone: flag,
  },
};

/** One rod's whole record. Stations are distances from the datum (the blank's tip) unless a name says otherwise. */
export const buildSchema: DocumentSchema = {
  about: {
    single: true,
    fields: {
      title: text(200),
      customer: text(200),
      rodKind: choice('fly', 'spinning', 'casting'),
      lineWeight: text(60),
      note: text(20_000),
      /** Invented demonstration data; never the builder's own. */
      demo: flag,
      createdAt: instant,
      /** The build this one was begun from. */
      againFrom: text(60),
    },
  },
  blank: {
    single: true,
    fields: {
      label: text(200),
      /** What the builder calls the series this blank is one of; blanks of one name are learnt from together. */
      series: text(120),
      /** The builder's word: the others of its series are heard in its stiffness. */
      withSeries: flag,
      material: choice('carbon', 'glass', 'unknown'),
      /** Surface strain in percent at which the bend warns and stops; empty: the documented default of the material. */
      strainCautionPercent: real(0.01, 5),
      strainStopPercent: real(0.01, 5),
      /** Whole-blank mass where sections were not weighed singly. */
      mass: mass(),
      /** Builder's word that ferrules are wrapped or tightly bound; gates the heavy loads. */
      ferrulesBound: flag,
    },
  },
  /** Sections from the tip down. */
  sections: {
    single: false,
    fields: {
      order,
      name: text(60),
      length: length(),
      mass: mass(),
      /** Balance point from this section's own tip-side end. */
      balanceFromOwnTip: length(),
      /** The joint at this section's butt end, to the next section down. */
      joint: choice('sleeve', 'spigot', 'put-in', 'put-over'),
      /** How deep the two sections overlap when seated (sleeve, put-in, put-over). */
      overlap: length(),
      /** Visible gap of a seated spigot, and the length of its plug. */
      spigotGap: length(),
      spigotLength: length(),
      /** How many times stiffer the joint's zone is than the blank beside it; empty: not stated. */
      jointStiffness: real(0.1, 20),
      /** Line side chosen by the builder: angle from the reference mark, how it was found, what it refers to. */
      lineSideAngle: angle(),
      lineSideReference: text(200),
      lineSideMethod: text(200),
      /** Of every wrap over a foot on this section, where the builder wants his own. */
      wrapLength: length(0, 0.1),
      gone: flag,
    },
  },
  diameters: {
    single: false,
    fields: { section: row('sections'), fromOwnTip: length(), outside: length(0, 0.1), gone: flag },
  },
  setups: {
    single: false,
    fields: {
      order,
      name: text(120),
      /** The day it was read, in the builder's words; empty: the first day. */
      day: text(40),
      kind: choice('clamp', 'span'),
      /** Nominal angle of the axis at the clamp above the horizontal. */
      nominalAngle: angle(),
      clampFromTip: length(),
      /** Height of the clamp over the floor, for the floor check. */
      clampHeight: length(),
      /** The blank's rotation about its own axis. */
      turned: angle(),
      /** Which line of the blank was read. */
      edge: choice('axis', 'upper', 'lower'),
      supportTipSide: length(),
      supportButtSide: length(),
      loadFromTip: length(),
      /** Standard deviation of the readings, and of the clamp's tilt. */
      sigma: length(0, 0.1),
      tiltSigma: angle(),
      gone: flag,
    },
  },
  /** One hung weight (or none) of a set-up. */
  tests: {
    single: false,
    fields: {
      order,
      setup: row('setups'),
      hung: mass(),
      hungFromTip: length(),
      /** Span set-ups: sag at the load. */
      sag: length(-1, 2),
      gone: flag,
    },
  },
  readings: {
    single: false,
    fields: {
      order,
      test: row('tests'),
      fromTip: length(),
      drop: length(-10, 10),
      /** Left out of the fit by the builder. */
      setAside: flag,
      gone: flag,
    },
  },
  /** A section turned about its own axis in steps: held in a clamp or on two supports, read under two loads. */
  turnings: {
    single: false,
    fields: {
      order,
      section: row('sections'),
      held: choice('span', 'clamp'),
      /** The lighter load; empty: nothing is hung. */
      loadA: mass(),
      loadB: mass(),
      /** Standard deviation of one reading. */
      sigma: length(0, 0.1),
      gone: flag,
    },
  },
  /** One step of a turning: which angle round the section faces down, and what was read under each load. */
  turnReadings: {
    single: false,
    fields: {
      order,
      turning: row('turnings'),
      turn: angle(),
      dropA: length(-5, 5),
      dropB: length(-5, 5),
      setAside: flag,
      gone: flag,
    },
  },
  /** Swings counted by hand, to be set beside what is predicted. */
  swings: {
    single: false,
    fields: {
      order,
      /** The bare blank, or the rod with its guides, wraps and finish. */
      rod: choice('bare', 'finished'),
      /** Where the clamp's edge or the hand held it; empty: the front of the grip. */
      clampFromTip: length(),
      counted: real(1, 1000),
      seconds: real(0.1, 3600),
      gone: flag,
    },
  },
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
      kind: choice('tip-top', 'snake', 'single-foot', 'ringed', 'stripping'),
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
  /** Weights never hung before, predicted and then seen; what was predicted is kept as it was that day. */
  proofs: {
    single: false,
    fields: {
      order,
      madeAt: instant,
      hung: mass(),
      buttAngle: angle(),
      guidesOn: flag,
      /** Left out of the score by the builder, and why. */
      setAside: text(400),
      gone: flag,
    },
  },
  /** Tip and flags of a proof, from the front of the grip: distance outwards, height up. */
  proofPlaces: {
    single: false,
    fields: {
      order,
      proof: row('proofs'),
      fromTip: length(),
      out: length(-10, 10),
      up: length(-10, 10),
      outReach: length(),
      upReach: length(),
      seenOut: length(-10, 10),
      seenUp: length(-10, 10),
      gone: flag,
    },
  },
  /** A rod or bare blank bent by a known weight and photographed. */
  loadTests: {
    single: false,
    fields: {
      order,
      madeAt: instant,
      hung: mass(),
      buttAngle: angle(),
      rod: choice('bare', 'taped'),
      /** Where the rod leaves its hold; empty: a taped-up rod at the grip's front, a bare blank where its curve begins. */
      heldFromTip: length(),
      /** A bare blank's curve that the builder leaves out of the stiffness. */
      leftOut: flag,
      /** The builder's word that the rod stays as this test shows it; the latest such test is the build's. */
      accepted: flag,
      acceptedAt: instant,
      note: text(4000),
      /** What was found on the day it was accepted, in words. */
      report: text(20_000),
      gone: flag,
    },
  },
  /** Pictures of a load test; a discarded one is `gone`, its bytes stay until the data folder is cleared. */
  loadPhotos: {
    single: false,
    fields: {
      order,
      test: row('loadTests'),
      attachment: row('attachments'),
      part: choice('whole', 'close-up'),
      takenBy: text(120),
      /** As displayed, orientation carried out. */
      widthPx: count(1, 100_000),
      heightPx: count(1, 100_000),
      /** How the marks' places are known: a rectangle, a place for each, or numbered printed marks. */
      marksBy: choice('rectangle', 'places', 'printed'),
      rectangleWidth: length(0, 20),
      rectangleHeight: length(0, 20),
      /** Lower left to upper right, and upper left to lower right: the check. */
      diagonalUp: length(0, 30),
      diagonalDown: length(0, 30),
      /** How far the blank's plane stands in front of the marks, towards the camera; negative: behind them. */
      standOff: length(-5, 5),
      gone: flag,
    },
  },
  /** What was tapped or found in a picture; pixels from the top left pixel's centre, x right, y down. */
  photoPlaces: {
    single: false,
    fields: {
      order,
      photo: row('loadPhotos'),
      role: choice('mark', 'butt', 'tip', 'via', 'ring', 'line'),
      pxX: real(-100_000, 100_000),
      pxY: real(-100_000, 100_000),
      /** Marks: the printed number, and the place in their plane, right and up. */
      number: count(0, 9999),
      atX: length(-50, 50),
      atY: length(-50, 50),
      guide: row('guides'),
      found: choice('tapped', 'found'),
      gone: flag,
    },
  },
  /** Distances between two marks of a picture, as measured: the check on their places. */
  photoDistances: {
    single: false,
    fields: {
      order,
      photo: row('loadPhotos'),
      from: row('photoPlaces'),
      to: row('photoPlaces'),
      apart: length(0, 50),
      gone: flag,
    },
  },
  /** The curve read from a picture; its row has the picture's id. See load-curve.ts for the texts. */
  traces: {
    single: false,
    fields: {
      photo: row('loadPhotos'),
      madeAt: instant,
      engineVersion: text(40),
      /** Which places it was made from; another text means it is out of date. */
      madeFrom: text(80),
      curve: text(20_000),
      rings: text(4000),
      marksRms: length(0, 1),
      /** From the camera to the marks' plane, as the marks tell it. */
      cameraAway: length(0, 1000),
      seenShare: real(0, 1),
      lensEstimated: flag,
      findings: text(8000),
      gone: flag,
    },
  },
  /** Every sheet printed, tied to the frozen revision it came from. */
  prints: {
    single: false,
    fields: {
      sheet: text(60),
      paper: choice('a4', 'letter'),
      revision: text(80),
      printedAt: instant,
      engineVersion: text(40),
      gone: flag,
    },
  },
  /** Pieces of work ticked off at the bench, one row each. */
  benchDone: { single: false, fields: { task: text(80), doneAt: instant, gone: flag } },
  tags,
  attachments,
  /** What went into the rod, with the numbers by which it can be had again. */
  parts: {
    single: false,
    fields: {
      order,
      what: text(200),
      stage: choice('blank', 'handle', 'guides', 'wraps', 'finish', 'other'),
      count: real(0, 10_000),
      lot: text(80),
      dye: text(80),
      note: text(1000),
      gone: flag,
    },
  },
  /** What the rod is offered for. Money counts the currency's smallest unit. */
  quote: {
    single: true,
    fields: {
      wish: text(4000),
      hourlyRate: money,
      overheadPercent: real(0, 1000),
      reservePercent: real(0, 1000),
      depositPercent: real(0, 100),
      taxPercent: real(0, 100),
      validDays: count(0, 3650),
      leadWeeks: real(0, 520),
      note: text(4000),
      quotedAt: instant,
      acceptedAt: instant,
      depositPaidAt: instant,
    },
  },
  quoteLines: {
    single: false,
    fields: {
      order,
      what: text(200),
      count: real(0, 10_000),
      unitPrice: money,
      /** Ordered beyond what the rod takes. */
      spare: real(0, 10_000),
      source: text(200),
      gone: flag,
    },
  },
  quoteHours: {
    single: false,
    fields: { order, stage: text(80), hours: real(0, 10_000), gone: flag },
  },
  /** The list before delivery: what was found, beside its tolerance. */
  inspection: {
    single: false,
    fields: {
      order,
      item: text(200),
      tolerance: text(200),
      found: text(200),
      verdict: choice('good', 'not good', 'does not apply'),
      gone: flag,
    },
  },
  delivery: {
    single: true,
    fields: {
      inspectedBy: text(120),
      inspectedAt: instant,
      deliveredTo: text(200),
      deliveredAt: instant,
      careSheetGiven: flag,
      note: text(4000),
    },
  },
};

/** A repair, with or without a build on record. */
export const ticketSchema: DocumentSchema = {
  about: {
    single: true,
    fields: {
      /** What came in: the rod as anybody would recognise it. */
      title: text(200),
      customer: text(200),
      contact: text(200),
      lineWeight: text(60),
      note: text(20_000),
      createdAt: instant,
      demo: flag,
      /** The build on record that it is. */
      build: text(60),
    },
  },
  job: {
    single: true,
    fields: {
      broken: choice('tip', 'guide', 'section', 'ferrule', 'wrap', 'seat', 'grip', 'other'),
      words: text(4000),
      price: money,
      promisedFor: instant,
      doneAt: instant,
      done: text(4000),
      minutes: real(0, 10_000),
      handedOverAt: instant,
    },
  },
  /** What the helpers for a broken tip, guide or section ask for. */
  damage: {
    single: true,
    fields: {
      /** Blank gone from the tip. */
      lost: length(0, 3),
      outsideAtBreak: length(0, 0.05),
      /** Of the next millimetres down, so that the taper there is known. */
      outsideBelow: length(0, 0.05),
      belowBreak: length(0, 3),
      rodLength: length(),
      /** Guides from the old tip down, as typed. */
      stations: text(2000),
      guide: count(1, 40),
      section: count(1, 12),
      /** Of the section that replaces it. */
      newLength: length(),
      newOverlap: length(0, 1),
    },
  },
  tags,
  attachments,
};

/** What holds for every build of the shop. */
export const shopSchema: DocumentSchema = {
  settings: {
    single: true,
    fields: {
      /** Decides what a bare number means. */
      unitSystem: choice('inch', 'mm'),
      tapeStep: choice('1 mm', '1/8 in', '1/16 in', '1/32 in'),
      paper: choice('a4', 'letter'),
      colours: choice('auto', 'day', 'night'),
    },
  },
  /** How this shop works where a build says nothing of its own. */
  wraps: { single: true, fields: wrapHabits },
  finish: { single: true, fields: finishHabits },
  handle: { single: true, fields: handleHabits },
  sorting: { single: true, fields: sortingHabits },
  layout: { single: true, fields: layoutHabits },
  /** The shop's own guides, a row for each kind and size in the drawers. */
  rack: {
    single: false,
    fields: {
      order,
      kind: choice('tip-top', 'snake', 'single-foot', 'ringed', 'stripping', 'keeper'),
      name: text(120),
      ...guideNumbers,
      /** Whether its numbers were measured here or stand on the packet; an empty one is typical of the size. */
      numbersAre: choice('measured', 'stated'),
      onHand: count(0, 100_000),
      note: text(400),
      gone: flag,
    },
  },
  /** How this shop reckons, and what stands at the head of its papers. */
  rates: {
    single: true,
    fields: {
      shopName: text(200),
      shopAddress: text(1000),
      /** Three letters of ISO 4217. */
      currency: text(3),
      hourlyRate: money,
      overheadPercent: real(0, 1000),
      reservePercent: real(0, 1000),
      depositPercent: real(0, 100),
      taxPercent: real(0, 100),
      validDays: count(0, 3650),
      leadWeeks: real(0, 520),
      terms: text(4000),
    },
  },
  /** What the printed 100 mm and 4 in rules measured, per printer and paper; the next print is corrected by it. */
  printers: {
    single: false,
    fields: {
      name: text(120),
      paper: choice('a4', 'letter'),
      ruleAcross: length(0.05, 0.2),
      ruleAlong: length(0.05, 0.2),
      gone: flag,
    },
  },
};

export const documentSchemas = { build: buildSchema, ticket: ticketSchema, shop: shopSchema } as const;
export type DocumentKind = keyof typeof documentSchemas;
