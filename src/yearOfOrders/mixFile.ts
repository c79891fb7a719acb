import { z } from 'zod';
import { fileVersion } from '../basics/fileVersion.ts';
import { checkedValue } from '../basics/findings.ts';
import { readPlacedYaml } from '../basics/placedYaml.ts';
import { partsOfSetting, SETTING_EXPECTED } from '../basics/settingText.ts';
import { checkShape } from '../basics/shape.ts';
import { fields } from '../basics/yamlFields.ts';
import type { Checked } from '../model/finding.ts';
import type { OrderMix } from '../model/yearOfOrders.ts';

const MOST_WEEKS = 520;
const MOST_ORDERS = 1000;

const week = z
  .number({ error: `a week from 1 to ${MOST_WEEKS}` })
  .int()
  .gte(1)
  .lte(MOST_WEEKS);
const setting = z
  .string({ error: SETTING_EXPECTED })
  .refine((text) => partsOfSetting(text) !== undefined, { error: SETTING_EXPECTED });

const entry = z.strictObject({
  order: z.string({ error: 'the path of an order file, from the folder of this one' }).min(1).max(500),
  count: z
    .number({ error: `a whole number from 1 to ${MOST_ORDERS}` })
    .int()
    .gte(1)
    .lte(MOST_ORDERS)
    .optional()
    .meta({ description: 'how many come, in weeks that the seed draws; 1 where no weeks are given' }),
  weeks: z
    .array(week)
    .min(1)
    .max(MOST_ORDERS)
    .optional()
    .meta({ description: 'the weeks in which they came, in place of a count; a week may be named again' }),
  set: z.array(setting).max(50).optional().meta({ description: 'what is otherwise, as in bed_width=1300' }),
});

export const mixFile = z
  .strictObject({
    ...fileVersion,
    title: fields.title,
    note: fields.note.optional(),
    weeks: week.optional().meta({ description: 'how many weeks; 52 by default' }),
    'cut together': week
      .optional()
      .meta({ description: 'orders of how many weeks are cut together; 1 by default' }),
    'keep offcuts': z
      .strictObject({
        weeks: week.optional().meta({ description: 'how long; for ever by default' }),
        most: z.number({ error: 'a whole number from 0' }).int().gte(0).lte(10_000).optional().meta({
          description: 'for how many there is room: the largest stay; any number by default',
        }),
      })
      .optional(),
    orders: z.array(entry).min(1).max(200),
  })
  .meta({ title: 'a mix of orders', description: 'What orders come within a year, and how they are cut' });

/** The JSON Schema (draft 2020-12) of a mix of orders. */
export function mixJsonSchema(): string {
  return `${JSON.stringify(z.toJSONSchema(mixFile, { io: 'input' }), null, 2)}\n`;
}

/** A mix of orders from its text; the orders themselves are read by the caller. All that is wrong is told at once. */
export function readMix(text: string, file: string): Checked<OrderMix> {
  const placed = readPlacedYaml(text, file);
  if (placed.yaml === undefined) return { ok: false, findings: placed.findings };
  const { value, findings: wrong } = checkShape(placed.yaml, mixFile, { title: '?', orders: [] });
  const findings = [...placed.findings, ...wrong];
  if (value === undefined) return checkedValue<OrderMix>(undefined, findings);
  const weeks = value.weeks ?? 52;
  for (const each of value.orders) {
    const place = placed.yaml.placeOf(each, each.weeks === undefined ? 'order' : 'weeks');
    const wrongHere = (message: string) =>
      findings.push({ code: 'wrong-weeks', severity: 'error', message, place });
    if (each.weeks !== undefined && each.count !== undefined)
      wrongHere('An order has a count or weeks, not both.');
    if (each.weeks?.some((one) => one > weeks)) wrongHere(`A week is after the last, which is ${weeks}.`);
  }
  const total = value.orders.reduce((sum, each) => sum + (each.weeks?.length ?? each.count ?? 1), 0);
  if (total > MOST_ORDERS) {
    const message = `There are ${total} orders; at most ${MOST_ORDERS} are simulated.`;
    findings.push({ code: 'too-many-orders', severity: 'error', message, place: { file } });
  }
  const mix: OrderMix = {
    title: value.title,
    weeks,
    cutTogetherWeeks: value['cut together'] ?? 1,
    keepWeeks: value['keep offcuts']?.weeks ?? null,
    mostOffcuts: value['keep offcuts']?.most ?? null,
    entries: value.orders.map((each) => ({
      order: each.order,
      set: each.set ?? [],
      comes: each.weeks === undefined ? { count: each.count ?? 1 } : { weeks: each.weeks },
    })),
  };
  return checkedValue(mix, findings);
}
