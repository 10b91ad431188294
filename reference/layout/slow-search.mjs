/**
 * A slow search for the least worst ratio, sharing no method with the engine's: differential evolution (Storn &
 * Price 1997, J. Global Optimization 11:341-359; current-to-best/1/bin) over logarithms of intervals, or of
 * their increments where intervals must grow, so that every trial keeps that rule; a guide in a kept-free zone
 * costs its depth. Only the reading of a layout (readLadder) is the engine's; score_layouts.py checks that one.
 *
 *   npx tsc -b src/engine && node reference/layout/slow-search.mjs reference/layout/cases.json [GENERATIONS]
 *
 * Writes the best layout found, its worst ratio and the number of bends into the file.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { makeLadder, readLadder } from '../../dist/engine/layout/ladder.js';
import { makeLadderState } from '../../dist/engine/layout/ladder-state.js';
import { seededRandom } from '../../dist/engine/numerics/seeded-random.js';

const [path, generations = '1500', only] = process.argv.slice(2);
const file = JSON.parse(readFileSync(path, 'utf8'));
for (const found of file.cases) {
  if (only && found.name !== only) continue;
  const { fromTipM, readings } = search(found.request, Number(generations));
  const { worst } = readLadder(makeLadder(found.request, { resolution: 600 }), fromTipM);
  if (found.worst <= worst) {
    console.log(found.name, 'keeps', found.worst, 'against', worst);
    continue;
  }
  Object.assign(found, {
    fromTipM: fromTipM.map((s) => Number(s.toFixed(6))),
    worst: Number(worst.toFixed(6)),
    readings,
  });
  console.log(found.name, worst, readings);
  writeFileSync(path, `${JSON.stringify(file)}\n`);
}

function search(request, generations) {
  const random = seededRandom(11);
  const ladder = makeLadder(request);
  const genesEach = request.guides.count - 1;
  const growing = (request.intervals ?? 'growing') === 'growing';
  const [low, high] = growing ? [-8, 2.5] : [-2.5, 2.5];
  const size = 5 * genesEach;
  const keep = makeLadderState();
  let readings = 0;
  const judge = (genes) => {
    const fromTipM = stationsOf(request, genes, growing);
    readings++;
    const { status, worst } = readLadder(ladder, fromTipM, keep);
    return {
      genes,
      fromTipM,
      price: (status === 'not-converged' ? 1e3 : worst) + 30 * zoneDepth(request, fromTipM),
    };
  };
  let crowd = Array.from({ length: size }, () =>
    judge(Array.from({ length: genesEach }, () => low + (high - low) * random())),
  );
  for (let generation = 0; generation < generations; generation++) {
    const best = crowd.reduce((least, one) => (one.price < least.price ? one : least));
    crowd = crowd.map((one) => {
      const [a, b] = [crowd[Math.floor(random() * size)], crowd[Math.floor(random() * size)]];
      const factor = 0.3 + 0.6 * random();
      const pull = 0.7 * random();
      const crossing = 0.3 + 0.7 * random();
      const genes = one.genes.map((gene, i) =>
        random() < crossing
          ? Math.min(
              high,
              Math.max(low, gene + pull * (best.genes[i] - gene) + factor * (a.genes[i] - b.genes[i])),
            )
          : gene,
      );
      const trial = judge(genes);
      return trial.price < one.price ? trial : one;
    });
  }
  const clear = crowd.filter(({ fromTipM }) => zoneDepth(request, fromTipM) < 1e-6);
  const best = (clear.length > 0 ? clear : crowd).reduce((least, one) =>
    one.price < least.price ? one : least,
  );
  return { fromTipM: best.fromTipM, readings };
}

function stationsOf(request, genes, growing) {
  const { firstFromTipM: first, strippingFromTipM: last } = request;
  const least = 0.05;
  let weights = genes.map(Math.exp);
  if (growing) {
    let sum = 0;
    weights = weights.map((weight) => {
      sum += weight;
      return sum;
    });
  }
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const spare = last - first - least * genes.length;
  const stations = [first];
  for (const weight of weights)
    stations.push(stations[stations.length - 1] + least + (spare * weight) / total);
  stations[genes.length] = last;
  return stations;
}

function zoneDepth(request, fromTipM) {
  let depth = 0;
  for (const zone of request.keepOut ?? []) {
    for (let i = 1; i + 1 < fromTipM.length; i++) {
      const half = (request.footM?.[i] ?? 0) / 2;
      depth += Math.max(0, Math.min(fromTipM[i] - zone.fromTipM + half, zone.toTipM + half - fromTipM[i]));
    }
  }
  return depth;
}
