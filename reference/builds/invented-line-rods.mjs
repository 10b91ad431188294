/** Invented rods that throw a weight: a spinning rod and a surf rod, with reel, line and sightings as invented. */
const inch = 0.0254;
const lb = 0.45359237;
const waves = (seed) => (s) => 1 + 0.03 * Math.sin(5.1 * s + seed) + 0.02 * Math.sin(13.3 * s + 2 * seed);
const degrees = Math.PI / 180;
const grams = (g) => ({ si: g / 1000, text: `${g} g` });
const pounds = (count) => ({ si: count * lb, text: `${count} lb` });
const callipered = (mm) => ({ si: mm / 1000, text: `${mm} mm` });

export const inventedLineRods = [
  {
    file: 'demo-spinning.json',
    seed: 505,
    units: 'inch',
    edge: 'axis',
    about: {
      title: 'Demo: spinning, 7 ft',
      customer: 'invented',
      rodKind: 'spinning',
      demo: true,
      note: 'An invented spinning rod: two pieces, a fixed spool of 46 mm, two sightings along its spindle.',
    },
    blank: { label: 'invented spinning blank', material: 'carbon', ferrulesBound: true },
    modulusPa: 105e9,
    densityKgPerM3: 1530,
    tip: { outsideM: 0.0021, wallM: 0.0005 },
    butt: { outsideM: 0.0122, wallM: 0.0009 },
    irregular: waves(5),
    sweepPerM: (s) => 0.004 * Math.sin(1.5 * s),
    chosen: ['3 1/4', '7 3/8', '12 5/8', '20 3/8', '28 1/8', '35 7/8', '43 3/4', '51 1/2'],
    sections: [
      { id: 'tip', name: 'Tip', lengthM: 42.5 * inch, joint: { kind: 'sleeve', overlapM: 1.75 * inch } },
      { id: 'butt', name: 'Butt', lengthM: 43.25 * inch },
    ],
    swingsCounted: 40,
    handle: {
      gripFront: 15.75 * inch,
      reelFromButt: 12.5 * inch,
      reelOffset: 2.375 * inch,
      gripLength: 3 * inch,
      seatLength: 4.75 * inch,
      rearGripLength: 8 * inch,
    },
    handleMore: {
      gripDiameter: callipered(24),
      gripBore: callipered(9.5),
      seatBore: callipered(16),
      rearGripBore: callipered(9.5),
      gripMass: grams(9),
      seatMass: grams(24),
      rearGripMass: grams(21),
      reelMass: grams(245),
    },
    reel: { tiltRad: 3 * degrees, sightedAtM: [18 * inch, 36 * inch] },
    line: {
      test: pounds(10),
      lureLeast: grams(7),
      lureMost: grams(21),
      lipDiameter: callipered(46),
    },
    layout: { startKind: 'rule', tapeStep: '1/8 in', loadBy: 'line', intervals: 'growing' },
  },
  {
    file: 'demo-surf.json',
    seed: 606,
    units: 'mm',
    edge: 'axis',
    about: {
      title: 'Demo: surf, 12 ft, two grips',
      customer: 'invented',
      rodKind: 'surf',
      demo: true,
      note: 'An invented surf rod: two pieces, a grip at the reel and one at the butt, a fixed spool of 72 mm.',
    },
    blank: { label: 'invented surf blank', material: 'carbon', ferrulesBound: true },
    modulusPa: 95e9,
    densityKgPerM3: 1550,
    tip: { outsideM: 0.0034, wallM: 0.0009 },
    butt: { outsideM: 0.0205, wallM: 0.0013 },
    irregular: waves(6),
    sweepPerM: (s) => 0.003 * Math.sin(0.9 * s),
    chosen: [140, 339, 587, 908, 1265, 1646, 2089],
    sections: [
      { id: 'tip', name: 'Tip', lengthM: 1.87, joint: { kind: 'put-over', overlapM: 0.08 } },
      { id: 'butt', name: 'Butt', lengthM: 1.87 },
    ],
    swingsCounted: 30,
    handle: {
      gripFront: 0.98,
      reelFromButt: 0.86,
      reelOffset: 0.075,
      gripLength: 0.14,
      seatLength: 0.125,
      rearGripLength: 0.1,
      secondGripLength: 0.22,
    },
    handleMore: {
      gripDiameter: callipered(30),
      gripBore: callipered(16),
      seatBore: callipered(24),
      rearGripBore: callipered(16),
      gripMass: grams(22),
      seatMass: grams(46),
      rearGripMass: grams(14),
      secondGripMass: grams(30),
      reelMass: grams(640),
    },
    reel: { tiltRad: 2.5 * degrees, sightedAtM: [1.05, 1.65] },
    line: {
      test: { si: 9, text: '9 kg' },
      lureLeast: grams(80),
      lureMost: grams(150),
      lipDiameter: callipered(72),
    },
    layout: { startKind: 'rule', tapeStep: '1 mm', loadBy: 'line', intervals: 'growing' },
  },
];
