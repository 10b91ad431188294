/**
 * Drops of a clamped blank and how they answer to every unknown.
 *
 * Forward: the geometrically exact bend (bend/equilibrium.ts) under own weight and hung masses. Derivatives by
 * the adjoint: with H the Hessian of the energy at equilibrium and c = ∂drop/∂θ, solve H λ = c once per
 * reading; then
 *   ∂drop/∂ ln K_e    = -K_e (λ_e - λ_{e-1}) turn_e            bending spring of element e
 *   ∂drop/∂ restTurn_e = K_e (λ_e - λ_{e-1})
 *   ∂drop/∂ m_j       = -g δy_j                                δy_j the height node j gains when θ turns by λ
 *   ∂drop/∂ θ_0       = c_0 - λ·∂²E/∂θ∂θ_0             λ_1 alone without a line; with one the reel turns along
 * A drop is square to the nominal direction, a traced place to the curve's own there.
 */
import { loadingOf } from '../bend/bend-request.ts';
import { assemble, type Loading, makeWorkspace, placeNodes, type Workspace } from '../bend/equilibrium.ts';
import { followDefaults, followFromNearby, followLoad } from '../bend/follow.ts';
import type { Mesh } from '../bend/mesh.ts';
import { factorChained, solveChained } from '../numerics/chained-tridiagonal.ts';
import { standardGravity } from '../units/gravity.ts';
import type { PreparedClamp, PreparedTest } from './prepared-request.ts';
import { type PlaceInRows, placeInRows, type Rows } from './rows.ts';
import type { Unknowns } from './unknowns.ts';

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

interface RowParts {
  low: Float64Array;
  high: Float64Array;
}
interface TestModel {
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
interface ReadingPlace {
  /** The reading stands in this element, `along` its length from the clamp-side node. */
  element: number;
  along: number;
  squareToRad: number;
}

/** Where predictions and derivatives of the drops go; one row of `jacobian` per reading. */
export interface Prediction {
  value: Float64Array;
  /** Row by row, `size` columns. */
  jacobian: Float64Array;
  size: number;
  /** ∂drop/∂station, towards the butt. */
  stationSlope: Float64Array;
  /** ∂drop/∂(everything hung in its test, as a factor). */
  loadSlope: Float64Array;
}

const noLine: Loading = { line: undefined, tipXN: 0, tipYN: 0 };
/** A state so soft that it takes more is none that readings could belong to. */
const followOptions = { ...followDefaults, maxIterations: 300 };

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
  let low = 0;
  let high = fromTipM.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (fromTipM[middle] >= at) low = middle;
    else high = middle;
  }
  return { element: high, along: Math.max(0, fromTipM[low] - at) };
}

/**
 * Predicts all drops of the set-up for the unknowns z, written from row `first` on; false where a test found no
 * equilibrium, and the predictions are then of the state it got to.
 */
export function predictDrops(
  model: ClampModel,
  unknowns: Unknowns,
  z: Float64Array,
  first: number,
  out: Prediction,
): boolean {
  setElements(model, unknowns, z);
  const tilt = z[unknowns.tilt.start + model.index];
  const buttAngleRad = model.setup.nominalAngleRad + tilt;
  let row = first;
  let allConverged = true;
  for (const test of model.tests) {
    loadNodes(model, test);
    allConverged = solveTest(test, buttAngleRad) && allConverged;
    for (const place of test.readings) {
      out.value[row] = readPlace(model, test, place);
      deriveDrop(model, test, place, unknowns, row, out);
      row++;
    }
  }
  return allConverged;
}

/** Springs, rest turns and masses of the elements from the rows; EI and µ are linear between rows. */
function setElements(model: ClampModel, unknowns: Unknowns, z: Float64Array): void {
  const { rest, restAcross } = unknowns;
  const { springParts, massParts, springNm, restTurn, lengthM } = model;
  const turned = model.setup.turnedRad ?? 0;
  setParts(springParts, z, unknowns.stiffness.start, model.fine);
  setParts(massParts, z, unknowns.mass.start, model.coarse);
  for (let e = 1; e <= model.count; e++) {
    const h = lengthM[e];
    springParts.low[e] /= h;
    springParts.high[e] /= h;
    massParts.low[e] *= h;
    massParts.high[e] *= h;
    springNm[e] = springParts.low[e] + springParts.high[e];
    let curvature = 0;
    if (rest.size > 0) curvature += Math.cos(turned) * blend(z, rest.start, model.coarse[e]);
    if (restAcross.size > 0) curvature += Math.sin(turned) * blend(z, restAcross.start, model.coarse[e]);
    restTurn[e] = curvature * h;
  }
}

