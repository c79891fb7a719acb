import { z } from 'zod';
import { panelAspects } from './furniture.ts';

/**
 * The plan file: everything needed to saw a job and to prove that it can be sawn, in millimetres with at most
 * three decimals (whole micrometres). It is written by `cutPlans`, and read by `replay`, drawings and documents.
 *
 * A sheet lies with its length along x and its width along y; its near left corner is the origin.
 * Every cut goes right across the piece in hand.
 */

const millimetres = z.number().min(0).max(100_000).describe('millimetres, at most three decimals');
const identity = z.string().min(1).max(300);
const count = z.number().int().min(1).max(1_000_000);

export const trimStep = z
  .strictObject({
    cut: z.literal('trim'),
    piece: identity.describe('the piece in hand'),
    side: z.enum(['left', 'right', 'near', 'far']).describe('which side of the piece is cleaned'),
    take: millimetres.describe(
      'how much the piece loses on that side, kerf included: just the trim that the stock states for it',
    ),
    leaves: identity.describe('what the piece is called from now on'),
  })
  .describe('takes a rough edge off a sheet, once on each side that has a trim, before any other cut');

export const partingStep = z
  .strictObject({
    cut: z
      .enum(['rip', 'crosscut', 'recut', 'part'])
      .describe(
        'rip or crosscut: by the way of the blade, as long as the way changes no more than once; recut: any cut after that; part: a matched blank is divided into its fronts, and nothing else of it is cut',
      ),
    piece: identity.describe('what was not divided yet; every name of a piece is new on its sheet'),
    blade: z
      .enum(['length', 'width'])
      .describe('the blade runs along this side of the sheet; a rip runs along the length'),
    fence: millimetres.describe(
      'from the near (blade along the length) or left edge of the piece to the cut',
    ),
    gives: z
      .array(identity)
      .min(1)
      .max(2)
      .describe(
        'the piece between edge and cut, as wide as the fence setting; then what is left beyond the kerf, if any',
      ),
    take: millimetres.describe('how wide a strip goes to dust: the kerf, or less where the cut only scrapes'),
  })
  .describe('divides a piece in two, or scrapes off less than the blade is wide');

const spareLength = millimetres.describe('size along the length of the sheet');
const spareWidth = millimetres.describe('size along the width of the sheet');

export const ending = z.discriminatedUnion('is', [
  z.strictObject({
    is: z.literal('panel'),
    piece: identity,
    panel: identity.describe('id of the panel in the list of the group'),
    lengthAlong: z.enum(['length', 'width']).describe("the panel's length lies along this side of the sheet"),
  }),
  z.strictObject({ is: z.literal('offcut'), piece: identity, length: spareLength, width: spareWidth }),
  z.strictObject({ is: z.literal('waste'), piece: identity, length: spareLength, width: spareWidth }),
]);

export const planSheet = z.strictObject({
  number: count.describe('number of the cut plan within the group, from 1'),
  stock: identity.describe('id in the stock of the group'),
  copies: count.describe('how many sheets are cut in just this way'),
  start: identity.describe('name of the raw sheet, before its first cut'),
  steps: z.array(z.discriminatedUnion('cut', [trimStep, partingStep])).max(100_000),
  pieces: z.array(ending).max(100_000).describe('every piece that is left when all steps are done'),
});

export const planStack = z
  .strictObject({
    times: count.describe('how many stacks are made up alike'),
    sheets: z
      .array(
        z.strictObject({
          number: count.describe('number of the cut plan, once in a stack'),
          copies: count.describe('how many of its sheets lie in one such stack'),
        }),
      )
      .min(1)
      .max(10_000),
  })
  .describe(
    'two sheets or more of one size whose steps are the same, pieces by the same names, that lie on each other and are sawn together; which panels the pieces are may differ',
  );

const along = z.tuple([millimetres, millimetres]);

/** What is cut by hand from a panel once the saw has cut it free, from its corner at length 0 and width 0 as sawn. */
export const planHandWork = z
  .strictObject({
    outline: z
      .array(along)
      .min(3)
      .max(10_000)
      .optional()
      .describe(
        'corners [along the length, along the width], counter-clockwise with the length to the right',
      ),
    openings: z.array(
      z.strictObject({
        name: z.string().max(300),
        length: along.describe('from and to along the length'),
        width: along,
        kept: z
          .strictObject({ length: millimetres, width: millimetres })
          .optional()
          .describe('the piece that falls out is squared up to this and kept'),
      }),
    ),
  })
  .describe('the outline along a wall, and openings');

