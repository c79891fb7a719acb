import type { CautionWords } from './cautionWords.ts';

/** The cautions in English. Figures have their source beside them. */
export const cautionsEn: CautionWords = {
  heading: 'Before you begin',
  intro:
    "These pages do not replace the manual of a machine or an appliance, your workshop's rules, local codes or the law of your country, nor work that needs a licence: those come first. If a page and a manual disagree, stop and ask.",
  broughtBy: (units) => `Here: ${units.join(', ')}.`,
  guided: {
    fence: [
      // HSE Woodworking Sheet 16 and manuals of saw benches.
      'Riving knife in place. Hands: with less than 150 mm between fence and blade, and on the last 300 mm of a cut, use a push stick; such cuts are marked in the steps. Under 50 mm use a push block.',
    ],
    rail: [
      // Common practice, no source.
      'Of a hand-held saw on a rail the figures say where the rail lies. Clamp rail and sheet, support the sheet on both sides of the cut so that nothing pinches the blade, keep hands and cable clear, and put the saw down only when the blade stands still.',
      'A piece that is narrower than the rail does not bear it: support the rail with board of the same thickness; such cuts are marked in the steps. Saw nothing that cannot be clamped.',
    ],
  },
  texts: {
    saw: {
      title: 'Saw',
      points: [
        'Know where the stop is before you start. Guard in place, blade sharp and right for laminated board, nothing loose about you. The manual of the machine comes first.',
        'Never reach over the blade, and clear offcuts only with a stick or when the blade stands still.',
        'A sheet is heavy and sharp at its edges: carry it with two people, wear gloves to carry and take them off at the saw.',
        'Before the first cut measure the kerf and the first sheet: the figures of the cuts hold for the kerf printed on the cut plan.',
      ],
    },
    dust: {
      title: 'Dust',
      points: [
        'Dust of wood and board harms lungs and can burn: run the extraction at every cut and wear a mask where it does not catch all. How much dust is allowed, and which mask, local rules and the data sheet of the board say.',
      ],
    },
    edges: {
      title: 'Sharp edges',
      points: [
        'Cut and trimmed edging is sharp. Break every edge and corner that a hand, a knee or a head can reach.',
      ],
    },
    fixing: {
      title: 'Fixing to the body',
      points: [
        'Furniture must hold in a crash stop: fix every unit to the body as the vehicle’s maker and the converter say. Lining alone holds no screw.',
        'Before you drill, find out what lies behind: wires, pipes, tank, airbags.',
      ],
    },
    latches: {
      title: 'Latches and corners',
      points: [
        // Notes of a German inspection body: positive latches, no sharp corners above all near seats.
        'Close doors, flaps and drawers with latches that lock; a magnet or a spring alone opens in a bend.',
        // Guidance on individual approval: an edge inside is sharp under a radius of 2.5 mm.
        'Inside a vehicle round corners to 2.5 mm at least, above all near seats. What the body that inspects the vehicle asks for comes first.',
      ],
    },
    overloading: {
      title: 'Mass and payload',
      points: [
        'Masses here are worked out, not weighed, and furniture is not all of the conversion: appliances without a mass in the library, battery, water and its tanks, gas, insulation, windows and cushions come on top.',
        'Weigh the vehicle when it is finished, axle by axle and side by side; its permitted masses and axle loads come from its papers, not from these pages. Heavy things low.',
      ],
    },
    seats: {
      title: 'Seats and belts',
      points: [
        'A seat that is used on the move, its anchorage and its belt need proof of strength that no furniture program can give. Changes to seats and belts, and what stands before or behind a belted seat, need whoever may approve them.',
        'On the move everyone sits belted on such a seat, tables are stowed, and nobody lies on a bed.',
      ],
    },
    'ways-out': {
      title: 'Ways out',
      points: [
        'Whoever sleeps here must get out two ways, each opened from inside, without tools and in the dark. Local rules for motor caravans say how large they must be; nothing may stand in them.',
      ],
    },
    gas: {
      title: 'Gas',
      points: [
        'Gas is work for licensed people only, and the system is tested before it is first used. Pipes, vents, distances and materials are those of the appliance’s manual and the gas rules of your country; figures of this job do not replace them.',
        'Bottles stand upright and tied in a locker that is sealed from the living space, has an open drop vent at its lowest point and nothing in it that can spark.',
      ],
    },
    ventilation: {
      title: 'Air',
      points: [
        'Vents high and low stay open, as large as the appliance’s manual and local codes say; no furniture, mattress or lining may cover them. Openings in these drawings are a place for air, not a proof that it is enough.',
        'Fit an alarm for carbon monoxide where something burns, as its manual says.',
      ],
    },
    heat: {
      title: 'Hot appliances',
      points: [
        'Distances to walls, fronts and what hangs above, and how surfaces are protected, are those of the appliance’s manual and local codes. Where a panel stands nearer, move it before you saw.',
        'A cooker is no heater and is not used on the move. Keep an extinguisher and a fire blanket where you can reach them on the way out.',
      ],
    },
    electrics: {
      title: 'Electrics',
      points: [
        'An appliance’s manual says how much air it needs. Wiring and fuses are work for people who are licensed for it where local codes ask for it, mains voltage everywhere.',
        'Lead wires clear of screws and sharp edges, and keep a way to every joint of them.',
      ],
    },
    water: {
      title: 'Water',
      points: [
        'Keep water away from electrics. Seal the sawn edges of an opening before the sink goes in, and lead pipes where a leak shows. What carries drinking water must be fit for it, as its manual and local codes say.',
      ],
    },
    'gas-stays': {
      title: 'Gas stays',
      points: [
        'Gas stays are under pressure: never open or heat them, and hold the flap while you fit them. Their maker’s table says which force a flap needs.',
      ],
    },
    'wall-fixing': {
      title: 'Fixing to a wall',
      points: [
        'What hangs on a wall or could tip over is fixed to what bears: anchors for this kind of wall, as many and as deep as their maker says. Hollow walls and ceilings need a person who knows them.',
        'Before you drill, find out where wires and pipes run; local building codes come first.',
      ],
    },
  },
};
