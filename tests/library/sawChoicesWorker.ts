import { parentPort } from 'node:worker_threads';
import type { Order } from '../../src/model/order.ts';
import { sawn } from '../helpers/allChoices.ts';
import { demoLibrary } from '../helpers/demoVan.ts';

/** A thread of `sawChoices.ts`: nests and replays one order after the other, and says what came of each. */
const port = parentPort;
if (port === null) throw new Error('this file runs in a thread only');
const library = demoLibrary();

port.on('message', (order: Order) => {
  const { findings, panels } = sawn({ order }, library);
  port.postMessage({ messages: findings.map(({ message }) => message), panels });
});
