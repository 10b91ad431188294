/**
 * Runs CalculiX on a rod: quadratic beams of reduced integration (B32R), geometrically nonlinear, square section of
 * 1/500 of the length so that stretch and shear stay below its accuracy. One section for the whole rod (several would
 * make CalculiX join them by rigid knots); EI varies through a modulus that depends on a temperature given per node.
 * The unloaded rod has its natural bow; weights are nodal forces.
 *
 * The line acts as dead forces at the rings, which stand on the axis here: a moment at a beam node makes a rigid knot
 * too, and the solution no longer moves on. A beam code has no line in it, so the forces come from a shape that is
 * handed in, and the answer says what forces its own shape would give: the two must agree. Raised from nothing as dead
 * forces they follow another path than the line's: a rod that rises steeply under a strong pull can end up bent the
 * other way there, so the six rods' pulls were chosen where it does not. The fully integrated B32
 * locks when a slender beam curls (0.2 % of the length at 50 elements on the elastica PL²/EI = 10); B32R does not.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BendRequest } from '../../src/engine/bend/bend.ts';
import { rodTables } from '../../src/engine/bend/rod.ts';
import { integralBetween, valueAt } from '../../src/engine/numerics/piecewise-linear.ts';
import { type RodPlaces, ringForces } from '../statics.ts';

export interface CalculixBend {
  /** Every element node, tip first. */
  points: { fromTipM: number; xM: number; yM: number }[];
  rings: { xM: number; yM: number }[];
  /** Largest change of any ring's force between the shape handed in and the answer, as a share of the tension. */
  forceChange: number;
  seconds: number;
}

export function hasCalculix(): boolean {
  const run = spawnSync('ccx', ['-v'], { encoding: 'utf8' });
  return run.error === undefined && /version/i.test(`${run.stdout}${run.stderr}`);
}

export function calculixVersion(): string {
  const { stdout } = spawnSync('ccx', ['-v'], { encoding: 'utf8' });
  return /version\s+([\w.]+)/i.exec(stdout)?.[1] ?? 'of unknown version';
}

/**
 * The same rod with stiffness rows at the corners of its beam elements: a modulus that is linear in each element, so
 * that CalculiX and the engine are given the same rod to the last digit.
 */
export function withRowsAtCorners(request: BendRequest, elements: number): BendRequest {
  const { stiffness } = rodTables(request.rod);
  const corners = beamNodes(request, elements).filter((_, i) => i % 2 === 0);
  const rows = corners.reverse().map(({ fromTipM }) => ({ fromTipM, EINm2: valueAt(stiffness, fromTipM) }));
  return { ...request, rod: { ...request.rod, stiffness: rows } };
}

/** `shape` gives the ring places from which the line's forces are taken; its points are not used. */
export function calculixBend(request: BendRequest, shape: RodPlaces, elements: number): CalculixBend {
  const nodes = beamNodes(request, elements);
  const { moved, seconds } = movedUnder(request, nodes, loadsOf(request, shape, nodes));
  return answerOf(request, shape, moved, seconds);
}

