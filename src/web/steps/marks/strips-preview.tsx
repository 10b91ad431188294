import type { Sheet } from '../../../sheets/drawing.ts';
import { pageSvg } from '../../../sheets/svg.ts';

/** The pages as they will be printed, white as paper is. */
export function StripsPreview({ sheet }: { sheet: Sheet }) {
  return (
    <div className="pages">
      {sheet.pages.map((page, index) => {
        const name = `Page ${index + 1} of ${sheet.pages.length}`;
        return (
          <figure key={name} className="page">
            <div
              role="img"
              aria-label={`${name}: ${sheet.title.toLowerCase()} at true size; the tables below hold its figures.`}
              // The engine's own drawing; it escapes every text that it sets.
              dangerouslySetInnerHTML={{ __html: pageSvg(page) }}
            />
            <figcaption className="aside small">{name}</figcaption>
          </figure>
        );
      })}
    </div>
  );
}
