import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { placeOnCurve } from '../../../engine/load-test/curve-beside.ts';
import { pencilM } from '../../../engine/load-test/judge-proof.ts';
import { formatDegrees } from '../../../engine/units/format-quantity.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import { testReportOf, testReportText } from '../../../record/test-report.ts';
import { closeUpWords } from '../../../words/close-up.ts';
import { testReportWords } from '../../../words/test-report.ts';
import { Figure } from '../../fields/figure.tsx';
import { type SeenCurve, seenCurve } from '../../parts/photo/seen-curve.ts';
import { useFineLength } from '../../parts/photo/use-fine-length.ts';
import { marked, Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useFittingBlanks } from '../../read/use-fitting-blanks.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { type Beside, besidePrediction } from './beside.ts';
import { BesideDrawing } from './beside-drawing.tsx';
import { reportOf } from './report-of.ts';

interface TestResultProps {
  test: LoadTest;
  before: LoadTest | undefined;
  model: SheetModel | undefined;
}

/** What a test showed: beside the prediction, beside the test before it, and whether it is accepted. */
export function TestResult({ test, before, model }: TestResultProps) {
  const { stiffness } = useBench();
  const { blanks: blanksThatFit } = useFittingBlanks();
  const show = useFineLength();
  const sentence = useSentence();
  const { writer } = useShop();
  const seen = useMemo(() => seenCurve(test), [test]);
  const earlier = useMemo(() => seenCurve(before), [before]);
  const answer = useMemo(
    () =>
      seen && model ? besidePrediction(test, seen, model, { stiffness, blanksThatFit }, sentence) : undefined,
    [seen, model, test, stiffness, blanksThatFit, sentence],
  );
  if (!seen) return <WholeMissing test={test} />;
  const beside = answer?.status === 'beside' ? answer.beside : undefined;
  return (
    <>
      {seen.closeUps.map((use) => (
        <p key={use.photo.id} className={use.joined ? 'quiet small' : 'attention'} role="status">
          <Figure text={closeUpWords(use, show, writer)} />
        </p>
      ))}
      {answer?.status === 'not yet' && <p className="attention">{answer.words}</p>}
      {beside && <BesideDrawing seen={seen} beside={beside} before={earlier} />}
      {beside && (
        <BesideTable
          beside={beside}
          before={earlier}
          show={show}
          guess={guessWords(test, stiffness.solved !== undefined)}
          madeAt={test.madeAt}
        />
      )}
      <Acceptance test={test} seen={seen} beside={beside} show={show} />
    </>
  );
}

/** A close-up alone has no hold: it waits for the whole rod. */
function WholeMissing({ test }: { test: LoadTest }) {
  const closeUp = test.photos.some(({ part, trace }) => part === 'close-up' && trace);
  if (!closeUp) return null;
  return (
    <p className="attention" role="status">
      A close-up alone does not show how the rod is held: add a picture of the whole rod, with the same marks,
      and read its curve too.
    </p>
  );
}

interface BesideTableProps {
  beside: Beside;
  before: SeenCurve | undefined;
  show(lengthM: number): string;
  /** What the prediction is worth, where that is little. */
  guess: string;
  /** Of the test. */
  madeAt: string;
}

function BesideTable({ beside, before, show, guess, madeAt }: BesideTableProps) {
  const { flags, buttAngleRad, doubts } = beside;
  const sentence = useSentence();
  return (
    <>
      {doubts.map((doubt) => (
        <p key={doubt.code} className="attention">
          <Figure text={sentence(doubt)} />
        </p>
      ))}
      <Table
        label={`The curve beside the prediction, test of ${madeAt.slice(0, 16).replace('T', ' ')}`}
        caption={
          <>
            Seen beside predicted{' '}
            <span className="quiet">
              from the front of the grip, butt {formatDegrees(buttAngleRad)} above level
              {guess}
            </span>
          </>
        }
        heads={[
          'Place, from tip',
          'Seen out',
          'Seen up',
          'Off the prediction',
          'Allowed ±',
          ...(before ? ['Since the test before'] : []),
        ]}
        rows={flags.map(({ fromTipM, seen, offOutM, offUpM, apartM, predicted }, i) => {
          const reachM = predicted.reach && Math.hypot(predicted.reach.outM, predicted.reach.upM, pencilM);
          return [
            i === 0 ? 'tip' : show(fromTipM),
            show(seen.outM),
            show(seen.upM),
            marked(reachM !== undefined && apartM > reachM, offWords(offOutM, offUpM, show)),
            reachM === undefined ? 'not known' : show(reachM),
            ...(before ? [sinceWords(seen, placeOnCurve(before.curve, fromTipM), show)] : []),
          ];
        })}
      />
    </>
  );
}

/** A bare blank's curve is among the readings that it is compared with. */
function guessWords({ rod, leftOut, hungKg }: LoadTest, solved: boolean): string {
  if (!solved) return ', the prediction a guess from diameters';
  return rod === 'bare' && !leftOut && hungKg ? ', this curve itself among what it is predicted from' : '';
}

/** "1 1/4 in farther out, 3/8 in lower"; what rounds to nothing is left out. */
function offWords(outM: number, upM: number, show: (lengthM: number) => string): string {
  const part = (lengthM: number, more: string, less: string) =>
    Math.abs(lengthM) < 0.0008 ? [] : [`${show(Math.abs(lengthM))} ${lengthM > 0 ? more : less}`];
  const words = [...part(outM, 'farther out', 'nearer in'), ...part(upM, 'higher', 'lower')];
  return words.join(', ') || 'nothing to see';
}

function sinceWords(
  now: { outM: number; upM: number },
  then: { outM: number; upM: number },
  show: (lengthM: number) => string,
): string {
  return offWords(now.outM - then.outM, now.upM - then.upM, show);
}

interface AcceptanceProps {
  test: LoadTest;
  seen: SeenCurve;
  beside: Beside | undefined;
  show(lengthM: number): string;
}

/** The builder's word that the rod stays as this test shows it; what was found that day is kept with it. */
function Acceptance({ test, seen, beside, show }: AcceptanceProps) {
  const { writer } = useShop();
  const { write } = useBuild();
  const accept = () =>
    write(
      'acceptTest',
      rowChanges('loadTests', test.id, {
        accepted: true,
        acceptedAt: new Date().toISOString(),
        report: testReportText(reportOf(test, seen, beside)),
      }),
    );
  if (!test.accepted) {
    return (
      <div className="photo-bar screen-only">
        <Button className="button button-main" onPress={accept}>
          Accept: the rod stays so
        </Button>
        <span className="quiet small">keeps what was found, with the picture, in the build’s record</span>
      </div>
    );
  }
  return (
    <>
      <details className="photo-fold" open>
        <summary>Accepted {test.acceptedAt?.slice(0, 10)}: what was found that day</summary>
        <p className="test-report">
          <Figure text={testReportWords(testReportOf(test.report), show, writer)} />
        </p>
      </details>
      <div className="photo-bar screen-only">
        <Button
          className="button"
          onPress={() =>
            write(
              'takeAcceptanceBack',
              rowChanges('loadTests', test.id, { accepted: null, acceptedAt: null, report: null }),
            )
          }
        >
          Take the acceptance back
        </Button>
      </div>
    </>
  );
}
