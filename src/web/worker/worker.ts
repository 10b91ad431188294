/** The engine's home in the browser: every task is answered once, in order. */
import { layout } from '../../engine/layout/layout.ts';
import { readRealLine } from '../../engine/layout/real-line.ts';
import { fit } from '../../engine/stiffness/fit.ts';
import { answerTasks } from './answer-tasks.ts';
import type { DoubtTask, Task } from './messages.ts';
import { ReadDesk } from './read-desk.ts';
import { slackOfLayout } from './slack-of-layout.ts';

const desk = new ReadDesk();

answerTasks<Exclude<Task, DoubtTask>>((task, progress) => {
  switch (task.does) {
    case 'read':
      return desk.read(task);
    case 'fit':
      return fit(task.request);
    case 'layout':
      return layout(task.request, progress);
    case 'slack':
      return slackOfLayout(task);
    case 'realLine':
      return readRealLine(task.question);
  }
});
