import type { Place } from './canvas.ts';
import type { Random } from './random.ts';

/**
 * A pinhole camera with radial distortion looking at the plane Z = 0 (X right, Y up, metres). Forward only:
 * x_d = x(1 + k1 r² + k2 r⁴) in coordinates divided by the focal length, as in the usual textbook model
 * (Brown 1971; the form OpenCV documents). The tracer's own camera code is not used here.
 */
export interface Camera {
  project(place: Place): Place;
  /** Pixels per metre around a place. */
  scaleAt(place: Place): number;
  focalPx: number;
  k1: number;
  k2: number;
}

export interface CameraChoice {
  widthPx: number;
  heightPx: number;
  /** Rectangle of the plane that must be in the picture. */
  frame: { left: number; right: number; bottom: number; top: number };
  focalShare: number;
  k1: number;
  k2: number;
  yawRad: number;
  pitchRad: number;
  rollRad: number;
}

export function cameraChoice(
  random: Random,
  widthPx: number,
  heightPx: number,
  frame: CameraChoice['frame'],
): CameraChoice {
  return {
    widthPx,
    heightPx,
    frame,
    focalShare: random.between(0.65, 1.0),
    k1: random.between(-0.04, 0.04),
    k2: random.between(-0.008, 0.008),
    yawRad: random.between(-0.22, 0.22),
    pitchRad: random.between(-0.15, 0.15),
    rollRad: random.between(-0.05, 0.05),
  };
}

/** Stands the camera back until the frame's corners fit into 97 % of the picture. */
export function cameraFor(choice: CameraChoice): Camera {
  // Nearer than this the lens model would fold far corners back into the picture.
  let distance =
    0.6 * Math.max(choice.frame.right - choice.frame.left, choice.frame.top - choice.frame.bottom);
  for (let i = 0; i < 400; i++) {
    const camera = cameraAt(choice, distance);
    if (frameFits(camera, choice)) return camera;
    distance *= 1.01;
  }
  throw new Error(`no distance lets the frame ${JSON.stringify(choice.frame)} into the picture`);
}

function frameFits(camera: Camera, choice: CameraChoice): boolean {
  const { left, right, bottom, top } = choice.frame;
  const marginX = 0.015 * choice.widthPx;
  const marginY = 0.015 * choice.heightPx;
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: left, y: top },
    { x: right, y: top },
  ].every((corner) => {
    const at = camera.project(corner);
    return (
      at.x > marginX && at.x < choice.widthPx - marginX && at.y > marginY && at.y < choice.heightPx - marginY
    );
  });
}

function cameraAt(choice: CameraChoice, distanceM: number): Camera {
  const focalPx = choice.focalShare * Math.max(choice.widthPx, choice.heightPx);
  const { frame, yawRad, pitchRad, rollRad } = choice;
  const aimX = (frame.left + frame.right) / 2;
  const aimY = (frame.bottom + frame.top) / 2;
  const [cy, sy, cp, sp, cr, sr] = [yawRad, pitchRad, rollRad].flatMap((angle) => [
    Math.cos(angle),
    Math.sin(angle),
  ]);
  const centreX = (choice.widthPx - 1) / 2;
  const centreY = (choice.heightPx - 1) / 2;
  const project = (place: Place): Place => {
    const X = place.x - aimX;
    const Y = -(place.y - aimY);
    // Turn about the vertical, then the horizontal axis, step back, then roll.
    const x1 = cy * X;
    const z1 = sy * X;
    const y2 = cp * Y - sp * z1;
    const z2 = sp * Y + cp * z1 + distanceM;
    const x = (cr * x1 - sr * y2) / z2;
    const y = (sr * x1 + cr * y2) / z2;
    const r2 = x * x + y * y;
    const stretch = 1 + choice.k1 * r2 + choice.k2 * r2 * r2;
    return { x: centreX + focalPx * x * stretch, y: centreY + focalPx * y * stretch };
  };
  const scaleAt = (place: Place): number => {
    const at = project(place);
    const right = project({ x: place.x + 1e-3, y: place.y });
    const up = project({ x: place.x, y: place.y + 1e-3 });
    return Math.sqrt(Math.abs((right.x - at.x) * (up.y - at.y) - (right.y - at.y) * (up.x - at.x))) * 1e3;
  };
  return { project, scaleAt, focalPx, k1: choice.k1, k2: choice.k2 };
}
