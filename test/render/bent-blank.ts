import type { Place } from './canvas.ts';
import type { Random } from './random.ts';

/**
 * An invented tapered blank held at the butt and pulled at the tip: the planar elastica
 * θ' = M/EI, M = F × (tip − here), integrated from the tip, with the pull scaled until the butt points as
 * asked. No weight of its own. Only a source of plausible curves; not the engine's bend.
 */
export interface BentBlank {
  /** Axis from butt to tip in metres, y up. */
  axis: Place[];
  radiusM: number[];
  angleRad: number[];
  lengthM: number;
}

export interface BlankChoice {
  lengthM: number;
  buttRadiusM: number;
  tipRadiusM: number;
  buttAngleRad: number;
  tipAngleRad: number;
  pullAngleRad: number;
  /** How fast stiffness grows with diameter. */
  power: number;
}

export function blankChoice(random: Random): BlankChoice {
  const buttAngleRad = random.between(0.05, 1.1);
  return {
    lengthM: random.between(1.9, 2.9),
    buttRadiusM: random.between(0.0042, 0.0055),
    tipRadiusM: random.between(0.0008, 0.0012),
    buttAngleRad,
    tipAngleRad: random.between(-1.75, buttAngleRad - 0.35),
    pullAngleRad: random.between(-1.9, -1.3),
    power: random.between(2.2, 3.2),
  };
}

export function bendBlank(choice: BlankChoice, steps = 1500): BentBlank {
  // A tip cannot turn past the pull's direction.
  const tipAngleRad = Math.max(choice.tipAngleRad, choice.pullAngleRad + 0.04);
  let low = 0;
  let high = 1;
  while (buttAngleUnder(choice, tipAngleRad, high, steps) < choice.buttAngleRad && high < 1e6) high *= 2;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (buttAngleUnder(choice, tipAngleRad, middle, steps) < choice.buttAngleRad) low = middle;
    else high = middle;
  }
  return curveUnder(choice, tipAngleRad, high, steps);
}

function buttAngleUnder(choice: BlankChoice, tipAngleRad: number, pull: number, steps: number): number {
  return curveUnder(choice, tipAngleRad, pull, steps).angleRad[0];
}

function curveUnder(choice: BlankChoice, tipAngleRad: number, pull: number, steps: number): BentBlank {
  const step = choice.lengthM / steps;
  const forceX = pull * Math.cos(choice.pullAngleRad);
  const forceY = pull * Math.sin(choice.pullAngleRad);
  const axis: Place[] = [{ x: 0, y: 0 }];
  const angleRad = [tipAngleRad];
  const radiusM = [choice.tipRadiusM];
  for (let i = 1; i <= steps; i++) {
    const here = axis[i - 1];
    const radius = choice.tipRadiusM + ((choice.buttRadiusM - choice.tipRadiusM) * (i - 0.5)) / steps;
    const stiffness = (radius / choice.tipRadiusM) ** choice.power;
    // Midpoint rule: the angle half a step on gives both the place and the moment.
    const moment = -here.x * forceY + here.y * forceX;
    const half = angleRad[i - 1] - ((moment / stiffness) * step) / 2;
    const place = { x: here.x - step * Math.cos(half), y: here.y - step * Math.sin(half) };
    const middle = { x: (here.x + place.x) / 2, y: (here.y + place.y) / 2 };
    angleRad.push(angleRad[i - 1] - ((-middle.x * forceY + middle.y * forceX) / stiffness) * step);
    axis.push(place);
    radiusM.push(choice.tipRadiusM + ((choice.buttRadiusM - choice.tipRadiusM) * i) / steps);
  }
  axis.reverse();
  angleRad.reverse();
  radiusM.reverse();
  const butt = axis[0];
  return {
    axis: axis.map((place) => ({ x: place.x - butt.x, y: place.y - butt.y })),
    angleRad,
    radiusM,
    lengthM: choice.lengthM,
  };
}

/** A place standing off the axis to the rod's underside (right of travel, y up). */
export function offAxis(blank: BentBlank, index: number, offM: number): Place {
  const angle = blank.angleRad[index];
  return { x: blank.axis[index].x + offM * Math.sin(angle), y: blank.axis[index].y - offM * Math.cos(angle) };
}