/** Which pieces of a panel these are, where lists and labels do not count them from the plan itself. */
export const planLabel = z
  .strictObject({
    number: count.describe('the number of the panel in lists and on labels'),
    pieces: z
      .array(count)
      .min(1)
      .max(100_000)
      .describe(
        'which of the pieces that are alike, one for each that is sawn, as on their labels; no two of a plan have the same number and piece',
      ),
    of: count.describe(
      'how many pieces the order has of it; fewer than the number of a piece where the order was changed',
    ),
  })
  .describe('absent: the place in the list of all panels from 1, and its pieces from 1');

export const planPanel = z.strictObject({
  id: identity,
  name: z.string().max(300),
  unit: z.string().max(300),
  order: z.string().max(300),
  length: millimetres.describe('cut size along the grain, in whole tenths of a millimetre'),
  width: millimetres.describe('cut size, in whole tenths of a millimetre'),
  finishedLength: millimetres,
  finishedWidth: millimetres,
  count,
  grain: z
    .enum(['length', 'none'])
    .describe("length: the sheet's grain, if it has any, must run along the panel's length"),
  edging: z.strictObject({
    alongLength: z.tuple([identity.nullable(), identity.nullable()]),
    alongWidth: z.tuple([identity.nullable(), identity.nullable()]),
  }),
  byHand: planHandWork.optional(),
  label: planLabel.optional(),
});

export const planStock = z.strictObject({
  id: identity,
  kind: z.enum(['sheet', 'offcut']),
  length: millimetres.describe('before its trims, in whole tenths of a millimetre'),
  width: millimetres.describe('before its trims, in whole tenths of a millimetre'),
  grain: z.enum(['length', 'width', 'none']).describe('which side the grain runs along'),
  price: z.number().int().min(0).describe('minor units of the currency'),
  count: z.number().int().min(0).nullable().describe('how many there are; null: as many as are wanted'),
  trim: z
    .strictObject({ left: millimetres, right: millimetres, near: millimetres, far: millimetres })
    .describe('what each side loses before any other cut, in whole tenths of a millimetre'),
});

export const planRun = z
  .strictObject({
    name: identity,
    follows: z.enum(['length', 'width']),
    panels: z.array(identity).min(2),
  })
  .describe(
    'panels that must come from one blank, so that the grain runs on through them: in this order from the left or near edge on, a kerf apart, all with their length along the same side of the sheet and level with the near or left edge of the blank; a blank gives one of each, and a panel is in one run only',
  );

const priceCertificates = [
  z.strictObject({ method: z.literal('area') }),
  z.strictObject({
    method: z.literal('dual feasible function'),
    function: z.string(),
    parameter: z.number().int(),
    across: z.strictObject({ function: z.string(), parameter: z.number().int() }),
    sheet: z.number().int().min(0),
  }),
  z.strictObject({
    method: z.literal('pattern prices'),
    denominator: z.number().int().positive(),
    prices: z.array(z.number().int().min(0)).readonly(),
    sheetValues: z.array(z.number().int().min(0)).readonly(),
    limited: z.array(z.number().int().min(0)).readonly(),
    grid: z.number().int().positive(),
  }),
] as const;

export const planBound = z.strictObject({
  sheets: z.number().int().min(0).describe('no plan takes fewer sheets'),
  cost: z.number().int().min(0).describe('no plan costs less'),
  certificate: z.discriminatedUnion('method', [
    ...priceCertificates,
    z
      .strictObject({
        method: z.literal('together'),
        parts: z.array(z.discriminatedUnion('method', priceCertificates)).min(1).readonly(),
        tooFew: z
          .array(z.array(z.number().int().min(0)).readonly())
          .readonly()
          .optional()
          .describe(
            'numbers of sheets by stock: trying every way to part the pieces shows that they do not suffice',
          ),
      })
      .describe('sets of prices of which a plan must meet each'),
  ]),
});

export const planGroup = z.strictObject({
  id: identity,
  board: z.string(),
  finish: z.string(),
  thickness: millimetres.describe('0: not known, and then nothing is stacked'),
  saw: z.strictObject({
    name: z.string(),
    kerf: millimetres.describe('how wide the blade cuts, in whole tenths of a millimetre'),
    firstCut: z.enum(['rip', 'crosscut', 'either']).describe('what the first cut after the trims must be'),
    turns: z
      .number()
      .int()
      .min(0)
      .nullable()
      .describe(
        'how often the way of the blade may change from the first cut of a sheet to the last cut of any piece; trims and the parting of blanks do not count; null: any number',
      ),
    smallestPart: millimetres
      .optional()
      .describe('no panel and no strip at the fence is narrower; absent: any'),
    longestCut: millimetres.nullable().optional().describe('no cut, trims included, is longer; absent: any'),
    cuttingHeight: millimetres
      .nullable()
      .optional()
      .describe('no stack of sheets is higher; absent or null: sheets are sawn one by one'),
    leastOffcut: z
      .strictObject({ length: millimetres, width: millimetres })
      .optional()
      .describe(
        'the smallest offcut that the search keeps, either way round; a plan that lists a smaller one can be sawn all the same',
      ),
    guidedBy: z
      .enum(['fence', 'rail'])
      .optional()
      .describe(
        'rail: a hand-held saw on a rail, whose edge is laid on a line as far from the edge of the piece as `fence` says, on the side measured from; no cut depends on it; absent: a fence',
      ),
  }),
  panels: z.array(planPanel).max(1_000_000),
  runs: z.array(planRun),
  pricedBy: z
    .enum(['price', 'area'])
    .describe(
      'area: some sheet has no price, so every price of the group stands for the area of the sheet in mm²; it serves to compare, is no money, and nothing follows from it for the size',
    ),
  stock: z.array(planStock),
  sheets: z.array(planSheet),
  stacks: z
    .array(planStack)
    .max(100_000)
    .optional()
    .describe('sheets in no stack, and all of a plan without stacks, are sawn one by one'),
  bound: planBound,
  proved: z.boolean().describe('true: the sheets cost no more than the bound; false claims nothing'),
});

