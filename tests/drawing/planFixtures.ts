import { SeededRandom } from '../../src/basics/random.ts';
import type { PlanEnding, PlanGroup, PlanPanel, PlanSheet, PlanStep } from '../../src/model/plan.ts';

/** A rectangle on the bench of the plan being made, in whole µm so that sums stay exact. */
interface Bench {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

export interface Wanted {
  readonly name: string;
  readonly unit?: string;
  readonly order?: string;
  /** mm along the grain, then across. */
  readonly size: readonly [length: number, width: number];
  readonly count?: number;
  readonly grain?: 'length' | 'none';
  /** Edges with edging, of `near far left right` as the panel lies with its length along the sheet's. */
  readonly edged?: string;
  readonly edging?: string;
}

const um = (mm: number) => Math.round(mm * 1000);
const mm = (value: number) => value / 1000;

export function panelOf(wanted: Wanted, index: number): PlanPanel {
  const edging = wanted.edging ?? 'white 0.8';
  const on = (side: string) => ((wanted.edged ?? '').includes(side) ? edging : null);
  return {
    id: `p${index + 1}`,
    name: wanted.name,
    unit: wanted.unit ?? '',
    order: wanted.order ?? 'demo',
    length: wanted.size[0],
    width: wanted.size[1],
    finishedLength: wanted.size[0],
    finishedWidth: wanted.size[1],
    count: wanted.count ?? 1,
    grain: wanted.grain ?? 'length',
    edging: { alongLength: [on('near'), on('far')], alongWidth: [on('left'), on('right')] },
  };
}

export interface StockOf {
  readonly length?: number;
  readonly width?: number;
  readonly trim?: number;
  readonly kerf?: number;
  readonly grain?: 'length' | 'width' | 'none';
  readonly kind?: 'sheet' | 'offcut';
}

export function emptyGroup(stock: StockOf, panels: readonly PlanPanel[]): PlanGroup {
  const trim = stock.trim ?? 10;
  return {
    id: 'poplar-15-white',
    board: 'poplar ply, laminated',
    finish: 'matt white',
    thickness: 15.4,
    saw: { name: 'workshop panel saw', kerf: stock.kerf ?? 3.2, firstCut: 'either', turns: null },
    panels: [...panels],
    runs: [],
    pricedBy: 'price',
    stock: [
      {
        id: 'sheet',
        kind: stock.kind ?? 'sheet',
        length: stock.length ?? 2440,
        width: stock.width ?? 1220,
        grain: stock.grain ?? 'length',
        price: 9000,
        count: null,
        trim: { left: trim, right: trim, near: trim, far: trim },
      },
    ],
    sheets: [],
    bound: { sheets: 1, cost: 9000, certificate: { method: 'area' } },
    proved: false,
  };
}

/** Makes the steps of one sheet cut by cut, keeping track of the pieces on the bench. */
export class PlanMaker {
  readonly steps: PlanStep[] = [];
  readonly pieces: PlanEnding[] = [];
  private made = 0;
  private readonly kerf: number;

  constructor(kerfMm: number) {
    this.kerf = um(kerfMm);
  }

  private name(): string {
    this.made++;
    return String(this.made);
  }

  trim(piece: Bench, side: 'left' | 'right' | 'near' | 'far', takeMm: number): Bench {
    const leaves = this.name();
    const take = um(takeMm);
    this.steps.push({ cut: 'trim', piece: piece.name, side, take: takeMm, leaves });
    const alongX = side === 'left' || side === 'right';
    return { name: leaves, x: alongX ? piece.x - take : piece.x, y: alongX ? piece.y : piece.y - take };
  }

  /** Cuts `fence` µm off a piece; the second piece is null when the blade takes the rest. */
  part(
    piece: Bench,
    blade: 'length' | 'width',
    fence: number,
    cut: 'rip' | 'crosscut' | 'recut' | 'part',
  ): [Bench, Bench | null] {
    const size = blade === 'length' ? piece.y : piece.x;
    const rest = size - fence - this.kerf;
    const names = rest > 0 ? [this.name(), this.name()] : [this.name()];
    const take = mm(Math.min(this.kerf, size - fence));
    this.steps.push({ cut, piece: piece.name, blade, fence: mm(fence), gives: names, take });
    const like = (name: string, across: number): Bench =>
      blade === 'length' ? { name, x: piece.x, y: across } : { name, x: across, y: piece.y };
    return [like(names[0]!, fence), rest > 0 ? like(names[1]!, rest) : null];
  }

  panel(piece: Bench, panel: string, lengthAlong: 'length' | 'width'): void {
    this.pieces.push({ is: 'panel', piece: piece.name, panel, lengthAlong });
  }

