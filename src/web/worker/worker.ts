/** The engine's home in the browser: every task is answered once, in order. */
import { layout } from '../../engine/layout/layout.ts';
import { readRealLine } from '../../engine/layout/real-line.ts';
import { fit } from '../../engine/stiffness/fit.ts';
import type { FromWorker, Task, ToWorker } from './messages.ts';
import { ReadDesk } from './read-desk.ts';
import { slackOfLayout } from './slack-of-layout.ts';
import { powerOfBlank, spreadOfPlaces, surenessOfLayouts } from './sureness-of-layouts.ts';

const desk = new ReadDesk();
const page = self as unknown as {
  postMessage(message: FromWorker): void;
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
};

page.onmessage = ({ data: { id, task } }) => {
  try {
    page.postMessage({ id, says: 'done', answer: answerTo(id, task) });
  } catch (error) {
    page.postMessage({ id, says: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
};

function answerTo(id: number, task: Task) {
  switch (task.does) {
    case 'read':
      return desk.read(task);
    case 'fit':
      return fit(task.request);
    case 'layout':
      return layout(task.request, (progress) => page.postMessage({ id, says: 'progress', progress }));
    case 'slack':
      return slackOfLayout(task);
    case 'realLine':
      return readRealLine(task.question);
    case 'sureness':
      return surenessOfLayouts(task, (progress) => page.postMessage({ id, says: 'progress', progress }));
    case 'power':
      return powerOfBlank(task);
    case 'spread':
      return spreadOfPlaces(task, (progress) => page.postMessage({ id, says: 'progress', progress }));
  }
}
