/**
 * Writes the example builds. Every blank here is invented: a tapered tube with made-up irregularities, its bench
 * readings simulated with the bend kernel, an unknown clamp tilt and seeded noise, and read off a tape. Run after
 * a build: `node reference/builds/make-builds.mjs [file …]`. The same seeds give the same files.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openBuild } from '../../dist/cli/open-build.js';
import { assembleBlank } from '../../dist/engine/bench/assemble.js';
import { planProtocol } from '../../dist/engine/bench/protocol.js';
import { bend } from '../../dist/engine/bend/bend.js';
import { frequency } from '../../dist/engine/frequency/frequency.js';
import { seededNormal, seededRandom } from '../../dist/engine/numerics/seeded-random.js';
import { formatInches } from '../../dist/engine/units/format-inches.js';
import { standardGravity } from '../../dist/engine/units/gravity.js';
import { namedProtocol } from '../../dist/words/protocol.js';
import { inventedBuilds } from './invented-blanks.mjs';
import { inventedLineRods } from './invented-line-rods.mjs';

/** The build record as a builder would have filled it in. */
function measure(invented) {
  const chance = seededRandom(invented.seed);
  const bench = { invented, normal: seededNormal(chance), tape: tapes[invented.units] };
  const blank = assembleBlank(invented.sections.map(asSection));
  const truth = trueBlank(invented, blank);
  const { setups, tests, readings, flagChecks } = hangWeights(bench, blank, truth);
  return {
    about: { ...invented.about, createdAt: '2026-01-01T00:00:00Z' },
    blank: invented.blank,
    sections: invented.sections.map((section, index) => sectionRow(bench, blank, truth, section, index)),
    diameters: invented.sections.flatMap((section, index) =>
      diameterRows(bench, blank, truth, section, index),
    ),
    setups,
    tests,
    readings,
    flagChecks,
    ...turnSections(invented),
    ...countSwings(invented, blank, truth),
    ...turnBar(invented, blank, truth),
    handle: { ...mapValues(invented.handle, (lengthM) => bench.tape.long(lengthM)), ...invented.handleMore },
    ...lineOf(bench, blank, truth),
    layout: invented.layout,
    ladder: (invented.ladderG ?? []).map((grams, index) => ({
      id: `load${index + 1}`,
      order: index + 1,
      load: weight(grams / 1000),
    })),
  };
}

/** The line, and of a fixed spool the spindle sighted at two places over the blank. */
function lineOf({ invented, tape }, blank, truth) {
  const { line, reel, handle } = invented;
  if (!line) return {};
  if (!reel) return { line };
  const sighted = reel.sightedAtM.map((fromButtM) => {
    const fromTipM = blank.lengthM - fromButtM;
    const radiusM = truth.rows.findLast((row) => row.fromTipM <= fromTipM + 1e-12).outsideM / 2;
    const offM = handle.reelOffset - (fromButtM - handle.reelFromButt) * Math.tan(reel.tiltRad);
    return { at: tape.long(fromButtM), height: tape.fine(offM - radiusM) };
  });
  const [near, far] = sighted;
  return {
    line: {
      ...line,
      nearAt: near.at,
      nearHeight: near.height,
      farAt: far.at,
      farHeight: far.height,
    },
  };
}

/** Station tables of the assembled blank: doubled in the ferrules, with the invented irregularities. */
function trueBlank(invented, blank) {
  const step = 0.005;
  const stations = Array.from({ length: Math.ceil(blank.lengthM / step) + 1 }, (_, k) =>
    Math.min(blank.lengthM, k * step),
  );
  const inFerrule = (s) => blank.joints.some(({ doubled }) => s >= doubled.fromTipM && s <= doubled.toTipM);
  const rows = stations.map((fromTipM) => {
    const { EINm2, kgPerM, outsideM } = tube(invented, fromTipM, blank.lengthM);
    const doubled = inFerrule(fromTipM);
    return {
      fromTipM,
      outsideM,
      EINm2: EINm2 * invented.irregular(fromTipM, blank.lengthM) * (doubled ? 1.5 : 1),
      kgPerM: kgPerM * (doubled ? 1.9 : 1),
      perM: invented.sweepPerM(fromTipM),
    };
  });
  return {
    rows,
    rod: {
      stiffness: rows.map(({ fromTipM, EINm2 }) => ({ fromTipM, EINm2 })),
      massPerLength: rows.map(({ fromTipM, kgPerM }) => ({ fromTipM, kgPerM })),
      restCurvature: rows.map(({ fromTipM, perM }) => ({ fromTipM, perM })),
    },
  };
}