  spare(piece: Bench): void {
    const offcut = Math.min(piece.x, piece.y) >= 200_000 && Math.max(piece.x, piece.y) >= 300_000;
    const size = { length: mm(piece.x), width: mm(piece.y) };
    this.pieces.push({ is: offcut ? 'offcut' : 'waste', piece: piece.name, ...size });
  }
}

/**
 * A plan in strips for a list of panels, as many as fit: not a good nest, but one that looks like a workshop's. Sizes
 * run along the sheet's length unless the panel has no grain and is narrower than long.
 */
export function stripPlan(
  wanted: readonly Wanted[],
  stock: StockOf = {},
  more: Partial<Pick<PlanSheet, 'copies' | 'number'>> = {},
): { group: PlanGroup; sheet: PlanSheet } {
  const panels = wanted.map(panelOf);
  const group = emptyGroup(stock, panels);
  const trim = stock.trim ?? 10;
  const kerf = um(stock.kerf ?? 3.2);
  const maker = new PlanMaker(stock.kerf ?? 3.2);
  const sheet = group.stock[0]!;
  let rest: Bench | null = { name: 'sheet', x: um(sheet.length), y: um(sheet.width) };
  if (trim > 0)
    for (const side of ['left', 'near', 'right', 'far'] as const) rest = maker.trim(rest, side, trim);
  const across = sheet.grain === 'width';
  const queue = panels
    .flatMap((panel) => Array.from({ length: panel.count }, () => panel))
    .map((panel) => ({
      panel,
      x: um(across ? panel.width : panel.length),
      y: um(across ? panel.length : panel.width),
    }))
    .sort((a, b) => b.y - a.y || b.x - a.x);
  while (rest && queue.length > 0) {
    const space: Bench = rest;
    const lead = queue.find((one) => one.y <= space.y && one.x <= space.x);
    if (!lead) break;
    const [strip, after]: [Bench, Bench | null] =
      lead.y === space.y ? [space, null] : maker.part(space, 'length', lead.y, 'rip');
    rest = after;
    let left: Bench | null = strip;
    while (left) {
      const here: Bench = left;
      const at = queue.findIndex((one) => one.y <= here.y && (one.x === here.x || one.x + kerf <= here.x));
      if (at < 0) break;
      const [one] = queue.splice(at, 1);
      const [cut, next]: [Bench, Bench | null] =
        one!.x === here.x ? [here, null] : maker.part(here, 'width', one!.x, 'crosscut');
      left = next;
      const lengthAlong = across ? 'width' : 'length';
      if (one!.y === cut.y) maker.panel(cut, one!.panel.id, lengthAlong);
      else {
        const [piece, off] = maker.part(cut, 'length', one!.y, 'recut');
        maker.panel(piece, one!.panel.id, lengthAlong);
        if (off) maker.spare(off);
      }
    }
    if (left) maker.spare(left);
  }
  if (rest) maker.spare(rest);
  const plan: PlanSheet = {
    number: more.number ?? 1,
    stock: 'sheet',
    copies: more.copies ?? 1,
    start: 'sheet',
    steps: maker.steps,
    pieces: maker.pieces,
  };
  group.sheets.push(plan);
  return { group, sheet: plan };
}

const NAMES = [
  'left side',
  'shelf',
  'door',
  'Rückwand <fest> "oben" & unten',
  'قاع الدرج السفلي',
  'דלת שמאלית',
  'very long name of a panel that somebody typed without any thought for those who must print it',
  'Unbrechbarernameohneleerzeichendernirgendshinpasst',
  '=SUM(A1)',
  "drawer front 'upper'",
  'line\nbreak\tand\u0007bell\u202e',
];

/** A random guillotine plan of any shape: few large or many tiny pieces, drawn from a seed. */
export function randomPlan(seed: number): { group: PlanGroup; sheet: PlanSheet } {
  const random = new SeededRandom(seed);
  const pick = <T>(list: readonly T[]): T => list[random.below(list.length)]!;
  const stock: StockOf = {
    length: 400 + random.below(30) * 100,
    width: 300 + random.below(20) * 100,
    trim: pick([0, 5, 10, 25]),
    kerf: pick([0, 2, 3.2, 4.8]),
    grain: pick(['length', 'width', 'none']),
  };
  const group = emptyGroup(stock, []);
  const maker = new PlanMaker(stock.kerf!);
  const kerf = um(stock.kerf!);
  const trim = stock.trim!;
  let raw: Bench = { name: 'sheet', x: um(stock.length!), y: um(stock.width!) };
  if (trim > 0)
    for (const side of ['left', 'near', 'right', 'far'] as const) raw = maker.trim(raw, side, trim);
  const most = pick([3, 12, 30, 60]);
  const bench: Bench[] = [raw];
  const done: Bench[] = [];
  while (bench.length > 0) {
    const piece = bench.shift()!;
    const blade: 'length' | 'width' = random.below(2) === 0 ? 'length' : 'width';
    const size = blade === 'length' ? piece.y : piece.x;
    if (bench.length + done.length >= most || size < 2 * kerf + 40_000 || random.below(12) === 0) {
      done.push(piece);
      continue;
    }
    const fence = (100 + random.below(Math.max(1, size / 100 - 100 - Math.ceil(kerf / 100)))) * 100;
    const [first, rest] = maker.part(piece, blade, fence, blade === 'length' ? 'rip' : 'crosscut');
    bench.push(first);
    if (rest) bench.push(rest);
  }
  done.forEach((piece, index) => {
    if (random.below(6) === 0) {
      maker.spare(piece);
      return;
    }
    const lengthAlong = stock.grain === 'none' ? pick(['length', 'width'] as const) : stock.grain!;
    const [l, w] = lengthAlong === 'length' ? [piece.x, piece.y] : [piece.y, piece.x];
    const panel = panelOf(
      {
        name: pick(NAMES),
        unit: pick(['', 'galley sink', 'overhead locker, left, rear']),
        size: [mm(l), mm(w)],
        grain: stock.grain === 'none' ? 'none' : pick(['length', 'none']),
        edged: pick(['', 'near', 'near left', 'near far left right']),
        edging: pick(['white 0.8', 'grey 2', 'oak <solid>', 'fourth']),
      },
      index,
    );
    group.panels.push(panel);
    maker.panel(piece, panel.id, lengthAlong);
  });
  const sheet: PlanSheet = {
    number: 1,
    stock: 'sheet',
    copies: 1 + random.below(4),
    start: 'sheet',
    steps: maker.steps,
    pieces: maker.pieces,
  };
  group.sheets.push(sheet);
  return { group, sheet };
}

/** Two rows of matched fronts, one following along the grain and one across it, each parted from its blank last. */
export function matchedPlan(): { group: PlanGroup; sheet: PlanSheet } {
  const all = 'near far left right';
  const panels = [
    panelOf({ name: 'lower door', unit: 'wardrobe', size: [900, 397], edged: all }, 0),
    panelOf({ name: 'upper door', unit: 'wardrobe', size: [500, 397], edged: all }, 1),
    panelOf({ name: 'front 1', unit: 'galley locker', size: [620, 250], edged: all }, 2),
    panelOf({ name: 'front 2', unit: 'galley locker', size: [620, 250], edged: all }, 3),
    panelOf({ name: 'front 3', unit: 'galley locker', size: [620, 250], edged: all }, 4),
  ];
  const group = emptyGroup({}, panels);
  group.runs.push(
    { name: 'wardrobe doors', follows: 'length', panels: ['p1', 'p2'] },
    { name: 'galley locker', follows: 'width', panels: ['p3', 'p4', 'p5'] },
  );
  const maker = new PlanMaker(3.2);
  let raw: Bench = { name: 'sheet', x: um(2440), y: um(1220) };
  for (const side of ['left', 'near', 'right', 'far'] as const) raw = maker.trim(raw, side, 10);
  const [doors, rest] = maker.part(raw, 'length', um(397), 'rip');
  const [doorBlank, doorRest] = maker.part(doors, 'width', um(900 + 3.2 + 500), 'crosscut');
  maker.spare(doorRest!);
  const [fronts, last] = maker.part(rest!, 'length', um(3 * 250 + 2 * 3.2), 'rip');
  if (last) maker.spare(last);
  const [frontBlank, frontRest] = maker.part(fronts, 'width', um(620), 'crosscut');
  maker.spare(frontRest!);
  const [lower, upper] = maker.part(doorBlank, 'width', um(900), 'part');
  maker.panel(lower, 'p1', 'length');
  maker.panel(upper!, 'p2', 'length');
  const [one, others] = maker.part(frontBlank, 'length', um(250), 'part');
  const [two, three] = maker.part(others!, 'length', um(250), 'part');
  maker.panel(one, 'p3', 'length');
  maker.panel(two, 'p4', 'length');
  maker.panel(three!, 'p5', 'length');
  const sheet: PlanSheet = {
    number: 1,
    stock: 'sheet',
    copies: 1,
    start: 'sheet',
    steps: maker.steps,
    pieces: maker.pieces,
  };
  group.sheets.push(sheet);
  return { group, sheet };
}
