import { leftwardsApart, withoutUnseen } from '../../basics/visibleText.ts';
import type { Drawing } from '../../drawing/index.ts';
import { careInWords, type StepInWords } from '../stepsInWords.ts';
import type { Words } from '../words/words.ts';
import type { Block, Book, DrawingsBlock, DrawnPiece, Row, Section, TextBlock, Tick } from './book.ts';
import { pageScript } from './pageScript.ts';
import { pageStyle } from './pageStyle.ts';

/** What only the edge can give. */
export interface BookHtmlTools {
  /** A drawing as the text of an SVG file. */
  readonly svgOf: (drawing: Drawing) => string;
  /** SHA-256 in base64 of the UTF-8 of a text. */
  readonly sha256: (text: string) => string;
  /** What tells this plan from others of the same job: ticks belong to it. */
  readonly planMark: string;
}

/** A text as HTML shows it, between tags and in quoted attributes. */
export function escapeHtml(text: string): string {
  return leftwardsApart(withoutUnseen(text.replace(/\p{Surrogate}/gu, '\ufffd'), '', '\t\n'))
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

const h = escapeHtml;

/** JSON that can stand inside a script element. */
function jsonForScript(value: unknown): string {
  return JSON.stringify(value)
    .replaceAll('<', '\\u003c')
    .replaceAll('\u2028', '\\u2028')
    .replaceAll('\u2029', '\\u2029');
}

function tickBox(key: string, name: string, panel?: number): string {
  const own = panel === undefined ? '' : ` data-panel="${panel}"`;
  const label = name === '' ? '' : ` aria-label="${h(name)}"`;
  return `<input type="checkbox" data-tick="${h(key)}"${own}${label} autocomplete="off">`;
}

function ticksHtml(items: readonly Tick[]): string {
  const lines = items.map(
    (tick) => `<li><label>${tickBox(tick.key, '', tick.panel)}<span>${h(tick.text)}</span></label></li>`,
  );
  return `<ul class="ticks">\n${lines.join('\n')}\n</ul>`;
}

function stepsHtml(steps: readonly StepInWords[], words: Words): string {
  const lines = steps.map((step) => {
    const { sentence, outcomes } = step;
    const told = careInWords(step, words);
    const care = told === null ? '' : ` <span class="care">▲ ${h(told)}</span>`;
    const gives = outcomes.map((outcome) => `<p class="gives">${h(outcome)}</p>`).join('');
    return `<li><p>${h(sentence)}${care}</p>${gives}</li>`;
  });
  return `<ol class="steps">\n${lines.join('\n')}\n</ol>`;
}

function rowHtml(row: Row, block: Extract<TextBlock, { kind: 'table' }>, isSum: boolean): string {
  const cells = row.cells.map((cell, index) => {
    const last = index === row.cells.length - 1;
    if (last && row.tick !== undefined) {
      const name = row.cells.filter((text) => text !== '').join(', ');
      return `<td class="tick"><label>${tickBox(row.tick, name)}</label></td>`;
    }
    // Long texts of labels may go on in a new line after a stroke.
    const text = h(cell).replaceAll('/', '/<wbr>');
    return `<td${block.columns[index]?.anchor === 'end' ? ' class="figure"' : ''}>${text}</td>`;
  });
  const counts = row.countsPanel === undefined ? '' : ` data-counts="${row.countsPanel}"`;
  return `<tr${counts}${isSum ? ' class="sum"' : ''}>${cells.join('')}</tr>`;
}

function tableHtml(block: Extract<TextBlock, { kind: 'table' }>): string {
  const heads = block.columns.map(
    ({ heading, anchor }) => `<th scope="col"${anchor === 'end' ? ' class="figure"' : ''}>${h(heading)}</th>`,
  );
  const rows = block.rows.map((row, index) =>
    rowHtml(row, block, block.sum === true && index === block.rows.length - 1),
  );
  return [
    `<div class="scroll" role="group" tabindex="0" aria-label="${h(block.caption)}">`,
    `<table><caption>${h(block.caption)}</caption>`,
    `<thead><tr>${heads.join('')}</tr></thead><tbody>`,
    ...rows,
    '</tbody></table></div>',
  ].join('\n');
}

/**
 * Drawings can be tapped on boxes over their panels, which lie below the numbers of cuts and the names so that no frame or
 * colour hides these; who cannot tap uses the list of ticks.
 */
function withHitsBelowLettering(svg: string, pieces: readonly DrawnPiece[]): string {
  const lettering = svg.indexOf('<g class="numbers">');
  const at = lettering < 0 ? svg.lastIndexOf('</svg>') : lettering;
  return `${svg.slice(0, at)}${hitsSvg(pieces)}\n${svg.slice(at)}`;
}

function hitsSvg(pieces: readonly DrawnPiece[]): string {
  const mm = (value: number) => Math.round(value * 1000) / 1000;
  return pieces
    .map(({ panel, ticks, box }) => {
      const place = `x="${mm(box.x0)}" y="${mm(box.y0)}" width="${mm(box.x1 - box.x0)}" height="${mm(box.y1 - box.y0)}"`;
      return `<rect class="hit" ${place} data-panel="${panel}" data-ticks="${h(JSON.stringify(ticks))}"/>`;
    })
    .join('\n');
}

/** The part of a drawing that a screen shows, by the SVG's own means. */
export function pictureOnly(svg: string, { picture }: Drawing): string {
  if (picture === undefined) return svg;
  const [width, height] = [picture.x1 - picture.x0, picture.y1 - picture.y0];
  return svg
    .replace(/viewBox="[^"]*"/, `viewBox="${picture.x0} ${picture.y0} ${width} ${height}"`)
    .replace(/ width="[^"]*mm"/, ` width="${width}mm"`)
    .replace(/ height="[^"]*mm"/, ` height="${height}mm"`);
}

/** What belongs beside a drawing: under it, or in columns where the screen is wide. */
function besideHtml(block: DrawingsBlock, section: Section, words: Words, tools: BookHtmlTools): string {
  const groups = (block.beside ?? []).map(
    (group) => `<div>\n${group.map((each) => blockHtml(each, section, words, tools)).join('\n')}\n</div>`,
  );
  return groups.length === 0 ? '' : `<div class="beside">\n${groups.join('\n')}\n</div>`;
}

function drawingsHtml(block: DrawingsBlock, section: Section, words: Words, tools: BookHtmlTools): string {
  const button = (zooms: string, text: string) =>
    `<button type="button" class="quiet" data-zooms="${zooms}" data-of="${section.id}">${h(text)}</button>`;
  const says = words.page;
  const views = block.drawings.map((drawing, index) => {
    const svg = pictureOnly(tools.svgOf(drawing).replace(/^<\?xml[^>]*\?>\s*/, ''), drawing);
    const withHits = index === 0 ? withHitsBelowLettering(svg, block.pieces) : svg;
    const label = says.planRegion(index === 0 ? block.label : `${block.label}, ${index + 1}`);
    return `<div class="drawing" role="group" tabindex="0" aria-label="${h(label)}">\n${withHits}</div>`;
  });
  const hint = block.pieces.length > 0 ? `<span>${h(says.tapPlan)}</span>` : '';
  return [
    `<div class="tools">${button('1', says.zoomIn)}${button('-1', says.zoomOut)}${button('fit', says.fit)}${hint}</div>`,
    ...views,
    besideHtml(block, section, words, tools),
  ].join('\n');
}

function blockHtml(block: Block, section: Section, words: Words, tools: BookHtmlTools): string {
  switch (block.kind) {
    case 'paragraph':
      return `<p${block.strong ? ' class="strong"' : ''}>${h(block.text)}</p>`;
    case 'heading':
      return section.level === 2 ? `<h3>${h(block.text)}</h3>` : `<h4>${h(block.text)}</h4>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${h(item)}</li>`).join('\n')}</ul>`;
    case 'ticks':
      return ticksHtml(block.items);
    case 'steps':
      return stepsHtml(block.steps, words);
    case 'table':
      return tableHtml(block);
    case 'drawings':
      return drawingsHtml(block, section, words, tools);
    default:
      return block satisfies never;
  }
}

function sectionHtml(section: Section, words: Words, tools: BookHtmlTools): string {
  const { level, id, heading, blocks } = section;
  const over = blocks.length === 0 ? ' class="over"' : '';
  return [
    `<section id="${h(id)}" aria-labelledby="${h(id)}-heading"${over}>`,
    `<h${level} id="${h(id)}-heading">${h(heading)}</h${level}>`,
    ...blocks.map((block) => blockHtml(block, section, words, tools)),
    '</section>',
  ].join('\n');
}

function barHtml({ page }: Words): string {
  return `<div class="bar" role="region" aria-label="${h(page.find)}">
<form id="search" role="search"><label for="find">${h(page.find)}</label>
<input id="find" type="search" placeholder="${h(page.findHint)}" autocomplete="off" aria-controls="found">
<button type="button" class="quiet" id="theme">${h(page.dark)}</button>
<button type="button" class="quiet" id="print">${h(page.print)}</button>
<p id="progress"></p></form>
<p id="count" role="status"></p>
<ol id="found"></ol></div>`;
}

/** Links to all chapters; those of level 3 fold away under the heading over them. */
function contentsHtml(sections: readonly Section[]): string {
  const link = ({ id, heading }: Section) => `<li><a href="#${h(id)}">${h(heading)}</a></li>`;
  const lines = sections.flatMap((section, index) => {
    if (section.level === 3) return [];
    if (section.blocks.length > 0) return [link(section)];
    const after = sections.slice(index + 1);
    const end = after.findIndex(({ level }) => level === 2);
    const own = end < 0 ? after : after.slice(0, end);
    const summary = `<summary>${h(section.heading)} (${own.length})</summary>`;
    return [`<li><details>${summary}<ul>\n${own.map(link).join('\n')}\n</ul></details></li>`];
  });
  return lines.join('\n');
}

/**
 * The job book as one HTML file that needs nothing else: drawings, style and script are inside, and its content
 * security policy forbids everything but these two by their SHA-256. Whatever a person wrote is escaped. The same book
 * gives the same bytes.
 */
export function bookHtml(book: Book, tools: BookHtmlTools): string {
  const { words, title, sections } = book;
  const says = {
    ...words.page,
    ticked: words.page.ticked(0, 1).replace('0', '{0}').replace('1', '{1}'),
    found: words.page.found(0).replace('0', '{0}'),
  };
  const policy = [
    "default-src 'none'",
    `style-src 'sha256-${tools.sha256(pageStyle)}'`,
    `script-src 'sha256-${tools.sha256(pageScript)}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="${words.language}" data-store="${h(`plywright:${title}:${tools.planMark}`)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${h(title)} – ${h(words.book)}</title>
<style>${pageStyle}</style>
</head>
<body>
<a class="skip" href="#book">${h(words.page.skip)}</a>
${barHtml(words)}
<main id="book" tabindex="-1">
<header class="cover"><h1>${h(title)}<small>${h(words.book)}</small></h1></header>
<nav aria-label="${h(words.contents)}"><ul>
${contentsHtml(sections)}
</ul></nav>
${sections.map((section) => sectionHtml(section, words, tools)).join('\n')}
</main>
<footer><p id="kept"></p><button type="button" class="quiet" id="clear">${h(words.page.clear)}</button></footer>
<script type="application/json" id="says">${jsonForScript(says)}</script>
<script>${pageScript}</script>
</body>
</html>
`;
}
