import type { MassWords } from './massWords.ts';

const persons = (count: number) => `${count} ${count === 1 ? 'person' : 'persons'}`;

/** Words about mass in English. */
export const massEn: MassWords = {
  heading: 'Mass',
  intro:
    'Boards with their edging, the fittings of each unit and the appliances that it holds, in kg, worked out from the library’s figures and not weighed. Appliances whose mass the library does not have, cushions and what is loaded are not in it.',
  byUnit: 'By unit',
  columns: [
    'unit',
    'boards',
    'edging',
    'fittings',
    'appliances',
    'together',
    'left',
    'right',
    'front',
    'rear',
  ],
  all: 'all together',
  centre: (fromFront, fromMiddle, side, above) => {
    const across = side === 'middle' ? 'on the middle line' : `${fromMiddle} ${side} of the middle line`;
    return `Centre of mass: ${fromFront} from the front end, ${across}, ${above} above the floor.`;
  },
  account: 'Payload',
  accountColumns: ['where it goes', 'kg'],
  payload: (vehicle) => `payload of ${vehicle}, as the library states it`,
  furniture: 'less furniture: boards, edging and fittings',
  appliances: 'less appliances, as far as the library says what they weigh',
  passengers: (count, eachKg) =>
    count === 0
      ? 'less passengers: none (the driver counts with the vehicle)'
      : `less passengers: ${count} × ${eachKg} kg (the driver counts with the vehicle)`,
  left: 'left for the rest of the conversion and for load',
  least: (count, lengthM, eachKg) =>
    `of this to be kept for load: ${eachKg} kg × (${persons(count)} + ${lengthM} m of length)`,
  rest: 'left for battery, tanks, insulation, cushions, other appliances, all else',
  persons: (count, from) => {
    switch (from) {
      case 'order':
        return `The order says that ${persons(count)} ride, the driver included.`;
      case 'choices':
        return `By the choices of the layout ${persons(count)} ride, the driver included.`;
      case 'seats':
        return `The layout has seats for ${persons(count)}, the driver included.`;
      case 'driver alone':
        return 'Neither order nor layout says who rides, so only the driver is counted: write `persons` into the order.';
      default:
        throw new Error(`nobody counts persons by ${from satisfies never}`);
    }
  },
  uneven: (heavy, percent, aside, evenedByKg) =>
    `The ${heavy} side carries ${percent} % of furniture and appliances; the centre of mass lies ${aside} ${heavy} of the middle line. ${evenedByKg} kg on the other side, half-way to its wall, even it out: place the water tank, battery and other heavy things there.`,
  tooLittle:
    'The furniture leaves less than must be kept. Leave units out, take lighter boards, or let fewer persons ride.',
  source:
    'Rule for motor caravans: (EU) 1230/2012, Annex I, part A, 2.6.4.1.2, since replaced by (EU) 2021/535. The weighbridge and whoever registers the vehicle decide.',
};
