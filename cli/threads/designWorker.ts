import { parentPort, workerData } from 'node:worker_threads';
import type { NestOutcome } from '../../src/model/nest.ts';
import { workOutDesign } from '../../src/pipeline/workOutDesign.ts';
import type { DesignReply, DesignTask, DesignWorkerData } from './designMessages.ts';
import { loadSolver } from './loadSolver.ts';

/** A thread that works ways to build one order out, one after the other. */
const port = parentPort;
if (port === null) throw new Error('this file runs in a thread only');
const { library, text, file, below, seed, workLimit } = workerData as DesignWorkerData;
const solver = await loadSolver();
const nested = new Map<string, NestOutcome>();
const search = { seed, workLimit, nested };

const say = (reply: DesignReply) => port.postMessage(reply);
port.on('message', ({ index, name, set, nested: others }: DesignTask) => {
  for (const [content, outcome] of others) nested.set(content, outcome);
  // A map keeps the order in which it was filled: what comes after these is new.
  const before = nested.size;
  try {
    const result = workOutDesign(name, { text, file }, library, { below, set }, solver, search);
    say({ kind: 'done', index, result, nested: [...nested].slice(before) });
  } catch (fault) {
    say({ kind: 'fault', index, message: fault instanceof Error ? fault.message : String(fault) });
  }
});
say({ kind: 'ready' });
