import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Finding } from '../../../engine/finding.ts';
import type { ChosenGuide } from '../../../engine/flow/choices.ts';
import type { SetGuide } from '../../../engine/guides/check-guide-set.ts';
import { guideName } from '../../../engine/kinds/guides.ts';
import type { Row } from '../../../record/document.ts';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useOpenParts } from '../../read/open-parts.ts';
import { useShop } from '../../read/shop.tsx';
import { columns, SetRow } from './set-row.tsx';

interface SetTableProps {
  set: readonly SetGuide[];
  guides: readonly ChosenGuide[];
  /** What is odd about a guide's size or place, which have no field here. */
  findings: readonly Finding[];
}

/** Each place's guide, chosen from the shop's or typed, with where every number comes from. */
export function SetTable({ set, guides, findings }: SetTableProps) {
  const { rows } = useBuild();
  const own = new Map(rows('guides').map((row) => [row.id, row]));
  return (
    <Table
      label="Guides of the set"
      className="set-table stacked-early"
      heads={['Guide', 'From the shop’s', ...columns.map(({ title }) => title), 'Feet', 'Own wrap']}
    >
      {groupsOf(set, guides).map((group) => (
        <SetGroup key={group[0].guide.id} group={group} findings={findings} own={own} />
      ))}
    </Table>
  );
}

interface Place {
  guide: SetGuide;
  index: number;
  chosen: ChosenGuide | undefined;
}

/** Neighbours of one kind and size with the same numbers. */
function groupsOf(set: readonly SetGuide[], guides: readonly ChosenGuide[]): Place[][] {
  const like = ({ chosen, guide }: Place) =>
    JSON.stringify([guide.kind, guide.size, chosen?.ringHeightM, chosen?.lengthM, chosen?.massKg]);
  return set
    .map((guide, index): Place => ({ guide, index, chosen: guides[index] }))
    .reduce<Place[][]>((groups, place) => {
      const last = groups.at(-1);
      if (last && like(last[0]) === like(place)) last.push(place);
      else groups.push([place]);
      return groups;
    }, []);
}

interface SetGroupProps {
  group: readonly Place[];
  own: ReadonlyMap<string, Row>;
  findings: readonly Finding[];
}

/** Equal guides as one row that opens; what is odd about one of them opens it. */
function SetGroup({ group, own, findings }: SetGroupProps) {
  const { writer } = useShop();
  const { open: all } = useOpenParts();
  const [opened, setOpened] = useState(false);
  const isOdd = group.some(({ guide }) =>
    findings.some(({ path }) => path.startsWith(`guides/${guide.id}/`)),
  );
  if (opened || all || isOdd) {
    return group.map(({ guide, index, chosen }) => {
      const row = own.get(guide.id);
      return row && <SetRow key={guide.id} {...{ guide, index, row, chosen, findings }} />;
    });
  }
  const [first, last] = [group[0], group[group.length - 1]];
  const places = first === last ? `${first.index + 1}` : `${first.index + 1} to ${last.index + 1}`;
  const { chosen } = first;
  return (
    <tr>
      <th scope="row">
        {places} <span className="quiet small">{guideName(first.guide)}</span>
      </th>
      <td colSpan={columns.length + 3}>
        {chosen && (
          <Figure
            text={`ring ${writer.fine(chosen.ringHeightM)} high, ${writer.fine(chosen.lengthM)} over its feet, ${writer.mass(chosen.massKg)}`}
          />
        )}{' '}
        <Button
          className="plain"
          data-holds={group.map(({ guide }) => `guides/${guide.id}/`).join(' ')}
          onPress={() => setOpened(true)}
        >
          {first === last ? 'Open it' : `Open these ${group.length}`}
        </Button>
      </td>
    </tr>
  );
}
