import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useAnswer } from '../../read/use-answer.ts';
import { api } from '../../store/open-document.ts';

/** What the record takes on the disk, and how much it may. */
export function KeepingSpace() {
  const space = useAnswer(api.record, null).answer?.space;
  return (
    <Part title="Space" aside={space ? `the record takes ${megabytes(space.record)} MB now` : undefined}>
      <Field path={['settings', '-', 'spaceLimitMb']} />
      <p className="quiet">
        At the limit no picture and no build file is taken in. What you write is always kept, and backed up.
        {space && space.backups > 0 && ` The backups take ${megabytes(space.backups)} MB more.`}
      </p>
    </Part>
  );
}

function megabytes(bytes: number): string {
  return (Math.ceil(bytes / 1e5) / 10).toString();
}