function tube({ tip, butt, modulusPa, densityKgPerM3 }, fromTipM, lengthM) {
  const share = fromTipM / lengthM;
  const outsideM = tip.outsideM + share * (butt.outsideM - tip.outsideM);
  const insideM = outsideM - 2 * (tip.wallM + share * (butt.wallM - tip.wallM));
  return {
    outsideM,
    EINm2: (modulusPa * Math.PI * (outsideM ** 4 - insideM ** 4)) / 64,
    kgPerM: (densityKgPerM3 * Math.PI * (outsideM ** 2 - insideM ** 2)) / 4,
  };
}

/** The twenty-minute protocol of this blank, carried out; more flags where the build says so. */
function hangWeights(bench, blank, truth) {
  const { invented } = bench;
  const plan = namedProtocol(
    planProtocol({
      kind: 'twenty-minute',
      blankLengthM: blank.lengthM,
      tipDropM: ({ clampFromTipM, massKg }) => -bendAt(truth, clampFromTipM, 0, massKg).points[0].yM,
    }),
  );
  const setups = [];
  const tests = [];
  const readings = [];
  const flagChecks = [];
  const checkNormal = seededNormal(seededRandom(invented.seed + 11));
  plan.setups.forEach((setup, s) => {
    const tiltRad = ((0.7 * bench.normal()) / 180) * Math.PI;
    const id = `s${s + 1}`;
    setups.push({
      id,
      order: s + 1,
      name: setup.name,
      kind: 'clamp',
      nominalAngle: { si: 0, text: '0°' },
      clampFromTip: bench.tape.long(setup.clampFromTipM),
      clampHeight: bench.tape.long(1.5),
      edge: invented.edge,
      sigma: bench.tape.fine(0.002),
    });
    setup.loads.forEach((load, t) => {
      const testId = `${id}t${t + 1}`;
      tests.push({
        id: testId,
        order: t + 1,
        setup: id,
        hung: weight(load.massKg),
        hungFromTip: bench.tape.long(0),
      });
      const bent = bendAt(truth, setups[s].clampFromTip.si, tiltRad, load.massKg);
      const flags =
        load.readFromTipM.length > 1
          ? [...load.readFromTipM, ...(invented.moreFlagsM ?? [])]
          : load.readFromTipM;
      flags
        .sort((a, b) => a - b)
        .forEach((flag, r) => {
          const fromTip = bench.tape.long(flag);
          const noiseM = (flag === 0 ? 0.002 : 0.0015) * bench.normal();
          const dropM = edgeDrop(bent, truth, fromTip.si, invented.edge) + noiseM;
          readings.push({
            id: `${testId}r${r + 1}`,
            order: r + 1,
            test: testId,
            fromTip,
            drop: bench.tape.fine(dropM),
          });
        });
      if (load.readAtClamp) {
        const atClampM = edgeDrop(bent, truth, setups[s].clampFromTip.si, invented.edge);
        readings.push({
          id: `${testId}c`,
          order: flags.length + 1,
          test: testId,
          atClamp: true,
          drop: bench.tape.fine(atClampM + 0.0015 * checkNormal()),
        });
      }
    });
    if (!setup.loads.some((load) => load.readAtClamp)) return;
    const stations = [
      ...new Set(readings.filter((row) => row.test.startsWith(`${id}t`)).map((row) => row.fromTip?.si)),
    ];
    stations
      .filter((flagM) => flagM > 0)
      .forEach((flagM, k) => {
        const fromTip = readings.find((row) => row.fromTip?.si === flagM).fromTip;
        const fromClamp = bench.tape.long(setups[s].clampFromTip.si - flagM + 0.002 * checkNormal());
        flagChecks.push({ id: `${id}f${k + 1}`, order: k + 1, setup: id, fromTip, fromClamp });
      });
  });
  return { setups, tests, readings, flagChecks };
}

function bendAt(truth, clampFromTipM, tiltRad, massKg) {
  const load = { tip: { xN: 0, yN: -massKg * standardGravity } };
  return bend({ rod: { lengthM: clampFromTipM, ...truth.rod }, buttAngleRad: tiltRad, load });
}

/** Drop of the edge that was read below the level line through the axis at the clamp. */
function edgeDrop(bent, truth, fromTipM, edge) {
  const { points } = bent;
  const next = Math.max(
    1,
    points.findIndex((point) => point.fromTipM >= fromTipM - 1e-12),
  );
  const [a, b] = [points[next - 1], points[next]];
  const share = (fromTipM - a.fromTipM) / (b.fromTipM - a.fromTipM);
  const between = (key) => a[key] + share * (b[key] - a[key]);
  const radiusM = truth.rows.findLast((row) => row.fromTipM <= fromTipM + 1e-12).outsideM / 2;
  const offsetM = { axis: 0, upper: radiusM, lower: -radiusM }[edge] * Math.cos(between('angleRad'));
  return -(between('yM') + offsetM);
}

