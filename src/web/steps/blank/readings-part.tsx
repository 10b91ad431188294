import { Caution } from '../../parts/cautions/caution.tsx';
import { LeadCaution } from '../../parts/cautions/lead-caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { textOf } from '../../read/values.ts';
import { ChooseProtocol } from './choose-protocol.tsx';
import { NextReadingPart } from './next-reading-part.tsx';
import { ProtocolPrint } from './protocol-print.tsx';
import { countReadings, type SetupRows } from './reading-rows.ts';
import { SetupCard } from './setup-card.tsx';
import { SpanCard } from './span-card.tsx';

/** The bend of the blank as read on the bench, set-up by set-up. */
export function ReadingsPart({ setups }: { setups: readonly SetupRows[] }) {
  const { read, planned } = countReadings(setups);
  return (
    <div data-path="readings" data-group="" tabIndex={-1}>
      <Part
        title="Readings"
        anchor="readings"
        aside={planned > 0 ? `${read} of ${planned} taken` : 'how the blank bends under weights'}
        tools={setups.length > 0 && <ProtocolPrint setups={setups} />}
      >
        <Caution source="common practice, no source; strain levels are a judgement from published laminate strengths">
          Eye protection on, and stand out of the plane in which the blank bends. Add weight slowly, low over
          the floor, never over feet. A blank can break below any level named here.
        </Caution>
        <LeadCaution />
        {setups.length === 0 ? (
          <ChooseProtocol firstOrder={0} />
        ) : (
          <>
            <p className="quiet">
              Level the axis at the blocks as well as you can; the tilt that is left is found from the
              readings. A drop is measured from the level line through the middle of the blank at the blocks,
              straight down to the line of the blank you chose.
            </p>
            {setups.map((rows, index) => {
              const Card = textOf(rows.setup, 'kind') === 'span' ? SpanCard : SetupCard;
              return <Card key={rows.setup.id} rows={rows} index={index} />;
            })}
            <NextReadingPart setups={setups} />
            <details className="screen-only">
              <summary>Measure in another way as well</summary>
              <ChooseProtocol firstOrder={setups.length} />
            </details>
          </>
        )}
      </Part>
    </div>
  );
}