const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** A sheet of an earlier plan that was sawn: which of those cut alike, from 1. */
export const sawnCopies = z.strictObject({
  group: identity,
  number: count.describe('number of the cut plan in its group'),
  copies: z.array(count).min(1).max(100_000).describe('which of the sheets cut alike, from 1, rising'),
});

/** What a plan takes over from the one it goes on from. */
export const planBefore = z
  .strictObject({
    plan: hash.describe('SHA-256 of the plan file that this one goes on from'),
    earlier: z.array(hash).max(10_000).optional().describe('those before that one, the oldest first'),
    job: identity.describe('name of the job on the labels of its panels'),
    title: z.string().max(300).describe('the order or list that the first plan was made for'),
    name: identity.describe('name of this plan, on the labels of its own offcuts'),
  })
  .describe('a later plan of a job: its panels keep their numbers and labels');

/** Why panels are sawn once more. */
export const planRecut = z
  .strictObject({
    number: count.describe('which recut of the job, from 1'),
    why: z.string().max(2000),
    spoiled: z.array(identity).min(1).max(100_000).describe('texts of the labels of the spoiled panels'),
  })
  .describe('panels that were spoiled and are cut anew');

/** What was sawn by earlier plans before the order was changed, and what becomes of it. */
export const planSawn = z
  .strictObject({
    part: count.describe('which plan of the order, the first being 1'),
    sheets: z.array(sawnCopies).max(100_000).describe('sheets of the plan before that are sawn'),
    groups: z.array(
      z.strictObject({
        id: identity,
        board: z.string(),
        finish: z.string(),
        thickness: millimetres,
        panels: z
          .array(
            planPanel.extend({
              label: planLabel,
              codes: z.array(identity).min(1).describe('texts of the labels on the sawn pieces'),
              differs: z
                .array(z.enum(panelAspects))
                .describe('what the order has otherwise since: edging, openings and the like'),
            }),
          )
          .max(100_000)
          .describe('panels of the order that are sawn already'),
        left: z
          .array(
            z.strictObject({
              code: identity.describe('text of its label'),
              name: z.string().max(300),
              unit: z.string().max(300),
              length: millimetres.describe('cut size, as it was listed'),
              width: millimetres,
              grain: z.enum(['length', 'width', 'none']).describe('which of the two the grain runs along'),
              kept: z.boolean().describe('it is large enough to be an offcut'),
            }),
          )
          .max(100_000)
          .describe('sawn panels that the order no longer has'),
      }),
    ),
  })
  .describe('what is sawn already; the groups of the plan have the rest');

export const planFile = z
  .strictObject({
    format: z.literal('plywright plan'),
    version: z.literal(1),
    job: z.string().max(300).describe('the order or list it was made for'),
    currency: z.string().max(10),
    seed: z.number().int().min(0),
    before: planBefore.optional(),
    recut: planRecut.optional(),
    sawn: planSawn.optional(),
    groups: z.array(planGroup),
  })
  .describe('plywright plan file, version 1');

export type PlanFile = z.infer<typeof planFile>;
export type PlanLabel = z.infer<typeof planLabel>;
export type PlanBefore = z.infer<typeof planBefore>;
export type PlanRecut = z.infer<typeof planRecut>;
export type PlanSawn = z.infer<typeof planSawn>;
export type SawnCopies = z.infer<typeof sawnCopies>;
export type PlanGroup = z.infer<typeof planGroup>;
export type PlanSheet = z.infer<typeof planSheet>;
export type PlanStep = PlanSheet['steps'][number];
export type PlanEnding = z.infer<typeof ending>;
export type PlanStack = z.infer<typeof planStack>;
export type PlanPanel = z.infer<typeof planPanel>;
export type PlanStock = z.infer<typeof planStock>;
