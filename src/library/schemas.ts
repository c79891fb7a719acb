import { z } from 'zod';
import { fileVersion } from '../basics/fileVersion.ts';
import { fields } from '../basics/yamlFields.ts';
import { FITTED } from '../model/library.ts';

/** The shapes of a library's files, spelt as a person writes them. A schema's `error` is its `expected` phrase. */

const { id, identifier, name, title, note, size, allowance, coordinate, formula, price, day } = fields;

const extent = z.tuple([formula, formula], { error: 'from and to in brackets, such as [0, width]' });
const span = z.tuple([coordinate, coordinate], { error: 'from and to in brackets, such as [0, 600]' });
const mass = z.number().gte(0).lte(100_000);
const word = z.string({ error: 'a word' }).min(1).max(60);

const cautionText = z.strictObject({
  title,
  text: z.union([fields.note.min(1), z.array(fields.note.min(1)).min(1).max(20)], {
    error: 'a text, or a list of texts',
  }),
});

const cautionUses = z.union([z.array(id).max(50), z.record(id, z.union([z.literal(true), formula]))], {
  error: 'a list such as [gas, heat], or a block that says when each applies, such as { gas: burners > 0 }',
});

export const libraryFile = z
  .strictObject({
    ...fileVersion,
    title,
    note: note.optional(),
    currency: z.string({ error: 'a currency of three capital letters, such as EUR' }).regex(/^[A-Z]{3}$/, {
      error: 'a currency of three capital letters, such as EUR',
    }),
    roles: z.record(identifier, note),
    cautions: z.record(id, cautionText).optional().meta({
      description: 'cautions of its own, for units, fittings and layouts to name beside those of the program',
    }),
    'free days': z
      .array(
        z.union([day, z.strictObject({ from: day, to: day })], {
          error: 'a day such as 2026-12-25, or { from: 2026-12-24, to: 2027-01-01 }',
        }),
      )
      .max(1000)
      .optional()
      .meta({ description: 'days on which nobody works or delivers, beside Saturdays and Sundays' }),
    loads: z.record(identifier, z.number().gte(0).lte(10_000)).optional().meta({
      description: 'kg per m² on level panels of a role that state no load of their own',
    }),
  })
  .meta({
    title: 'library.yaml',
    description: 'What the library is, and the roles an order gives boards for',
  });

const stiffness = z
  .number()
  .gt(0)
  .lte(1_000_000)
  .meta({ description: 'modulus of elasticity in bending along or across the grain of the face, MPa' });

const board = z.strictObject({
  title,
  core: title,
  thickness: size,
  'areal mass': z.number().gt(0).lte(1000).meta({ description: 'kg/m²' }),
  'decorated faces': z.union([z.literal(0), z.literal(1), z.literal(2)], { error: '0, 1 or 2' }),
  'stiffness along': stiffness.optional(),
  'stiffness across': stiffness.optional(),
});

export const boardsFile = z
  .record(id, board)
  .meta({ title: 'boards.yaml', description: 'Boards by id: core and real thickness' });

const finish = z.strictObject({
  title,
  grain: z.boolean().meta({ description: 'whether the finish has a direction that must be kept' }),
  tone: z.number().gte(0).lte(1).meta({ description: 'from 0 (white) to 1 (black), for drawings' }),
  hatch: z.enum(['none', 'lines', 'dots', 'cross', 'wood']),
});

export const finishesFile = z
  .record(id, finish)
  .meta({ title: 'finishes.yaml', description: 'Finishes by id' });

const priceBreak = z.strictObject({
  from: fields.wholeFromOne.meta({ description: 'from how many sheets, rolls or pieces on' }),
  price: price.meta({ description: 'of one sheet, metre or piece, from that number on' }),
});

const bought = {
  supplier: id.optional().meta({ description: 'who sells it: an id of suppliers.yaml' }),
  'price breaks': z
    .array(priceBreak)
    .min(1)
    .max(50)
    .optional()
    .meta({ description: 'prices for larger numbers, by rising number' }),
  'least quantity': fields.wholeFromOne.optional().meta({
    description: 'least that is sold at a time: sheets, rolls of edging, pieces of a fitting',
  }),
};

const supplier = z.strictObject({
  title,
  contact: z
    .union([fields.note.min(1), z.array(title).min(1).max(10)], { error: 'a text, or a list of lines' })
    .optional()
    .meta({ description: 'address, customer number: lines for the head of a request' }),
  'delivery days': z
    .number()
    .int()
    .gte(0)
    .lte(400)
    .meta({ description: 'working days from the order to the day on which the goods are there' }),
  'least order value': price.optional().meta({ description: 'orders below it are not taken' }),
  'delivery price': price.optional().meta({ description: 'asked for bringing the goods' }),
  'free delivery from': price
    .optional()
    .meta({ description: 'value of the goods from which on nothing is asked for bringing them' }),
});

