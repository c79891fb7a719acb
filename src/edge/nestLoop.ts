import type { LinearSolver } from '../model/linearSolver.ts';
import { nestGroup } from '../pipeline/nestGroup.ts';
import type { NestReply, NestRequest } from './nestMessages.ts';

/** Answers one request in a nesting thread: progress as the search improves, then the outcome or the fault. */
export function answerNestRequest(
  request: NestRequest,
  solver: LinearSolver,
  stop: () => boolean,
  say: (reply: NestReply) => void,
): void {
  const { index, group, seed, workLimit, emphasis } = request;
  try {
    const outcome = nestGroup(group, solver, {
      seed,
      workLimit,
      ...(emphasis && { emphasis }),
      stop,
      progress: (state) => say({ kind: 'progress', index, state }),
    });
    say({ kind: 'done', index, outcome });
  } catch (fault) {
    const error = fault instanceof Error ? fault : new Error(String(fault));
    say({ kind: 'fault', index, message: error.message, stack: error.stack ?? '' });
  }
}
