import { parentPort, workerData } from 'node:worker_threads';
import { workOutDesign } from '../../src/pipeline/workOutDesign.ts';
import type { DesignReply, DesignRequest, DesignWorkerData } from './designMessages.ts';
import { loadSolver } from './loadSolver.ts';

/** A thread that works ways to build one order out, one after the other. */
const port = parentPort;
if (port === null) throw new Error('this file runs in a thread only');
const { library, text, file, below, seed, workLimit } = workerData as DesignWorkerData;
const solver = await loadSolver();
const search = { seed, workLimit, nested: new Map() };

const say = (reply: DesignReply) => port.postMessage(reply);
port.on('message', ({ index, name, set }: DesignRequest) => {
  try {
    const result = workOutDesign(name, { text, file }, library, { below, set }, solver, search);
    say({ kind: 'done', index, result });
  } catch (fault) {
    say({ kind: 'fault', index, message: fault instanceof Error ? fault.message : String(fault) });
  }
});
say({ kind: 'ready' });
