import type {
  Formula,
  FormulaExtent,
  HoleDefinition,
  Library,
  PanelDefinition,
  UnitDefinition,
} from '../../src/model/library.ts';

/** Definitions written in place, for tests that need a unit of three boards and no files. */

const FACES = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;

export function written(text: string | number, line = 1): Formula {
  return { text: String(text), place: { file: 'units/test.yaml', line, column: 1 } };
}

export function extent(from: string | number, to: string | number): FormulaExtent {
  return [written(from), written(to)];
}

type Pair = readonly [string | number, string | number];

export interface PanelText {
  readonly role?: string;
  readonly x: Pair;
  readonly y: Pair;
  readonly z: Pair;
  readonly grain?: 'x' | 'y' | 'z' | null;
  readonly edging?: 'all' | readonly (typeof FACES)[number][];
  readonly when?: string;
  readonly repeat?: readonly [counter: string, count: string | number];
  readonly letInto?: Readonly<Record<string, string | number>>;
  readonly heldBy?: Readonly<Record<string, string | number>>;
  readonly cutOuts?: Readonly<Record<string, { x?: Pair; y?: Pair; z?: Pair }>>;
  readonly holes?: Readonly<Record<string, HoleText>>;
  readonly match?: string;
  readonly followsWall?: Readonly<Partial<Record<'left' | 'right' | 'front' | 'back', string | number>>>;
  readonly load?: string | number;
}

/** A hole by diameter and depth or for a screw, or a pattern laid towards a face. Each stands on a line of its own. */
export interface HoleText {
  readonly at: { readonly x?: string | number; readonly y?: string | number; readonly z?: string | number };
  readonly from: (typeof FACES)[number];
  readonly bore?: readonly [diameter: string | number, depth: string | number | 'through'];
  readonly pattern?: readonly [name: string, towards: (typeof FACES)[number]];
  readonly screw?: string;
  readonly when?: string;
  readonly repeat?: readonly [counter: string, count: string | number];
}

function writtenHole(name: string, text: HoleText): HoleDefinition {
  const coordinate = (value: string | number | undefined) => (value === undefined ? null : written(value));
  const [diameter, depth] = text.bore ?? [1, 1];
  return {
    name,
    place: { file: `units/test.yaml › ${name}`, line: 1, column: 1 },
    when: text.when === undefined ? null : written(text.when),
    repeat: text.repeat === undefined ? null : { counter: text.repeat[0], count: written(text.repeat[1]) },
    at: { x: coordinate(text.at.x), y: coordinate(text.at.y), z: coordinate(text.at.z) },
    from: text.from,
    drill: writtenDrill(),
  };

  function writtenDrill(): HoleDefinition['drill'] {
    if (text.screw !== undefined) return { kind: 'screw', fitting: text.screw };
    if (text.pattern === undefined) {
      return {
        kind: 'hole',
        diameter: written(diameter),
        depth: depth === 'through' ? null : written(depth),
      };
    }
    return { kind: 'pattern', pattern: text.pattern[0], towards: text.pattern[1] };
  }
}

export function panel(name: string, text: PanelText): PanelDefinition {
  const place = { file: 'units/test.yaml', line: 1, column: 1 };
  const pair = (value: Pair | undefined) => (value === undefined ? null : extent(value[0], value[1]));
  return {
    name,
    place,
    role: text.role ?? 'carcass',
    x: extent(...text.x),
    y: extent(...text.y),
    z: extent(...text.z),
    grain: text.grain ?? null,
    edging: text.edging === 'all' ? FACES : (text.edging ?? []),
    when: text.when === undefined ? null : written(text.when),
    repeat: text.repeat === undefined ? null : { counter: text.repeat[0], count: written(text.repeat[1]) },
    housings: Object.entries(text.letInto ?? {}).map(([into, depth]) => ({
      into,
      depth: written(depth),
      place,
    })),
    heldBy: Object.entries(text.heldBy ?? {}).map(([held, gap]) => ({
      panel: held,
      gap: written(gap),
      place,
    })),
    cutOuts: Object.entries(text.cutOuts ?? {}).map(([cutOut, { x, y, z }]) => ({
      name: cutOut,
      place,
      when: null,
      x: pair(x),
      y: pair(y),
      z: pair(z),
    })),
    holes: Object.entries(text.holes ?? {}).map(([name, hole]) => writtenHole(name, hole)),
    match: text.match ?? null,
    followsWall: Object.entries(text.followsWall ?? {}).map(([face, allowance]) => ({
      face: face as 'left' | 'right' | 'front' | 'back',
      allowance: written(allowance),
      place,
    })),
    ...(text.load === undefined ? {} : { load: written(text.load) }),
  };
}

export function unit(
  id: string,
  size: readonly [string | number, string | number, string | number],
  panels: Readonly<Record<string, PanelText>>,
  more: Partial<UnitDefinition> = {},
): UnitDefinition {
  return {
    id,
    title: id,
    file: `units/${id}.yaml`,
    parameters: [],
    names: new Map(),
    outside: { x: extent(0, size[0]), y: extent(0, size[1]), z: extent(0, size[2]) },
    panels: Object.entries(panels).map(([name, text]) => panel(name, text)),
    units: [],
    fittings: [],
    musts: [],
    ...more,
  };
}

/** A library with other units beside its own. */
export function withUnits(library: Library, ...units: readonly UnitDefinition[]): Library {
  return { ...library, units: new Map([...library.units, ...units.map((one) => [one.id, one] as const)]) };
}