function sectionRow({ normal, tape, invented: { lineSides = {} } }, blank, truth, section, index) {
  const { ends } = blank.sections[index];
  const own = truth.rows.filter(({ fromTipM }) => fromTipM >= ends.fromTipM && fromTipM <= ends.toTipM);
  const alone = own.map((row) => ({
    at: row.fromTipM - ends.fromTipM,
    kgPerM: row.kgPerM / (doubledAt(blank, row.fromTipM) ? 1.9 : 1),
  }));
  const sum = (of) => alone.reduce((total, row) => total + of(row), 0);
  const massKg = (sum((row) => row.kgPerM) / alone.length) * section.lengthM;
  const balanceM = sum((row) => row.at * row.kgPerM) / sum((row) => row.kgPerM);
  return {
    id: section.id,
    order: index + 1,
    name: section.name,
    length: tape.long(section.lengthM),
    mass: weight(Math.round((massKg + 0.00005 * normal()) * 1e4) / 1e4),
    balanceFromOwnTip: tape.long(balanceM + 0.002 * normal()),
    ...(section.joint ? jointFields(section.joint, tape) : {}),
    ...lineSideFields(lineSides[section.id]),
  };
}

/** Each section turned on two supports in eight steps, its sag read on a dial gauge, bare and under one weight. */
function turnSections({ turnings = [], seed }) {
  const normal = seededNormal(seededRandom(seed + 7));
  const gauge = (lengthM) => {
    const mm = Math.round((lengthM + 0.00004 * normal()) * 1e5) / 100;
    return { si: mm / 1000, text: `${mm.toFixed(2)} mm` };
  };
  const turns = turnings.map(({ section, sagM, bowM, bowDeg, softShare, softDeg }, order) =>
    Array.from({ length: 8 }, (_, step) => {
      const turn = (step * Math.PI) / 4;
      const soft = 1 + (softShare / 2) * Math.cos(2 * (turn - (softDeg * Math.PI) / 180));
      const bow = bowM * Math.cos(turn - (bowDeg * Math.PI) / 180);
      return {
        id: `${section}turn${step + 1}`,
        order: 100 * order + step + 1,
        turning: `${section}turned`,
        turn: { si: turn, text: `${45 * step}°` },
        // the section's own weight on the supports
        dropA: gauge(0.04 * sagM * soft + bow),
        dropB: gauge(1.04 * sagM * soft + bow),
      };
    }),
  );
  if (turnings.length === 0) return {};
  return {
    turnings: turnings.map(({ section, loadG }, index) => ({
      id: `${section}turned`,
      order: index + 1,
      section,
      held: 'span',
      loadB: weight(loadG / 1000),
      sigma: { si: 0.00005, text: '0.05 mm' },
    })),
    turnReadings: turns.flat(),
  };
}

/** Swings of the bare blank, held at the grip, timed by hand. */
function countSwings({ swingsCounted, handle, seed }, blank, truth) {
  if (!swingsCounted) return {};
  const lengthM = blank.lengthM - handle.gripFront;
  const rows = truth.rows.filter(({ fromTipM }) => fromTipM <= lengthM);
  const rod = {
    lengthM,
    stiffness: rows.map(({ fromTipM, EINm2 }) => ({ fromTipM, EINm2 })),
    massPerLength: rows.map(({ fromTipM, kgPerM }) => ({ fromTipM, kgPerM })),
  };
  const { hz } = frequency({ rod, modes: 1 });
  const normal = seededNormal(seededRandom(seed + 11));
  const seconds = Math.round((swingsCounted / hz[0] + 0.15 * normal()) * 10) / 10;
  return { swings: [{ id: 'count1', order: 1, rod: 'bare', counted: swingsCounted, seconds }] };
}

/** A bar across the blank, a weight at its end, left and right; the bar itself a degree off level. */
function turnBar({ twist, handle, seed, units }, blank, truth) {
  if (!twist) return {};
  const { share, barFromTipM, armM, hungG } = twist;
  const clampM = blank.lengthM - handle.gripFront;
  const softness = truth.rows.slice(1).reduce((sum, row, i) => {
    const inside = row.fromTipM > barFromTipM && row.fromTipM <= clampM;
    return inside ? sum + (row.fromTipM - truth.rows[i].fromTipM) / (share * row.EINm2) : sum;
  }, 0);
  const normal = seededNormal(seededRandom(seed + 13));
  const degrees = (rad) => {
    const half = Math.round((rad * 360) / Math.PI + normal()) / 2;
    return { si: (half * Math.PI) / 180, text: `${half}°` };
  };
  return {
    twistTest: { barFromTip: tapes[units].long(barFromTipM) },
    twists: hungG.map((grams, k) => {
      let turn = 0;
      for (let i = 0; i < 60; i++) {
        turn = 0.5 * (turn + (grams / 1000) * standardGravity * armM * Math.cos(turn) * softness);
      }
      return {
        id: `twist${k + 1}`,
        order: k + 1,
        hung: weight(grams / 1000),
        arm: tapes[units].long(armM),
        left: degrees(turn + Math.PI / 180),
        right: degrees(turn - Math.PI / 180),
      };
    }),
  };
}

