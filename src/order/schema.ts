import { z } from 'zod';
import { fileVersion } from '../basics/fileVersion.ts';
import { fields } from '../basics/yamlFields.ts';

/** The shape of an order file, spelt as a person writes it. A schema's `error` is its `expected` phrase. */

const { id, identifier, name, title, note, formula, day } = fields;

const set = z.record(identifier, formula);

const role = z.strictObject({
  board: id,
  finish: id,
  edging: id
    .optional()
    .meta({ description: 'an edging, or `none`; left out for the one that fits the finish' }),
});

const change = z.union(
  [
    z.strictObject({ unit: name, set }),
    z.strictObject({ 'leave out': name }),
    z.strictObject({
      add: id,
      as: name,
      at: z.strictObject({ x: formula, y: formula, z: formula }),
      facing: z.enum(['left', 'right', 'front', 'rear']),
      set: set.optional(),
    }),
  ],
  { error: 'a change: { unit, set }, { leave out } or { add, as, at, facing, set }' },
);

export const orderFile = z
  .strictObject({
    ...fileVersion,
    title,
    note: note.optional(),
    library: z.string({ error: 'the name or path of a library' }).min(1).max(500),
    layout: id,
    vehicle: id,
    saw: id,
    count: z.number().int().gte(1).lte(1000).optional(),
    persons: z.number().int().gte(1).lte(100).optional().meta({
      description:
        'who rides in the vehicle, the driver included; by default as the layout says, by its choices or its seats',
    }),
    start: day.optional().meta({ description: 'day on which work on it begins, such as 2026-05-04' }),
    'on the roof': z.number().gt(0).lte(10_000).optional().meta({
      description: 'kg that are to lie on the roof of the vehicle, part of what is loaded',
    }),
    'own sheets': z
      .union([z.literal('all'), z.array(identifier).min(1).max(100)], {
        error: '`all`, or a list of roles such as [front]',
      })
      .optional()
      .meta({
        description: 'roles whose panels share no sheet with other orders when several are cut together',
      }),
    choices: set.optional(),
    roles: z.record(identifier, role),
    changes: z.array(change).optional(),
    'cut-out pieces': z.enum(['kept', 'waste']).optional().meta({
      description: 'whether large pieces that fall out of cut-outs are kept as offcuts; waste by default',
    }),
  })
  .meta({ title: 'an order', description: 'What one customer asked for' });

const roleChange = z.strictObject({
  board: id.optional(),
  finish: id.optional(),
  edging: id.optional().meta({
    description:
      'an edging, or `none`; left out it stays as it is, or fits the finish where board or finish are others',
  }),
});

export const variantFile = z
  .strictObject({
    ...fileVersion,
    'variant of': z
      .string({ error: 'the path of an order file, from the folder of this one' })
      .min(1)
      .max(500)
      .meta({ description: 'the order, or another variant, that this one stands on' }),
    title: title.optional(),
    note: note.optional(),
    vehicle: id.optional(),
    choices: set.optional(),
    roles: z
      .record(identifier, roleChange)
      .optional()
      .meta({ description: 'only the roles that are otherwise, with what of them is' }),
    changes: z.array(change).optional().meta({ description: 'made after those of the order' }),
  })
  .meta({ title: 'a variant', description: 'What is otherwise than in an order' });

export type OrderFile = z.infer<typeof orderFile>;
export type VariantFile = z.infer<typeof variantFile>;
export type RoleField = z.infer<typeof role>;
export type ChangeField = z.infer<typeof change>;
export type RoleChangeField = z.infer<typeof roleChange>;
