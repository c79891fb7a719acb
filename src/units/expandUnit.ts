import { axes, movedBox } from '../basics/boxes.ts';
import type { FormulaScope } from '../basics/formulaScope.ts';
import type { FormulaValue } from '../basics/formulas.ts';
import { printMm } from '../basics/lengths.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type {
  ExpandedAppliance,
  ExpandedCutOut,
  ExpandedHole,
  ExpandedPanel,
  ExpandedUnit,
} from '../model/expanded.ts';
import type { Finding, Place } from '../model/finding.ts';
import type { CountedFitting } from '../model/furniture.ts';
import type { Axis, Box, Extent } from '../model/geometry.ts';
import type {
  Appliance,
  ApplianceUse,
  AssemblyUse,
  FittingUse,
  Formula,
  FormulaExtent,
  HeldBy,
  Library,
  PanelDefinition,
  ParameterValue,
  UnitDefinition,
  UnitUse,
} from '../model/library.ts';
import { cautionsThatHold } from './cautions.ts';
import { expandHoles, movedHole } from './expandHoles.ts';
import { checkMusts } from './musts.ts';
import { runs } from './repeats.ts';
import { settleParameters } from './settleParameters.ts';

const MOST_PANELS_IN_UNIT = 2000;
const MOST_HOLES_IN_UNIT = 10_000;
const DEEPEST_UNITS = 8;
/** More than this is a mistake and no allowance for scribing. */
const MOST_SCRIBED_UM = 50_000;
const MOST_LOAD_KG = 2000;

/** A unit whose parameters are refused is wrong already; what follows from them is no news. */
const parameterCodes = new Set(['out-of-range', 'count-wrong', 'must-not-met']);

export interface UnitRequest {
  readonly definition: UnitDefinition;
  readonly asked: readonly { readonly set: ReadonlyMap<string, Formula>; readonly scope: FormulaScope }[];
  /** As placed, for sentences: `galley sink`. */
  readonly name: string;
  readonly within: readonly string[];
}

export interface UnitBody {
  readonly parameters: ReadonlyMap<string, ParameterValue>;
  readonly outside: Box | null;
  readonly panels: readonly ExpandedPanel[];
  readonly hangings: ExpandedUnit['hangings'];
  readonly fittings: ExpandedUnit['fittings'];
  readonly appliances: readonly ExpandedAppliance[];
  readonly cautions: readonly string[];
  readonly assembly?: NonNullable<ExpandedUnit['assembly']>;
}

export interface UnitSurroundings {
  readonly library: Library;
  readonly constants: ReadonlyMap<string, FormulaValue>;
  readonly findings: Finding[];
}

/** Works out every formula of a unit and of the units inside it; boxes are in this unit's own frame. */
export function expandUnit(request: UnitRequest, surroundings: UnitSurroundings): UnitBody {
  return new UnitExpansion(request, surroundings).body();
}

class UnitExpansion {
  private readonly request: UnitRequest;
  private readonly surroundings: UnitSurroundings;
  private readonly definition: UnitDefinition;
  private readonly panels: ExpandedPanel[] = [];
  private readonly hangings: ExpandedUnit['hangings'][number][] = [];
  private readonly fittings = new Map<string, CountedFitting>();
  private readonly appliances: ExpandedAppliance[] = [];
  private holeCount = 0;
  private readonly cautions = new Set<string>();
  private refused = false;

  constructor(request: UnitRequest, surroundings: UnitSurroundings) {
    this.request = request;
    this.surroundings = surroundings;
    this.definition = request.definition;
  }

