import { Button } from 'react-aria-components';
import type { Finding } from '../../../engine/finding.ts';
import type { ChosenGuide } from '../../../engine/flow/choices.ts';
import type { SetGuide } from '../../../engine/guides/check-guide-set.ts';
import { guideName, guideNumbers } from '../../../engine/kinds/guides.ts';
import type { Row } from '../../../record/document.ts';
import { changedInRack, type GuideNumberField, originOf, takeFromRack } from '../../../record/rack.ts';
import { buildSchema } from '../../../record/schema.ts';
import { Field } from '../../fields/field.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { textOf } from '../../read/values.ts';
import { RackPick } from './rack-pick.tsx';

interface SetRowProps {
  guide: SetGuide;
  index: number;
  /** Its row of the record, and what stands in for what that leaves open. */
  row: Row;
  chosen: ChosenGuide | undefined;
  findings: readonly Finding[];
}

/** One place's guide with its fields, and where every number comes from. */
export function SetRow({ guide, index, row, chosen, findings }: SetRowProps) {
  const sentence = useSentence();
  const { write } = useBuild();
  const { rack } = useShop();
  const line = rack.filter((one) => !['tip-top', 'keeper'].includes(textOf(one, 'kind') ?? ''));
  const from = rack.find(({ id }) => id === textOf(row, 'fromRack'));
  const name = `guide ${index + 1}`;
  return (
    <tr>
      <th scope="row">
        {index + 1} <span className="quiet small">{guideName(guide)}</span>
        {findings
          .filter(({ path }) => [`guides/${guide.id}/size`, `guides/${guide.id}/station`].includes(path))
          .map((one) => [one.path, sentence(one)] as const)
          .map(([, message]) => (
            <span key={message} className="field-line field-trouble set-trouble">
              ▲ {message}
            </span>
          ))}
      </th>
      <td data-label="From the shop’s">
        <RackPick
          label={`Shop’s guide for ${name}`}
          rack={line}
          chosen={from?.id}
          onChoose={(picked) => write(`chooseGuide:${index + 1}`, takeFromRack(picked, row.id))}
        />
        <Again row={row} rack={from} name={name} />
      </td>
      {columns.map(({ field, title, typical }) => (
        <td key={field} data-label={title}>
          <Field
            label={`${title} of ${name}`}
            labelHidden
            path={['guides', guide.id, field]}
            usual={typical(chosen)}
            origin={originWords[originOf(row, field, from)]}
          />
        </td>
      ))}
      <td data-label="Feet">
        <Field label={`Feet of ${name}`} labelHidden path={['guides', guide.id, 'feet']} />
      </td>
      <td data-label="Own wrap">
        <Field label={`Wrap on ${name}`} labelHidden path={['guides', guide.id, 'wrapLength']} />
      </td>
    </tr>
  );
}

const originWords = {
  measured: 'measured, from the shop’s guides',
  stated: 'from its packet',
  'typed here': 'typed here',
  typical: 'typical',
} as const;

interface SetColumn {
  field: GuideNumberField;
  title: string;
  typical(guide: ChosenGuide | undefined): number | undefined;
}
export const columns: SetColumn[] = [
  { field: 'ringHeight', title: 'Ring height', typical: (guide) => guide?.ringHeightM },
  { field: 'foot', title: 'Over its feet', typical: (guide) => guide?.lengthM },
  { field: 'mass', title: 'Mass', typical: (guide) => guide?.massKg },
  {
    field: 'opening',
    title: 'Opening',
    typical: (guide) => guide && guideNumbers(guide.kind, guide.size)?.insideM,
  },
  { field: 'footWidth', title: 'Foot’s width', typical: () => undefined },
  { field: 'oneFoot', title: 'One foot', typical: () => undefined },
];

/** What the shop's row says by now, to be taken over when the builder wants it. */
function Again({ row, rack, name }: { row: Row; rack: Row | undefined; name: string }) {
  const { write } = useBuild();
  const changed = rack ? changedInRack(row, rack) : [];
  if (!rack || changed.length === 0) return null;
  return (
    <span className="small set-again">
      differs in {changed.map((field) => buildSchema.guides.fields[field].name).join(', ')}.{' '}
      <Button className="inline" onPress={() => write('takeGuideAgain', takeFromRack(rack, row.id))}>
        Take it again<span className="visually-hidden"> for {name}</span>
      </Button>
    </span>
  );
}
