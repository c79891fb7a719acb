import dxfParser from 'dxf-parser';

interface Parser {
  parseSync(text: string): {
    readonly header: Readonly<Record<string, unknown>>;
    readonly tables: { readonly layer: { readonly layers: Readonly<Record<string, unknown>> } };
    readonly entities: readonly (Readonly<Record<string, unknown>> & {
      readonly type: string;
      readonly layer: string;
    })[];
  } | null;
}

/** The published types name the module where the class is meant. */
const DxfParser = dxfParser as unknown as new () => Parser;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** What another reader makes of a DXF file, in mm. */
export interface ReadDxf {
  readonly version: string;
  readonly layers: readonly string[];
  readonly polygons: readonly {
    readonly layer: string;
    readonly points: readonly (readonly [number, number])[];
  }[];
  readonly circles: readonly {
    readonly layer: string;
    readonly x: number;
    readonly y: number;
    readonly radius: number;
  }[];
  readonly lines: readonly { readonly layer: string; readonly from: Point; readonly to: Point }[];
  readonly texts: readonly { readonly layer: string; readonly text: string }[];
}

/** Reads a file with a published parser that shares nothing with the writer. Throws on kinds that it should not hold. */
export function readDxf(text: string): ReadDxf {
  const file = new DxfParser().parseSync(text);
  if (file === null) throw new Error('the parser made nothing of the file');
  const found = { polygons: [], circles: [], lines: [], texts: [] } as {
    polygons: ReadDxf['polygons'][number][];
    circles: ReadDxf['circles'][number][];
    lines: ReadDxf['lines'][number][];
    texts: ReadDxf['texts'][number][];
  };
  for (const entity of file.entities) {
    const { layer } = entity;
    switch (entity.type) {
      case 'POLYLINE': {
        if (entity['shape'] !== true) throw new Error(`an open polyline on ${layer}`);
        const vertices = entity['vertices'] as Point[];
        found.polygons.push({ layer, points: vertices.map(({ x, y }) => [x, y] as const) });
        break;
      }
      case 'CIRCLE': {
        const { x, y } = entity['center'] as Point;
        found.circles.push({ layer, x, y, radius: entity['radius'] as number });
        break;
      }
      case 'LINE': {
        const [from, to] = entity['vertices'] as [Point, Point];
        found.lines.push({ layer, from, to });
        break;
      }
      case 'TEXT':
        found.texts.push({ layer, text: entity['text'] as string });
        break;
      default:
        throw new Error(`an entity of kind ${entity.type}`);
    }
  }
  return {
    version: String(file.header['$ACADVER']),
    layers: Object.keys(file.tables.layer.layers),
    ...found,
  };
}