  body(): UnitBody {
    const { constants, findings } = this.surroundings;
    const before = findings.length;
    const owner = `the unit ${this.definition.id}`;
    const { scope, values } = settleParameters(
      { owner, definitions: this.definition.parameters, asked: this.request.asked },
      constants,
      this.definition.names,
      findings,
    );
    for (const name of this.definition.names.keys()) scope.lookUp(name);
    checkMusts(this.definition.musts, scope, this.request.name);
    this.refused = findings.slice(before).some(({ code }) => parameterCodes.has(code));
    const outside = this.box(this.definition.outside, scope, 'outside', this.request.name);
    const own = this.definition.panels.flatMap((panel) => this.expandPanel(panel, scope));
    const nested = this.definition.units.flatMap((use) => this.expandUse(use, scope));
    this.joinOwn(own);
    for (const { use, names } of nested) {
      for (const held of use.heldBy ?? []) this.hang(names, held, scope);
    }
    this.countFittings(
      own.map(({ panel }) => panel),
      scope,
    );
    for (const caution of cautionsThatHold(this.definition.cautions, scope)) this.cautions.add(caution);
    for (const use of this.definition.appliances ?? []) this.hold(use, scope);
    return {
      parameters: values,
      outside,
      panels: this.panels,
      hangings: this.hangings,
      fittings: [...this.fittings.values()],
      appliances: this.appliances,
      cautions: [...this.cautions],
      ...(this.definition.assembly === undefined
        ? {}
        : { assembly: this.assembly(this.definition.assembly, nested) }),
    };
  }

  private expandPanel(definition: PanelDefinition, scope: FormulaScope) {
    return runs(definition.repeat, scope).flatMap((run) => {
      if (run.scope.condition(definition.when) !== true) return [];
      const name = `${definition.name}${run.ending}`;
      const box = this.box(definition, run.scope, 'panel', name);
      if (box === null || this.tooMany()) return [];
      const panel: ExpandedPanel = {
        name,
        baseName: definition.name,
        role: definition.role,
        place: definition.place,
        box,
        grain: definition.grain,
        edging: definition.edging,
        cutOuts: this.cutOuts(definition, run.scope),
        holes: this.holes(definition, run.scope),
        housings: [],
        match: definition.match,
        ...this.followsWall(definition, run.scope),
        ...this.load(definition, run.scope),
      };
      this.panels.push(panel);
      return [{ definition, panel, scope: run.scope }];
    });
  }

  private followsWall(definition: PanelDefinition, scope: FormulaScope): Pick<ExpandedPanel, 'followsWall'> {
    const walls = (definition.followsWall ?? []).flatMap(({ face, allowance, place }) => {
      const allowanceUm = scope.lengthUm(allowance);
      if (allowanceUm === undefined) return [];
      if (allowanceUm >= 0 && allowanceUm <= MOST_SCRIBED_UM) return [{ face, allowanceUm, place }];
      this.surroundings.findings.push({
        code: 'out-of-range',
        severity: 'error',
        message: `the allowance for scribing the ${definition.name} comes to ${printMm(allowanceUm)} mm; it may go from 0 up to ${printMm(MOST_SCRIBED_UM)} mm`,
        place: allowance.place,
        found: allowance.text,
      });
      return [];
    });
    return walls.length === 0 ? {} : { followsWall: walls };
  }

  private load(definition: PanelDefinition, scope: FormulaScope): Pick<ExpandedPanel, 'loadKg'> {
    if (definition.load === undefined) return {};
    const loadKg = scope.number(definition.load);
    if (loadKg === undefined) return {};
    if (loadKg >= 0 && loadKg <= MOST_LOAD_KG) return { loadKg };
    this.surroundings.findings.push({
      code: 'out-of-range',
      severity: 'error',
      message: `the load on the ${definition.name} comes to ${loadKg} kg; it may go from 0 up to ${MOST_LOAD_KG} kg`,
      place: definition.load.place,
      found: definition.load.text,
    });
    return {};
  }

  /** Housings and hangings name panels that may stand later in the file, so they come after all panels. */
  private joinOwn(own: ReturnType<UnitExpansion['expandPanel']>): void {
    for (const { definition, panel, scope } of own) {
      const housings = definition.housings.flatMap((housing) => {
        const depthUm = scope.lengthUm(housing.depth);
        const into = this.named(housing.into, housing.place);
        return depthUm === undefined || into.length === 0 ? [] : [{ into, depthUm, place: housing.place }];
      });
      this.panels[this.panels.indexOf(panel)] = { ...panel, housings };
      for (const held of definition.heldBy ?? []) this.hang([panel.name], held, scope);
    }
  }

  private hang(panels: readonly string[], held: HeldBy, scope: FormulaScope): void {
    const gapUm = scope.lengthUm(held.gap);
    const on = this.named(held.panel, held.place);
    if (gapUm === undefined || on.length === 0) return;
    this.hangings.push({ panels, on, gapUm, place: held.place });
  }