export const suppliersFile = z
  .record(id, supplier)
  .meta({ title: 'suppliers.yaml', description: 'Suppliers by id: delivery and least order value' });

const edging = z.strictObject({
  title,
  finish: id,
  thickness: size,
  width: size,
  deducted: z.boolean().meta({ description: 'whether the sawn size is made smaller by its thickness' }),
  'pre-milling': allowance,
  overlength: allowance,
  'mass per metre': mass.meta({ description: 'kg/m' }),
  'price per metre': price,
  roll: z.number().gt(0).lte(10_000).meta({ description: 'length of a roll in m' }),
  ...bought,
});

export const edgingsFile = z.record(id, edging).meta({ title: 'edgings.yaml', description: 'Edgings by id' });

const fitting = z.strictObject({
  title,
  mass: mass.meta({ description: 'of one piece, kg' }),
  price: price.meta({ description: 'of one piece' }),
  pack: fields.wholeFromOne.meta({ description: 'how many come in a pack; only whole packs are bought' }),
  ...bought,
  where: note.optional().meta({
    description: 'where it goes, for one that no hole says it of, unless the unit says it otherwise',
  }),
  fitted: z.enum(FITTED).optional().meta({
    description: 'when it is put on; screws with the joints and others once the carcass stands where absent',
  }),
  cautions: z
    .array(id)
    .max(50)
    .optional()
    .meta({ description: 'what a unit with this fitting needs care with' }),
  screw: z
    .strictObject({
      length: size,
      through: size.meta({ description: 'diameter of the hole through the panel that it holds' }),
      into: size.meta({ description: 'diameter of the hole in the panel behind, in which its thread holds' }),
    })
    .optional()
    .meta({ description: 'of a screw from panel to panel, the holes that it takes' }),
});

export const fittingsFile = z
  .record(id, fitting)
  .meta({ title: 'fittings.yaml', description: 'Fittings by id' });

const drilled = z.union([z.literal('through'), size], { error: '`through`, or a depth such as 13' });

export const drillingFile = z
  .record(
    id,
    z.strictObject({
      title,
      holes: z.record(
        name,
        z.strictObject({ along: coordinate, across: coordinate, diameter: size, depth: drilled }),
      ),
    }),
  )
  .meta({ title: 'drilling.yaml', description: 'Patterns of holes by id, as for the cup of a hinge' });

const airArea = z.number().gt(0).lte(100_000);

const appliance = z.strictObject({
  title,
  width: size,
  depth: size,
  height: size,
  opening: z.strictObject({ width: size, depth: size }).optional().meta({
    description: 'of one that hangs in a worktop by its rim: the least opening that its body goes through',
  }),
  clear: z
    .strictObject({
      left: allowance.optional(),
      right: allowance.optional(),
      front: allowance.optional(),
      back: allowance.optional(),
      above: allowance.optional(),
      below: allowance.optional(),
    })
    .optional()
    .meta({ description: 'what its manual wants free of boards and walls, straight out from each side' }),
  door: z.enum(['left', 'right', 'top', 'bottom']).optional().meta({
    description: 'the edge of its front about which its door opens',
  }),
  air: z
    .strictObject({ in: airArea.optional(), out: airArea.optional() })
    .optional()
    .meta({ description: 'free area of the openings that its manual wants, cm²' }),
  mass: mass.optional().meta({ description: 'empty, kg; left out where it is not known' }),
  cautions: z
    .array(id)
    .max(50)
    .optional()
    .meta({ description: 'what a unit with this appliance needs care with' }),
});

export const appliancesFile = z.record(id, appliance).meta({
  title: 'appliances.yaml',
  description: 'Appliances by id: the size and mass of each and the room that its manual asks for',
});

const sheet = z.strictObject({
  id,
  board: id,
  finish: id,
  length: size,
  width: size,
  grain: fields.grainSide.meta({ description: 'along which side the grain runs' }),
  price,
  count: fields.wholeFromOne.optional().meta({ description: 'how many can be had; left out for any number' }),
  pack: fields.wholeFromOne
    .optional()
    .meta({ description: 'how many come in a pack, of which only whole ones are sold; 1 by default' }),
  ...bought,
});

export const sheetsFile = z.array(sheet).meta({
  title: 'sheets.yaml',
  description: 'Sheets that can be bought, one entry a size, board and finish',
});

const trimSides = z.strictObject({ left: allowance, right: allowance, near: allowance, far: allowance });

