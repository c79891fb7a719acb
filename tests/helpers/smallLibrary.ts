/** A small invented library, complete and without errors, as texts. Tests change single lines of it. */
const texts: Readonly<Record<string, string>> = {
  'library.yaml': `title: Small test library
note: invented for tests
currency: EUR
roles:
  carcass: sides, bottoms and shelves
  front: doors and drawer fronts
  back: thin backs
`,
  'boards.yaml': `poplar-15: { title: Poplar ply 15, core: poplar ply, thickness: 15.2, areal mass: 7.4, decorated faces: 2 }
poplar-4:
  title: Poplar ply 4
  core: poplar ply
  thickness: 4
  areal mass: 1.9
  decorated faces: 1
`,
  'finishes.yaml': `pale-grey: { title: Pale grey, grain: false, tone: 0.1, hatch: none }
oak: { title: Oak, grain: true, tone: 0.3, hatch: wood }
`,
  'edgings.yaml': `pale-grey-1: { title: Pale grey 1 mm, finish: pale-grey, thickness: 1, width: 19, deducted: true, pre-milling: 0,
  overlength: 70, mass per metre: 0.03, price per metre: 0.55, roll: 75 }
oak-narrow: { title: Oak narrow, finish: oak, thickness: 0.8, width: 12, deducted: true, pre-milling: 0.5,
  overlength: 60, mass per metre: 0.02, price per metre: 0.8, roll: 50 }
oak-wide: { title: Oak wide, finish: oak, thickness: 0.8, width: 3/4 in, deducted: true, pre-milling: 0.5,
  overlength: 60, mass per metre: 0.02, price per metre: 0.9, roll: 50 }
`,
  'fittings.yaml': `hinge: { title: Hinge, mass: 0.08, price: 2.10, pack: 10 }
`,
  'sheets.yaml': `- { id: poplar-15-pale-grey, board: poplar-15, finish: pale-grey, length: 2500, width: 1220, grain: none, price: 92.50 }
- { id: poplar-15-oak, board: poplar-15, finish: oak, length: 2500.06, width: 1220, grain: length, price: 110 }
- { id: poplar-4-pale-grey, board: poplar-4, finish: pale-grey, length: 2500, width: 1220, grain: none, price: 31, count: 3 }
`,
  'saws.yaml': `panel-saw:
  title: Panel saw
  kerf: 3.15
  trim: 10
  first cut: rip
  smallest part: 50
  least offcut: { length: 400, width: 200 }
slide-saw:
  title: Sliding table saw
  kerf: 1/8 in
  trim: { left: 10, right: 0, near: 5.01, far: 0 }
  first cut: either
  turns: 3
  smallest part: 80
  least offcut: { length: 500, width: 150 }
  longest cut: 3200
  cutting height: 60
  guided by: rail
`,
  'vehicles/van-short.yaml': `title: Short van
inside length: 3100
inside height: 1880
overall length: 5400
payload: 900
widths: [ { height: 0, width: 1700 }, { height: 700, width: 1810 } ]
wheel arches:
  left: { x: [1900, 2800], y: [0, 230], z: [0, 300] }
doors:
  sliding: { x: [200, 1300], y: [1650, 1750], z: [0, 1700] }
`,
  'vehicles/van-long.yaml': `title: Long van
inside length: 3700
inside height: 1880
overall length: 6000
payload: 850
widths: [ { height: 0, width: 1700 } ]
`,
  'units/base-door.yaml': `title: Base cupboard with one door
parameters:
  width: { default: 600, least: 250, most: 1200, note: outside width }
  depth: { default: 480 }
  height: { default: 820 }
  shelves: { default: 1, least: 0, most: 4, counts: true }
  hand: { default: left, choices: [left, right] }
names:
  inside: width - 2 * thickness.carcass
outside: { x: [0, width], y: [0, depth], z: [0, height] }
musts:
  - { that: inside > 200, says: "the door would be too narrow for its hinges" }
panels:
  left side:
    role: carcass
    x: [0, thickness.carcass]
    y: [thickness.front, depth]
    z: [0, height]
    grain: z
    edging: [front]
  shelf:
    role: carcass
    x: [thickness.carcass, width - thickness.carcass]
    y: [30, depth]
    z: ["100 + i * 200", 100 + i * 200 + thickness.carcass]
    grain: x
    edging: [front]
    repeat: { i: shelves }
    when: shelves > 0
    let into: { left side: 5 }
    cut-outs:
      cable: { x: [100, 160], y: [40, 100] }
  door:
    role: front
    x: [2, width - 2]
    y: [0, thickness.front]
    z: [2, height - 2]
    grain: z
    edging: all
    match: fronts
units:
  inner: { unit: drawer-box, at: { x: 10, y: 10, z: 10 }, set: { width: inside - 26, side: hand }, repeat: { n: shelves } }
fittings:
  hinge: { count: 2, when: hand == "left" }
`,
  'units/drawer-box.yaml': `title: Drawer box
parameters:
  width: { default: 400 }
  side: { default: left, choices: [left, right] }
outside: { x: [0, width], y: [0, 400], z: [0, 120] }
panels:
  bottom: { role: back, x: [0, width], y: [0, 400], z: [0, thickness.back], grain: any }
`,
  'layouts/galley.yaml': `title: Galley and bench
vehicles: [van-short, van-long]
choices:
  bed_width: { default: 1200, least: 1000, most: 1400 }
  cooker: { default: one-burner, choices: [one-burner, two-burner] }
names:
  galley: vehicle.length - bed_width
units:
  galley cupboard: { unit: base-door, at: { x: 1300, y: 0, z: 0 }, facing: right, set: { width: 500, hand: right } }
  bench: { unit: base-door, at: { x: 0, y: 1100, z: 0 }, facing: left }
musts:
  - { that: galley > 1500, says: there is no room for the galley }
`,
};

export const smallOrder = `title: A small order
note: invented for tests
library: small
layout: galley
vehicle: van-long
saw: panel-saw
count: 1
choices: { bed_width: 1250, cooker: two-burner }
roles:
  carcass: { board: poplar-15, finish: pale-grey }
  front: { board: poplar-15, finish: oak, edging: oak-wide }
  back: { board: poplar-4, finish: pale-grey, edging: none }
changes:
  - { unit: galley cupboard, set: { shelves: 2, hand: left } }
  - { leave out: bench }
  - { add: base-door, as: shoe cupboard, at: { x: 0, y: 1100, z: 0 }, facing: left, set: { width: 450 } }
`;

/** The library's texts under `libraries/small/`, with replacements `[path, what stands there, what stands instead]`. */
export function smallLibrary(
  ...changes: readonly (readonly [string, string, string])[]
): Map<string, string> {
  const files = new Map(Object.entries(texts));
  for (const [path, before, after] of changes) {
    const text = files.get(path) ?? '';
    if (!text.includes(before))
      throw new Error(`the test library has no ${JSON.stringify(before)} in ${path}`);
    files.set(
      path,
      text.replace(before, () => after),
    );
  }
  return new Map([...files].map(([path, text]) => [`libraries/small/${path}`, text]));
}
