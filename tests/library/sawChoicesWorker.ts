import type { Order } from '../../src/model/order.ts';
import { sawn } from '../helpers/allChoices.ts';
import { demoLibrary } from '../helpers/demoVan.ts';

/** A process of `sawChoices.ts`: nests and replays one order after the other, and says what came of each. */
const library = demoLibrary();

process.on('message', (order: Order) => {
  const { findings, panels } = sawn({ order }, library);
  process.send!({ messages: findings.map(({ message }) => message), panels });
});
