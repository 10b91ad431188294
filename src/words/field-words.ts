import type { Path } from '../record/operation.ts';
import { limitFieldWords } from './criteria.ts';

/** What a builder calls a place in the record: the thing, and the value of it. */
export interface FieldWords {
  /** `Section`, `Guide`; empty for what belongs to the build as a whole. */
  thing: string;
  field: string;
  /** Behind a plain number: `%`, `°C`. */
  unit?: string;
}

/** 'sections', 'balanceFromOwnTip': Section, balance point from its own tip end. */
export function fieldWords([collection, , field]: Path): FieldWords {
  const said = own(own(fieldNames, collection) ?? {}, field);
  const thing = own(things, collection) ?? capital(apart(collection));
  const [name, unit] = Array.isArray(said) ? said : said === undefined ? nameAndUnit(field) : [said];
  return { thing, field: name, unit };
}

/** What one row of a collection is called, or the single one. */
const things: Record<string, string> = {
  about: 'Build',
  blank: 'Blank',
  sections: 'Section',
  diameters: 'Diameter',
  setups: 'Set-up',
  tests: 'Weight',
  readings: 'Reading',
  flagChecks: 'Second measurement of a flag',
  turnings: 'Turning',
  turnReadings: 'Step of a turning',
  swings: 'Count of swings',
  handle: 'Handle',
  wraps: 'Wraps',
  finish: 'Finish',
  coats: 'Coat',
  alarmsHeard: 'Alarm',
  bag: 'Guide in the bag',
  sorting: 'Sorting',
  scans: 'Scan of the bag',
  hours: 'Hours',
  guides: 'Guide',
  layout: 'Layout',
  ladder: 'Test load',
  proofs: 'Proof',
  proofPlaces: 'Place of a proof',
  prints: 'Print',
  tags: 'Tag',
  attachments: 'Picture or paper',
  parts: 'Part',
  quote: 'Quote',
  quoteLines: 'Line of the quote',
  quoteHours: 'Hours of the quote',
  inspection: 'Inspection',
  delivery: 'Delivery',
  job: 'Repair',
  damage: 'Damage',
  settings: 'Settings',
  printers: 'Printer',
  rates: 'Rates',
};

type Words = Record<string, string | [words: string, unit: string]>;

