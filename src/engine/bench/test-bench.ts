import type { Bench, Joint, Section } from './bench.ts';

/** An invented blank for tests: 9 ft, four sections, sleeve ferrules. */
export function sleeveJoint(overlapM: number): Joint {
  return { kind: 'sleeve', overlapM, gapM: 0, plugM: 0 };
}

export function section(id: string, lengthM: number, rest: Partial<Section> = {}): Section {
  return { id, name: `section ${id}`, lengthM, diameters: [], ...rest };
}

export function fourPiece(): Bench {
  return {
    material: 'carbon',
    ferrulesBound: false,
    massKg: 0.0405,
    sections: [
      section('a', 0.715, {
        massKg: 0.0045,
        balanceFromOwnTipM: 0.42,
        joint: sleeveJoint(0.025),
        diameters: [
          { id: 'a0', fromOwnTipM: 0, outsideM: 0.0016 },
          { id: 'a1', fromOwnTipM: 0.715, outsideM: 0.0042 },
        ],
      }),
      section('b', 0.725, {
        massKg: 0.0076,
        joint: sleeveJoint(0.035),
        diameters: [
          { id: 'b0', fromOwnTipM: 0.01, outsideM: 0.0036 },
          { id: 'b1', fromOwnTipM: 0.3, outsideM: 0.0048 },
          { id: 'b2', fromOwnTipM: 0.72, outsideM: 0.0065 },
        ],
      }),
      section('c', 0.725, { massKg: 0.0114, joint: sleeveJoint(0.05) }),
      section('d', 0.69, {
        massKg: 0.0168,
        diameters: [{ id: 'd1', fromOwnTipM: 0.69, outsideM: 0.0098 }],
      }),
    ],
    setups: [
      {
        kind: 'clamp',
        id: 's',
        name: 'level',
        nominalAngleRad: 0,
        clampFromTipM: 2.59,
        turnedRad: 0,
        edge: 'axis',
        sigmaM: 0.002,
        tiltSigmaRad: 0.0175,
        tests: [
          {
            id: 't0',
            hungKg: 0,
            hungFromTipM: 0,
            readings: [
              { id: 'r0', fromTipM: 0, dropM: 0.06 },
              { id: 'r1', fromTipM: 0.686, dropM: 0.04 },
            ],
          },
          {
            id: 't1',
            hungKg: 0.1,
            hungFromTipM: 0,
            readings: [
              { id: 'r2', fromTipM: 0, dropM: 0.92 },
              { id: 'r3', fromTipM: 0.686, dropM: 0.38 },
            ],
          },
        ],
      },
    ],
    handle: { gripFrontFromButtM: 0.26, reelFromButtM: 0.06, reelOffsetM: 0.055 },
  };
}