  /** Panels there are of a name with or without its number; a name that the unit does not know is a finding. */
  private named(name: string, place: Place): string[] {
    const found = this.panels.filter((panel) => panel.name === name || panel.baseName === name);
    const known = [
      ...this.definition.panels.map((panel) => panel.name),
      ...this.panels.map((panel) => panel.name),
    ];
    if (found.length === 0 && !known.includes(name)) {
      const nearest = nearestWord(name, known);
      this.surroundings.findings.push({
        code: 'unknown-panel',
        severity: 'error',
        message: `the unit ${this.definition.id} has no panel “${name}”`,
        place,
        found: name,
        ...(nearest === undefined ? {} : { nearest }),
      });
    }
    return found.map((panel) => panel.name);
  }

  /** Steps with the panels that there are of those named; a step without any is left out. */
  private assembly(
    steps: readonly AssemblyUse[],
    nested: ReturnType<UnitExpansion['expandUse']>,
  ): NonNullable<ExpandedUnit['assembly']> {
    const named = new Set(steps.flatMap(({ names }) => names.map(({ name }) => name)));
    // A unit inside stands for those of its panels that are not named by themselves.
    const rest = new Set(this.panels.filter(({ baseName }) => !named.has(baseName)).map(({ name }) => name));
    return steps.flatMap(({ way, names }) => {
      const panels = names.flatMap(({ name }) => [
        ...this.panels.filter(({ baseName }) => baseName === name).map((panel) => panel.name),
        ...nested
          .filter(({ use }) => use.name === name)
          .flatMap((unit) => unit.names.filter((panel) => rest.has(panel))),
      ]);
      return panels.length === 0 ? [] : [{ way, panels }];
    });
  }

  private expandUse(use: UnitUse, scope: FormulaScope) {
    const { library, findings } = this.surroundings;
    const definition = library.units.get(use.unit);
    if (definition === undefined) {
      findings.push(unknownUnit(use.unit, use.place, library));
      return [];
    }
    const within = [...this.request.within, this.definition.id];
    if (within.includes(use.unit) || within.length >= DEEPEST_UNITS) {
      const chain = [...within.slice(Math.max(0, within.indexOf(use.unit))), use.unit].join(' → ');
      const message = within.includes(use.unit)
        ? `units are inside each other in a circle: ${chain}`
        : `units are inside each other too deeply: ${chain}`;
      findings.push({ code: 'unit-circle', severity: 'error', message, place: use.place });
      return [];
    }
    if (this.refused) return [];
    return runs(use.repeat, scope).flatMap((run) => {
      if (run.scope.condition(use.when) !== true) return [];
      const name = `${use.name}${run.ending}`;
      const asked = [{ set: use.set, scope: run.scope }];
      const body = expandUnit(
        { definition, asked, name: `${this.request.name}, ${name}`, within },
        this.surroundings,
      );
      const by = { x: 0, y: 0, z: 0 };
      for (const axis of axes) {
        const at = run.scope.lengthUm(use.at[axis]);
        if (at === undefined || body.outside === null) return [];
        by[axis] = at - body.outside[axis][0];
      }
      this.take(body, name, use.name, by);
      return [{ use, names: body.panels.map((panel) => `${name} ${panel.name}`) }];
    });
  }

  /** Takes over what a unit inside this one is made of, moved to where it stands. */
  private take(
    body: UnitBody,
    name: string,
    baseName: string,
    by: { x: number; y: number; z: number },
  ): void {
    const full = (own: string) => `${name} ${own}`;
    for (const panel of body.panels) {
      if (this.tooMany()) return;
      this.panels.push({
        ...panel,
        name: full(panel.name),
        baseName: `${baseName} ${panel.baseName}`,
        box: movedBox(panel.box, by),
        cutOuts: panel.cutOuts.map((cutOut) => movedCutOut(cutOut, by)),
        holes: panel.holes.map((hole) => movedHole(hole, by)),
        housings: panel.housings.map((housing) => ({ ...housing, into: housing.into.map(full) })),
      });
    }
    for (const hanging of body.hangings) {
      this.hangings.push({ ...hanging, panels: hanging.panels.map(full), on: hanging.on.map(full) });
    }
    for (const counted of body.fittings) this.addFitting(counted);
    for (const held of body.appliances) {
      const way = (openings: ExpandedAppliance['air']['in']) =>
        openings.map(({ panels, cutOut }) => ({ panels: panels.map(full), cutOut }));
      this.appliances.push({
        ...held,
        name: full(held.name),
        body: movedBox(held.body, by),
        through: held.through.map(full),
        air: { in: way(held.air.in), out: way(held.air.out) },
      });
    }
    for (const caution of body.cautions) this.cautions.add(caution);
  }

