import { Button } from 'react-aria-components';
import type { Choices } from '../../../engine/flow/choices.ts';
import { guideKindOptions, guideName } from '../../../engine/kinds/guides.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useBuild } from '../../read/build-context.ts';
import { addedGuide } from './guide-rows.ts';

export interface GuidesPartProps {
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
  const remove = (id: string) => write('removeGuide', [{ path: ['guides', id, 'gone'], value: true }]);
  return (
    <Part folded holds={['guides/']} title="Guides" aside="grey numbers are typical; type your own over them">
      <TableFrame label="Guide set">
        <table className="figures-table guide-set stacked">
          <thead>
            <tr>
              <th scope="col">guide</th>
              <th scope="col">kind</th>
              <th scope="col">size</th>
              <th scope="col">ring height</th>
              <th scope="col">over its feet</th>
              <th scope="col">mass</th>
              <th scope="col">
                <span className="visually-hidden">take away</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {guides.map((guide, index) => {
              const name = `guide ${index + 1}`;
              const id = guide.id ?? '';
              return (
                <tr key={id}>
                  <th scope="row">{index + 1}</th>
                  <td data-label="kind">
                    <Field
                      label={`Kind of ${name}`}
                      labelHidden
                      path={['guides', id, 'kind']}
                      options={kinds}
                      usual={guide.kind}
                    />
                  </td>
                  <td data-label="size">
                    <Field
                      label={`Size of ${name}`}
                      labelHidden
                      path={['guides', id, 'size']}
                      pale={guide.size}
                    />
                  </td>
                  <td data-label="ring height">
                    <Field
                      label={`Ring height of ${name}`}
                      labelHidden
                      path={['guides', id, 'ringHeight']}
                      usual={guide.ringHeightM}
                    />
                  </td>
                  <td data-label="over its feet">
                    <Field
                      label={`Length of ${name} with its feet`}
                      labelHidden
                      path={['guides', id, 'foot']}
                      usual={guide.lengthM}
                    />
                  </td>
                  <td data-label="mass">
                    <Field
                      label={`Mass of ${name}`}
                      labelHidden
                      path={['guides', id, 'mass']}
                      usual={guide.massKg}
                    />
                  </td>
                  <td>
                    <Button className="plain" isDisabled={guides.length <= 2} onPress={() => remove(id)}>
                      Take away<span className="visually-hidden"> {name}</span>
                    </Button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableFrame>
      <Button
        className="button"
        onPress={() => write('addGuide', addedGuide(choices, { rows: rows('guides'), newRowId }))}
      >
        Add a guide
      </Button>
    </Part>
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
