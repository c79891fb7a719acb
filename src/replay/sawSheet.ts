import type { Um } from '../model/geometry.ts';
import type { PlanGroup, PlanSheet, PlanStep, PlanStock } from '../model/plan.ts';
import { checkFirstCut } from './firstCut.ts';
import {
  area,
  type Blade,
  type EndPiece,
  type Faults,
  mm,
  type Piece,
  type SizedBy,
  toUm,
} from './pieces.ts';

type Side = 'left' | 'right' | 'near' | 'far';
type TrimStep = PlanStep & { cut: 'trim' };
type PartingStep = Exclude<PlanStep, TrimStep>;

/** One sheet sawn as its plan says, up to the end or to the first cut that cannot be made. */
export interface SawnSheet {
  readonly whole: boolean;
  readonly ends: readonly EndPiece[];
  readonly trimArea: bigint;
  readonly kerfArea: bigint;
  readonly cuts: number;
  readonly sawnUm: Um;
  readonly fenceSettings: number;
  /** Most quarter turns of any piece. */
  readonly turns: number;
  /** How often any piece is turned by a quarter before it is cut; the turns of a sheet for its trims are not counted. */
  readonly pieceTurns: number;
  /** Passes through pieces larger than half of the raw sheet, trims included. */
  readonly heavyCuts: number;
  /** Area in µm² of the larger piece that the first parting gives; 0 where the sheet is not parted. */
  readonly largestParted: bigint;
  /** For each blank that was parted: the piece, and the blade of its first parting. */
  readonly blanks: readonly { readonly piece: Piece; readonly step: number; readonly blade: Blade }[];
}

function bladeOf(firstCut: 'rip' | 'crosscut'): Blade {
  return firstCut === 'rip' ? 'length' : 'width';
}

const SIDES: readonly Side[] = ['left', 'right', 'near', 'far'];

/** A sheet on the saw. Every method but `run` returns false when the step cannot be carried out. */
class Sawing {
  private readonly group: PlanGroup;
  private readonly sheet: PlanSheet;
  private readonly stock: PlanStock;
  private readonly faults: Faults;
  private readonly kerfUm: Um;
  private readonly onTable = new Map<string, Piece>();
  /** Every piece there ever was, by name. */
  private readonly sizes = new Map<string, Piece>();
  private readonly trimmed = new Set<Side>();
  private parted = false;
  private lastFence: number | null = null;
  private trimArea = 0n;
  private kerfArea = 0n;
  private cuts = 0;
  private sawnUm = 0;
  private fenceSettings = 0;
  private turns = 0;
  private pieceTurns = 0;
  private heavyCuts = 0;
  private largestParted = 0n;
  private readonly blanks: { piece: Piece; step: number; blade: Blade }[] = [];

  constructor(group: PlanGroup, sheet: PlanSheet, stock: PlanStock, faults: Faults) {
    this.group = group;
    this.sheet = sheet;
    this.stock = stock;
    this.faults = faults;
    this.kerfUm = toUm(group.saw.kerf);
  }

  private fault(code: string, cut: number, message: string): false {
    this.faults.add(code, message, { sheet: this.sheet.number, cut });
    return false;
  }

  run(): SawnSheet {
    const by: SizedBy = { step: 0, how: 'sheet' };
    this.put({
      name: this.sheet.start,
      x0: 0,
      y0: 0,
      x1: toUm(this.stock.length),
      y1: toUm(this.stock.width),
      xBy: by,
      yBy: by,
      blades: [],
      blank: null,
    });
    let whole = this.sheet.steps.every((step, index) =>
      step.cut === 'trim' ? this.trim(step, index + 1) : this.part(step, index + 1),
    );
    if (whole) whole = this.allTrimsDone(this.sheet.steps.length);
    const ends = whole ? this.sortEnds() : [];
    if (whole) this.checkFirst(ends);
    return {
      whole,
      ends,
      trimArea: this.trimArea,
      kerfArea: this.kerfArea,
      cuts: this.cuts,
      sawnUm: this.sawnUm,
      fenceSettings: this.fenceSettings,
      turns: this.turns,
      pieceTurns: this.pieceTurns,
      heavyCuts: this.heavyCuts,
      largestParted: this.largestParted,
      blanks: this.blanks,
    };
  }

