import { printMm, TENTH_MM_UM } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { Um } from '../model/geometry.ts';

export type Blade = 'length' | 'width';

/** How a side of a piece got its length: which step, and whether the fence measured it or it was what was left. */
export interface SizedBy {
  readonly step: number;
  readonly how: 'fence' | 'rest' | 'trim' | 'sheet';
}

/** A rectangle of a sheet in hand; x along the sheet's length, y along its width, in µm from the raw sheet's corner. */
export interface Piece {
  readonly name: string;
  readonly x0: Um;
  readonly y0: Um;
  readonly x1: Um;
  readonly y1: Um;
  readonly xBy: SizedBy;
  readonly yBy: SizedBy;
  /** Blades of the stages it has been through; neighbours differ. Trims and partings of blanks do not count. */
  readonly blades: readonly Blade[];
  /** Number of the blank that it was parted from. */
  readonly blank: number | null;
}

/** A final piece with what the plan says it is. */
export interface EndPiece {
  readonly piece: Piece;
  readonly is: 'panel' | 'offcut' | 'waste';
  /** Id of the panel; empty for others. */
  readonly panel: string;
  readonly lengthAlong: Blade;
  /** Size of an offcut or waste as the plan states it, along the sheet's length and width; null for a panel. */
  readonly stated: { readonly xUm: Um; readonly yUm: Um } | null;
}

export function area(piece: Piece): bigint {
  return BigInt(piece.x1 - piece.x0) * BigInt(piece.y1 - piece.y0);
}

/** Exact millimetres: one decimal, or as many as there are. */
export function mm(um: Um): string {
  return um % TENTH_MM_UM === 0 ? printMm(um) : String(um / 1000);
}

export function toUm(mmInFile: number): Um {
  return Math.round(mmInFile * 1000);
}

/** More faults of one group than this tell nobody anything new. */
const MOST_FAULTS = 100;

/** Collects what is wrong, saying where in the plan; at most 100 faults a group and a word on there being more. */
export class Faults {
  readonly findings: Finding[] = [];
  private readonly file: string;
  private readonly group: string;

  constructor(file: string, group: string) {
    this.file = file;
    this.group = group;
  }

  add(
    code: string,
    message: string,
    at: { sheet?: number; cut?: number } = {},
    more: Partial<Finding> = {},
  ): void {
    if (this.findings.length > MOST_FAULTS) return;
    if (this.findings.length === MOST_FAULTS) {
      this.findings.push({
        code: 'more-faults',
        severity: 'error',
        message: `Group ${this.group}: there are more faults than are listed here.`,
        place: { file: this.file },
      });
      return;
    }
    const where = [
      ...(at.sheet === undefined ? [] : [`sheet ${at.sheet}`]),
      ...(at.cut === undefined ? [] : [`cut ${at.cut}`]),
    ];
    const field = [`group ${this.group}`, ...where].join(' › ');
    const prefix = [`Group ${this.group}`, ...where].join(', ');
    this.findings.push({
      code,
      severity: 'error',
      // Names in a plan may hold line breaks; a finding is one line.
      message: `${prefix}: ${message}.`.replace(/[\s\p{Cc}]+/gu, ' '),
      place: { file: this.file, field },
      ...more,
    });
  }
}