const saw = z.strictObject({
  title,
  kerf: allowance,
  trim: z.union([allowance, trimSides], {
    error: 'a length for all sides, or a block of left, right, near and far',
  }),
  'first cut': z.enum(['rip', 'crosscut', 'either']),
  turns: z.number().int().gte(0).lte(100).optional(),
  'smallest part': allowance,
  'least offcut': z.strictObject({ length: size, width: size }),
  'longest cut': size.optional(),
  'cutting height': size.optional(),
  'guided by': z.enum(['fence', 'rail']).optional().meta({
    description:
      'what guides the cut: a fence along which pieces are pushed (the usual), or a rail that is laid on the piece for a hand-held saw; cut plans and steps speak of it, and no plan depends on it',
  }),
});

export const sawsFile = z.record(id, saw).meta({ title: 'saws.yaml', description: 'Saws by id' });

const spanBox = z.strictObject({ x: span, y: span, z: span });

export const vehicleFile = z
  .strictObject({
    title,
    note: note.optional(),
    'inside length': size,
    'inside height': size,
    'overall length': size.optional(),
    payload: z
      .number()
      .gt(0)
      .lte(100_000)
      .meta({
        description:
          'kg beside the mass in running order, which has the driver in it: for conversion, passengers and load; left out for a room',
      })
      .optional(),
    'roof bears': z.number().gt(0).lte(10_000).optional().meta({
      description: 'kg that may lie on the roof; on one that opens, while it is open',
    }),
    widths: z.array(z.strictObject({ height: allowance, width: size })).min(1),
    'wheel arches': z.record(name, spanBox).optional(),
    doors: z.record(name, spanBox).optional(),
    obstacles: z.record(name, spanBox).optional().meta({
      description: 'anything else that furniture must not stand in: a pillar, a chimney, a step',
    }),
  })
  .meta({
    title: 'vehicles/<id>.yaml',
    description: 'A vehicle, or a room: its inside, wheel arches and doors',
  });

const parameter = z.strictObject({
  default: formula,
  least: formula.optional(),
  most: formula.optional(),
  counts: z.boolean().optional().meta({ description: 'true for a number of things, not millimetres' }),
  choices: z.array(word).min(1).max(100).optional(),
  note: note.optional(),
});

const parameters = z.record(identifier, parameter);
const names = z.record(identifier, formula);
const must = z.strictObject({ that: formula, says: fields.note });
const musts = z.array(must);
const at = z.strictObject({ x: formula, y: formula, z: formula });
const set = z.record(identifier, formula);
const repeat = z.record(identifier, formula).meta({ description: 'counter: how many, such as i: shelves' });

export const FACES = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;
const face = z.enum(FACES);

const cutOut = z.strictObject({
  x: extent.optional(),
  y: extent.optional(),
  z: extent.optional(),
  when: formula.optional(),
});

const hole = z.strictObject({
  at: z
    .strictObject({ x: formula.optional(), y: formula.optional(), z: formula.optional() })
    .meta({ description: "the middle, in the unit's frame: the two axes of the panel's sides" }),
  from: face.meta({ description: 'the broad face that the drill enters' }),
  diameter: formula.optional(),
  depth: formula.optional().meta({ description: '`through`, or how deep' }),
  drill: id.optional().meta({ description: 'a pattern of drilling.yaml, in place of diameter and depth' }),
  screw: id.optional().meta({
    description:
      'a screw of fittings.yaml, in place of diameter and depth: right through, and on into the panel behind',
  }),
  towards: face.optional().meta({ description: 'the edge that the pattern’s `along` points to' }),
  when: formula.optional(),
  repeat: repeat.optional(),
});

const heldBy = z.record(name, formula).meta({
  description: 'panels that hold this one by fittings, with the gap that these bridge',
});

const followsWall = z.partialRecord(z.enum(['left', 'right', 'front', 'back']), formula).meta({
  description: 'edges that take their shape from the wall, with the allowance left on for scribing',
});

const panel = z.strictObject({
  role: identifier,
  x: extent,
  y: extent,
  z: extent,
  grain: z.enum(['x', 'y', 'z', 'any']),
  edging: z
    .union([z.literal('all'), z.array(face)], { error: '`all`, or a list of faces such as [front, left]' })
    .optional(),
  'let into': z.record(name, formula).optional(),
  'held by': heldBy.optional(),
  when: formula.optional(),
  repeat: repeat.optional(),
  'cut-outs': z.record(name, cutOut).optional(),
  holes: z.record(name, hole).optional(),
  match: name.optional(),
  'follows wall': followsWall.optional(),
  load: formula.optional().meta({ description: 'what it is to bear, spread evenly, kg' }),
});

const use = {
  unit: id,
  at,
  set: set.optional(),
  when: formula.optional(),
  repeat: repeat.optional(),
};