  private checkFirst(ends: readonly EndPiece[]): void {
    const { firstCut } = this.group.saw;
    if (firstCut === 'either') return;
    const { sheet, kerfUm, faults } = this;
    checkFirstCut({ sheet, sizes: this.sizes, ends, kerfUm, wanted: bladeOf(firstCut) }, faults);
  }

  private put(piece: Piece): void {
    this.sizes.set(piece.name, piece);
    this.onTable.set(piece.name, piece);
  }

  private take(name: string, cut: number): Piece | null {
    const piece = this.onTable.get(name);
    if (piece === undefined) {
      const why = this.sizes.has(name) ? 'has already been cut up' : 'does not exist';
      this.fault('no-such-piece', cut, `the piece in hand, "${name}", ${why}`);
      return null;
    }
    this.onTable.delete(name);
    return piece;
  }

  private freeName(name: string, cut: number): boolean {
    if (!this.sizes.has(name)) return true;
    return this.fault('name-used-twice', cut, `there already is or was a piece called "${name}"`);
  }

  private allTrimsDone(cut: number): boolean {
    const missing = SIDES.filter((side) => toUm(this.stock.trim[side]) > 0 && !this.trimmed.has(side));
    if (missing.length === 0) return true;
    return this.fault(
      'trim-missing',
      cut,
      `the ${missing.join(' and ')} side of the sheet has not been trimmed`,
    );
  }

  private trim(step: TrimStep, cut: number): boolean {
    const piece = this.take(step.piece, cut);
    if (piece === null) return false;
    const takeUm = toUm(step.take);
    const { side } = step;
    if (this.parted) return this.fault('trim-late', cut, 'the sheet is trimmed after it has been divided');
    if (this.trimmed.has(side))
      return this.fault('trim-twice', cut, `the ${side} side is trimmed a second time`);
    const dueUm = toUm(this.stock.trim[side]);
    if (takeUm !== dueUm || takeUm === 0) {
      const text = `the trim takes ${mm(takeUm)} off the ${side} side but must take ${mm(dueUm)}`;
      return this.fault('trim-wrong', cut, text);
    }
    const lengthwise = side === 'near' || side === 'far';
    const sizeUm = lengthwise ? piece.y1 - piece.y0 : piece.x1 - piece.x0;
    const alongUm = lengthwise ? piece.x1 - piece.x0 : piece.y1 - piece.y0;
    if (takeUm >= sizeUm) {
      return this.fault('trim-wrong', cut, `the trim takes ${mm(takeUm)} off a piece of only ${mm(sizeUm)}`);
    }
    if (!this.freeName(step.leaves, cut)) return false;
    if (!this.canSaw(alongUm, cut)) return false;
    this.trimmed.add(side);
    this.trimArea += BigInt(takeUm) * BigInt(alongUm);
    this.count(piece, alongUm);
    const by: SizedBy = { step: cut, how: 'trim' };
    this.put({
      ...piece,
      name: step.leaves,
      x0: piece.x0 + (side === 'left' ? takeUm : 0),
      x1: piece.x1 - (side === 'right' ? takeUm : 0),
      y0: piece.y0 + (side === 'near' ? takeUm : 0),
      y1: piece.y1 - (side === 'far' ? takeUm : 0),
      xBy: lengthwise ? piece.xBy : by,
      yBy: lengthwise ? by : piece.yBy,
    });
    return true;
  }

  private canSaw(alongUm: Um, cut: number): boolean {
    const { longestCut } = this.group.saw;
    if (longestCut === undefined || longestCut === null || alongUm <= toUm(longestCut)) return true;
    const text = `the cut is ${mm(alongUm)} long, and the longest cut of this saw is ${mm(toUm(longestCut))}`;
    return this.fault('cut-too-long', cut, text);
  }

