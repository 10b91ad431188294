/**
 * Sag of a blank on two supports, and how it answers to every unknown.
 *
 * The supports push square to the level line through them (no friction), the blank's material points stay on
 * them. Moments follow from the weights by statics, M(s) = Σ forces beyond s · lever, the angle from
 * θ' = κ0 + M/EI, and places from the angle; levers are those of the bent shape, found by repetition, so the
 * sag is geometrically exact. Derivatives hold the levers fixed: their error is of the order of the slope
 * squared, which a search by least squares stands well.
 */
import { standardGravity } from '../units/gravity.ts';
import type { Prediction } from './clamp-derivatives.ts';
import { addBlend, type PlaceInRows } from './rows.ts';
import { type ElementValues, elementValues, type SpanModel } from './span-elements.ts';
import type { Unknowns } from './unknowns.ts';

/** Writes the sags of the set-up's tests from row `first` on; false where the shape did not settle. */
export function predictSags(
  model: SpanModel,
  unknowns: Unknowns,
  z: Float64Array,
  first: number,
  out: Prediction,
): boolean {
  const elements = elementValues(model, unknowns, z);
  let allSettled = true;
  model.setup.tests.forEach((test, i) => {
    const shape = settle(model, elements, test.massKg);
    allSettled = allSettled && shape.settled;
    out.value[first + i] = shape.sag;
    deriveSag(model, elements, shape, unknowns, z, first + i, test.massKg, out);
  });
  return allSettled;
}

interface Shape {
  settled: boolean;
  sag: number;
  /** Horizontal place of every boundary, from the tip-side support towards the butt. */
  x: Float64Array;
  /** Moment per element that makes it sag (positive: hollow upwards). */
  moment: Float64Array;
}

/** Repeats statics and shape until the sag stands still. */
function settle(model: SpanModel, elements: ElementValues, loadKg: number): Shape {
  const { fromTipM, tipSide } = model;
  let x = fromTipM.map((s) => s - fromTipM[tipSide]);
  let moment = momentsOf(model, elements, x, loadKg);
  let sag = Number.NaN;
  for (let round = 0; round < 30; round++) {
    const bent = bentShape(model, elements, moment);
    const change = Math.abs(bent.sag - sag);
    sag = bent.sag;
    x = bent.x;
    moment = momentsOf(model, elements, x, loadKg);
    if (change <= 1e-7) return { settled: true, sag, x, moment };
  }
  return { settled: false, sag: Number.isFinite(sag) ? sag : 0, x, moment };
}

/** Moments in the elements' middles, from the weights and the two supports. */
function momentsOf(model: SpanModel, elements: ElementValues, x: Float64Array, loadKg: number): Float64Array {
  const { tipSide, load, buttSide } = model;
  const n = elements.length.length;
  const span = x[buttSide] - x[tipSide];
  let weight = loadKg * standardGravity;
  let lever = weight * (x[load] - x[tipSide]);
  for (let e = 0; e < n; e++) {
    const w = elements.massKg[e] * standardGravity;
    weight += w;
    lever += w * (0.5 * (x[e] + x[e + 1]) - x[tipSide]);
  }
  const buttPush = lever / span;
  const moment = new Float64Array(n);
  let force = 0; // upward on the part towards the tip
  let atBoundary = 0;
  for (let e = 0; e < n; e++) {
    if (e === tipSide) force += weight - buttPush;
    if (e === load) force -= loadKg * standardGravity;
    if (e === buttSide) force += buttPush;
    const dx = x[e + 1] - x[e];
    const w = elements.massKg[e] * standardGravity;
    moment[e] = atBoundary + 0.5 * dx * force - 0.125 * dx * w;
    atBoundary += dx * force - 0.5 * dx * w;
    force -= w;
  }
  return moment;
}

