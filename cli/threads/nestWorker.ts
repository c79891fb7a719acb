import { parentPort, workerData } from 'node:worker_threads';
import type { NestReply, NestRequest } from '../../src/edge/index.ts';
import { answerNestRequest } from '../../src/edge/nestLoop.ts';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import type { NestWorkerData } from './nestPool.ts';

/** A nesting thread: answers one request after the other. */
const port = parentPort;
if (port === null) throw new Error('this file runs in a thread only');
const { stopFlag, loadsSolver } = workerData as NestWorkerData;

let loading: Promise<LinearSolver> | null = null;
const solver = () => {
  loading ??= import('./loadSolver.ts').then(({ loadSolver }) => loadSolver());
  return loading;
};
// A failure is told by the search that needs it.
if (loadsSolver) solver().catch(() => undefined);

const say = (reply: NestReply) => port.postMessage(reply);
port.on('message', (request: NestRequest) => {
  const end = request.seconds === undefined ? Infinity : performance.now() + 1000 * request.seconds;
  const stop = () => Atomics.load(stopFlag, 0) === 1 || performance.now() >= end;
  void answerNestRequest(request, solver, stop, say);
});
say({ kind: 'ready' });