  /** Only what is between fence and blade is held there; what falls off at the other side may be narrower. */
  private canHold(fenceUm: Um, piece: Piece, cut: number): boolean {
    const leastUm = toUm(this.group.saw.smallestPart ?? 0);
    if (fenceUm >= leastUm) return true;
    const text = `the strip between fence and blade of piece "${piece.name}" is ${mm(fenceUm)} wide, and this saw holds nothing narrower than ${mm(leastUm)}`;
    return this.fault('strip-too-narrow', cut, text);
  }

  private count(piece: Piece, alongUm: Um): void {
    this.cuts += 1;
    this.sawnUm += alongUm;
    const sheetArea = BigInt(toUm(this.stock.length)) * BigInt(toUm(this.stock.width));
    if (2n * area(piece) > sheetArea) this.heavyCuts += 1;
  }

  /**
   *     near/left edge │← fence →│take│← rest →│
   *
   * The blade takes the kerf, or what there is when less is left beyond the fence.
   */
  private part(step: PartingStep, cut: number): boolean {
    if (!this.parted && !this.allTrimsDone(cut)) return false;
    const piece = this.take(step.piece, cut);
    if (piece === null) return false;
    const isFirst = !this.parted;
    this.parted = true;
    const lengthwise = step.blade === 'length';
    const sizeUm = lengthwise ? piece.y1 - piece.y0 : piece.x1 - piece.x0;
    const alongUm = lengthwise ? piece.x1 - piece.x0 : piece.y1 - piece.y0;
    const fenceUm = toUm(step.fence);
    if (fenceUm <= 0 || fenceUm >= sizeUm) {
      const text = `the fence is at ${mm(fenceUm)} but piece "${piece.name}" is ${mm(sizeUm)} there: the blade would not cut it`;
      return this.fault('fence-outside', cut, text);
    }
    const takeUm = Math.min(this.kerfUm, sizeUm - fenceUm);
    if (!this.checkTake(step, cut, piece, sizeUm, takeUm)) return false;
    if (!this.canSaw(alongUm, cut) || !this.canHold(fenceUm, piece, cut)) return false;
    if (!step.gives.every((name) => this.freeName(name, cut))) return false;
    if (step.gives[0] === step.gives[1]) {
      return this.fault('name-used-twice', cut, `both pieces are called "${step.gives[0]}"`);
    }
    const blades = this.checkStage(step, cut, piece);
    if (blades === null) return false;
    const isTurned = piece.blades.length > 0 && piece.blades.at(-1) !== step.blade;
    // A blank that lies ready for its first parting lies ready for the others.
    if (isTurned && piece.blank === null) this.pieceTurns += 1;
    const blank = step.cut === 'part' ? this.blankOf(piece, step, cut) : piece.blank;
    this.kerfArea += BigInt(takeUm) * BigInt(alongUm);
    this.count(piece, alongUm);
    if (this.lastFence !== fenceUm) this.fenceSettings += 1;
    this.lastFence = fenceUm;
    const atUm = (lengthwise ? piece.y0 : piece.x0) + fenceUm;
    const byFence: SizedBy = { step: cut, how: 'fence' };
    const byRest: SizedBy = { step: cut, how: 'rest' };
    const shared = { ...piece, blades, blank };
    this.put(
      lengthwise
        ? { ...shared, name: step.gives[0]!, y1: atUm, yBy: byFence }
        : { ...shared, name: step.gives[0]!, x1: atUm, xBy: byFence },
    );
    if (step.gives.length === 2) {
      this.put(
        lengthwise
          ? { ...shared, name: step.gives[1]!, y0: atUm + takeUm, yBy: byRest }
          : { ...shared, name: step.gives[1]!, x0: atUm + takeUm, xBy: byRest },
      );
    }
    if (isFirst) this.largestParted = this.largestOf(step.gives);
    return true;
  }

  private largestOf(names: readonly string[]): bigint {
    let most = 0n;
    for (const name of names) {
      const own = area(this.onTable.get(name)!);
      if (own > most) most = own;
    }
    return most;
  }

