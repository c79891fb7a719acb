import { parentPort, workerData } from 'node:worker_threads';
import type { NestReply, NestRequest } from '../../src/edge/index.ts';
import { answerNestRequest } from '../../src/edge/nestLoop.ts';
import { loadSolver } from './loadSolver.ts';

/** A nesting thread: answers one request after the other. Its data is the flag that ends every search early. */
const port = parentPort;
if (port === null) throw new Error('this file runs in a thread only');
const stopFlag = workerData as Int32Array;
const solver = await loadSolver();

const say = (reply: NestReply) => port.postMessage(reply);
port.on('message', (request: NestRequest) => {
  const end = request.seconds === undefined ? Infinity : performance.now() + 1000 * request.seconds;
  const stop = () => Atomics.load(stopFlag, 0) === 1 || performance.now() >= end;
  answerNestRequest(request, solver, stop, say);
});
say({ kind: 'ready' });
