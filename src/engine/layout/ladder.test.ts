import { expect, test } from 'vitest';
import { flyGuides, irregularRod, nineFootFive, smoothRod } from '../../../test/rods/invented-rods.ts';
import { bend } from '../bend/bend.ts';
import { makeLadder, readLadder } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { makeLadderState } from './ladder-state.ts';

const down = -Math.PI / 2;
const stations = [0.11, 0.24, 0.39, 0.55, 0.73, 0.93, 1.15, 1.4, 1.68, 1.98];

function request(rod = smoothRod(nineFootFive)): LadderRequest {
  return {
    rod,
    buttAngleRad: Math.PI / 4,
    ...flyGuides(10),
    ladder: [0.3, 0.8, 2, 5].map((tensionN) => ({ tensionN, pullAngleRad: down })),
    limits: { lineAngleRad: 0.26, gapM: 0.01, extraBendPerM: 0.05 },
  };
}

/** The same rod under one load through the one-shot bend, finely cut. */
function bendOf(from: LadderRequest, load: number) {
  const { rod, buttAngleRad, guides, tipTop, reel, ladder } = from;
  const on = (fromTipM: number, ringHeightM: number) => ({ fromTipM, ringHeightM, side: guides.side });
  return bend(
    {
      rod,
      buttAngleRad,
      reel,
      guides: [on(0, tipTop.ringHeightM), ...stations.map((s, i) => on(s, guides.ringHeightsM[i]))],
      masses: [
        { fromTipM: 0, massKg: tipTop.massKg! },
        ...stations.map((fromTipM, i) => ({ fromTipM, massKg: guides.massesKg![i] })),
      ],
      load: { line: ladder[load] },
    },
    { resolution: 1500 },
  );
}

test('every load of the ladder agrees with a fine bend within 0.2 mm, and gaps within 0.03 mm', () => {
  const from = request(irregularRod(nineFootFive, 3));
  const reading = readLadder(makeLadder(from), stations);
  reading.loads.forEach((load, k) => {
    const fine = bendOf(from, k);
    expect(load.status).toBe('converged');
    load.rings.forEach((ring, i) => {
      expect(Math.hypot(ring.xM - fine.rings[i].xM, ring.yM - fine.rings[i].yM)).toBeLessThan(2e-4);
    });
    load.spans.forEach((span, i) => {
      expect(Math.abs(span.gapM - fine.spans[i].gapM)).toBeLessThan(3e-5);
      const extra = Math.abs(span.extraBendPerM - fine.spans[i].extraBendPerM);
      expect(extra).toBeLessThan(0.004 * from.limits.extraBendPerM);
    });
    const angle = Math.max(...fine.rings.slice(1, -1).map((ring) => ring.lineAngleRad));
    expect(load.worstOf.lineAngle.value).toBeCloseTo(angle, 3);
  });
});

test('a guide moved and moved back reads as before, and a far move as if read afresh', () => {
  const ladder = makeLadder(request(irregularRod(nineFootFive, 4)));
  const keep = makeLadderState();
  const before = readLadder(ladder, stations, keep);
  const moved = stations.map((s, i) => (i === 4 ? s + 0.02 : s));
  const nudged = readLadder(ladder, moved, keep);
  expect(nudged.worst).not.toBe(before.worst);
  expect(readLadder(ladder, stations, keep).worst).toBeCloseTo(before.worst, 8);
  const far = stations.map((s, i) => (i > 0 && i < 9 ? s + 0.11 : s));
  expect(readLadder(ladder, far, keep).worst).toBeCloseTo(readLadder(ladder, far).worst, 8);
});

test('the worst place is the largest of all counted readings over their limits', () => {
  const from = request();
  const reading = readLadder(makeLadder(from), stations);
  const ratios = reading.loads.flatMap((load) => [
    ...load.rings.slice(1, 10).map((ring) => ring.lineAngleRad / from.limits.lineAngleRad),
    ...load.spans.map((span) => span.gapM / from.limits.gapM),
    ...load.spans.map((span) => span.extraBendPerM / from.limits.extraBendPerM),
  ]);
  expect(reading.worst).toBe(Math.max(...ratios));
  const { load, index, value } = reading.worstOf.lineAngle;
  expect(reading.loads[load].rings[index].lineAngleRad).toBe(value);
});

test('a reel far off the blank turns the line at the stripping guide alone, which does not count', () => {
  const from = request();
  const far = readLadder(makeLadder({ ...from, reel: { alongM: 0.2, offsetM: 0.4 } }), stations);
  expect(far.loads[0].rings[10].lineAngleRad).toBeGreaterThan(from.limits.lineAngleRad);
  expect(far.worstOf.lineAngle.index).toBeLessThan(10);
});

test('scaling stiffness, mass, weight and tension alike changes nothing', () => {
  const from = request();
  const k = 3;
  const scaled: LadderRequest = {
    ...from,
    rod: {
      ...from.rod,
      stiffness: from.rod.stiffness.map((row) => ({ ...row, EINm2: k * row.EINm2 })),
      massPerLength: from.rod.massPerLength!.map((row) => ({ ...row, kgPerM: k * row.kgPerM })),
    },
    guides: { ...from.guides, massesKg: from.guides.massesKg!.map((kg) => k * kg) },
    tipTop: { ...from.tipTop, massKg: k * from.tipTop.massKg! },
    ladder: from.ladder.map((load) => ({ ...load, tensionN: k * load.tensionN, tiedN: k * 0.4 })),
  };
  const plain = { ...from, ladder: from.ladder.map((load) => ({ ...load, tiedN: 0.4 })) };
  expect(readLadder(makeLadder(scaled), stations).worst).toBeCloseTo(
    readLadder(makeLadder(plain), stations).worst,
    9,
  );
});

test('a tied weight bends like a dead force at the tip', () => {
  const from = { ...request(), ladder: [{ tensionN: 0, pullAngleRad: down, tiedN: 1.5 }] };
  const reading = readLadder(makeLadder(from), stations);
  const masses = stations.map((fromTipM, i) => ({ fromTipM, massKg: from.guides.massesKg![i] }));
  const dead = bend({
    rod: from.rod,
    buttAngleRad: from.buttAngleRad,
    masses: [{ fromTipM: 0, massKg: from.tipTop.massKg! }, ...masses],
    load: { tip: { xN: 0, yN: -1.5 } },
  });
  expect(reading.loads[0].yM[0]).toBeCloseTo(dead.points[0].yM, 3);
  expect(reading.worstOf.extraBend.value).toBe(0);
});

test('stations that do not ascend inside the rod are a broken promise and named', () => {
  const ladder = makeLadder(request());
  const swapped = [...stations];
  [swapped[3], swapped[4]] = [swapped[4], swapped[3]];
  expect(() => readLadder(ladder, swapped)).toThrow('0.55 after 0.73');
  expect(() => readLadder(ladder, stations.slice(1))).toThrow('9 stations for 10 guides');
});
