/** Random rods, rings, rolls and pulls in space, the same for the same seed: for laws that hold for every rod. */
import { seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import { buildSpaceMesh, type SpaceMesh } from '../../src/engine/space/mesh-in-space.ts';
import { type SpaceRequest, spaceLoadingOf, spaceTables } from '../../src/engine/space/space-request.ts';
import type { SpaceLoading } from '../../src/engine/space/state.ts';

/** A blank of 1.6 to 3.2 m with six to eleven rings anywhere round it. */
export function randomSpaceRequest(seed: number): SpaceRequest {
  const random = seededRandom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const lengthM = between(1.6, 3.2);
  const buttEI = between(8, 40);
  const ratio = between(0.15, 0.6);
  const stations = Array.from({ length: 30 }, (_, i) => i / 29);
  const stiffness = stations.map((u) => ({
    fromTipM: u * lengthM,
    EINm2: buttEI * (0.12 + 0.88 * u) ** 2.6,
  }));
  const rings = 6 + Math.floor(6 * random());
  const turnRad = between(-3, 3);
  return {
    rod: {
      lengthM,
      stiffness,
      torsion: stiffness.map(({ fromTipM, EINm2 }) => ({ fromTipM, GJNm2: ratio * EINm2 })),
      massPerLength: stations.map((u) => ({ fromTipM: u * lengthM, kgPerM: 0.006 + 0.03 * u })),
      restCurvature: [
        { fromTipM: 0, perM: between(-0.05, 0.05), sidePerM: between(-0.05, 0.05) },
        { fromTipM: lengthM, perM: between(-0.02, 0.02), sidePerM: between(-0.02, 0.02) },
      ],
    },
    buttAngleRad: between(-0.2, 1.2),
    rollRad: between(-0.4, 0.4),
    masses: [{ fromTipM: between(0, 0.5) * lengthM, massKg: between(0, 0.02) }],
    guides: Array.from({ length: rings }, (_, i) => ({
      fromTipM: 0.78 * lengthM * (i / (rings - 1)) ** 1.3,
      ringHeightM: between(0.004, 0.012) + 0.012 * (i / rings),
      aroundRad: turnRad * (i / rings) ** 2,
    })),
    reel: { alongM: between(-0.3, -0.05), offsetM: between(0.02, 0.05), aroundRad: turnRad },
    load: {
      line: { tensionN: between(0.5, 12), pullAngleRad: between(-2, -0.6), pullSideRad: between(-0.4, 0.4) },
      tip: { xN: 0, yN: -between(0, 0.5), zN: between(-0.3, 0.3) },
    },
  };
}

export function randomSpaceProblem(
  seed: number,
  resolution: number,
): { mesh: SpaceMesh; loading: SpaceLoading } {
  const request = randomSpaceRequest(seed);
  const guides = (request.guides ?? []).map((guide) => guide.fromTipM);
  const mesh = buildSpaceMesh(spaceTables(request.rod), guides, request.masses ?? [], { resolution });
  return { mesh, loading: spaceLoadingOf(request) };
}