  /** Makes room for an appliance, with the cautions that it brings. */
  private hold(use: ApplianceUse, scope: FormulaScope): void {
    if (scope.condition(use.when) !== true) return;
    const appliance = this.applianceOf(use, scope);
    const at = { x: scope.lengthUm(use.at.x), y: scope.lengthUm(use.at.y), z: scope.lengthUm(use.at.z) };
    if (appliance === undefined || at.x === undefined || at.y === undefined || at.z === undefined) return;
    const openings = (side: 'in' | 'out') =>
      use.air[side].map(({ panel, cutOut, place }) => ({ panels: this.named(panel, place), cutOut }));
    const body: Box = {
      x: [at.x, at.x + appliance.widthUm],
      y: [at.y, at.y + appliance.depthUm],
      z: [at.z, at.z + appliance.heightUm],
    };
    this.appliances.push({
      name: use.name,
      appliance: appliance.id,
      title: appliance.title,
      massKg: appliance.massKg,
      body,
      through: use.through.flatMap(({ panel, place }) => this.named(panel, place)),
      air: { in: openings('in'), out: openings('out') },
      place: use.place,
    });
    for (const caution of appliance.cautions ?? []) this.cautions.add(caution);
  }

  /** A word that is the id of an appliance stands for it; anything else is a formula that comes to one. */
  private applianceOf({ appliance: formula }: ApplianceUse, scope: FormulaScope): Appliance | undefined {
    const { library, findings } = this.surroundings;
    const word = formula.text.trim();
    const plain = /^[a-z][a-z0-9-]*$/.test(word) && !scope.has(word);
    const value = plain ? word : scope.evaluate(formula);
    if (value === undefined) return undefined;
    const found = library.appliances?.get(String(value));
    if (found === undefined) {
      const nearest = nearestWord(String(value), library.appliances?.keys() ?? []);
      findings.push({
        code: 'unknown-appliance',
        severity: 'error',
        message: `the library has no appliance “${value}”`,
        place: formula.place,
        found: String(value),
        ...(nearest === undefined ? {} : { nearest }),
      });
    }
    return found;
  }

  private tooMany(): boolean {
    if (this.panels.length < MOST_PANELS_IN_UNIT) return false;
    const code = 'too-many-panels';
    if (!this.surroundings.findings.some((finding) => finding.code === code)) {
      const message = `${this.request.name} has more than ${MOST_PANELS_IN_UNIT} panels`;
      const place = { file: this.definition.file };
      this.surroundings.findings.push({ code, severity: 'error', message, place });
    }
    return true;
  }

  /** What the unit lists, then the screws that `own` panels have holes for: those need not be listed, so that both agree. */
  private countFittings(own: readonly ExpandedPanel[], scope: FormulaScope): void {
    const inHoles = new Map<string, number>();
    for (const { screw } of own.flatMap(({ holes }) => holes)) {
      if (screw !== undefined) inHoles.set(screw.fitting, (inHoles.get(screw.fitting) ?? 0) + 1);
    }
    for (const use of this.definition.fittings) {
      if (scope.condition(use.when) !== true) continue;
      const count = scope.count(use.count, 100_000);
      if (count === undefined) continue;
      const drilled = inHoles.get(use.fitting);
      if (drilled !== undefined && use.where === undefined && count > 0) {
        this.surroundings.findings.push(countedTwice(use, count, drilled));
      }
      this.addFitting({
        fitting: use.fitting,
        count,
        ...(use.where === undefined ? {} : { where: [use.where] }),
      });
    }
    for (const [fitting, count] of inHoles) this.addFitting({ fitting, count, inHoles: count });
  }

