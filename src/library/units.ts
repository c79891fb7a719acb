import { errorFinding, unknownWord, warningFinding } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Place } from '../model/finding.ts';
import type { Face } from '../model/geometry.ts';
import type {
  CutOutDefinition,
  FittingUse,
  Formula,
  HeldBy,
  PanelDefinition,
  UnitDefinition,
} from '../model/library.ts';
import { readApplianceUses } from './appliances.ts';
import { readAssembly } from './assembly.ts';
import { readCautionUses } from './cautions.ts';
import {
  checkRepeatedNames,
  type KnownWords,
  readMusts,
  readNames,
  readParameters,
  readRepeat,
  readUnitUse,
} from './definitions.ts';
import { readHoles } from './drilling.ts';
import type { LibraryFiles } from './libraryFiles.ts';
import { type CutOutField, FACES, type FittingField, type PanelField, unitFile } from './schemas.ts';

/** `all` becomes all six faces: which two of them are the faces of the board is known only once sizes are. */
function readEdging(reader: FieldReader, panel: PanelField): readonly Face[] {
  const { edging } = panel;
  if (edging === undefined) return [];
  if (edging === 'all') return FACES;
  for (const [index, face] of edging.entries()) {
    if (edging.indexOf(face) === index) continue;
    const place = reader.yaml.placeOf(edging, index);
    reader.report(warningFinding('named-twice', `The face \`${face}\` is named twice.`, place));
  }
  return FACES.filter((face) => edging.includes(face));
}

function readCutOuts(
  reader: FieldReader,
  cutOuts: Readonly<Record<string, CutOutField>> | undefined,
): CutOutDefinition[] {
  return Object.entries(cutOuts ?? {}).map(([name, cutOut]) => {
    const place = reader.yaml.placeOfKey(cutOuts!, name);
    const axes = (['x', 'y', 'z'] as const).filter((axis) => cutOut[axis] !== undefined);
    if (axes.length !== 2) {
      reader.report(
        errorFinding('bad-cut-out', 'A cut-out goes right through the board, so it needs two axes.', place, {
          found: axes.length === 0 ? 'none' : axes.join(', '),
          expected: 'the two axes of the panel’s sides, without the one of its thickness',
        }),
      );
    }
    const extent = (axis: 'x' | 'y' | 'z') =>
      cutOut[axis] === undefined ? null : reader.extent(cutOut, axis);
    const when = reader.optionalFormula(cutOut, 'when');
    return { name, place, when, x: extent('x'), y: extent('y'), z: extent('z') };
  });
}

/** Panels of this unit by name, each with a formula: what `let into` and `held by` hold. */
function readOtherPanels(
  reader: FieldReader,
  others: Readonly<Record<string, string | number>> | undefined,
  panelNames: readonly string[],
  own: { readonly name: string; readonly itself: string },
): { readonly panel: string; readonly formula: Formula; readonly place: Place }[] {
  return Object.keys(others ?? {}).map((panel) => {
    const place = reader.yaml.placeOfKey(others!, panel);
    if (panel === own.name) {
      reader.report(errorFinding('unknown-word', own.itself, place));
    } else if (!panelNames.includes(panel)) {
      const possible = panelNames.filter((other) => other !== own.name);
      reader.report(unknownWord(panel, 'a panel of this unit', possible, place));
    }
    return { panel, formula: reader.formula(others!, panel), place };
  });
}

function readHousings(
  reader: FieldReader,
  panels: Readonly<Record<string, PanelField>>,
  name: string,
): PanelDefinition['housings'] {
  const own = { name, itself: 'A panel cannot be let into itself.' };
  return readOtherPanels(reader, panels[name]!['let into'], Object.keys(panels), own).map(
    ({ panel, formula, place }) => ({ into: panel, depth: formula, place }),
  );
}

/** A unit inside this one is held by panels as well; it has no name among them. */
function readHeldBy(
  reader: FieldReader,
  heldBy: Readonly<Record<string, string | number>> | undefined,
  panels: Readonly<Record<string, PanelField>> | undefined,
  name: string,
): HeldBy[] {
  const own = { name, itself: 'A panel cannot hold itself.' };
  return readOtherPanels(reader, heldBy, Object.keys(panels ?? {}), own).map(({ panel, formula, place }) => ({
    panel,
    gap: formula,
    place,
  }));
}

