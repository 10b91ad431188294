/** A clamped set-up cut into elements: its nodes, what hangs where, and where each reading stands. */

import { makeWorkspace, type Workspace } from '../bend/equilibrium.ts';
import type { Mesh } from '../bend/mesh.ts';
import { pairAround } from '../numerics/pair-around.ts';
import type { PreparedClamp, PreparedTest } from './prepared-request.ts';
import { type PlaceInRows, placeInRows, type Rows } from './rows.ts';

export interface ClampModel {
  readonly setup: PreparedClamp;
  readonly index: number;
  readonly count: number;
  /** Per element 1..count. */
  readonly fine: readonly PlaceInRows[];
  readonly coarse: readonly PlaceInRows[];
  readonly lengthM: Float64Array;
  readonly springNm: Float64Array;
  readonly restTurn: Float64Array;
  /** Parts of an element's spring and mass that stand in the lower and the upper of its two rows. */
  readonly springParts: RowParts;
  readonly massParts: RowParts;
  readonly tests: readonly TestModel[];
  readonly lambda: Float64Array;
  readonly heightGain: Float64Array;
}

export interface RowParts {
  low: Float64Array;
  high: Float64Array;
}

export interface TestModel {
  readonly mesh: Mesh;
  readonly work: Workspace;
  /** What hangs in front of the clamp. */
  readonly hung: readonly HungMass[];
  /** What rides on the rod: not part of the load that may be mistaken. */
  readonly riding: readonly HungMass[];
  readonly line: PreparedTest['line'];
  /** ∂²E/∂θ∂θ_0 per free angle, where a line's reel turns with the butt. */
  readonly byButt: Float64Array | undefined;
  readonly readings: readonly ReadingPlace[];
  solved: boolean;
}

interface HungMass {
  node: number;
  share: number;
  massKg: number;
}

export interface ReadingPlace {
  /** The reading stands in this element, `along` its length from the clamp-side node. */
  element: number;
  along: number;
  squareToRad: number;
}

export function clampModel(
  setup: PreparedClamp,
  index: number,
  blankLengthM: number,
  rows: Rows,
): ClampModel {
  const clampFromTipM = setup.clampFromTipM ?? blankLengthM;
  const rings = setup.tests.flatMap(({ line }) => line?.rings ?? []);
  const fromTipM = nodesBelow(
    clampFromTipM,
    rows,
    rings.map((ring) => ring.fromTipM),
  );
  const count = fromTipM.length - 1;
  const lengthM = new Float64Array(count + 1);
  const fine: PlaceInRows[] = [{ row: 0, weight: 0 }];
  const coarse: PlaceInRows[] = [{ row: 0, weight: 0 }];
  for (let e = 1; e <= count; e++) {
    const middle = 0.5 * (fromTipM[e - 1] + fromTipM[e]);
    lengthM[e] = fromTipM[e - 1] - fromTipM[e];
    fine.push(placeInRows(rows.fine, middle));
    coarse.push(placeInRows(rows.coarse, middle));
  }
  const springNm = new Float64Array(count + 1);
  const restTurn = new Float64Array(count + 1);
  const shared = { count, fromTipM, lengthM, springNm, restTurn };
  return {
    setup,
    index,
    count,
    fine,
    coarse,
    lengthM,
    springNm,
    restTurn,
    springParts: rowParts(count),
    massParts: rowParts(count),
    tests: setup.tests.map((test) => testModel(test, setup.nominalAngleRad, shared)),
    lambda: new Float64Array(count + 1),
    heightGain: new Float64Array(count + 1),
  };
}

function rowParts(count: number): RowParts {
  return {
    low: new Float64Array(count + 1),
    high: new Float64Array(count + 1),
  };
}

/** Clamp first; every row between clamp and tip is a node, the middle between two, and every ring. */
function nodesBelow(clampFromTipM: number, rows: Rows, ringsFromTipM: readonly number[]): Float64Array {
  const plain = rowNodes(clampFromTipM, rows);
  const inner = ringsFromTipM.filter((ring) => ring > 0);
  if (inner.length === 0) return plain;
  const least = 0.25 * (rows.fine[1] - rows.fine[0]);
  const apart = [...plain].filter(
    (node, i) => i === 0 || i === plain.length - 1 || inner.every((ring) => Math.abs(ring - node) > least),
  );
  return Float64Array.from([...new Set([...apart, ...inner])].sort((a, b) => b - a));
}

function rowNodes(clampFromTipM: number, { fine }: Rows): Float64Array {
  const nodes = [clampFromTipM];
  const least = 0.25 * (fine[1] - fine[0]);
  for (let i = fine.length - 1; i >= 0; i--) {
    if (i + 1 < fine.length) {
      const middle = 0.5 * (fine[i] + fine[i + 1]);
      if (nodes[nodes.length - 1] - middle > least) nodes.push(middle);
    }
    if (nodes[nodes.length - 1] - fine[i] > least) nodes.push(fine[i]);
  }
  nodes[nodes.length - 1] = 0;
  return Float64Array.from(nodes);
}

function testModel(
  test: PreparedTest,
  nominalRad: number,
  shared: Pick<Mesh, 'count' | 'fromTipM' | 'lengthM' | 'springNm' | 'restTurn'>,
): TestModel {
  const { count, fromTipM, lengthM } = shared;
  const nothing = new Float64Array(count + 1);
  const mesh: Mesh = {
    ...shared,
    massKg: new Float64Array(count + 1),
    stiffnessNm2: nothing,
    ringNode: Int32Array.from(test.line?.rings ?? [], (ring) => fromTipM.indexOf(ring.fromTipM)),
    elementsPerPart: [count],
  };
  const onNodes = (masses: PreparedTest['hung'] = []) =>
    masses
      .filter((mass) => mass.fromTipM < fromTipM[0])
      .map((mass) => {
        const { element, along } = elementAt(fromTipM, mass.fromTipM);
        return { node: element, share: along / lengthM[element], massKg: mass.massKg };
      });
  const readings = test.readings.map((reading) => ({
    ...elementAt(fromTipM, reading.fromTipM),
    squareToRad: reading.squareToRad ?? nominalRad,
  }));
  return {
    mesh,
    work: makeWorkspace(mesh),
    hung: onNodes(test.hung),
    riding: onNodes(test.masses),
    line: test.line,
    byButt: test.line && new Float64Array(count),
    readings,
    solved: false,
  };
}

function elementAt(fromTipM: Float64Array, at: number): { element: number; along: number } {
  const low = pairAround(fromTipM, at);
  return { element: low + 1, along: Math.max(0, fromTipM[low] - at) };
}