function setParts(parts: RowParts, z: Float64Array, start: number, places: readonly PlaceInRows[]): void {
  let row = -1;
  let low = 0;
  let high = 0;
  for (let e = 1; e < places.length; e++) {
    const place = places[e];
    if (place.row !== row) {
      row = place.row;
      low = Math.exp(z[start + row]);
      high = Math.exp(z[start + row + 1]);
    }
    parts.low[e] = (1 - place.weight) * low;
    parts.high[e] = place.weight * high;
  }
}

function blend(z: Float64Array, start: number, { row, weight }: PlaceInRows): number {
  return (1 - weight) * z[start + row] + weight * z[start + row + 1];
}

function loadNodes(model: ClampModel, { mesh, hung, riding }: TestModel): void {
  const { massKg } = mesh;
  const { massParts } = model;
  massKg.fill(0);
  for (let e = 1; e <= model.count; e++) {
    const half = 0.5 * (massParts.low[e] + massParts.high[e]);
    massKg[e] += half;
    massKg[e - 1] += half;
  }
  for (const { node, share, massKg: kg } of [...hung, ...riding]) {
    massKg[node] += kg * share;
    massKg[node - 1] += kg * (1 - share);
  }
}

/** Leaves the factored Hessian of the equilibrium in the test's workspace. */
function solveTest(test: TestModel, buttAngleRad: number): boolean {
  const { mesh, work } = test;
  const loading = loadingAt(test, buttAngleRad);
  let converged = false;
  if (test.solved) {
    const turn = buttAngleRad - work.theta[0];
    for (let j = 0; j <= mesh.count; j++) work.theta[j] += turn;
    converged = followFromNearby(mesh, loading, work).converged;
  }
  if (!converged)
    converged = followLoad(mesh, loading, buttAngleRad, work, followOptions).status === 'converged';
  test.solved = converged;
  deriveByButt(test, buttAngleRad);
  placeNodes(mesh, loading.line, work);
  assemble(mesh, loading, 1, work);
  factorChained(work.hessian);
  return converged;
}

function loadingAt({ line }: TestModel, buttAngleRad: number): Loading {
  if (!line) return noLine;
  const { tensionN, pullAngleRad, rings, side, reel } = line;
  const guides = rings.map((ring) => ({ ...ring, side }));
  return loadingOf({ buttAngleRad, reel, guides, load: { line: { tensionN, pullAngleRad } } });
}

/** By central differences of the energy's gradient, the butt and the reel on it turned alone. */
function deriveByButt(test: TestModel, buttAngleRad: number): void {
  const { mesh, work, byButt } = test;
  if (!byButt) return;
  const step = 1e-5;
  byButt.fill(0);
  const gradientAt = (turn: number, sign: 1 | -1) => {
    work.theta[0] = buttAngleRad + turn;
    const loading = loadingAt(test, buttAngleRad + turn);
    placeNodes(mesh, loading.line, work);
    assemble(mesh, loading, 1, work);
    for (let i = 0; i < mesh.count; i++) {
      byButt[i] += (sign * (work.bendGradient[i] + work.loadGradient[i])) / (2 * step);
    }
  };
  gradientAt(step, 1);
  gradientAt(-step, -1);
  work.theta[0] = buttAngleRad;
}

function readPlace(
  model: ClampModel,
  { work }: TestModel,
  { element, along, squareToRad: nominal }: ReadingPlace,
): number {
  const angle = angleIn(model, work, element, 0.5 * along);
  const x = work.xM[element - 1] + along * Math.cos(angle);
  const y = work.yM[element - 1] + along * Math.sin(angle);
  return x * Math.sin(nominal) - y * Math.cos(nominal);
}

/** The blank's angle at a distance from the element's clamp-side node. */
function angleIn(model: ClampModel, { theta }: Workspace, element: number, along: number): number {
  return theta[element - 1] + ((theta[element] - theta[element - 1]) * along) / model.lengthM[element];
}