/** An edge that is cut and scribed by hand cannot be edged by a machine, so an edging named for it is wrong. */
function readFollowsWall(reader: FieldReader, panel: PanelField): Pick<PanelDefinition, 'followsWall'> {
  const written = panel['follows wall'];
  if (written === undefined) return {};
  const { edging } = panel;
  const faces = (Object.keys(written) as (keyof typeof written)[]).map((face) => {
    const place = reader.yaml.placeOfKey(written, face);
    if (edging !== undefined && edging !== 'all' && edging.includes(face)) {
      const message = `The ${face} edge follows the wall, so it gets no edging.`;
      reader.report(errorFinding('edging-at-wall', message, place, { advice: `take ${face} out of edging` }));
    }
    return { face, allowance: reader.formula(written, face), place };
  });
  return faces.length === 0 ? {} : { followsWall: faces };
}

function readPanels(
  reader: FieldReader,
  panels: Readonly<Record<string, PanelField>> | undefined,
  taken: ReadonlyMap<string, Place>,
  known: KnownWords,
): PanelDefinition[] {
  if (panels === undefined) return [];
  checkRepeatedNames(reader, panels);
  for (const panel of Object.values(panels)) {
    if (known.roles === undefined || known.roles.includes(panel.role)) continue;
    const place = reader.yaml.placeOf(panel, 'role');
    reader.report(unknownWord(panel.role, 'a role of this library', known.roles, place));
  }
  return Object.entries(panels).map(([name, panel]) => ({
    name,
    place: reader.yaml.placeOfKey(panels, name),
    role: panel.role,
    x: reader.extent(panel, 'x'),
    y: reader.extent(panel, 'y'),
    z: reader.extent(panel, 'z'),
    grain: panel.grain === 'any' ? null : panel.grain,
    edging: readEdging(reader, panel),
    when: reader.optionalFormula(panel, 'when'),
    repeat: readRepeat(reader, panel, taken),
    housings: readHousings(reader, panels, name),
    heldBy: readHeldBy(reader, panel['held by'], panels, name),
    cutOuts: readCutOuts(reader, panel['cut-outs']),
    holes: readHoles(reader, panel, taken, known),
    match: panel.match ?? null,
    ...readFollowsWall(reader, panel),
    ...(panel.load === undefined ? {} : { load: reader.formula(panel, 'load') }),
  }));
}

function readFittingUses(
  reader: FieldReader,
  uses: Readonly<Record<string, FittingField>> | undefined,
  known: KnownWords,
): FittingUse[] {
  return Object.entries(uses ?? {}).map(([fitting, use]) => {
    const place = reader.yaml.placeOfKey(uses!, fitting);
    if (known.fittings !== undefined && !known.fittings.includes(fitting)) {
      reader.report(unknownWord(fitting, 'a fitting of this library', known.fittings, place));
    }
    if (typeof use !== 'object') return { fitting, count: reader.formula(uses!, fitting), when: null, place };
    const where = use.where === undefined ? {} : { where: use.where };
    return {
      fitting,
      count: reader.formula(use, 'count'),
      when: reader.optionalFormula(use, 'when'),
      ...where,
      place,
    };
  });
}

/** One file of `units/`; undefined when it cannot be used. */
export function readUnit(files: LibraryFiles, path: string, known: KnownWords): UnitDefinition | undefined {
  const read = files.read(path, unitFile, 'needed', {
    title: '?',
    outside: { x: [0, 1], y: [0, 1], z: [0, 1] },
  });
  if (read === undefined) return undefined;
  const { value, reader, yaml } = read;
  const taken = new Map<string, Place>();
  const parameters = readParameters(reader, value.parameters, taken);
  const names = readNames(reader, value.names, taken);
  const inner = value.units ?? {};
  checkRepeatedNames(reader, inner);
  if (value.panels === undefined && value.units === undefined) {
    const place = yaml.placeOfAll(value);
    reader.report(errorFinding('empty-unit', 'The unit has neither panels nor units.', place));
  }
  const assembly = readAssembly(reader, value.assembly);
  return {
    id: read.id,
    title: value.title,
    file: yaml.file,
    parameters,
    names,
    outside: {
      x: reader.extent(value.outside, 'x'),
      y: reader.extent(value.outside, 'y'),
      z: reader.extent(value.outside, 'z'),
    },
    panels: readPanels(reader, value.panels, taken, known),
    units: Object.entries(inner).map(([name, use]) => ({
      ...readUnitUse(reader, inner, name, 'front', taken, known),
      heldBy: readHeldBy(reader, use['held by'], value.panels, ''),
    })),
    fittings: readFittingUses(reader, value.fittings, known),
    ...(assembly === undefined ? {} : { assembly }),
    appliances: readApplianceUses(reader, value.appliances, Object.keys(value.panels ?? {})),
    cautions: readCautionUses(reader, value.cautions, known.cautions),
    musts: readMusts(reader, value.musts),
  };
}
