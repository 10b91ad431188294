/**
 * Drops of a clamped blank under own weight and hung masses: the geometrically exact bend (bend/equilibrium.ts). A
 * drop is square to the nominal direction, a traced place to the curve's own there.
 */
import { loadingOf } from '../bend/bend-request.ts';
import { assemble, type Loading, placeNodes } from '../bend/equilibrium.ts';
import { followDefaults, followFromNearby, followLoad } from '../bend/follow.ts';
import { factorChained } from '../numerics/chained-tridiagonal.ts';
import { angleIn, deriveDrop, type Prediction } from './clamp-derivatives.ts';
import type { ClampModel, ReadingPlace, RowParts, TestModel } from './clamp-elements.ts';
import type { PlaceInRows } from './rows.ts';
import type { Unknowns } from './unknowns.ts';

const noLine: Loading = { line: undefined, tipXN: 0, tipYN: 0 };

/** A state so soft that it takes more is none that readings could belong to. */
const followOptions = { ...followDefaults, maxIterations: 300 };

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
