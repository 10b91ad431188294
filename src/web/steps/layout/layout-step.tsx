import { Link } from 'wouter';
import { thirdLoadInWords } from '../../../words/line-load.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSheetModel } from '../../read/use-rod-sheet.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { LayoutSheet } from './layout-sheet.tsx';
import { useLiveSheet } from './use-live-sheet.ts';

/** The Layout step: how any layout bends on this blank, and one for it within the builder's limits. */
export function LayoutStep() {
  const sentence = useSentence();
  const { id } = useBuild();
  const { bench, findings, fit, stiffness } = useBench();
  const sheet = useLiveSheet();
  const { solved, working, failure } = stiffness;
  const model = useSheetModel();
  const hung = fit !== undefined && fit.request.setups.length > 0;
  const odd = fit ? stiffness.findings[0] : findings.find(({ severity }) => severity === 'stop');
  const trouble = (failure ?? (odd && sentence(odd)))?.replace(/\.$/, '');
  const toBlank = <Link href={`/builds/${id}/blank`}>Blank</Link>;
  if (fit && working && !solved) return <p className="aside">Working out how stiff this blank is …</p>;
  if (!bench || !model) {
    return (
      <NextLine>
        Measure the blank first: lengths, overlaps, diameters and one weight are enough for a first layout. Go
        back to {toBlank}.
      </NextLine>
    );
  }
  return (
    <BuildFields>
      <NextLine
        goOn={solved && model.marksAre === 'own' ? { href: `/builds/${id}/marks`, name: 'Marks' } : undefined}
      >
        {solved && nextWords(model.marksAre === 'own')}
        {!solved && !fit && (
          <>
            Something on {toBlank} must be put right first: {trouble}. Meanwhile the stiffness is guessed from
            the diameters and may be off by half.
          </>
        )}
        {!solved && hung && (
          <>
            The readings on {toBlank} give no stiffness{trouble ? `: ${trouble}` : ''}. Meanwhile it is
            guessed from the diameters and may be off by half.
          </>
        )}
        {!solved && fit && !hung && (
          <>
            Nothing was hung on this blank yet: its stiffness is guessed from its diameters and may be off by
            half. One weight on {toBlank} makes this a layout for your blank.
          </>
        )}
      </NextLine>
      {model.loads.kg.length === 0 && (
        <p className="attention" role="alert">
          Choose your own loads below. {thirdLoadInWords('no weight', 'at the grip')}.
        </p>
      )}
      {sheet && <LayoutSheet sheet={sheet} model={model} ferrulesBound={bench.ferrulesBound} />}
    </BuildFields>
  );
}

function nextWords(marked: boolean): string {
  return marked
    ? 'Happy with the marks? Go on. Else do what the headline says, or drag a guide.'
    : 'See how the start does on this blank. Then do what the headline says.';
}
