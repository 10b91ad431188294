/** What was foretold and what the load showed. */
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

export const provedCollections: DocumentSchema = {
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
};
