import { parentPort } from 'node:worker_threads';
import { cutPlansOfGroup } from '../../src/pipeline/cutPlanPapers.ts';
import { loadDrawingTools } from '../cutting/drawingTools.ts';
import type { DrawingReply, DrawingRequest } from './drawingMessages.ts';

/** A thread that draws cut plans: answers one request after the other. */
const port = parentPort;
if (port === null) throw new Error('this file runs in a thread only');
const tools = await loadDrawingTools();

const say = (reply: DrawingReply) => port.postMessage(reply);
port.on('message', ({ index, subject, group, wishes }: DrawingRequest) => {
  try {
    say({ kind: 'done', index, pages: cutPlansOfGroup(subject, group, tools, wishes) });
  } catch (fault) {
    const error = fault instanceof Error ? fault : new Error(String(fault));
    say({ kind: 'fault', message: error.message, stack: error.stack ?? '' });
  }
});