function deriveDrop(
  model: ClampModel,
  test: TestModel,
  place: ReadingPlace,
  unknowns: Unknowns,
  row: number,
  out: Prediction,
): void {
  const { mesh, work, hung } = test;
  const { lambda, heightGain } = model;
  const { element, along, squareToRad: nominal } = place;

  // c = ∂drop/∂θ, node 0 apart
  lambda.fill(0);
  let atClamp = 0;
  const turnNode = (node: number, amount: number) => {
    if (node === 0) atClamp += amount;
    else lambda[node - 1] += amount;
  };
  for (let e = 1; e < element; e++) {
    const half = -0.5 * model.lengthM[e] * cosTo(work, e, nominal);
    turnNode(e - 1, half);
    turnNode(e, half);
  }
  const share = along / (2 * model.lengthM[element]);
  const partial = -along * Math.cos(angleIn(model, work, element, 0.5 * along) - nominal);
  turnNode(element - 1, (1 - share) * partial);
  turnNode(element, share * partial);

  // λ_1..λ_count stand at 0..count-1; the clamp does not turn
  solveChained(work.hessian, lambda, lambda);
  let gain = 0;
  let below = 0;
  for (let e = 1; e <= mesh.count; e++) {
    gain += 0.5 * mesh.lengthM[e] * work.cos[e] * (below + lambda[e - 1]);
    heightGain[e] = gain;
    below = lambda[e - 1];
  }

  addRowDerivatives(model, test, unknowns, row * out.size, out.jacobian);
  out.jacobian[row * out.size + unknowns.tilt.start + model.index] += atClamp - alongButt(test, lambda);
  out.stationSlope[row] = Math.sin(angleIn(model, work, element, along) - nominal);
  out.loadSlope[row] = 0;
  for (const { node, share: s, massKg } of hung) {
    const height = s * heightGain[node] + (1 - s) * heightGain[node - 1];
    out.loadSlope[row] -= massKg * standardGravity * height;
  }
}

function alongButt({ byButt, work }: TestModel, lambda: Float64Array): number {
  if (!byButt) return lambda[0] * work.hessian.off[0];
  return byButt.reduce((sum, value, i) => sum + value * lambda[i], 0);
}

/** cos of element e's angle less the nominal one, from the cosines at hand. */
function cosTo(work: Workspace, e: number, nominal: number): number {
  return work.cos[e] * Math.cos(nominal) + work.sin[e] * Math.sin(nominal);
}

function addRowDerivatives(
  model: ClampModel,
  { work }: TestModel,
  unknowns: Unknowns,
  at: number,
  jacobian: Float64Array,
): void {
  const { stiffness, rest, restAcross, mass } = unknowns;
  const { lambda, heightGain, springNm, springParts, massParts, restTurn, lengthM } = model;
  const { theta } = work;
  const turned = model.setup.turnedRad ?? 0;
  const inPlane = Math.cos(turned);
  const across = Math.sin(turned);
  let below = 0;
  for (let e = 1; e <= model.count; e++) {
    const coarse = model.coarse[e];
    const bend = lambda[e - 1] - below;
    below = lambda[e - 1];

    const bySpring = -bend * (theta[e] - theta[e - 1] - restTurn[e]);
    const s = at + stiffness.start + model.fine[e].row;
    jacobian[s] += bySpring * springParts.low[e];
    jacobian[s + 1] += bySpring * springParts.high[e];

    const byKg = -standardGravity * 0.5 * (heightGain[e] + heightGain[e - 1]);
    const m = at + mass.start + coarse.row;
    jacobian[m] += byKg * massParts.low[e];
    jacobian[m + 1] += byKg * massParts.high[e];

    const byCurvature = springNm[e] * bend * lengthM[e];
    if (rest.size > 0) addBlend(jacobian, at + rest.start, coarse, byCurvature * inPlane);
    if (restAcross.size > 0) addBlend(jacobian, at + restAcross.start, coarse, byCurvature * across);
  }
}

function addBlend(jacobian: Float64Array, start: number, { row, weight }: PlaceInRows, by: number): void {
  jacobian[start + row] += (1 - weight) * by;
  jacobian[start + row + 1] += weight * by;
}