/** Where the nodes of the unloaded rod go under forces on them; its section is square. */
export function movedUnder(
  request: BendRequest,
  nodes: readonly BeamNode[],
  loads: readonly NodalLoad[],
  beam: Beam = planarBeam,
) {
  const folder = mkdtempSync(join(tmpdir(), 'rod-'));
  try {
    writeFileSync(join(folder, 'rod.inp'), inputDeck(request, loads, nodes, beam));
    const started = performance.now();
    const run = spawnSync('ccx', ['-i', 'rod'], {
      maxBuffer: 1 << 28,
      cwd: folder,
      encoding: 'utf8',
      timeout: 300_000,
      env: { ...process.env, OMP_NUM_THREADS: '1' },
    });
    const seconds = (performance.now() - started) / 1000;
    if (run.status !== 0) throw new Error(`ccx ended with ${run.status}: ${run.stdout.slice(-500)}`);
    return { moved: readMoves(readFileSync(join(folder, 'rod.dat'), 'utf8'), nodes), seconds };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** How thin the square section is, and what CalculiX must settle to: residual force, correction of a move. */
export interface Beam {
  slenderness: number;
  residual: number;
  correction: number;
}
const planarBeam: Beam = { slenderness: 500, residual: 1e-5, correction: 1e-4 };

export interface BeamNode {
  fromTipM: number;
  xM: number;
  yM: number;
  /** Out of the plane, once moved. */
  zM?: number;
}

/** From the clamp: corner, middle, corner, ... ; corners at rings and masses, closest at the tip; unloaded places. */
export function beamNodes(request: BendRequest, elements: number): BeamNode[] {
  const { rod } = request;
  const fixed = [...(request.guides ?? []), ...(request.masses ?? [])].map((item) => item.fromTipM);
  const wanted = [0, rod.lengthM, ...fixed];
  for (let i = 1; i < elements; i++) wanted.push(rod.lengthM * (i / elements) ** 1.5);
  const corners: number[] = [];
  const isFixed = (at: number) => at === 0 || at === rod.lengthM || fixed.includes(at);
  for (const at of [...new Set(wanted)].sort((a, b) => b - a)) {
    const last = corners.at(-1);
    const close = last !== undefined && last - at < (0.3 * rod.lengthM) / elements;
    if (close && !isFixed(at)) continue;
    if (close && last !== undefined && !isFixed(last)) corners.pop();
    corners.push(at);
  }
  const stations = corners.flatMap((at, i) => (i === 0 ? [at] : [0.5 * (at + corners[i - 1]), at]));
  return unloadedPlaces(request, stations);
}

function unloadedPlaces(request: BendRequest, stations: readonly number[]): BeamNode[] {
  const { rest } = rodTables(request.rod);
  const nodes: BeamNode[] = [];
  const fine = 20;
  let [x, y, angle] = [0, 0, request.buttAngleRad];
  stations.forEach((at, i) => {
    const before = stations[i - 1] ?? at;
    const h = (before - at) / fine;
    for (let k = 0; k < fine && i > 0; k++) {
      const from = before - k * h;
      const middle = angle + (rest ? integralBetween(rest, from - h / 2, from) : 0);
      x += h * Math.cos(middle);
      y += h * Math.sin(middle);
      angle += rest ? integralBetween(rest, from - h, from) : 0;
    }
    nodes.push({ fromTipM: at, xM: x, yM: y });
  });
  return nodes;
}

function inputDeck(
  request: BendRequest,
  loads: readonly NodalLoad[],
  nodes: readonly BeamNode[],
  { slenderness, residual, correction }: Beam,
): string {
  const side = request.rod.lengthM / slenderness;
  const { stiffness } = rodTables(request.rod);
  const moduli = nodes.map(({ fromTipM }) => (12 * valueAt(stiffness, fromTipM)) / side ** 4);
  const [softest, stiffest] = [Math.min(...moduli), Math.max(...moduli)];
  const elements = Array.from(
    { length: (nodes.length - 1) / 2 },
    (_, e) => `${e + 1}, ${2 * e + 1}, ${2 * e + 2}, ${2 * e + 3}`,
  );
  return `${[
    '*NODE, NSET=ALL',
    ...nodes.map(({ xM, yM }, i) => `${i + 1}, ${num(xM)}, ${num(yM)}, 0.`),
    '*ELEMENT, TYPE=B32R, ELSET=ROD',
    ...elements,
    '*MATERIAL, NAME=M',
    '*ELASTIC',
    `${num(0.5 * softest)}, 0., ${num(0.5 * softest)}`,
    `${num(2 * stiffest)}, 0., ${num(2 * stiffest)}`,
    '*BEAM SECTION, ELSET=ROD, MATERIAL=M, SECTION=RECT',
    `${num(side)}, ${num(side)}`,
    '0., 0., 1.',
    '*INITIAL CONDITIONS, TYPE=TEMPERATURE',
    ...moduli.map((modulus, i) => `${i + 1}, ${num(modulus)}`),
    '*BOUNDARY',
    '1, 1, 6',
    ...stepUnder(loads, moduli, `${residual}, ${correction}`),
  ].join('\n')}\n`;
}

function num(value: number): string {
  return value.toExponential(12);
}

export type NodalLoad = { x: number; y: number; z?: number };

function stepUnder(loads: readonly NodalLoad[], moduli: readonly number[], tolerances: string): string[] {
  return [
    '*STEP, NLGEOM, INC=500',
    '*STATIC',
    '0.05, 1., 1e-6, 0.3',
    '*CONTROLS, PARAMETERS=FIELD',
    `${tolerances}, , , 1e-5, 1e-6`,
    '*TEMPERATURE',
    ...moduli.map((modulus, i) => `${i + 1}, ${num(modulus)}`),
    '*CLOAD',
    ...loads.flatMap(({ x, y, z = 0 }, i) =>
      [x, y, z].map((force, axis) => `${i + 1}, ${axis + 1}, ${num(force)}`),
    ),
    '*NODE PRINT, NSET=ALL, FREQUENCY=500',
    'U',
    '*END STEP',
  ];
}

/** The line's forces are dead ones here, and grow with the rest of the load. */
function loadsOf(request: BendRequest, shape: RodPlaces, nodes: readonly BeamNode[]): NodalLoad[] {
  const loads = weights(request, nodes);
  const off = request.guides?.find((guide) => guide.ringHeightM !== 0);
  if (off) throw new Error(`the ring at ${off.fromTipM} m stands ${off.ringHeightM} m off the axis`);
  for (const force of ringForces(request, shape)) {
    const load = loads[nodeAt(nodes, force.fromTipM)];
    load.x += force.xN;
    load.y += force.yN;
  }
  return loads;
}

/** Own weight, masses and a dead force at the tip. */
export function weights(request: BendRequest, nodes: readonly BeamNode[]): NodalLoad[] {
  const loads = nodes.map(() => ({ x: 0, y: 0 }));
  const { mass } = rodTables(request.rod);
  for (let e = 1; 2 * e < nodes.length && mass; e++) {
    const weight = 9.80665 * integralBetween(mass, nodes[2 * e].fromTipM, nodes[2 * e - 2].fromTipM);
    [1 / 6, 4 / 6, 1 / 6].forEach((share, k) => {
      loads[2 * e - 2 + k].y -= share * weight;
    });
  }
  for (const { fromTipM, massKg } of request.masses ?? []) {
    loads[nodeAt(nodes, fromTipM)].y -= 9.80665 * massKg;
  }
  loads[loads.length - 1].x += request.load.tip?.xN ?? 0;
  loads[loads.length - 1].y += request.load.tip?.yN ?? 0;
  return loads;
}

function nodeAt(nodes: readonly BeamNode[], fromTipM: number): number {
  return nodes.findIndex((node) => Math.abs(node.fromTipM - fromTipM) < 1e-9);
}

function readMoves(text: string, nodes: readonly BeamNode[]): BeamNode[] {
  const moved = nodes.map((node) => ({ ...node }));
  for (const line of text.split('\n')) {
    const [id, ux, uy, uz] = line.trim().split(/\s+/).map(Number);
    if (!Number.isInteger(id) || id < 1 || id > nodes.length || !Number.isFinite(uy)) continue;
    moved[id - 1] = {
      fromTipM: nodes[id - 1].fromTipM,
      xM: nodes[id - 1].xM + ux,
      yM: nodes[id - 1].yM + uy,
      zM: uz,
    };
  }
  return moved;
}

function answerOf(
  request: BendRequest,
  shape: RodPlaces,
  moved: readonly BeamNode[],
  seconds: number,
): CalculixBend {
  const guides = request.guides ?? [];
  const rings = guides.map((guide) => {
    const { xM, yM } = moved.find((node) => Math.abs(node.fromTipM - guide.fromTipM) < 1e-9)!;
    return { xM, yM };
  });
  const points = [...moved].reverse();
  const [given, own] = [ringForces(request, shape), ringForces(request, { points, rings })];
  const tensionN = request.load.line?.tensionN ?? 1;
  const forceChange = given.reduce(
    (most, force, k) => Math.max(most, Math.hypot(force.xN - own[k].xN, force.yN - own[k].yN) / tensionN),
    0,
  );
  return { points, rings, forceChange, seconds };
}
