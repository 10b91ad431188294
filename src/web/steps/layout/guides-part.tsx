import { Button } from 'react-aria-components';
import type { Choices } from '../../../engine/flow/choices.ts';
import { guideKindOptions, guideName } from '../../../engine/kinds/guides.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { addedGuide } from './guide-rows.ts';

interface GuidesPartProps {
  choices: Choices;
  /** Makes the assumed guides rows of the record. */
  onTakeUp(): void;
}

const kinds = guideKindOptions('line');

/** The guide set: kinds, sizes, heights, feet and masses; what is typical stands pale until it is measured. */
export function GuidesPart({ choices, onTakeUp }: GuidesPartProps) {
  const { write, newRowId, rows } = useBuild();
  const { guides } = choices;
  const recorded = guides.every(({ id }) => id !== undefined);
  if (!recorded) {
    return (
      <Part title="Guides">
        <p>
          {guides.length} guides typical of this rod are assumed: {sizesInWords(choices)}. Guides of one size
          differ between makers.{' '}
          <Button className="inline" onPress={onTakeUp}>
            Enter your own
          </Button>
        </p>
      </Part>
    );
  }
  return (
    <Part folded holds={['guides/']} title="Guides" aside="grey numbers are typical; type your own over them">
      <Table
        label="Guide set"
        className="guide-set stacked"
        heads={['guide', 'kind', 'size', 'ring height', 'over its feet', 'mass', { spoken: 'take away' }]}
      >
        {guides.map((guide, index) => (
          <GuideRow key={guide.id} guide={guide} number={index + 1} stays={guides.length <= 2} />
        ))}
      </Table>
      <Button
        className="button"
        onPress={() => write('addGuide', addedGuide(choices, { rows: rows('guides'), newRowId }))}
      >
        Add a guide
      </Button>
    </Part>
  );
}

const typical = [
  {
    field: 'ringHeight',
    head: 'ring height',
    label: (name: string) => `Ring height of ${name}`,
    usual: 'ringHeightM',
  },
  {
    field: 'foot',
    head: 'over its feet',
    label: (name: string) => `Length of ${name} with its feet`,
    usual: 'lengthM',
  },
  { field: 'mass', head: 'mass', label: (name: string) => `Mass of ${name}`, usual: 'massKg' },
] as const;

interface GuideRowProps {
  guide: Choices['guides'][number];
  number: number;
  /** One of the last two. */
  stays: boolean;
}

function GuideRow({ guide, number, stays }: GuideRowProps) {
  const { write } = useBuild();
  const name = `guide ${number}`;
  const id = guide.id ?? '';
  const at = (field: string) => ['guides', id, field] as const;
  return (
    <tr>
      <th scope="row">{number}</th>
      <td data-label="kind">
        <Field label={`Kind of ${name}`} labelHidden path={at('kind')} options={kinds} usual={guide.kind} />
      </td>
      <td data-label="size">
        <Field label={`Size of ${name}`} labelHidden path={at('size')} pale={guide.size} />
      </td>
      {typical.map(({ field, head, label, usual }) => (
        <td key={field} data-label={head}>
          <Field label={label(name)} labelHidden path={at(field)} usual={guide[usual]} />
        </td>
      ))}
      <td>
        <Button
          className="plain"
          isDisabled={stays}
          onPress={() => write('removeGuide', [{ path: at('gone'), value: true }])}
        >
          Take away<span className="visually-hidden"> {name}</span>
        </Button>
      </td>
    </tr>
  );
}

/** `3 snake 1/0, 3 snake 1, 1 stripping 12 mm`. */
function sizesInWords({ guides }: Choices): string {
  const counts = new Map<string, number>();
  for (const { kind, size } of guides) {
    const name = guideName({ kind, size });
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return [...counts].map(([name, count]) => `${count} ${name}`).join(', ');
}
