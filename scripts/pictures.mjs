import './boot/check-node.mjs';
import { parseArgs } from 'node:util';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { say } from './boot/root.mjs';

const help = `npm run pictures -- [options]
  --blanks N   how many invented blanks (24)
  --seed N     the first one's seed (9500; painted and plain 2000, ends 31000)
  --mishaps N  how many stands per mishap (10)
  --painted N  stands painted and traced in place of all that; a minute each at 12 MP
  --plain N    the same by a second, plainer renderer
  --ends N     pictures whose butt and tip are found without taps; five seconds each at 12 MP
  --third N    stands on which third pictures are compared (seed 62000)
  --width N    pixels across a painted picture (4000)
  --help       this
Compares ways to measure a blank, pictures and tape, on simulated stands; counts which mishaps are named.`;

await orExplain(async () => {
  const { values } = parseArgs({
    options: {
      blanks: { type: 'string', default: '24' },
      seed: { type: 'string' },
      mishaps: { type: 'string', default: '10' },
      painted: { type: 'string' },
      plain: { type: 'string' },
      ends: { type: 'string' },
      third: { type: 'string' },
      width: { type: 'string', default: '4000' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) return console.log(help);
  await ensureInstalled();
  const { importReference } = await import('./boot/run-reference.mjs');
  const { compareRendered, compareWays, nameMishaps, renderedRows } = await importReference('three-pictures');
  const [blanks, mishaps] = [values.blanks, values.mishaps].map(Number);
  const seedFrom = (usual) => Number(values.seed ?? usual);
  const percent = (share, digits = 2) => `${(100 * share).toFixed(digits)} %`;
  const show = (row) => {
    const unseen = [row.median, row.nineOfTen, row.worst].map((share) => percent(share).padStart(8));
    const marks = row.marksPlusMinusM ? [`marks ±${(1000 * row.marksPlusMinusM).toFixed(0)} mm`] : [];
    const rest = [
      percent(row.held, 1),
      percent(row.stiffnessRms, 1),
      `${row.findings} with a finding`,
      ...marks,
    ];
    console.log([row.way.padEnd(34), ...unseen, ...rest].join('  '));
  };
  if (values.ends)
    return showEnds(importReference, Number(values.ends), seedFrom(31000), Number(values.width));
  if (values.third) return showThirds(importReference, Number(values.third), seedFrom(62000));
  if (values.painted || values.plain) {
    const rows = [];
    const renderer = values.painted ? 'painted' : 'plain';
    for (const row of compareRendered(
      Number(values[renderer]),
      seedFrom(2000),
      Number(values.width),
      renderer,
    )) {
      const { together, alone } = row;
      const each = together ? `${percent(together.unseen)}, alone ${percent(alone.unseen)}` : 'not traced';
      console.log(`${row.seed}  ${each}${together?.findings ? '  a finding' : ''}`);
      rows.push(row);
    }
    return renderedRows(rows, renderer).forEach(show);
  }
  const seed = seedFrom(9500);
  say(`${blanks} blanks from seed ${seed} …`);
  compareWays(blanks, seed).forEach(show);
  for (const mishap of ['none', 'camera', 'clamp', 'weight', 'swap', 'level', 'blank', 'swing']) {
    const row = nameMishaps(mishap, mishaps, seed + 500);
    console.log(`${mishap.padEnd(8)} named ${row.named} of ${row.tried}, any finding in ${row.alarms}`);
  }
});

async function showThirds(importReference, count, seed) {
  const { compareThirds } = await importReference('third-picture');
  for (const { third, unseen, bandWidth, stiffnessRms, narrowest } of compareThirds(count, seed)) {
    const shares = [unseen, bandWidth, stiffnessRms].map((share) =>
      `${(100 * share).toFixed(2)} %`.padStart(9),
    );
    console.log([third.padEnd(24), ...shares, `narrowest on ${narrowest} of ${count}`].join('  '));
  }
}

async function showEnds(importReference, count, firstSeed, widthPx) {
  const { foundEnds } = await importReference('found-ends');
  const total = { right: 0, unsure: 0, wrong: 0 };
  for (const { seed, status, missesM, right, seconds } of foundEnds(count, firstSeed, widthPx)) {
    const sort = status !== 'found' ? 'unsure' : right ? 'right' : 'wrong';
    total[sort]++;
    const off =
      missesM && `butt ${(1e3 * missesM.butt).toFixed(1)} mm, tip ${(1e3 * missesM.tip).toFixed(1)} mm off`;
    console.log([seed, sort.padEnd(6), `${seconds.toFixed(2)} s`, off ?? ''].join('  '));
  }
  console.log(
    `of ${count}: ${total.right} right to 6.35 mm, ${total.unsure} asked for taps, ${total.wrong} wrong`,
  );
}
