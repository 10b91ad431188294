/** The engine's home in the browser: every task is answered once, in order. */
import { moveDefaults, nextMove } from '../../engine/flow/next-move.ts';
import { slackOfLayout } from '../../engine/layout/slack-of-layout.ts';
import { answerTasks } from './answer-tasks.ts';
import type { DoubtTask } from './doubt-messages.ts';
import { keptFit } from './kept-fit.ts';
import type { Task } from './messages.ts';
import { proposedLayout } from './proposed-layout.ts';
import { ReadDesk } from './read-desk.ts';

const desk = new ReadDesk();

answerTasks<Exclude<Task, DoubtTask>>((task, progress) => {
  switch (task.does) {
    case 'read':
      return desk.read(task);
    case 'fit':
      return keptFit(task.request).answer;
    case 'layout':
      return proposedLayout(task, progress);
    case 'slack':
      return slackOfLayout(task);
    case 'nextMove':
      return nextMove(task.question, progress, { ...moveDefaults, snapM: task.snapM });
  }
});
