import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import type { Row } from '../../../record/document.ts';
import { instantWords } from '../../../words/intl.ts';
import { lineSideInWords } from '../../../words/line-side.ts';
import { Field } from '../../fields/field.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { flagOf, textOf } from '../../read/values.ts';

const checks: { field: string; tipTop?: boolean }[] = [
  { field: 'dryFitted' },
  { field: 'seatOnLine' },
  { field: 'guidesOnLine', tipTop: true },
  { field: 'tipTopOnLine', tipTop: true },
];

/** What is still to be looked at. */
export function openBeforeGlue(handle: Row): string[] {
  return checks.map(({ field }) => field).filter((field) => !flagOf(handle, field));
}

/** Reel and working guides then stand on two lines. */
const inSpiral: Readonly<Record<string, string>> = {
  seatOnLine: 'The reel foot stands on the top line',
  guidesOnLine: 'Top and under lines run true over every section',
  tipTopOnLine: 'The tip-top stands on the under line',
};

function GlueCautions() {
  return (
    <div className="cautions">
      <Caution
        about="glue"
        brief="Gloves on for epoxy, mask on for carbon dust."
        source="HSE RR079 and construction dermatitis pages; NIOSHTIC-2 20031204 and 20042590; OSHA composites page"
      >
        Epoxy can sensitise for life: no skin contact, thick nitrile gloves renewed often, wash with soap, not
        solvent, and air the room. Sanding and reaming dust of carbon or glass irritates skin and airways:
        mask, glasses, vacuum; it also conducts. The product’s data sheet and local rules come first.
      </Caution>
      <Caution
        about="lathe"
        brief="No gloves or sleeves at the lathe. Cut away from the hand."
        source="Ontario Ministry of Labour, lathe entanglement alert; common practice for blades and heat"
      >
        At the lathe no gloves, sleeves, loose hair or sandpaper strips round the hand. Cut away from the
        hand. Melt tip-top glue by warming the tube, never the blank, and never near solvents.
      </Caution>
    </div>
  );
}

/** Glue cannot be undone: the time it was mixed is written down only when all four were looked at. */
export function GlueGate() {
  const { single, write } = useBuild();
  const spiral = useBench().choices?.spiral !== undefined;
  const handle = single('handle');
  const open = openBeforeGlue(handle);
  const gluedAt = textOf(handle, 'gluedAt');
  const tipTopOpen = checks.filter(({ field, tipTop }) => tipTop && !flagOf(handle, field));
  const tipTopGluedAt = textOf(handle, 'tipTopGluedAt');
  const glueTipTop = () =>
    write('glueTipTop', [{ path: ['handle', '-', 'tipTopGluedAt'], value: new Date().toISOString() }]);
  const glue = () =>
    write('glueHandle', [{ path: ['handle', '-', 'gluedAt'], value: new Date().toISOString() }]);
  return (
    <Part title="Before glue" aside="it cannot be turned afterwards">
      <LineSides />
      <div className="gates">
        {checks.map(({ field }) => (
          <Field key={field} path={['handle', '-', field]} label={spiral ? inSpiral[field] : undefined} />
        ))}
      </div>
      <div role="status">
        {gluedAt ? (
          <p>Glued {instantWords(gluedAt)}. Sight along it once more while the glue is open.</p>
        ) : open.length > 0 ? (
          <p className="quiet">{open.length} to look at before the glue is mixed.</p>
        ) : null}
        {tipTopGluedAt && <p>Tip-top glued {instantWords(tipTopGluedAt)}.</p>}
      </div>
      <div className="glue-buttons" data-path="handle/-/gluedAt" tabIndex={-1}>
        {!gluedAt && (
          <Button className="button button-main" isDisabled={open.length > 0} onPress={glue}>
            Glue is mixed now
          </Button>
        )}
        {!tipTopGluedAt && (
          <Button className="button" isDisabled={tipTopOpen.length > 0} onPress={glueTipTop}>
            Tip-top is glued now
          </Button>
        )}
      </div>
      {!tipTopGluedAt && (
        <p className="quiet small">
          The tip-top waits for the last two alone. Hot-melt glue is turned while warm; epoxy is for good.
        </p>
      )}
      <GlueCautions />
    </Part>
  );
}

/** Which side of every section carries the line, as it was chosen on Blank: what all four checks go by. */
function LineSides() {
  const { id } = useBuild();
  const { bench } = useBench();
  if (!bench) return null;
  return (
    <ul className="line-sides">
      {bench.sections.map(({ id: section, name, lineSide }) => (
        <li key={section} className={lineSide ? undefined : 'quiet'}>
          {name}:{' '}
          {lineSide ? (
            `line side ${lineSideInWords(lineSide)}`
          ) : (
            <>
              no line side chosen (<Link href={`/builds/${id}/blank/spine`}>Sweep and spine</Link>)
            </>
          )}
        </li>
      ))}
    </ul>
  );
}
