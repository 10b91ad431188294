export { answerRequest } from './answer-request.ts';
export { runLineProtocol } from './line-protocol.ts';
export { operations } from './operations.ts';
