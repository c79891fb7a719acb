import { z } from 'zod';
import { fields } from '../basics/yamlFields.ts';
import { type WorkKind, workUnits } from '../model/rates.ts';

const TIME_EXPECTED = 'seconds such as 12, or a time such as 12 s, 4 min or 1.5 h';
const TIME_PATTERN = /^(\d{1,6}(?:\.\d{1,3})?) ?(s|min|h)$/;
const MS_OF_UNIT: Readonly<Record<string, number>> = { s: 1000, min: 60_000, h: 3_600_000 };
/** A whole year of work. */
const LONGEST_S = 10_000_000;

const time = z.union(
  [
    z.number().gte(0).lte(LONGEST_S),
    z.string({ error: TIME_EXPECTED }).regex(TIME_PATTERN, { error: TIME_EXPECTED }),
  ],
  { error: TIME_EXPECTED },
);

/** A time as written, in whole ms. */
export function timeMs(written: number | string): number {
  if (typeof written === 'number') return Math.round(written * 1000);
  const [, figure, unit] = TIME_PATTERN.exec(written) ?? [];
  return Math.round(Number(figure ?? 0) * (MS_OF_UNIT[unit ?? ''] ?? 0));
}

const PERCENT_EXPECTED = 'a percentage such as 19 or 7.5';
const percent = z.number({ error: PERCENT_EXPECTED }).gte(0).lte(1000);

const hour = fields.price.meta({ description: 'what an hour of this work costs' }).optional();

const wordsOfUnits: Readonly<Record<WorkKind, Readonly<Record<string, string>>>> = {
  sawing: {
    sheet: 'a sheet brought to the saw, and its pieces away',
    metre: 'a metre sawn',
    cut: 'a pass of the blade',
    setting: 'a setting of the fence, or of the rail',
    turn: 'a piece turned by a quarter',
  },
  edging: {
    metre: 'a metre of edging with its overlength',
    edge: 'an edge',
    'set-up': 'a change to another edging',
  },
  drilling: { panel: 'a panel that has holes', hole: 'a hole' },
  'hand work': { opening: 'an opening in a panel', outline: 'a panel cut to the outline of a wall' },
  assembly: {
    unit: 'a unit of furniture',
    panel: 'a panel put in its place',
    fitting: 'a fitting put on',
  },
};

function timesOf<Kind extends WorkKind>(kind: Kind) {
  return Object.fromEntries(
    workUnits[kind].map((unit) => [unit, time.optional().meta({ description: wordsOfUnits[kind][unit]! })]),
  ) as Record<(typeof workUnits)[Kind][number], z.ZodOptional<typeof time>>;
}

const extra = z.strictObject({
  title: fields.title,
  price: fields.price,
  for: z.enum(['order', 'each']).meta({ description: 'once for the order, or for every vehicle or room' }),
});

/** The shape of `rates.yaml`. */
export const ratesFile = z
  .strictObject({
    hour: fields.price
      .meta({ description: 'what an hour costs of each kind of work that does not say otherwise' })
      .optional(),
    sawing: z.strictObject({ hour, ...timesOf('sawing') }).optional(),
    edging: z.strictObject({ hour, ...timesOf('edging') }).optional(),
    drilling: z.strictObject({ hour, ...timesOf('drilling') }).optional(),
    'hand work': z.strictObject({ hour, ...timesOf('hand work') }).optional(),
    assembly: z
      .strictObject({
        hour,
        ...timesOf('assembly'),
        units: z.record(fields.id, time).optional().meta({
          description: 'times of single units, by id, in place of the one for every unit',
        }),
      })
      .optional(),
    charge: z
      .strictObject({
        sheets: z.enum(['whole', 'share']).optional().meta({
          description: 'share: without the area of the offcuts that are kept',
        }),
        edging: z.enum(['metres', 'rolls']).optional(),
        fittings: z.enum(['pieces', 'packs']).optional(),
      })
      .optional()
      .meta({ description: 'how material is charged; left out: whole sheets, metres and pieces' }),
    'mark-up': z.strictObject({ material: percent.optional(), work: percent.optional() }).optional().meta({
      description: 'percent that is added to the cost of material and of work',
    }),
    VAT: percent.optional().meta({ description: 'value added tax, percent' }),
    'valid days': fields.wholeFromOne
      .lte(3650)
      .optional()
      .meta({ description: 'how long an estimate holds' }),
    extras: z.record(fields.id, extra).optional().meta({ description: 'anything else, such as carriage' }),
  })
  .meta({ title: 'rates.yaml', description: 'What an estimate reckons with: times of work, hours, mark-up' });

export type RatesFile = z.infer<typeof ratesFile>;
