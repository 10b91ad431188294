import { Button, Checkbox } from 'react-aria-components';
import { Field } from '../../fields/field.tsx';
import { ShopFields } from '../../fields/shop-fields.tsx';
import { RackShelf } from '../../parts/rack-shelf.tsx';
import { Page } from '../../parts/sheet/page.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { WorkBars } from '../../parts/work-bars.tsx';
import { useBenchView } from '../../read/colours.ts';
import { useSay } from '../../read/messages.tsx';
import { useOpenParts } from '../../read/open-parts.ts';
import { useShop } from '../../read/shop.tsx';
import { useAnswer } from '../../read/use-answer.ts';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';
import { BackupsPart } from './backups-part.tsx';
import { EndProgram } from './end-program.tsx';
import { HabitsPart } from './habits-part.tsx';
import { ImportShop } from './import-shop.tsx';
import { JobsPart } from './jobs-part.tsx';
import { KeepingSpace } from './keeping-space.tsx';
import { PrintersPart } from './printers-part.tsx';
import { RatesPart } from './rates-part.tsx';
import { SharingPart } from './sharing-part.tsx';
import { WallsPart } from './walls-part.tsx';

/** What holds for the whole shop, and for this device. */
export function SettingsPage() {
  const { system, tapeStep, paper, reader } = useShop();
  return (
    <Page title="Settings" aside="they hold for every build of this shop">
      <ShopFields>
        <Part title="Units" aside="a view only: no stored value is changed by them">
          <Field path={['settings', '-', 'unitSystem']} usual={system} />
          <Field path={['settings', '-', 'tapeStep']} usual={tapeStep} />
          <Field path={['settings', '-', 'weighsIn']} />
          <Field
            path={['settings', '-', 'temperatureIn']}
            usual={reader.units.temperatureIn ?? (system === 'mm' ? 'C' : 'F')}
          />
          <Field path={['settings', '-', 'paper']} usual={paper} />
        </Part>
        <Part title="Screen">
          <Field path={['settings', '-', 'colours']} />
          <BenchSwitch />
          <OpenPartsSwitch />
        </Part>
        <KeepingSpace />
        <RackShelf />
        <HabitsPart />
        <RatesPart />
        <PrintersPart />
        <WallsPart />
      </ShopFields>
      <JobsPart />
      <SharingPart />
      <BackupsPart />
      <KeepingPart />
    </Page>
  );
}

function BenchSwitch() {
  const { bench, setBench } = useBenchView();
  return (
    <Checkbox className="flag" isSelected={bench} onChange={setBench}>
      <span className="flag-box" aria-hidden="true" />
      <span>This device lies on the bench: larger, stronger, for gloves and arm’s length</span>
    </Checkbox>
  );
}

function OpenPartsSwitch() {
  const { open, setOpen } = useOpenParts();
  return (
    <Checkbox className="flag" isSelected={open} onChange={setOpen}>
      <span className="flag-box" aria-hidden="true" />
      <span>This device shows every part of a sheet open</span>
    </Checkbox>
  );
}

/** Where the builder's data is, since nothing is worth more to him. */
function KeepingPart() {
  const { answer: info } = useAnswer(api.info, null);
  if (!info) return null;
  return (
    <Part title="Where it is kept">
      <dl className="facts">
        <dt>Folder</dt>
        <dd>{info.dataFolder}</dd>
        <dt>Database</dt>
        <dd>{info.database}</dd>
        <dt>Fairbend</dt>
        <dd>{info.version}</dd>
      </dl>
      <p className="quiet">
        Everything stays on this machine; nothing is sent anywhere. Any build can be saved as one readable
        file from the shelf.
      </p>
      <p>
        <a className="button" href={api.shopFilesAddress()} download>
          Save the whole shop as plain files
        </a>
      </p>
      <p className="quiet">
        Every build and repair with its history and pictures, readable without Fairbend. It names your
        customers.
      </p>
      <WorkBars kinds={['shop out', 'check']} />
      <ReadAll />
      <ImportShop />
      {info.mayEnd && <EndProgram />}
    </Part>
  );
}

/** Read every day by itself; now, where somebody wants to know. */
function ReadAll() {
  const say = useSay();
  const { busy, attempt } = useAttempt();
  const read = () =>
    attempt('The record was not read to its end', async () => {
      const { damaged } = await api.checkRecord();
      say(
        damaged.length === 0
          ? 'All of the record was read, and all of it is what was stored.'
          : 'Something is damaged. The shelf says what, and how to repair it.',
      );
    });
  return (
    <p>
      <Button className="button" isDisabled={busy} onPress={read}>
        Read the whole record now
      </Button>
    </p>
  );
}
