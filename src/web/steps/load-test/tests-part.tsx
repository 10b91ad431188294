import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { rowChanges } from '../../../record/operation.ts';
import { lastAccepted, readLoadTests } from '../../../record/read-load-tests.ts';
import { wallMarksSheet } from '../../../sheets/wall-marks-sheet.ts';
import { HowToTakeIt } from '../../parts/photo/how-to-take-it.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { TestCard } from './test-card.tsx';
import '../../parts/photo/photo.css';

/** The load tests of this build: what hung, the pictures, what was read from them. */
export function TestsPart({ model }: { model: SheetModel | undefined }) {
  const { document, write, newRowId } = useBuild();
  const tests = useMemo(() => readLoadTests(document), [document]);
  const accepted = lastAccepted(tests);
  const begin = () =>
    write(
      'makeTest',
      rowChanges('loadTests', newRowId(), {
        order: tests.length + 1,
        madeAt: new Date().toISOString(),
        rod: 'taped',
      }),
    );
  return (
    <Part
      title="The test, photographed"
      aside="one picture, and the bend is measured"
      tools={
        <Button className="button" onPress={begin}>
          New load test
        </Button>
      }
    >
      {tests.length === 0 && (
        <p className="quiet">
          Hang the weight, take one picture with marks round the rod, tap marks, butt and tip: the curve is
          read from it.
        </p>
      )}
      <HowToTakeIt>
        <div className="photo-bar screen-only">
          <PrintButton sheet="wall-marks" draw={(on) => [wallMarksSheet(on)]}>
            Reference marks as PDF
          </PrintButton>
          <span className="quiet small">
            eight numbered marks on four pages, printed at actual size; found in the picture by themselves
          </span>
        </div>
      </HowToTakeIt>
      {tests.toReversed().map((test, i) => (
        <TestCard
          key={test.id}
          test={test}
          model={model}
          number={tests.length - i}
          before={tests[tests.length - 2 - i]}
          isAccepted={test.id === accepted?.id}
        />
      ))}
    </Part>
  );
}
