/** What was foretold and what the load showed. */
import {
  angle,
  choice,
  count,
  flag,
  instant,
  length,
  many,
  mass,
  order,
  real,
  row,
  text,
} from './declare.ts';

/** Weights never hung before, predicted and then seen; what was predicted is kept as it was that day. */
export const proofs = many('Proof', {
  order: order(),
  madeAt: instant('predicted'),
  hung: mass('weight that hung'),
  buttAngle: angle('butt above level'),
  guidesOn: flag('guides on'),
  setAside: text('set aside, because', 400, { empty: 'counts; write why if it should not' }),
});

/** Tip and flags of a proof, from the front of the grip: distance outwards, height up. */
export const proofPlaces = many('Place of a proof', {
  order: order(),
  proof: row('proof', 'proofs'),
  fromTip: length('station from the tip'),
  out: length('outwards, predicted', [-10, 10]),
  up: length('up, predicted', [-10, 10]),
  outReach: length('± outwards'),
  upReach: length('± up'),
  seenOut: length('outwards, seen', [-10, 10]),
  seenUp: length('up, seen', [-10, 10]),
});

/** A rod or bare blank bent by a known weight and photographed. */
export const loadTests = many('Load test', {
  order: order(),
  madeAt: instant('made'),
  hung: mass('weight that hung'),
  buttAngle: angle('butt above level', { empty: 'from the curve' }),
  rod: choice('the rod was', { taped: 'taped up, with guides', bare: 'the bare blank' }, { usual: 'taped' }),
  /** Empty: a taped-up rod at the grip's front, a bare blank where its curve begins. */
  heldFromTip: length('held, from the tip', [0, 10], {
    empty: 'where the curve begins',
    hint: 'where the blank leaves the clamp',
  }),
  leftOut: flag('leave this curve out of the stiffness'),
  /** One of the pictures that the bare blank is measured by; left out: a test by itself. */
  stand: row('taken from the stand', 'stands'),
  /** The rod stays as this test shows it; the latest such test is the build's. */
  accepted: flag('accepted'),
  acceptedAt: instant('accepted on'),
  note: text('note', 4000, { lines: 2 }),
  /** On the day it was accepted; see test-report.ts. */
  report: text('what was found', 20_000),
});

/** Pictures of a load test; a discarded one is `gone`, its bytes stay until the data folder is cleared. */
export const loadPhotos = many('Picture of a load test', {
  order: order(),
  test: row('load test', 'loadTests'),
  attachment: row('picture', 'attachments'),
  part: choice(
    'what it shows',
    { whole: 'the whole rod', 'close-up': 'a close-up of the top third' },
    { usual: 'whole' },
  ),
  takenBy: text('taken with', 120),
  /** As displayed, orientation carried out. */
  widthPx: count('width of the picture', [1, 100_000], { unit: 'px' }),
  heightPx: count('height of the picture', [1, 100_000], { unit: 'px' }),
  marksBy: choice(
    'the marks are',
    { rectangle: 'corners of a rectangle', printed: 'printed marks', places: 'other points' },
    { usual: 'rectangle' },
  ),
  rectangleWidth: length('width', [0, 20], { hint: 'a door frame, or tape on the wall' }),
  rectangleHeight: length('height', [0, 20]),
  diagonalUp: length('diagonal, lower left to upper right', [0, 30], {
    hint: 'the check: tells a slip, and a frame out of square',
  }),
  diagonalDown: length('diagonal, upper left to lower right', [0, 30]),
  /** Towards the camera; negative: behind them. */
  standOff: length('the blank stands in front of the marks by', [-5, 5], { empty: '0, in one plane' }),
});

/** What was tapped or found in a picture; pixels from the top left pixel's centre, x right, y down. */
export const photoPlaces = many('Place in a picture', {
  order: order(),
  photo: row('picture', 'loadPhotos'),
  role: choice('what it is', ['mark', 'butt', 'tip', 'via', 'ring', 'line']),
  pxX: real('from the left', [-100_000, 100_000], { unit: 'px' }),
  pxY: real('from the top', [-100_000, 100_000], { unit: 'px' }),
  /** The printed one of a mark, and its place in the marks' plane. */
  number: count('number', [0, 9999]),
  atX: length('to the right', [-50, 50]),
  atY: length('up', [-50, 50]),
  guide: row('guide', 'guides'),
  found: choice('how it was found', ['tapped', 'found']),
});

/** Between two marks of a picture, as measured: the check on their places. */
export const photoDistances = many('Distance of two marks', {
  order: order(),
  photo: row('picture', 'loadPhotos'),
  from: row('from', 'photoPlaces'),
  to: row('to', 'photoPlaces'),
  apart: length('apart', [0, 50]),
});

/** The curve read from a picture; its row has the picture's id. See load-curve.ts for the texts. */
export const traces = many('Curve of a picture', {
  photo: row('picture', 'loadPhotos'),
  madeAt: instant('read'),
  engineVersion: text('version of Fairbend', 40),
  /** Another text means it is out of date. */
  madeFrom: text('read from', 80),
  curve: text('curve', 20_000),
  rings: text('rings', 4000),
  marksRms: length('marks fit to', [0, 1], { fineness: 'fine' }),
  /** To the marks' plane, as the marks tell it. */
  cameraAway: length('camera away', [0, 1000]),
  seenShare: real('share seen', [0, 1]),
  lensEstimated: flag('lens estimated'),
  findings: text('what was odd', 8000),
});