  private checkTake(step: PartingStep, cut: number, piece: Piece, sizeUm: Um, takeUm: Um): boolean {
    const restUm = sizeUm - toUm(step.fence) - takeUm;
    if (toUm(step.take) !== takeUm) {
      const text = `with the fence at ${mm(toUm(step.fence))} in piece "${piece.name}" of ${mm(sizeUm)} the blade takes ${mm(takeUm)}, not ${mm(toUm(step.take))}`;
      return this.fault('take-wrong', cut, text);
    }
    const expected = restUm > 0 ? 2 : 1;
    if (step.gives.length !== expected) {
      const text =
        expected === 2
          ? `beyond the blade ${mm(restUm)} is left, and the plan does not say what becomes of it`
          : `nothing is left beyond the blade, so there is no piece "${step.gives[1]}"`;
      return this.fault('pieces-wrong', cut, text);
    }
    return true;
  }

  /** Stages of the pieces that this cut gives; null when the saw's rules forbid it or it is called by a wrong name. */
  private checkStage(step: PartingStep, cut: number, piece: Piece): readonly Blade[] | null {
    if (step.cut === 'part') return piece.blades;
    if (piece.blank !== null) {
      this.fault('cut-name-wrong', cut, 'a piece of a matched blank can only be parted further');
      return null;
    }
    const blades = piece.blades.at(-1) === step.blade ? piece.blades : [...piece.blades, step.blade];
    const expected = blades.length >= 3 ? 'recut' : step.blade === 'length' ? 'rip' : 'crosscut';
    if (step.cut !== expected) {
      this.fault('cut-name-wrong', cut, `this is a ${expected}, not a ${step.cut}`);
      return null;
    }
    const { firstCut, turns } = this.group.saw;
    // A sheet that is as wide as its only strip counts as ripped already: the first stage is there, without a cut.
    const skipped = firstCut !== 'either' && blades[0] !== bladeOf(firstCut) ? 1 : 0;
    const turned = blades.length - 1 + skipped;
    this.turns = Math.max(this.turns, turned);
    if (turns !== null && turned > turns) {
      const text = `piece "${piece.name}" has to be turned ${turned} times, and this saw allows ${turns}`;
      this.fault('too-many-turns', cut, text);
      return null;
    }
    return blades;
  }

  private blankOf(piece: Piece, step: PartingStep, cut: number): number {
    if (piece.blank !== null) return piece.blank;
    this.blanks.push({ piece, step: cut, blade: step.blade });
    return this.blanks.length - 1;
  }

  private sortEnds(): EndPiece[] {
    const ends: EndPiece[] = [];
    const at = { sheet: this.sheet.number };
    for (const end of this.sheet.pieces) {
      const piece = this.onTable.get(end.piece);
      if (piece === undefined) {
        const why = this.sizes.has(end.piece) ? 'has been cut up or is listed twice' : 'never comes about';
        this.faults.add('no-such-piece', `piece "${end.piece}" is listed as ${end.is} but ${why}`, at);
        continue;
      }
      this.onTable.delete(end.piece);
      if (end.is === 'panel') {
        ends.push({ piece, is: end.is, panel: end.panel, lengthAlong: end.lengthAlong, stated: null });
      } else {
        const stated = { xUm: toUm(end.length), yUm: toUm(end.width) };
        ends.push({ piece, is: end.is, panel: '', lengthAlong: 'length', stated });
      }
    }
    for (const piece of this.onTable.values()) {
      this.faults.add(
        'piece-left-over',
        `piece "${piece.name}" is left, and the plan does not say what it is`,
        at,
      );
    }
    return ends;
  }
}

/** Saws one sheet in simulation by its plan. Whatever cannot be done goes to `faults`; the first such cut ends it. */
export function sawSheet(group: PlanGroup, sheet: PlanSheet, stock: PlanStock, faults: Faults): SawnSheet {
  return new Sawing(group, sheet, stock, faults).run();
}
