/**
 * A document that can do what svg.js asks of it where a drawing is only built up and then written: make elements and texts,
 * hang them under each other, set and read attributes. It knows no styles, events, selectors or pages, and a window that
 * does takes longer to load than many a drawing to draw. Tests hold what is drawn in it against a document of a browser's
 * kind.
 */

class PlainNode {
  readonly nodeType: number;
  readonly nodeName: string;
  readonly ownerDocument: PlainDocument;
  parentNode: PlainNode | null = null;
  firstChild: PlainNode | null = null;
  lastChild: PlainNode | null = null;
  previousSibling: PlainNode | null = null;
  nextSibling: PlainNode | null = null;

  constructor(nodeType: number, nodeName: string, ownerDocument: PlainDocument) {
    this.nodeType = nodeType;
    this.nodeName = nodeName;
    this.ownerDocument = ownerDocument;
  }

  get nodeValue(): string | null {
    return null;
  }

  /** Hangs a node under this one as its last; one that hangs elsewhere is taken off there first. */
  appendChild<T extends PlainNode>(node: T): T {
    for (let above: PlainNode | null = this; above !== null; above = above.parentNode) {
      if (above === node) throw new Error('a node cannot hang under itself');
    }
    node.parentNode?.removeChild(node);
    node.parentNode = this;
    node.previousSibling = this.lastChild;
    if (this.lastChild === null) this.firstChild = node;
    else this.lastChild.nextSibling = node;
    this.lastChild = node;
    return node;
  }

  /** Takes a node off that hangs under this one. */
  removeChild<T extends PlainNode>(node: T): T {
    if (node.parentNode !== this) throw new Error('only a node that hangs here can be taken off');
    if (node.previousSibling === null) this.firstChild = node.nextSibling;
    else node.previousSibling.nextSibling = node.nextSibling;
    if (node.nextSibling === null) this.lastChild = node.previousSibling;
    else node.nextSibling.previousSibling = node.previousSibling;
    node.parentNode = null;
    node.previousSibling = null;
    node.nextSibling = null;
    return node;
  }
}

class PlainText extends PlainNode {
  private readonly text: string;

  constructor(text: string, ownerDocument: PlainDocument) {
    super(3, '#text', ownerDocument);
    this.text = text;
  }

  override get nodeValue(): string {
    return this.text;
  }
}

class PlainElement extends PlainNode {
  private readonly attributes = new Map<string, string>();

  constructor(name: string, ownerDocument: PlainDocument) {
    super(1, name, ownerDocument);
  }

  hasAttribute(name: string): boolean {
    return this.attributes.has(name);
  }

  getAttribute(name: string): string | null {
    return this.attributes.get(name) ?? null;
  }

  getAttributeNames(): string[] {
    return [...this.attributes.keys()];
  }

  setAttribute(name: string, value: string): void {
    this.attributes.set(name, value);
  }

  /** The name holds the prefix already; nothing asks for its namespace again. */
  setAttributeNS(_namespace: string | null, name: string, value: string): void {
    this.attributes.set(name, value);
  }

  removeAttribute(name: string): void {
    this.attributes.delete(name);
  }

  /** One text in place of all that hangs here. */
  set textContent(text: string) {
    while (this.firstChild !== null) this.removeChild(this.firstChild);
    if (text !== '') this.appendChild(this.ownerDocument.createTextNode(text));
  }
}

class PlainDocument {
  createElementNS(_namespace: string | null, name: string): PlainElement {
    return new PlainElement(name, this);
  }

  createTextNode(text: string): PlainText {
    return new PlainText(text, this);
  }
}

/** A window with such a document. All its elements are taken for those of SVG. */
export const plainWindow = { document: new PlainDocument(), Node: PlainNode, SVGElement: PlainElement };
