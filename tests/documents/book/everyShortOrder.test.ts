import { demoOrders } from '../../helpers/demoPlan.ts';
import { everyBookIsWellLaid } from './everyBook.ts';

everyBookIsWellLaid(demoOrders.filter((name) => name.endsWith('short')));
