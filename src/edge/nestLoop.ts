import type { LinearSolver } from '../model/linearSolver.ts';
import type { NestOptions } from '../model/nest.ts';
import { beginNest, goOnNesting, needsSolver } from '../pipeline/nestGroup.ts';
import type { NestReply, NestRequest } from './nestMessages.ts';

/**
 * Answers one request in a nesting thread: progress as the search improves, then the outcome or the fault. The solver is
 * asked for where a search cannot do without it.
 */
export async function answerNestRequest(
  request: NestRequest,
  loadSolver: () => Promise<LinearSolver>,
  stop: () => boolean,
  say: (reply: NestReply) => void,
): Promise<void> {
  const { index, group, seed, workLimit, emphasis } = request;
  try {
    const options: NestOptions = {
      seed,
      workLimit,
      ...(emphasis && { emphasis }),
      stop,
      progress: (state) => say({ kind: 'progress', index, state }),
    };
    const begun = beginNest(group, options);
    const outcome = begun.isDone
      ? begun.outcome
      : goOnNesting(group, needsSolver(options) ? await loadSolver() : null, options, begun);
    say({ kind: 'done', index, outcome });
  } catch (fault) {
    const error = fault instanceof Error ? fault : new Error(String(fault));
    say({ kind: 'fault', index, message: error.message, stack: error.stack ?? '' });
  }
}