  private addFitting({ fitting, count, inHoles = 0, where = [] }: CountedFitting): void {
    if (count <= 0) return;
    const before = this.fittings.get(fitting);
    const said = [...new Set([...(before?.where ?? []), ...where])];
    const drilled = (before?.inHoles ?? 0) + inHoles;
    this.fittings.set(fitting, {
      fitting,
      count: (before?.count ?? 0) + count,
      ...(drilled === 0 ? {} : { inHoles: drilled }),
      ...(said.length === 0 ? {} : { where: said }),
    });
  }

  private holes(definition: PanelDefinition, scope: FormulaScope): ExpandedHole[] {
    const { library, findings } = this.surroundings;
    const holes = expandHoles(definition, scope, library, findings);
    this.holeCount += holes.length;
    if (this.holeCount <= MOST_HOLES_IN_UNIT) return holes;
    const code = 'too-many-holes';
    if (!findings.some((finding) => finding.code === code)) {
      const message = `${this.request.name} has more than ${MOST_HOLES_IN_UNIT} holes`;
      findings.push({ code, severity: 'error', message, place: definition.place });
    }
    return [];
  }

  private cutOuts(definition: PanelDefinition, scope: FormulaScope): ExpandedCutOut[] {
    return definition.cutOuts.flatMap((cutOut) => {
      if (scope.condition(cutOut.when) !== true) return [];
      const along = (axis: Axis) => {
        const formulas = cutOut[axis];
        return formulas === null ? null : this.extent(formulas, scope, axis, `cut-out “${cutOut.name}”`);
      };
      const box = { x: along('x'), y: along('y'), z: along('z') };
      if (axes.some((axis) => box[axis] === undefined)) return [];
      const whole = box as { x: Extent | null; y: Extent | null; z: Extent | null };
      return [{ name: cutOut.name, place: cutOut.place, ...whole }];
    });
  }

  private box(
    formulas: { readonly x: FormulaExtent; readonly y: FormulaExtent; readonly z: FormulaExtent },
    scope: FormulaScope,
    kind: 'panel' | 'outside',
    name: string,
  ): Box | null {
    const what = kind === 'panel' ? `panel “${name}”` : `outside box of ${name}`;
    const x = this.extent(formulas.x, scope, 'x', what);
    const y = this.extent(formulas.y, scope, 'y', what);
    const z = this.extent(formulas.z, scope, 'z', what);
    return x === undefined || y === undefined || z === undefined ? null : { x, y, z };
  }

  private extent(formulas: FormulaExtent, scope: FormulaScope, axis: Axis, what: string): Extent | undefined {
    const from = scope.lengthUm(formulas[0]);
    const to = scope.lengthUm(formulas[1]);
    if (from === undefined || to === undefined) return undefined;
    if (from < to) return [from, to];
    if (this.refused) return undefined;
    const where = what.includes(this.request.name) ? '' : ` in ${this.request.name}`;
    this.surroundings.findings.push({
      code: 'nothing-left',
      severity: 'error',
      message: `the ${what}${where} has no ${axis}-size left: it runs from ${printMm(from)} to ${printMm(to)} mm`,
      place: formulas[0].place,
      found: `[${formulas[0].text}, ${formulas[1].text}]`,
      advice: 'the second figure must be greater than the first',
    });
    return undefined;
  }
}

function movedCutOut(cutOut: ExpandedCutOut, by: { x: number; y: number; z: number }): ExpandedCutOut {
  const moved = (axis: Axis): Extent | null => {
    const extent = cutOut[axis];
    return extent === null ? null : [extent[0] + by[axis], extent[1] + by[axis]];
  };
  return { ...cutOut, x: moved('x'), y: moved('y'), z: moved('z') };
}

function countedTwice(use: FittingUse, listed: number, drilled: number): Finding {
  return {
    code: 'screw-counted-twice',
    severity: 'warning',
    message: `${listed} of “${use.fitting}” come to the ${drilled} that go through holes of the unit, and nothing says where they go`,
    place: use.place,
    found: use.count.text,
    advice:
      'screws in holes are counted from them: leave the line out, or list only the others and say `where` they go',
  };
}

export function unknownUnit(unit: string, place: Place, library: Library): Finding {
  const nearest = nearestWord(unit, library.units.keys());
  return {
    code: 'unknown-unit',
    severity: 'error',
    message: `the library has no unit “${unit}”`,
    place,
    found: unit,
    ...(nearest === undefined ? {} : { nearest }),
  };
}
