/**
 * What holds where neither a build nor its shop says anything, as it is written into the empty field, and the range
 * the trade's own texts give for it. Ranges are common practice, no source; `ownChoice` marks a figure that is ours,
 * without a range of the trade behind it. The engine's defaults are the same numbers; a test holds the two together.
 */
export interface CommonValue {
  /** As a builder would type it. */
  text: string;
  /** `2 to 6 mm`; left out where the trade's texts give none. */
  range?: string;
  ownChoice?: boolean;
}

/** By `collection/field`. */
const commonValues: Record<string, CommonValue> = {
  'wraps/turnsCounted': { text: '165', range: '160 to 180 an inch of size A' },
  'wraps/turnsOver': { text: '1 in' },
  'wraps/startBeforeFoot': { text: '2.5 mm', range: '2 to 6 mm' },
  'wraps/lockTurns': { text: '7', range: '5 to 10' },
  'wraps/trimTurns': { text: '4', range: '2 to 5' },
  'wraps/checkWrap': { text: '10 mm', range: '5 to 20 mm' },
  'wraps/tipWrap': { text: '6 mm' },
  'wraps/wrapTip': { text: '10 mm', range: '9 to 11 mm' },
  'wraps/wrapMiddle': { text: '12 mm', range: '11 to 13 mm' },
  'wraps/wrapButt': { text: '16 mm', range: '14 to 18 mm' },
  'wraps/wrapStripping': { text: '20 mm', range: '18 to 22 mm' },
  'wraps/ferruleWraps': { text: 'yes', range: 'disputed: some blanks are bound inside' },
  'wraps/ferruleDiameters': { text: '1.75', range: '1.5 to 2' },
  'wraps/ferruleEdge': { text: '1.5 mm', range: '1 to 2 mm' },
  'wraps/underwrapBeyond': { text: '8 mm', range: '6 to 10 mm' },
  'wraps/spoolLength': { text: '300 ft' },
  'wraps/tagPerWrap': { text: '240 mm', ownChoice: true },
  'wraps/reservePercent': { text: '20', range: '12 to 50 %' },
  'finish/statedAtC': { text: '23', range: '21 to 27 °C' },
  'finish/potLife': { text: '20 min', range: '15 to 25 min, slow ones 35 to 45' },
  'finish/turnFor': { text: '6 h', range: '4 to 8 h' },
  'finish/recoatFrom': { text: '12 h', range: '12 to 24 h' },
  'finish/recoatUntil': { text: '48 h', range: '24 to 48 h' },
  'finish/flexAfter': { text: '24 h', range: '24 h and more' },
  'finish/fishAfter': { text: '5 d', range: '3 to 7 d' },
  'finish/halvesPerC': { text: '10' },
  'finish/roomC': { text: '23', range: '21 to 27 °C' },
  'finish/mixBy': { text: 'volume' },
  'finish/partA': { text: '1' },
  'finish/partB': { text: '1' },
  'finish/measureStep': { text: '0.1' },
  'finish/coatThickness': { text: '0.25 mm', ownChoice: true },
  'finish/coatsPlanned': { text: '2', range: '1 to 3' },
  'finish/footHeight': { text: '0.8 mm' },
  'finish/minutesPerWrap': { text: '0.5' },
  'finish/ratioErrorPercent': { text: '4', ownChoice: true },
  'finish/brushedPercent': { text: '67', ownChoice: true },
  'finish/mixTimes': { text: '1.5', ownChoice: true },
  'handle/arborCount': { text: '3', range: '2 to 4' },
  'handle/arborWidth': { text: '10 mm' },
  'handle/arborShort': { text: '5 mm', range: '3 to 6 mm' },
  'handle/tapedGap': { text: '1.5 mm' },
  'handle/glueLine': { text: '0.2 mm', range: '0.1 to 0.3 mm' },
  'handle/reamShort': { text: '8 mm', range: '5 to 10 mm' },
  'handle/checkLeast': { text: '0.1 mm', range: '0.1 to 0.3 mm' },
  'handle/checkMost': { text: '0.3 mm', range: '0.1 to 0.3 mm' },
  'handle/tubeLeast': { text: '0.03 mm', range: '0.03 to 0.1 mm' },
  'handle/tubeMost': { text: '0.1 mm', range: '0.03 to 0.1 mm' },
  'handle/glueCure': { text: '24 h', range: '24 h of slow epoxy' },
  'handle/seatLock': { text: 'up' },
  'handle/keeperLength': { text: '22 mm' },
  'handle/keeperFeet': { text: '2', range: '1 to 2' },
  'sorting/ofDiameterPercent': { text: '6', ownChoice: true },
  'sorting/mostTolerances': { text: '1.5', ownChoice: true },
  'sorting/usualOffset': { text: '0.25 mm', range: '0.2 to 0.3 mm' },
  'sorting/usualAngle': { text: '2.5 deg', range: '2 to 3 deg' },
  'sorting/straightOut': { text: '0.1 mm', ownChoice: true },
  'sorting/slightOut': { text: '0.25 mm', ownChoice: true },
  'sorting/bentOut': { text: '0.5 mm', ownChoice: true },
};

export const commonPaths = Object.keys(commonValues);

/** Undefined for a field that nothing stands in for. */
export function commonValueOf([collection, , field]: readonly string[]): CommonValue | undefined {
  const key = `${collection}/${field}`;
  return Object.hasOwn(commonValues, key) ? commonValues[key] : undefined;
}

/** `common practice, 2 to 6 mm`: where the number in the empty field comes from, and how far others go. */
export function commonOrigin({ range, ownChoice }: CommonValue): string {
  return [ownChoice ? 'our own choice, no source' : 'common practice', range].filter(Boolean).join(', ');
}
