import { Link } from 'wouter';
import { capital } from '../../words/capital.ts';
import { savedInBrief } from '../parts/sheet/save-line.tsx';
import { steps } from '../parts/sheet/steps.ts';
import { useBench } from '../read/bench.tsx';
import { useBuild } from '../read/build-context.ts';
import { useShop } from '../read/shop.tsx';

/** The block at the foot of a drawing: what this sheet is, its datum, its units, how it is kept. */
export function TitleBlock({ step }: { step: string }) {
  const build = useBuild();
  const { system, tapeStep } = useShop();
  const { choices } = useBench();
  return (
    <dl className="title-block">
      <Cell term="Build" wide>
        {build.title}
      </Cell>
      <Cell term="Sheet">{sheetName(step)}</Cell>
      <Cell term="Datum" wide>
        ring end of the tip-top’s tube
      </Cell>
      <Cell term="Units">{system === 'inch' ? 'inches' : 'millimetres'}</Cell>
      <Cell term="Marks to">{choices?.tapeStep ?? tapeStep}</Cell>
      <Cell term="Kept" wide>
        {savedInBrief(build.save)}
      </Cell>
      <div className="title-cell title-cell-wide screen-only">
        <dt>Fairbend</dt>
        <dd>
          <Link href={`/builds/${build.id}/history`}>History</Link> <Link href="/">Shelf</Link>{' '}
          <Link href="/settings">Settings</Link>
        </dd>
      </div>
    </dl>
  );
}

/** As the rail has it; a sheet that is no step is called by its address. */
export function sheetName(step: string): string {
  return steps.find(({ id }) => id === step)?.name ?? capital(step);
}

function Cell({ term, wide, children }: { term: string; wide?: boolean; children: React.ReactNode }) {
  return (
    <div className={wide ? 'title-cell title-cell-wide' : 'title-cell'}>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}
