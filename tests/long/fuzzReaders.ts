import type { SeededRandom } from '../../src/basics/random.ts';
import { findPieces } from '../../src/changes/findPieces.ts';
import { sheetsMeant } from '../../src/changes/sheetsOfPlan.ts';
import { pieceCode, readPieceCode } from '../../src/documents/panelStickerCode.ts';
import { readLibrary } from '../../src/library/index.ts';
import { readPanelList, readSheetList } from '../../src/lists/index.ts';
import { readReceivedList } from '../../src/lists/receivedList.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import type { Booking } from '../../src/model/store.ts';
import { fileBelow, libraryOfOrder, readOrder } from '../../src/order/index.ts';
import { readPlan, replay } from '../../src/pipeline/replayPlan.ts';
import { book, emptyLedger } from '../../src/store/book.ts';
import { lineOf } from '../../src/store/items.ts';
import { bookingText, newLedgerText, readLedgerText } from '../../src/store/ledgerText.ts';
import { readMix } from '../../src/yearOfOrders/mixFile.ts';
import { must } from '../helpers/demoVan.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';
import { spoilPlan } from '../secondReplay/spoilPlan.ts';
import { draft, edging, offcut, sheet } from '../store/histories.ts';
import { optionReader } from './optionReader.ts';
import { drawList, jobOfList } from './randomList.ts';
import { sawTwice } from './sawnTwice.ts';

/** What a reader made of a text. */
export interface Read {
  readonly ok: boolean;
  readonly findings: readonly Finding[];
}

/** Something that reads what people or other programs wrote. */
export interface Reader {
  readonly name: string;
  /** The file that every finding must name. */
  readonly file: string;
  /** Texts that it accepts, to be changed. */
  readonly texts: readonly string[];
  /** Texts that get further than a change of letters would, such as with sums that are right. */
  readonly near?: (text: string, random: SeededRandom) => string;
  readonly read: (text: string) => Read;
  /** Reads a folder of files for the one that is changed: such files share the turns of one reader. */
  readonly readsFolder?: true;
}

const ROOT = 'libraries/small';
const ORDER = 'orders/small-order.yaml';

/** Files that a library may have, beside those of the small one. */
const MORE_OF_LIBRARY: Readonly<Record<string, string>> = {
  'appliances.yaml':
    'hob: { title: Hob, width: 260, depth: 380, height: 50, clear: { left: 100, back: 55, above: 700 }, cautions: [gas] }\n',
  'drilling.yaml':
    'cup:\n  title: Cup of a hinge\n  holes:\n    cup: { along: 0, across: 0, diameter: 35, depth: 13 }\n    "1": { along: 9.5, across: -22.5, diameter: 8, depth: 11 }\n',
  'rates.yaml':
    'hour: 52\nsawing: { hour: 56, sheet: 150, cut: 6 s }\nedging: { metre: 18, set-up: 5 min }\nassembly:\n  unit: 0.5 h\n  units: { drawer-box: 20 min }\ncharge: { sheets: share }\nmark-up: { material: 12, work: 7.5 }\nVAT: 19\nextras:\n  carriage: { title: Carriage, price: 60, for: order }\n',
  'suppliers.yaml':
    'yard:\n  title: Board yard\n  contact: [Lane 3, "Customer 7"]\n  delivery days: 6\n  least order value: 250\n  delivery price: 7.90\n  free delivery from: 1500\n',
};

/** The small library with every kind of file, and with what only some libraries say in the usual ones. */
function wholeLibrary(): Map<string, string> {
  const files = smallLibrary(
    [
      'library.yaml',
      'currency: EUR\n',
      'currency: EUR\nfree days: [2026-05-01, { from: 2026-12-24, to: 2027-01-01 }]\n' +
        'cautions:\n  high-bed: { title: Bed high up, text: [Nobody lies on it while the van moves.] }\n',
    ],
    [
      'sheets.yaml',
      'price: 110 }',
      'price: 110, supplier: yard, price breaks: [{ from: 5, price: 101.50 }] }',
    ],
  );
  for (const [path, text] of Object.entries(MORE_OF_LIBRARY)) files.set(`${ROOT}/${path}`, text);
  return files;
}

function libraryReaders(): Reader[] {
  const files = wholeLibrary();
  return [...files].map(([path, whole]) => ({
    name: `library ${path.slice(ROOT.length + 1)}`,
    // A word that is missing from one file is missed in others.
    file: ROOT,
    texts: [whole],
    read: (text) => readLibrary(new Map(files).set(path, text), ROOT),
    readsFolder: true as const,
  }));
}

function orderReaders(small: Library): Reader[] {
  const variant = 'variant of: small-order.yaml\nchoices: { bed_width: 1300, cooker: one-burner }\n';
  const setting = (text: string) => readOrder(smallOrder, ORDER, small, { below: [], set: [text] });
  return [
    {
      name: 'order',
      file: ORDER,
      texts: [smallOrder],
      read: (text) => {
        libraryOfOrder(text, ORDER);
        return readOrder(text, ORDER, small);
      },
    },
    {
      name: 'variant',
      file: 'orders/variant.yaml',
      texts: [variant, `${variant}roles: { front: { finish: oak } }\nchanges:\n  - { leave out: bench }\n`],
      read: (text) => {
        const below = fileBelow(text, 'orders/variant.yaml');
        if (!below.ok) return below;
        return readOrder(text, 'orders/variant.yaml', small, {
          below: [{ text: smallOrder, file: ORDER }],
          set: [],
        });
      },
    },
    {
      name: 'setting',
      file: '--set',
      texts: ['bed_width=1300', 'cooker=one-burner', 'front.finish=oak', 'galley cupboard.shelves=1'],
      read: setting,
    },
  ];
}

