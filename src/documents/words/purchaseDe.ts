import type { PurchaseWords } from './purchaseWords.ts';

const way = { together: 'zusammen zugeschnitten', apart: 'getrennt zugeschnitten' } as const;

/** Words of the papers of a purchase in German. */
export const purchaseDe: PurchaseWords = {
  purchase: 'Einkauf',
  request: 'Materialanforderung',
  number: 'Nummer',
  supplier: 'Lieferant',
  orderBy: 'Bestellen bis',
  neededBy: 'Gebraucht am',
  titled: (name) => `Einkauf ${name}`,
  grainAlong: (size) => `Maserung längs ${size}`,
  noSupplier: 'Kein Lieferant genannt',
  bought: (day) => `Berechnet am ${day}.`,
  orders: 'Aufträge',
  ordersColumns: ['Auftrag', 'Bezeichnung', 'Teile', 'Beginn'],
  ways: 'Zusammen oder getrennt zuschneiden',
  waysIntro:
    'Zusammen: Teile aller Aufträge teilen sich Platten. Getrennt: jeder Auftrag wird aus eigenen Platten geschnitten. Mindestens: so zugeschnitten kommt kein Plan mit weniger Platten aus. Bis: um so viel können die Pläne höchstens teurer sein als die besten.',
  way,
  waysColumns: ['Platte und Dekor', 'Teile'],
  wayColumns: (which) => [
    which === null ? 'Platten' : which === 'together' ? 'Platten zusammen' : 'Platten getrennt',
    'mindestens',
    'bis',
  ],
  offcuts: (sheets, offcuts) => `${sheets}, ${offcuts} vom Lager`,
  best: 'bewiesen',
  within: (percent) => `${percent} %`,
  all: 'alle',
  cost: (which, goods, delivery, total) =>
    `${way[which]}: Ware ${goods}, Lieferung ${delivery}, zusammen ${total}`,
  waste: (which, ofSheets, ofPanels) =>
    `${way[which]}: ${ofSheets} % der Plattenfläche sind keine Teile, das sind ${ofPanels} % der Teilefläche`,
  chosen: (which, other, difference, than) => {
    const word = than === 'less' ? 'weniger' : 'mehr';
    const compared = than === 'same' ? 'kostet so viel wie' : `kostet ${difference} ${word} als`;
    return `Bestellt wird, was ${way[which]} gebraucht wird; es ${compared} ${way[other]}.`;
  },
  spareNone: 'Es wird nichts auf Vorrat gekauft.',
  spare: (amount, why) => `Zugabe: ${amount}. Grund: ${why}`,
  sparePercent: (percent, of) =>
    `${percent} % ${of === 'need' ? 'des Bedarfs' : 'des Gekauften'}, aufgerundet auf ganze Platten je Platte und Dekor und auf ganze Stücke`,
  spareSheets: (count) => `${count} ${count === 1 ? 'Platte' : 'Platten'} je Platte und Dekor`,
  from: (supplier) => `Von ${supplier}`,
  lineColumns: ['was', 'Bedarf', 'Zugabe', 'Lager', 'kommt', 'bestellen', 'je', 'Preis'],
  sum: 'Ware',
  delivery: 'Lieferung',
  total: 'Summe',
  packs: (packs, pack) => `${packs} × ${pack}`,
  rolls: (rolls) => `${rolls} ${rolls === 1 ? 'Rolle' : 'Rollen'}`,
  lastDay: (day, there) => `Spätestens am ${day} zu bestellen, damit es am ${there} da ist.`,
  noDay: 'Kein Auftrag nennt seinen Beginn, daher gibt es keinen letzten Bestelltag.',
  tooLate: (lastDay, orders, canBegin) =>
    `Zu spät für ${orders}: es war bis ${lastDay} zu bestellen. Wird heute alles bestellt, kann die Arbeit frühestens am ${canBegin} beginnen.`,
  belowLeast: (missing, least) => `${missing} unter dem Mindestbestellwert von ${least}.`,
  beyond: (units, fewest, what, from, saved) =>
    `${what}: ${units} statt ${fewest}, weil sie zum Preis ab ${from} um ${saved} weniger kosten.`,
  store: 'Im Lager oder schon bestellt',
  storeIntro:
    'Lager: dort frei oder für diese Aufträge zurückgelegt. Kommt: schon bestellt, für diese Aufträge oder für keinen, und noch nicht da. Was für andere Aufträge zurückgelegt oder bestellt ist, bleibt ihnen.',
  storeColumns: ['was', 'Bedarf', 'Zugabe', 'Lager', 'kommt', 'erwartet', 'für andere'],
  comesLate: (what, expected, thereBy, orders) =>
    `${what}: bestellt, aber erst am ${expected} erwartet; für ${orders} muss es am ${thereBy} da sein.`,
  overdue: (amount, what, expected) => `${what}: ${amount} hätten am ${expected} da sein sollen.`,
  requestIntro: (there, late) => {
    if (there === null) return 'Bitte liefern Sie uns Folgendes.';
    return late
      ? `Bitte liefern Sie uns Folgendes so bald wie möglich: es wird am ${there} gebraucht.`
      : `Bitte liefern Sie uns Folgendes, spätestens am ${there}.`;
  },
  requestColumns: ['Nr.', 'Artikel', 'was', 'Menge', 'je', 'Preis'],
  prices: 'Die Preise sind die unserer Liste, ohne Steuer, wo die Liste ohne ist; bei Kanten je Meter.',
  confirm:
    'Bitte bestätigen Sie Preise und Liefertag und sagen Sie uns sofort, was Sie nicht liefern können.',
  signature: 'Bestellt am ______________   von ____________________________',
};
