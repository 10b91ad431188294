import { munkres } from 'munkres';
import { useMemo } from 'react';
import { Link } from 'wouter';
import { diameterAt } from '../../engine/bench/diameter-profile.ts';
import { sortBag } from '../../engine/guides/bag-sorting.ts';
import { checkGuideSet } from '../../engine/guides/check-guide-set.ts';
import { rackName, rackShortages } from '../../record/rack.ts';
import { readBag, readGuideSet } from '../../record/read-guide-set.ts';
import { BuildFields } from '../fields/build-fields.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { useBench } from '../read/bench.tsx';
import { useBuild } from '../read/build.tsx';
import { useShop } from '../read/shop.tsx';
import { siOf, textOf } from '../read/values.ts';
import { Caution } from '../shell/caution.tsx';
import { NextLine } from '../shell/next-line.tsx';
import { Part } from '../shell/part.tsx';
import { BagPart } from './bag-part.tsx';
import { EndFittings } from './end-fittings.tsx';
import { LooksPart } from './looks-part.tsx';
import { RackPart } from './rack-part.tsx';
import { RackShelf } from './rack-shelf.tsx';
import { ScanPart } from './scan-part.tsx';
import { SetTable } from './set-table.tsx';
import { TakeUpGuides } from './take-up-guides.tsx';
import './guides.css';

/** The guides in the hand: does the knot pass, do sizes fall, and which of the bag goes where. */
export function GuidesStep() {
  const { id, document, single, rows } = useBuild();
  const { rack } = useShop();
  const { blank, choices, profile } = useBench();
  const knotM = siOf(single('layout'), 'knot');
  const read = useMemo(() => {
    if (!blank || !choices || profile.length === 0) return undefined;
    const set = readGuideSet(document, choices.guides);
    const places = set.flatMap(({ kind, size, stationM }, index) =>
      stationM === undefined || kind === 'stripping'
        ? []
        : [{ guide: index + 1, size, outsideM: diameterAt(profile, stationM) ?? 0.003 }],
    );
    const bag = readBag(document);
    return {
      set,
      bag,
      findings: checkGuideSet(set, blank, { profile, knotM }),
      sizes: [...new Set(set.filter(({ kind }) => kind !== 'stripping').map(({ size }) => size))],
      sorted: sortBag(bag, places, munkres),
      placed: places.length > 0,
    };
  }, [document, blank, choices, profile, knotM]);
  if (!read) {
    return (
      <NextLine>
        The guides follow the blank: give its sections and a diameter under{' '}
        <Link href={`/builds/${id}/blank`}>Blank</Link>.
      </NextLine>
    );
  }
  const { set, bag, findings, sizes, sorted, placed } = read;
  const recorded = choices?.guides.every((guide) => guide.id !== undefined) ?? false;
  const shortages = rackShortages(rows('guides'), rack);
  const usedHere = new Map(
    rack.map((row) => [
      row.id,
      rows('guides').filter((guide) => textOf(guide, 'fromRack') === row.id).length,
    ]),
  );
  const numberOf = (bagId: string) => bag.findIndex((guide) => guide.id === bagId) + 1;
  return (
    <BuildFields findings={findings}>
      <NextLine goOn={{ href: `/builds/${id}/wraps`, name: 'Wraps' }}>
        {findings[0]?.message ??
          (placed
            ? 'Look along each guide of the bag and tap how straight it is.'
            : 'The layout has no marks yet; the rack needs them.')}
      </NextLine>
      <Part
        title="The set"
        aside="chosen from the shop’s guides or typed; pale numbers are typical of the size"
      >
        <div className="fields-row knot-field">
          <QuantityField
            label="Thickest knot that must pass"
            path={['layout', '-', 'knot']}
            placeholder="3 mm"
          />
        </div>
        {findings.map(({ path, message }) => (
          <p key={path} className="attention">
            ▲ {message}
          </p>
        ))}
        {choices && recorded && <SetTable set={set} guides={choices.guides} />}
        {choices && !recorded && <TakeUpGuides choices={choices} />}
        <EndFittings />
        {shortages.map(({ rack: row, wanted, onHand }) => (
          <p key={row.id} className="attention">
            ▲ {rackName(row)}: {wanted} on this build, {onHand} in the drawer. Order {wanted - onHand}, and
            one or two to spare.
          </p>
        ))}
      </Part>
      <RackShelf usedHere={usedHere} />
      <ScanPart sizes={sizes} inBag={bag.length} />
      <BagPart bag={bag} sizes={sizes} />
      <LooksPart bag={bag} />
      {placed && bag.length > 0 && <RackPart sorted={sorted} numberOf={numberOf} />}
      <Part title="Feet" aside="how each foot is dressed before it is taped; common practice, no source">
        <ul>
          <li>Ramp of 6 to 10 mm to a thin, round end; no step for the thread to climb.</li>
          <li>
            Underside dead flat on a straight edge, both feet in one plane; a foot that digs in breaks blanks.
          </li>
          <li>No burr: it must not scar a thumbnail. Polish 220 to 600, then blacken the ground part.</li>
          <li>Opening round, ring tight, plating whole: cotton wool drawn through does not catch.</li>
        </ul>
      </Part>
      <Caution source="OSHA composites page and Technical Manual III:1; Ontario Ministry of Labour, entanglement alert">
        Grinding feet throws sparks and metal dust: glasses and mask, no gloves near the wheel, hold the guide
        in pliers, and keep it away from solvents.
      </Caution>
    </BuildFields>
  );
}