function lineSideFields(side) {
  if (!side) return {};
  return {
    lineSideAngle: { si: (side.angle * Math.PI) / 180, text: `${side.angle}°` },
    lineSideReference: 'the pencil line',
    lineSideMethod: side.method,
  };
}

function doubledAt(blank, fromTipM) {
  return blank.joints.some(({ doubled }) => fromTipM >= doubled.fromTipM && fromTipM <= doubled.toTipM);
}

function jointFields({ kind, overlapM, gapM, plugM }, tape) {
  if (kind === 'spigot') return { joint: kind, spigotGap: tape.fine(gapM), spigotLength: tape.long(plugM) };
  return { joint: kind, overlap: tape.fine(overlapM) };
}

/** Three a section, clear of the hidden ends, by calliper. */
function diameterRows({ normal, tape }, blank, truth, section, index) {
  const { ends, visible } = blank.sections[index];
  const places = [visible.fromTipM, (visible.fromTipM + visible.toTipM) / 2, visible.toTipM];
  return places.map((fromTipM, k) => {
    const row = truth.rows.reduce((a, b) =>
      Math.abs(b.fromTipM - fromTipM) < Math.abs(a.fromTipM - fromTipM) ? b : a,
    );
    const outsideM = Math.round((row.outsideM + 0.00003 * normal()) * 1e5) / 1e5;
    return {
      id: `${section.id}d${k + 1}`,
      section: section.id,
      fromOwnTip: tape.down(fromTipM - ends.fromTipM),
      outside: { si: outsideM, text: `${(outsideM * 1000).toFixed(2)} mm` },
    };
  });
}

function asSection({ id, name, lengthM, joint }) {
  const none = { overlapM: 0, gapM: 0, plugM: 0 };
  return { id, name, lengthM, diameters: [], joint: joint && { ...none, ...joint } };
}

/** What a builder writes: to the tape's tick, as text that reads back to the value. */
const tapes = {
  inch: {
    long: (lengthM) => inches(lengthM, 16),
    fine: (lengthM) => inches(lengthM, 16),
    down: (lengthM) => inches(Math.floor((lengthM / 0.0254) * 16 + 1e-6) * (0.0254 / 16), 16),
  },
  mm: {
    long: (lengthM) => millimetres(lengthM),
    fine: (lengthM) => millimetres(lengthM),
    down: (lengthM) => millimetres(Math.floor(lengthM * 1000 + 1e-6) / 1000),
  },
};

function inches(lengthM, denominator) {
  const { text, remainderM } = formatInches(lengthM, { denominator });
  return { si: Number((lengthM - remainderM).toPrecision(12)), text: text.replace('⁄', '/') };
}
function millimetres(lengthM) {
  const mm = Math.round(lengthM * 1000);
  return { si: mm / 1000, text: `${mm} mm` };
}
function weight(massKg) {
  return { si: massKg, text: `${Number((massKg * 1000).toPrecision(6))} g` };
}
function mapValues(fields, change) {
  return Object.fromEntries(Object.entries(fields).map(([key, value]) => [key, change(value)]));
}

/** A build whose layout is chosen: the usual guides at its marks, from the tip, in inches and fractions or in mm. */
function chosenGuides(path, { chosen, units }) {
  const { guides } = openBuild(path).choices;
  return chosen.map((mark, index) => ({
    id: `g${index + 1}`,
    order: index + 1,
    kind: guides[index].kind,
    size: guides[index].size,
    station: units === 'mm' ? millimetres(mark / 1000) : inches(inchesOf(mark) * 0.0254, 8),
  }));
}

/** `3 1/4`. */
function inchesOf(text) {
  return text.split(' ').reduce((sum, part) => {
    const [above, below = 1] = part.split('/');
    return sum + above / below;
  }, 0);
}

const wanted = process.argv.slice(2);
for (const invented of [...inventedBuilds, ...inventedLineRods]) {
  if (wanted.length > 0 && !wanted.includes(invented.file)) continue;
  const path = fileURLToPath(new URL(`../../examples/${invented.file}`, import.meta.url));
  const build = measure(invented);
  const write = () =>
    writeFileSync(path, `${JSON.stringify({ format: 'fairbend build', version: 1, build }, null, 1)}\n`);
  write();
  if (invented.chosen) {
    build.guides = chosenGuides(path, invented);
    write();
  }
}
