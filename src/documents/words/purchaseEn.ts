import type { PurchaseWords } from './purchaseWords.ts';

const way = { together: 'cut together', apart: 'cut apart' } as const;

/** Words of the papers of a purchase in English. */
export const purchaseEn: PurchaseWords = {
  purchase: 'Purchase',
  request: 'Request for material',
  number: 'Number',
  supplier: 'Supplier',
  orderBy: 'Order by',
  neededBy: 'Needed by',
  titled: (name) => `Purchase ${name}`,
  grainAlong: (size) => `grain along ${size}`,
  noSupplier: 'No supplier named',
  bought: (day) => `Worked out on ${day}.`,
  orders: 'Orders',
  ordersColumns: ['order', 'title', 'panels', 'begun on'],
  ways: 'Cut together or apart',
  waysIntro:
    'Together: panels of all orders share sheets. Apart: each order is cut from sheets of its own. Least: no plans cut in this way take fewer sheets. Within: so much dearer than the best plans they might at most be.',
  way,
  waysColumns: ['board and finish', 'panels'],
  wayColumns: (which) => [which === null ? 'sheets' : `sheets ${which}`, 'least', 'within'],
  offcuts: (sheets, offcuts) => `${sheets}, ${offcuts} from the rack`,
  best: 'proved best',
  within: (percent) => `${percent} %`,
  all: 'all',
  cost: (which, goods, delivery, total) =>
    `${way[which]}: goods ${goods}, delivery ${delivery}, together ${total}`,
  waste: (which, ofSheets, ofPanels) =>
    `${way[which]}: ${ofSheets} % of the area of the sheets is not panels, which is ${ofPanels} % of the area of the panels`,
  chosen: (which, other, difference, than) => {
    const compared = than === 'same' ? 'costs as much as' : `costs ${difference} ${than} than`;
    return `Ordered is what is ${way[which]}; it ${compared} what is ${way[other]}.`;
  },
  spareNone: 'Nothing is bought to spare.',
  spare: (amount, why) => `To spare: ${amount}. Reason: ${why}`,
  sparePercent: (percent, of) =>
    `${percent} % of what ${of === 'need' ? 'is needed' : 'is bought'}, rounded up to whole sheets of each board and finish, and to whole pieces`,
  spareSheets: (count) => `${count} ${count === 1 ? 'sheet' : 'sheets'} of each board and finish`,
  from: (supplier) => `From ${supplier}`,
  lineColumns: ['what', 'needed', 'spare', 'store', 'coming', 'order', 'each', 'price'],
  sum: 'goods',
  delivery: 'delivery',
  total: 'total',
  packs: (packs, pack) => `${packs} × ${pack}`,
  rolls: (rolls) => `${rolls} ${rolls === 1 ? 'roll' : 'rolls'}`,
  lastDay: (day, there) => `To be ordered by ${day}, so that it is there on ${there}.`,
  noDay: 'No order says when it is begun, so there is no last day to order.',
  tooLate: (lastDay, orders, canBegin) =>
    `Too late for ${orders}: it had to be ordered by ${lastDay}. If all is ordered today, work can begin on ${canBegin} at the earliest.`,
  belowLeast: (missing, least) => `${missing} below the least order value of ${least}.`,
  beyond: (units, fewest, what, from, saved) =>
    `${what}: ${units} in place of ${fewest}, since at the price from ${from} on they cost ${saved} less.`,
  store: 'In the store or on order already',
  storeIntro:
    'Store: free there, or kept there for these orders. Coming: on order already, for these orders or for none, and not here yet. What is kept or on order for other orders is left.',
  storeColumns: ['what', 'needed', 'spare', 'store', 'coming', 'expected', 'for others'],
  comesLate: (what, expected, thereBy, orders) =>
    `${what}: on order, but expected on ${expected}; for ${orders} it must be there on ${thereBy}.`,
  overdue: (amount, what, expected) => `${what}: ${amount} should have come on ${expected}.`,
  requestIntro: (there, late) => {
    if (there === null) return 'Please send us the following.';
    return late
      ? `Please send us the following as soon as you can: it is needed on ${there}.`
      : `Please send us the following, to be here on ${there} at the latest.`;
  },
  requestColumns: ['no.', 'article', 'what', 'how many', 'each', 'price'],
  prices: 'Prices are those of our list, without tax where the list is; of edging for a metre.',
  confirm: 'Please confirm prices and the day of delivery, and tell us at once what you cannot send.',
  signature: 'Ordered on ______________   by ____________________________',
};
