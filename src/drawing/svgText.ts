/** What is read of a node of a drawing's document; every document has it. */
interface ReadNode {
  readonly nodeType: number;
  readonly nodeName: string;
  readonly nodeValue: string | null;
  readonly firstChild: ReadNode | null;
  readonly nextSibling: ReadNode | null;
  getAttributeNames(): string[];
  getAttribute(name: string): string | null;
}

const TEXT_NODE = 3;
/** Elements that begin a line of the file; a group ends on a line of its own as well. */
const ON_A_LINE = new Set(['g', 'rect', 'line', 'path', 'polygon', 'circle', 'text', 'title', 'desc']);

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '"': '&quot;',
  '<': '&lt;',
  '>': '&gt;',
  '\t': '&#x9;',
  '\n': '&#xA;',
  '\r': '&#xD;',
};

function escapedValue(text: string): string {
  return /[&"<>\t\n\r]/.test(text) ? text.replace(/[&"<>\t\n\r]/g, (each) => ESCAPES[each]!) : text;
}

function escapedText(text: string): string {
  return /[&<>]/.test(text) ? text.replace(/[&<>]/g, (each) => ESCAPES[each]!) : text;
}

/**
 * The text of an element with all in it, as XML, each shape on a line. `namespace` is declared at this element. Only
 * elements and texts are written: a drawing has nothing else, and the serializer of a document, which is ready for anything,
 * takes longer than all the rest of a drawing.
 */
export function textOfSvg(element: unknown, namespace: string): string {
  const parts: string[] = [];
  write(element as ReadNode, ` xmlns="${namespace}"`, parts);
  return parts.join('');
}

function write(node: ReadNode, declared: string, parts: string[]): void {
  if (node.nodeType === TEXT_NODE) {
    parts.push(escapedText(node.nodeValue ?? ''));
    return;
  }
  const name = node.nodeName;
  const begin = ON_A_LINE.has(name) ? `\n<${name}${declared}` : `<${name}${declared}`;
  parts.push(begin);
  for (const attribute of node.getAttributeNames()) {
    if (attribute === 'xmlns' || attribute.startsWith('xmlns:')) continue;
    parts.push(` ${attribute}="${escapedValue(node.getAttribute(attribute) ?? '')}"`);
  }
  const first = node.firstChild;
  if (first === null) {
    parts.push('/>');
    return;
  }
  parts.push('>');
  for (let child: ReadNode | null = first; child !== null; child = child.nextSibling) write(child, '', parts);
  parts.push(name === 'g' ? `\n</${name}>` : `</${name}>`);
}
