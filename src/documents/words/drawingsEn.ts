import type { DrawingWords } from '../../drawing/index.ts';
import type { CutGuide } from '../../model/stock.ts';
import { panelsEn } from './panelsEn.ts';

const many = (count: number, one: string, several: string) => `${count} ${count === 1 ? one : several}`;

/** Common rules for circular saws, by what guides them. */
const careAt: Readonly<Record<CutGuide, (sign: string) => string>> = {
  // Sources: push stick for cuts under 300 mm and the last 300 mm of longer ones: HSE Woodworking Information Sheet 16;
  // 150 mm between fence and blade: safety texts of saw manuals.
  fence: (sign) =>
    `Push stick for cuts shorter than 300 mm and for the last 300 mm of longer ones, and under 150 mm at the fence (${sign}); push block under 50 mm. Guard, riving knife and dust extraction on.`,
  // Common practice, no source.
  rail: (sign) =>
    `Lay the rail on the side measured from, its edge on the line, the kerf beyond; for a trim on what stays. Clamp it at both ends, support the sheet on both sides of the cut. Under 200 mm (${sign}) support the rail with board as thick. Guard and dust extraction on.`,
};

/** The words of drawings in English. */
export const drawingsEn: DrawingWords = {
  page: {
    workshop: 'Workshop',
    job: 'Job',
    document: 'Document',
    date: 'Date',
    page: 'Page',
    scale: 'Scale',
    scaleAndUnits: (units) => (units === 'mm' ? 'Scale, sizes in mm' : 'Scale, in inches (mm)'),
    of: (number, all) => `${number} of ${all}`,
    continued: (title) => `${title}, continued`,
  },
  cutPlan: {
    document: 'Cut plan',
    overview: 'Overview',
    board: 'Board and finish',
    stock: (kind) => (kind === 'sheet' ? 'Sheet, length × width' : 'Offcut from stock, length × width'),
    label: 'Label of the offcut',
    grain: 'Grain',
    grainRuns: { length: 'along length', width: 'along width', none: 'none' },
    saw: 'Saw',
    kerf: (kerf) => `kerf ${kerf}`,
    trim: {
      none: 'no trim',
      all: (trim) => `trim ${trim} all round`,
      each: ({ left, right, near, far }) => `trim left ${left}, right ${right}, near ${near}, far ${far}`,
    },
    sawRules: {
      longestCut: (length) => `no cut over ${length}`,
      smallestPart: (width) => `nothing under ${width} wide`,
    },
    alike: 'Cut alike',
    sheets: (count) => many(count, 'sheet', 'sheets'),
    stack: {
      together: (sheets) => `cut ${sheets} sheets together`,
      withPlans: (together, plans) =>
        `${together}, with cut ${plans.length === 1 ? 'plan' : 'plans'} ${plans.join(', ')}`,
      through: (sheets) => `each through ${sheets} sheets`,
      names: {
        title: 'Other names on other sheets of the stack',
        shortTitle: 'Other names',
        columns: ['piece', 'on this sheet', 'on sheets of other cut plans'],
        onPlans: (plans, panel) => `${plans.length === 1 ? 'plan' : 'plans'} ${plans.join(', ')}: ${panel}`,
      },
    },
    sides: { left: 'left', right: 'right', near: 'near', far: 'far' },
    offcut: 'OFFCUT',
    waste: 'waste',
    piece: (name) => name,
    run: (name, place) => `run ${name}\u00a0${place}`,
    legend: {
      cutNumber: 'number of a cut',
      edged: (edging) => `edged: ${edging}`,
      anotherEdging: 'edged: another',
      waste: 'waste',
      offcut: 'offcut to keep',
      trim: 'trim',
      grain: 'grain, and first figure of a size',
      byHand: 'cut by hand after sawing',
      restFrom: (first) => `${first} and all after it`,
      span: (first, last) => `${first} to ${last}`,
    },
    care: (sign, narrow, guide) =>
      `${careAt[guide](sign)} Your own rules and the manual of the saw come first.${narrow === 0 ? '' : ` ${many(narrow, 'such cut', 'such cuts')} here.`}`,
    steps: {
      title: (lies, through, guide) =>
        `Cuts in order${through === null ? '' : `, ${through}`} · ${guide} from ${lies === 'turned' ? 'right or lower' : 'left or lower'} edge as drawn`,
      shortTitle: 'Cuts',
      columns: (guide) => ['no.', 'cut', 'piece', guide, 'gives'],
      cut: { rip: 'rip', crosscut: 'crosscut', recut: 'recut', part: 'part' },
      trim: (side) => `trim ${side}`,
      off: (take) => `off ${take}`,
      shaved: (take) => `only ${take} comes off`,
    },
    unmarked: {
      title: 'No room for the marks of, from the left and near side of the raw sheet',
      shortTitle: 'No room for marks',
      columns: ['mark', 'where it lies'],
      from: (left, near) => `left ${left}, near ${near}`,
    },
    unnumbered: { title: 'No room for the numbers of', shortTitle: 'No room', column: 'cuts' },
    key: {
      title: 'Key to marks',
      shortTitle: 'Key',
      columns: ['mark', 'panel', 'cut size', 'grain'],
      yes: 'yes',
      no: 'no',
    },
    small: {
      plans: 'Cut plans',
      sheetsInAll: 'Sheets in all',
      panels: 'Panels',
      countOfPanels: (count) => many(count, 'panel', 'panels'),
      countOfCuts: (count) => many(count, 'cut', 'cuts'),
      countAlike: (count) => (count === 1 ? '1 sheet' : `${count} sheets alike`),
      notes: ['Sheets are drawn once with the number cut alike.', 'Numbers are those of the cut plans.'],
    },
    title: (number, all, group) => `Cut plan ${number} of ${all}, ${group}`,
    description: ({ size, copies, panels, offcuts, cuts, page, pages }) =>
      `Sheet of ${size}, ${copies} cut alike: ${panels} panels and ${offcuts} offcuts in ${cuts} cuts. Page ${page} of ${pages}.`,
    overviewTitle: (group) => `Overview of ${group}`,
    overviewDescription: (plans, page, pages) =>
      `${plans} cut plans as small pictures. Page ${page} of ${pages}.`,
  },
  furniture: {
    of: 'Of',
    kind: 'Kind',
    outsideSize: 'Width × depth × height',
    insideSize: 'Inside length × width × height',
    projection: 'Projection',
    firstAngle: 'first angle',
    isometric: 'isometric',
    noScale: 'none',
    unit: 'Unit',
    panelsOfUnit: 'Panels of a unit',
    layout: 'Layout',
    views: { front: 'Front', left: 'From the left', plan: 'Plan' },
    hiddenLeader: 'A broken line leads to a panel that stands behind others.',
    panels: {
      title: 'Panels, length along the grain',
      shortTitle: 'Panels',
      columns: ['No', 'Panel', 'Cut size', 'Finished size', 'Board and finish'],
    },
    opening: (name, size) => `opening “${name}” ${size}`,
    faces: { left: 'left', right: 'right', front: 'front', back: 'back', bottom: 'bottom', top: 'top' },
    outlines: {
      title: 'Outlines along the wall, to be marked out on the sawn panel',
      shortTitle: 'Outlines',
      columns: ['No', 'Panel', 'Corner', 'Along length', 'Along width'],
      from: (panel, edge, otherEdge) => `${panel}: from its ${edge} edge and its ${otherEdge} edge`,
      scribing: (allowance, edge) => `${allowance} left on along the ${edge} for scribing to the wall`,
    },
    fittings: { title: 'Fittings', columns: ['How many', 'Fitting'] },
    doorOpening: 'door opening',
    wheelArch: 'wheel arch',
    appliance: 'appliance',
    obstacle: 'what stands there already',
    walkway: (width) => `walkway ${width}`,
    hangsAbove: 'in the plan: hangs above',
    rightWall: 'Right wall',
    leftWall: 'Left wall',
    inside: {
      vehicle: {
        plan: 'Plan: cab on the left, right side of the vehicle at the top',
        section: 'Section, looking to the cab',
      },
      room: {
        plan: 'Plan: front end on the left, right wall at the top',
        section: 'Section, looking to the front end',
      },
    },
    unitTitle: (job, unit) => `${job}: ${unit}`,
    unitDescription: (unit, size) => `Front, side and plan of ${unit}, ${size}, with dimensions.`,
    panelsTitle: (job, unit) => `${job}: panels of ${unit}`,
    panelsDescription: (unit, panels) =>
      `${unit} drawn apart, with the numbers, sizes and boards of its ${panels} panels.`,
    layoutTitle: (job) => `${job}: layout`,
    layoutDescription: (vehicle, units) => `Plan, section and both walls of ${vehicle} with ${units} units.`,
    contactSheet: {
      document: 'Units',
      kind: (units) =>
        `${units} ${units === 1 ? 'unit' : 'units'} as written in the library, drawn slightly apart`,
      underEach: 'under each unit',
      title: (library) => `${library}: units`,
      description: (units) =>
        `Units drawn slightly apart, with outside size and number of panels: ${units.join(', ')}.`,
    },
  },
  panel: panelsEn,
};
