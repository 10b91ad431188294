import { test } from 'vitest';
import { fullPlan, readBench } from '../../../test/support/simulated-bench.ts';
import { photographTaped, tapedRod } from '../../../test/support/taped-rod.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import { layout } from '../layout/layout.ts';
import { judgeRod } from './judge-rod.ts';

const dg = (r: number) => ((180 / Math.PI) * r).toFixed(1);
test('x', () => {
  for (let seed = 1; seed <= Number(process.env.N ?? 4); seed++) {
    const rod = tapedRod(seed + 40);
    let t0 = Date.now();
    const best = layout(rod.layout);
    if (best.status === 'refused') {
      console.log('refused', best.findings);
      continue;
    }
    const bench = readBench(rod.blank, [{ ...fullPlan(0.002)[0]!, hungKg: [0, 0.05, 0.12] }], seed + 900, 0);
    const tl = Date.now() - t0;
    for (const what of ['clean', 'moved', 'soft']) {
      const R = what === 'soft' ? tapedRod(seed + 40, { soft: 0.6 }) : rod;
      const stands = [...best.fromTipM];
      const k = 3;
      if (what === 'moved') stands[k] += 0.03 + 0.02 * (seed % 2);
      const photo = photographTaped(R, stands, rod.layout.ladder[2]!, seed * 10);
      t0 = Date.now();
      const j = judgeRod({ fit: bench.request, layout: rod.layout, marksFromTipM: best.fromTipM, photo });
      const dt = Date.now() - t0;
      if (j.status !== 'judged') {
        console.log(seed, what, j);
        continue;
      }
      const lad = makeLadder({ ...rod.layout, rod: R.layout.rod });
      const tn = readLadder(lad, stands).worst;
      const after = [...stands];
      for (const m of j.moves!.moves) after[m.guide] = m.toM;
      const ta = readLadder(lad, after).worst;
      console.log(
        seed,
        what,
        'layout',
        tl,
        'judge',
        dt,
        'true worst',
        tn.toFixed(3),
        '->',
        ta.toFixed(3),
        'said',
        j.moves!.now.ratio.toFixed(3),
        j.moves!.after.ratio.toFixed(3),
        'gain',
        j.moves!.gain.toFixed(3),
        '±',
        j.moves!.gainPlusMinus.toFixed(3),
        JSON.stringify(j.moves!.moves),
        j.findings.map((f) => f.message).join(),
      );
      if (process.env.V && seed <= 2)
        console.log(
          j.rings
            .map(
              (r, i) =>
                `${i}: ${(1000 * r.markFromTipM).toFixed(0)} seen ${(1000 * r.fromTipM.value).toFixed(1)}±${(1000 * r.fromTipM.plusMinus).toFixed(1)} stands ${(1000 * (stands[i - 1] ?? 0)).toFixed(0)} angle ${r.lineAngle ? `${dg(r.lineAngle.seen.value)}±${dg(r.lineAngle.seen.plusMinus)} pred ${dg(r.lineAngle.predicted!)} upd ${dg(r.lineAngle.updated)}` : '-'} gap ${r.gap ? `${(1000 * r.gap.seen.value).toFixed(1)}±${(1000 * r.gap.seen.plusMinus).toFixed(1)} pred ${(1000 * r.gap.predicted!).toFixed(1)} upd ${(1000 * r.gap.updated).toFixed(1)}` : '-'}`,
            )
            .join('\n'),
        );
    }
  }
});
