import { Button } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { DemoOffered } from '../../../record/api.ts';
import { Fold } from '../../parts/sheet/fold.tsx';
import { useAnswer } from '../../read/use-answer.ts';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';

/** Invented builds of other kinds of rod, put on the shelf one by one when they are asked for. */
export function DemoChooser() {
  const [, navigate] = useLocation();
  const { attempt } = useAttempt();
  // without an answer there is nothing to choose; the shelf itself says that the server is away
  const { demos = [] } = useAnswer(api.demos, null).answer ?? {};
  if (demos.length === 0) return null;
  const open = ({ id, title, shown }: DemoOffered) =>
    attempt(`${title} was not opened`, async () => {
      if (!shown) await api.showDemo(id);
      navigate(`/builds/${id}/layout`);
    });
  return (
    <Fold title={<h2>Demos of other rods</h2>} aside="invented, like the first one" className="part">
      <ul className="demo-choices">
        {demos.map((demo) => (
          <li key={demo.id}>
            <Button className="button" onPress={() => open(demo)}>
              {demo.title}
            </Button>{' '}
            <span className="quiet">{demo.note}</span>
          </li>
        ))}
      </ul>
    </Fold>
  );
}