/** Shape from the moments, turned so that both supports stand level. Curvature positive: hollow upwards. */
function bentShape(model: SpanModel, elements: ElementValues, moment: Float64Array) {
  const n = elements.length.length;
  const x = new Float64Array(n + 1);
  const y = new Float64Array(n + 1);
  let angle = 0;
  for (let e = 0; e < n; e++) {
    const turn = (moment[e] / elements.stiffness[e] + elements.rest[e]) * elements.length[e];
    const middle = angle + 0.5 * turn;
    x[e + 1] = x[e] + elements.length[e] * Math.cos(middle);
    y[e + 1] = y[e] + elements.length[e] * Math.sin(middle);
    angle += turn;
  }
  const dx = x[model.buttSide] - x[model.tipSide];
  const dy = y[model.buttSide] - y[model.tipSide];
  const chord = Math.hypot(dx, dy);
  const x0 = x[model.tipSide];
  const y0 = y[model.tipSide];
  for (let e = 0; e <= n; e++) {
    const px = x[e] - x0;
    const py = y[e] - y0;
    x[e] = (px * dx + py * dy) / chord;
    y[e] = (py * dx - px * dy) / chord;
  }
  return { x, sag: -y[model.load] };
}

/** ∂sag/∂κ of an element is the beam's influence line: the moment there from a unit push at the load. */
function deriveSag(
  model: SpanModel,
  elements: ElementValues,
  { x, moment }: Shape,
  unknowns: Unknowns,
  z: Float64Array,
  row: number,
  loadKg: number,
  out: Prediction,
): void {
  const unit = momentsOf(model, { ...elements, massKg: new Float64Array(moment.length) }, x, 1);
  const turned = model.setup.turnedRad ?? 0;
  const at = row * out.size;
  out.stationSlope[row] = 0;
  out.loadSlope[row] = 0;
  for (let e = 0; e < moment.length; e++) {
    const influence = (unit[e] / standardGravity) * elements.length[e];
    const byStiffness = (-influence * moment[e]) / elements.stiffness[e] ** 2;
    addExponentials(out.jacobian, at, unknowns.stiffness.start, model.fine[e], z, byStiffness);
    out.loadSlope[row] += (influence * unit[e] * loadKg) / elements.stiffness[e];
    const { rest, restAcross } = unknowns;
    if (rest.size > 0) addBlend(out.jacobian, at + rest.start, model.coarse[e], influence * Math.cos(turned));
    if (restAcross.size > 0) {
      addBlend(out.jacobian, at + restAcross.start, model.coarse[e], influence * Math.sin(turned));
    }
  }
  addMassDerivatives(model, elements, x, unit, unknowns, z, at, out.jacobian);
}

/** By reciprocity the sag that a unit of mass adds is the sag of its own place under a unit load at the mark. */
function addMassDerivatives(
  model: SpanModel,
  elements: ElementValues,
  x: Float64Array,
  unit: Float64Array,
  unknowns: Unknowns,
  z: Float64Array,
  at: number,
  jacobian: Float64Array,
): void {
  const n = unit.length;
  const drop = new Float64Array(n + 1);
  let slope = 0;
  for (let e = 0; e < n; e++) {
    const turn = (unit[e] / elements.stiffness[e]) * elements.length[e];
    drop[e + 1] = drop[e] - (x[e + 1] - x[e]) * (slope + 0.5 * turn);
    slope += turn;
  }
  const atTip = drop[model.tipSide];
  const rise = (drop[model.buttSide] - atTip) / (x[model.buttSide] - x[model.tipSide]);
  for (let e = 0; e < n; e++) {
    const level = 0.5 * (drop[e] - rise * x[e] + drop[e + 1] - rise * x[e + 1]) - atTip;
    addExponentials(jacobian, at, unknowns.mass.start, model.coarse[e], z, level * elements.length[e]);
  }
}

function addExponentials(
  jacobian: Float64Array,
  at: number,
  start: number,
  { row, weight }: PlaceInRows,
  z: Float64Array,
  by: number,
): void {
  jacobian[at + start + row] += by * (1 - weight) * Math.exp(z[start + row]);
  jacobian[at + start + row + 1] += by * weight * Math.exp(z[start + row + 1]);
}
