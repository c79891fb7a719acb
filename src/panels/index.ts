import { inVehicle, sharedBox } from '../basics/boxes.ts';
import type { ExpandedAppliance, ExpandedOrder, ExpandedPanel, ExpandedUnit } from '../model/expanded.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Furniture, Hanging, Panel, PlacedAppliance, PlacedUnit } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import { type Materials, materialsOf } from './materials.ts';
import { orientPanel, type PanelShape } from './orientPanel.ts';
import { panelHoles } from './panelHoles.ts';
import { withPilotHoles } from './pilotHoles.ts';
import { rowsOfFronts } from './rowsOfFronts.ts';
import { sizePanel } from './sizePanel.ts';
import { followWall, type WalledPanel } from './wallOutline.ts';

/**
 * From boxes to the parts that are sawn: which side of each box is its thickness, its length and its width, finished
 * and cut sizes, the shape that a wall leaves them, edging by edge, openings, mass, and the rows of fronts over which the
 * grain runs on. Findings name boxes that no board of their role can fill, and edging or openings that do not fit.
 */
export function makePanels(expanded: ExpandedOrder, order: Order, library: Library): Checked<Furniture> {
  const findings: Finding[] = [];
  const maker = new FurnitureMaker(expanded, order, library, findings);
  const units = expanded.units.map((unit) => maker.placedUnit(unit));
  if (findings.some((finding) => finding.severity === 'error')) return { ok: false, findings };
  const { order: id, count, seats, persons, sleepingPlaces, cautions } = expanded;
  const whole = {
    ...(seats === undefined ? {} : { seats }),
    ...(persons === undefined ? {} : { persons }),
    ...(sleepingPlaces === undefined ? {} : { sleepingPlaces }),
    ...(cautions === undefined ? {} : { cautions }),
  };
  return { ok: true, value: { order: id, count, units, ...whole }, findings };
}

/** Unique within an order and stable: the unit's name and the panel's. */
function panelId(unit: string, panel: string): string {
  return `${unit}/${panel}`;
}

/** An appliance with its panels by id. */
function applianceOf(unit: string, held: ExpandedAppliance): PlacedAppliance {
  const ids = (names: readonly string[]) => names.map((name) => panelId(unit, name));
  const way = (openings: ExpandedAppliance['air']['in']) =>
    openings.map(({ panels, cutOut }) => ({ panels: ids(panels), cutOut }));
  return { ...held, through: ids(held.through), air: { in: way(held.air.in), out: way(held.air.out) } };
}

interface ShapedPanel {
  /** As the wall leaves it. */
  readonly panel: ExpandedPanel;
  readonly walled: WalledPanel;
  readonly materials: Materials;
  readonly shape: PanelShape;
}

class FurnitureMaker {
  private readonly expanded: ExpandedOrder;
  private readonly order: Order;
  private readonly library: Library;
  private readonly findings: Finding[];
  private number = 0;

  constructor(expanded: ExpandedOrder, order: Order, library: Library, findings: Finding[]) {
    this.expanded = expanded;
    this.order = order;
    this.library = library;
    this.findings = findings;
  }

  placedUnit(unit: ExpandedUnit): PlacedUnit {
    const shapes = unit.panels.flatMap((panel): ShapedPanel[] => {
      const materials = materialsOf(panel, unit.name, this.order, this.library, this.findings);
      const shape = materials && orientPanel(panel, materials, unit.name, this.findings);
      if (materials === null || shape === null) return [];
      const walled = followWall(panel, shape, unit, this.expanded.vehicle, this.findings);
      return walled === null ? [] : [{ panel: walled.panel, walled, materials, shape }];
    });
    const rows = rowsOfFronts(unit.name, shapes, this.findings);
    const drilled = shapes.map((shaped) => {
      const match = rows.get(shaped.panel);
      const panel = { ...this.panel(unit, shaped, shapes), ...(match === undefined ? {} : { match }) };
      return { expanded: shaped.panel, panel };
    });
    const panels = withPilotHoles(unit.name, drilled, this.findings);
    return {
      name: unit.name,
      unit: unit.unit,
      facing: unit.facing,
      parameters: unit.parameters,
      outside: unit.outside,
      placeOutside: unit.placeOutside,
      panels,
      fittings: unit.fittings,
      ...(unit.appliances === undefined
        ? {}
        : { appliances: unit.appliances.map((held) => applianceOf(unit.name, held)) }),
      ...(unit.cautions === undefined ? {} : { cautions: unit.cautions }),
      hangings: unit.hangings.map(
        (hanging): Hanging => ({
          panels: hanging.panels.map((name) => panelId(unit.name, name)),
          on: hanging.on.map((name) => panelId(unit.name, name)),
          gapUm: hanging.gapUm,
          place: hanging.place,
        }),
      ),
      ...(unit.assembly === undefined
        ? {}
        : {
            assembly: unit.assembly.map(({ way, panels: names }) => ({
              way,
              panels: names.map((name) => panelId(unit.name, name)),
            })),
          }),
      place: unit.place,
    };
  }

  private panel(unit: ExpandedUnit, shaped: ShapedPanel, all: readonly ShapedPanel[]): Panel {
    const { panel, walled, materials, shape } = shaped;
    const keep = this.order.cutOutPieces === 'kept' ? this.library.saws.get(this.order.saw) : undefined;
    this.number += 1;
    return {
      id: panelId(unit.name, panel.name),
      number: this.number,
      name: panel.name,
      baseName: panel.baseName,
      unit: unit.name,
      order: this.expanded.order,
      role: panel.role,
      board: materials.board.id,
      finish: materials.finish.id,
      thicknessUm: materials.board.thicknessUm,
      ...sizePanel(walled, materials, shape, unit.name, keep?.leastOffcut ?? null, this.findings),
      holes: panelHoles(panel, shape, unit.name, this.findings),
      grain: panel.grain !== null && materials.finish.grain ? 'length' : 'none',
      count: this.expanded.count,
      box: panel.box,
      placeBox: inVehicle(panel.box, unit),
      lengthAxis: shape.length,
      widthAxis: shape.width,
      thicknessAxis: shape.thickness,
      housings: panel.housings.flatMap((housing) => housed(unit, all, panel, housing)),
      ...(panel.loadKg === undefined ? {} : { loadKg: panel.loadKg }),
      place: panel.place,
    };
  }
}

/** A name with several panels stands for those that the box really reaches into, or the first when it reaches none. */
function housed(
  unit: ExpandedUnit,
  all: readonly ShapedPanel[],
  panel: ExpandedPanel,
  housing: ExpandedPanel['housings'][number],
): Panel['housings'] {
  const reached = housing.into.filter((name) => {
    const other = all.find((candidate) => candidate.panel.name === name);
    return other !== undefined && sharedBox(panel.box, other.panel.box) !== null;
  });
  const into = reached.length > 0 ? reached : housing.into.slice(0, 1);
  return into.map((name) => ({ into: panelId(unit.name, name), depthUm: housing.depthUm }));
}