/** Where the field's own name, taken apart, does not say it. */
const fieldNames: Record<string, Words> = {
  about: {
    rodKind: 'kind of rod',
    createdAt: 'begun',
    againFrom: 'the same again as',
    build: 'build on record',
  },
  blank: {
    label: 'written on it',
    withSeries: 'read together with its series',
    strainCautionPercent: ['strain that warns', '%'],
    strainStopPercent: ['strain that stops', '%'],
    mass: 'mass of all sections',
    ferrulesBound: 'ferrules are bound',
  },
  sections: {
    order: 'place in the blank',
    balanceFromOwnTip: 'balance point from its own tip end',
    joint: 'kind of ferrule',
    overlap: 'overlap when seated',
    spigotGap: 'gap of the seated spigot',
    spigotLength: 'length of the spigot’s plug',
    jointStiffness: ['ferrule against the blank beside it', '× as stiff'],
    lineSideAngle: 'line side from the mark',
    lineSideReference: 'mark the line side counts from',
    lineSideMethod: 'how the line side was found',
  },
  diameters: {
    section: 'on which section',
    fromOwnTip: 'from the section’s own tip end',
    outside: 'outside diameter',
  },
  setups: {
    nominalAngle: 'angle above level',
    clampFromTip: 'edge of the blocks from the tip',
    clampHeight: 'height over the floor',
    turned: 'blank turned by',
    edge: 'edge of the blank that was read',
    supportTipSide: 'support towards the tip',
    supportButtSide: 'support towards the butt',
    loadFromTip: 'weight from the tip',
    sigma: '± of the readings',
    tiltSigma: '± of the clamp’s tilt',
  },
  tests: {
    setup: 'in which set-up',
    hung: 'weight hung',
    hungFromTip: 'hung from the tip',
    sag: 'sag at the weight',
  },
  readings: {
    test: 'under which weight',
    fromTip: 'station',
    atClamp: 'read at the clamp',
    setAside: 'set aside',
  },
  flagChecks: { setup: 'in which set-up', fromTip: 'flag', fromClamp: 'from the clamp' },
  turnings: {
    section: 'which section',
    held: 'how it was held',
    loadA: 'first load',
    loadB: 'second load',
    sigma: '± of one reading',
  },
  turnReadings: {
    turning: 'of which turning',
    turn: 'angle facing down',
    dropA: 'under the first load',
    dropB: 'under the second load',
    setAside: 'set aside',
  },
  swings: {
    rod: 'what swung',
    clampFromTip: 'held, from the tip',
    counted: 'swings counted',
    seconds: ['time taken', 's'],
  },
  handle: {
    gripFront: 'front of the grip from the butt end',
    reelFromButt: 'reel from the butt end',
    reelOffset: 'line off the blank at the reel',
    reelMass: 'mass of the reel',
    gripShape: 'shape of the grip',
    gripLength: 'length of the grip',
    gripBore: 'bore of the grip',
    gripMass: 'mass of the grip',
    seatLength: 'length of the reel seat',
    seatBore: 'bore of the reel seat',
    seatLock: 'lock of the reel seat',
    seatMass: 'mass of the reel seat',
    arborCount: 'number of arbors',
    arborShort: 'arbors short of the seat’s ends',
    tapedGap: 'widest gap that tape fills',
    checkLeast: 'least room in the winding check',
    checkMost: 'most room in the winding check',
    tubeLeast: 'least room in the tip-top’s tube',
    tubeMost: 'most room in the tip-top’s tube',
    keeperAhead: 'hook keeper ahead of the grip',
    seatOnLine: 'seat stands on the line',
    guidesOnLine: 'guides stand on the line',
    tipTopOnLine: 'tip-top stands on the line',
    dryFitted: 'fitted dry',
    gluedAt: 'glued',
    tipTopGluedAt: 'tip-top glued',
    glueCure: 'glue may be bent after',
  },
  wraps: {
    turnsCounted: 'turns counted',
    turnsOver: 'counted over',
    threadColour: 'colour of the thread',
    trimColour: 'colour of the trim',
    startBeforeFoot: 'start before the foot',
    underwrapBeyond: 'underwrap beyond the wrap',
    trimTurns: 'turns of a trim band',
    checkWrap: 'wrap at the winding check',
    tipWrap: 'wrap at the tip-top',
    signatureFrom: 'signature from the butt end',
    spoolLength: 'thread on a spool',
    reservePercent: ['reserve of thread', '%'],
  },
  finish: {
    statedAtC: ['temperature its sheet states', '°C'],
    turnFor: 'turning time',
    recoatFrom: 'recoat from',
    recoatUntil: 'recoat until',
    flexAfter: 'may be flexed after',
    fishAfter: 'may be fished after',
    mixBy: 'mixed by',
    partA: 'parts A',
    partB: 'parts B',
    densityA: ['density of A', 'g/ml'],
    densityB: ['density of B', 'g/ml'],
    measureStep: 'smallest division of syringe or scale',
    minutesPerWrap: ['time for a wrap', 'min'],
    roomC: ['temperature of the room', '°C'],
    coatsPlanned: 'coats on the finished rod',
    halvesPerC: ['times halve for every', '°C'],
    guidesChecked: 'guides checked before the first coat',
    wrapsChecked: 'wraps checked before the first coat',
    levelChecked: 'turner level',
    dustFree: 'free of dust',
  },
  sorting: {
    ofDiameterPercent: ['tolerance of the blank’s diameter', '%'],
    mostTolerances: ['not used past', '× tolerance'],
    usualOffset: 'feet beside each other, slightly out',
    usualAngle: 'angle between the feet, slightly out',
    straightOut: 'straight by eye is out by',
    slightOut: 'slightly out by eye is out by',
    bentOut: 'bent by eye is out by',
  },
  scans: { dpi: ['read with', 'dpi'], takenBy: 'taken with', readAt: 'read' },
  coats: { brushedAt: 'brushed on', roomC: ['temperature of the room', '°C'] },
  alarmsHeard: { coat: 'of which coat', due: 'what was due' },
  hours: { minutes: ['time', 'min'], loggedAt: 'logged' },
  guides: {
    order: 'place on the rod',
    ringHeight: 'height of the ring',
    foot: 'length over the feet',
    opening: 'clear opening',
    feet: 'number of feet',
    oneFoot: 'length of one foot',
    wrapLength: 'length of its wrap',
    station: 'mark',
    pinned: 'stays where it is',
  },
  layout: {
    startKind: 'start',
    startCount: 'guides of the start',
    startFirst: 'first guide of the start',
    startStripping: 'stripping guide of the start',
    startText: 'list of the start',
    startUnit: 'unit of the list',
    startFrom: 'the list counts from',
    guidesSide: 'side of the guides',
    knot: 'thickest knot',
    buttAngle: 'butt above level',
    loadBy: 'how the load is hung',
    tautLine: 'weight that keeps the line taut',
    ...limitFieldWords,
    ferruleClear: 'kept clear beside a ferrule',
    tapeStep: 'marks rounded to',
  },
  proofs: {
    madeAt: 'predicted',
    hung: 'weight',
    buttAngle: 'butt above level',
    setAside: 'left out of the score',
  },
  proofPlaces: {
    fromTip: 'station',
    out: 'outwards, predicted',
    up: 'up, predicted',
    outReach: '± outwards',
    upReach: '± up',
    seenOut: 'outwards, seen',
    seenUp: 'up, seen',
  },
  prints: { printedAt: 'printed', engineVersion: 'version of Fairbend' },
  tags: { text: 'words' },
  attachments: { content: 'content', type: 'kind of file' },
  parts: { what: 'what it is', stage: 'goes into', count: 'how many', lot: 'lot number', dye: 'dye number' },
  quote: {
    wish: 'what the customer wants',
    hourlyRate: 'rate of an hour',
    overheadPercent: ['overheads', '%'],
    reservePercent: ['reserve', '%'],
    depositPercent: ['deposit', '%'],
    taxPercent: ['tax', '%'],
    validDays: ['valid for', 'days'],
    leadWeeks: ['time to delivery', 'weeks'],
    quotedAt: 'quoted',
    acceptedAt: 'accepted',
    depositPaidAt: 'deposit paid',
  },
  quoteLines: {
    what: 'what it is',
    count: 'how many',
    unitPrice: 'price of one',
    spare: 'spares',
    source: 'from whom',
  },
  quoteHours: { hours: ['time', 'h'] },
  inspection: { item: 'what is looked at' },
  delivery: {
    inspectedBy: 'inspected by',
    inspectedAt: 'inspected',
    deliveredTo: 'handed to',
    deliveredAt: 'handed over',
    careSheetGiven: 'care sheet given',
  },
  job: {
    broken: 'what is broken',
    words: 'what came in',
    price: 'price',
    promisedFor: 'promised for',
    doneAt: 'done',
    done: 'what was done',
    minutes: ['time', 'min'],
    handedOverAt: 'handed over',
  },
  damage: {
    lost: 'gone from the tip',
    outsideAtBreak: 'diameter at the break',
    outsideBelow: 'diameter further down',
    belowBreak: 'how far further down',
    rodLength: 'length of the rod before',
    stations: 'guides from the old tip',
    guide: 'which guide',
    section: 'which section',
    newLength: 'length of the new section',
    newOverlap: 'overlap of the new section',
  },
  settings: { unitSystem: 'bare numbers are', tapeStep: 'marks rounded to' },
  printers: { ruleAcross: 'rule across measured', ruleAlong: 'rule along measured' },
  rates: {
    shopName: 'name on papers',
    shopAddress: 'address on papers',
    hourlyRate: 'rate of an hour',
    overheadPercent: ['overheads', '%'],
    reservePercent: ['reserve', '%'],
    depositPercent: ['deposit', '%'],
    taxPercent: ['tax', '%'],
    validDays: ['a quote is valid for', 'days'],
    leadWeeks: ['time to delivery', 'weeks'],
  },
};

/** Units that the record's own names end in. */
const endings: readonly [ending: RegExp, unit: string][] = [
  [/Percent$/, '%'],
  [/(?<=[a-z])C$/, '°C'],
  [/Px$/, 'px'],
  [/PerM$/, '1/m'],
  [/Ml$/, 'ml'],
];

function nameAndUnit(field: string): [words: string, unit?: string] {
  const found = endings.find(([ending]) => ending.test(field));
  return found ? [apart(field.replace(found[0], '')), found[1]] : [apart(field)];
}

/** 'ringHeight': "ring height". */
function apart(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function own<T>(record: Record<string, T>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