function listReaders(): Reader[] {
  const received = 'kind,board,finish,length,width,grain,count\nsheet,ply,grey,2500,1250,length,2\n';
  return [
    {
      name: 'panel list',
      file: 'panels.csv',
      texts: [
        'name,length,width,count,grain\nside,720,560,4,length\nback,"23 5/8 in",568,2,none\n',
        'name;length;width;thickness;board;finish;edging length 1;unit\r\n"a ""b""";1,5;2;15;ply;grey;e1;u\r\n',
      ],
      read: (text) => readPanelList(text, 'panels.csv'),
    },
    {
      name: 'sheet list',
      file: 'sheets.csv',
      texts: [
        'name,length,width,grain,count,price\nlarge,2500,1250,length,,80\nsmall,2440,1220,length,2,60.5\n',
      ],
      read: (text) => readSheetList(text, 'sheets.csv'),
    },
    {
      name: 'list of what has come in',
      file: 'received.csv',
      texts: [received],
      read: (text) => readReceivedList(text, 'received.csv'),
    },
  ];
}

function mixReader(): Reader {
  const mix =
    'title: A year of vans\nweeks: 52\ncut together: 2\nkeep offcuts: { weeks: 26, most: 40 }\norders:\n' +
    '  - { order: my-van.yaml, count: 8 }\n  - { order: my-van.yaml, count: 4, set: [front.finish=oak] }\n' +
    '  - { order: your-van.yaml, weeks: [3, 17, 40] }\n';
  return { name: 'mix of orders', file: 'mix.yaml', texts: [mix], read: (text) => readMix(text, 'mix.yaml') };
}

/** What a person or a scanner says of panels and sheets of a plan: a word a line. */
function namesReaders(): Reader[] {
  const pieces = ['side', 'door'].flatMap((name, index) =>
    [1, 2].map((piece) => ({
      code: pieceCode({ is: 'panel', job: 'VAN', group: 'PLY', number: index + 1, piece }),
      number: index + 1,
      piece,
      id: `galley/${name}`,
      name,
      unit: 'galley',
    })),
  );
  const plan = {
    groups: [
      { id: 'ply-grey', sheets: [1, 2, 3].map((number) => ({ number, copies: 4 })) },
      { id: 'ply-oak', sheets: [{ number: 1, copies: 1 }] },
    ],
  } as unknown as PlanFile;
  return [
    {
      name: 'panels called by name',
      file: 'labels.txt',
      texts: [['2/1', 'side/all', 'galley/door', 'galley door', pieces[0]!.code].join('\n')],
      read: (text) => {
        const lines = text.split('\n');
        for (const line of lines) readPieceCode(line);
        return findPieces(
          pieces,
          lines.map((line, index) => ({ text: line, file: 'labels.txt', line: index + 1 })),
        );
      },
    },
    {
      name: 'sheets called by name',
      file: 'plan.json',
      texts: ['ply-grey/2x3\nply-grey/1', 'ply-oak\nPLY-GREY/3'],
      read: (text) => {
        const { ok, findings } = sheetsMeant(plan, text.split('\n'), []);
        // They come from one option, which the command names.
        return { ok, findings: findings.map((finding) => ({ ...finding, place: { file: 'plan.json' } })) };
      },
    },
  ];
}

function ledgerReader(): Reader {
  const { bookings } = [
    draft('receive', [lineOf(sheet, 4, 'in'), lineOf(edging, 50_000, 'in')], { why: 'Lieferung “7” 板 😀' }),
    draft('put back', [lineOf(offcut('A1'), 1, 'in')]),
    draft('issue', [lineOf(sheet, 1, 'out')], { order: 'van-1' }),
  ].reduce((before, one) => must(book(before, one)), emptyLedger);
  const write = (all: readonly unknown[]) =>
    all.reduce(
      (text: string, one) => text + bookingText(one as Booking, text.slice(-11, -3)),
      newLedgerText(),
    );
  return {
    name: 'ledger of a store',
    file: 'ledger.jsonl',
    texts: [write(bookings)],
    near: (_, random) => write(JSON.parse(spoilPlan(JSON.stringify(bookings), random).text) as unknown[]),
    read: (text) => readLedgerText(text, 'ledger.jsonl'),
  };
}

function planReader(random: SeededRandom): Reader {
  const texts: string[] = [];
  while (texts.length < 4) {
    const { job } = jobOfList(drawList(random), random);
    const panels = job?.groups.flatMap(({ demands }) => demands.map(({ count }) => count)) ?? [];
    if (job === null || panels.reduce((sum, count) => sum + count, 0) > 60) continue;
    const { text } = sawTwice(job, 1, 0);
    if (text !== null) texts.push(text);
  }
  return {
    name: 'plan file',
    file: 'plan.json',
    texts,
    near: (text, drawn) => {
      let spoilt = text;
      for (let changes = 1 + drawn.below(3); changes > 0; changes--) spoilt = spoilPlan(spoilt, drawn).text;
      return spoilt;
    },
    read: (text) => {
      const read = readPlan(text, 'plan.json');
      const sawn = replay(text, 'plan.json');
      return read.ok ? sawn : read;
    },
  };
}

/** Every reader of the program, with texts that it accepts; `random` draws the plans. */
export function allReaders(random: SeededRandom): readonly Reader[] {
  const library = libraryReaders();
  const small = must(readLibrary(smallLibrary(), ROOT));
  return [
    ...orderReaders(small),
    ...listReaders(),
    mixReader(),
    ...namesReaders(),
    optionReader(),
    ledgerReader(),
    planReader(random),
    ...library,
  ];
}