const innerUnit = z.strictObject({ ...use, 'held by': heldBy.optional() });

const fittingWhere = note.meta({
  description:
    'where they go, for those that no hole says it of: “first 30 mm from the top, then every 350 mm”',
});

const fittingUse = z.union(
  [formula, z.strictObject({ count: formula, when: formula.optional(), where: fittingWhere.optional() })],
  { error: 'how many, as a number or formula, or a block of count, when and where' },
);

const airWay = z.record(name, name).meta({
  description: 'openings that the air passes one after the other: panel and the name of its cut-out',
});

const applianceUse = z.strictObject({
  appliance: formula.meta({ description: 'an appliance of appliances.yaml, or a formula that comes to one' }),
  at: at.meta({ description: 'the left front lower corner of its body' }),
  through: z.array(name).min(1).max(20).optional().meta({ description: 'panels in whose opening it hangs' }),
  'air in': airWay.optional(),
  'air out': airWay.optional(),
  when: formula.optional(),
});

const assemblyNames = z.array(name).min(1).max(500);
const assemblyStep = z
  .strictObject({
    begin: assemblyNames.optional().meta({ description: 'what stands or lies there first' }),
    put: assemblyNames.optional().meta({ description: 'joined to what is there' }),
    'slide in': assemblyNames.optional().meta({ description: 'pushed into grooves' }),
    apart: assemblyNames.optional().meta({ description: 'made for itself, put to the rest by a later step' }),
    'lift in': assemblyNames.optional().meta({ description: 'made for itself and set in its place' }),
    'to the body': assemblyNames.optional().meta({ description: 'fixed to wall or body before the rest' }),
    'to its neighbours': assemblyNames.optional().meta({ description: 'fixed to the units beside this one' }),
    hang: assemblyNames.optional().meta({ description: 'held by hinges or other fittings' }),
    'lay loose': assemblyNames.optional().meta({ description: 'lies in its place and lifts out again' }),
  })
  .meta({ description: 'one step: one way, with the panels that it is for' });

export const unitFile = z
  .strictObject({
    title,
    note: note.optional(),
    parameters: parameters.optional(),
    names: names.optional(),
    outside: z.strictObject({ x: extent, y: extent, z: extent }),
    musts: musts.optional(),
    panels: z.record(name, panel).optional(),
    units: z.record(name, innerUnit).optional(),
    fittings: z.record(id, fittingUse).optional(),
    appliances: z.record(name, applianceUse).optional().meta({ description: 'what it has room for' }),
    assembly: z.array(assemblyStep).min(1).max(50).optional().meta({
      description: 'how it goes together, step by step, where that cannot be read from its boxes',
    }),
    cautions: cautionUses.optional().meta({ description: 'what this unit needs care with' }),
  })
  .meta({
    title: 'units/<id>.yaml',
    description: 'A unit: one piece of furniture, panels as boxes in its frame',
  });

const placedUnit = z.strictObject({ ...use, facing: z.enum(['left', 'right', 'front', 'rear']) });

export const layoutFile = z
  .strictObject({
    title,
    note: note.optional(),
    vehicles: z.array(id).min(1),
    choices: parameters.optional(),
    names: names.optional(),
    units: z.record(name, placedUnit),
    seats: formula.optional().meta({ description: 'how many persons can ride, with the driver' }),
    persons: formula.optional().meta({
      description:
        'how many ride by the choices, with the driver, where an order does not say it; the seats by default',
    }),
    'sleeping places': formula.optional().meta({ description: 'how many persons can sleep in it' }),
    cautions: cautionUses.optional().meta({ description: 'what the whole layout needs care with' }),
    musts: musts.optional(),
  })
  .meta({ title: 'layouts/<id>.yaml', description: 'A layout: which units stand where, in which vehicles' });

export type BoughtField = z.infer<z.ZodObject<typeof bought>>;
export type BoardField = z.infer<typeof board>;
export type ParameterField = z.infer<typeof parameter>;
export type PanelField = z.infer<typeof panel>;
export type CutOutField = z.infer<typeof cutOut>;
export type HoleField = z.infer<typeof hole>;
export type MustField = z.infer<typeof must>;
export type InnerUnitField = z.infer<typeof innerUnit>;
export type PlacedUnitField = z.infer<typeof placedUnit>;
export type ApplianceUseField = z.infer<typeof applianceUse>;
export type FittingField = z.infer<typeof fittingUse>;
export type CautionUsesField = z.infer<typeof cautionUses>;
export type LibraryFile = z.infer<typeof libraryFile>;
export type AssemblyStepField = z.infer<typeof assemblyStep>;
export type UnitFile = z.infer<typeof unitFile>;
export type LayoutFile = z.infer<typeof layoutFile>;
