/**
 * How the trees of all sheets lie in one `Int32Array`, twelve integers a node.
 *
 * A node is named by its offset in the array. Each sheet has a region of its own; the first node of a region is a
 * header. Offset 0 is the header of the first region, so that 0 can mean "none".
 *
 * A stack along w holds its children side by side along w; it is cut from one piece as high as its highest child:
 *
 *     least w = sum over children, least h = greatest of children        ┌───┬──┬─────┐
 *                                                                        │ a │b │  c  │
 *                                                                        │   ├──┤     │
 *                                                                        └───┘  └─────┘
 * A stack along h likewise with w and h exchanged. Children of a stack are pieces or stacks along the other axis.
 * Slack is not given out: a node may grow as long as the least sizes of all others still fit on the sheet.
 */
export const NODE_SIZE = 12;

export const FREE = 0;
export const PIECE = 1;
/** Axis and kind of a stack at once: children side by side along w. */
export const STACK_W = 2;
export const STACK_H = 3;

// Fields of a node.
export const PARENT = 1;
/** First child of a stack; kind of item of a piece; next free node of a free one. */
export const FIRST = 2;
export const NEXT = 3;
export const PREVIOUS = 4;
export const LEAST_W = 5;
export const LEAST_H = 6;
/**
 * Greatest w and h of a piece that can be added at this node: put at the end of a stack, or wrapped with a piece in
 * a stack along the other axis than the one it stands in. −1 in a free node.
 */
export const ROOM_W = 7;
export const ROOM_H = 8;
/** How large the node could grow if all others kept to their least sizes. */
export const MOST_W = 9;
export const MOST_H = 10;
/** Of a stack: its level, 1 for the first cuts. Of a piece: the level of the stack it stands in. */
export const LEVEL = 11;

// Fields of a header.
export const ROOT = 0;
/** Offset after the last node ever used in the region. */
export const USED_END = 1;
export const FREE_LIST = 2;
export const PIECES = 3;
/** Index into the problem's sheets. */
export const SHEET = 4;
export const OPEN = 5;
/** Levels that the root needs: its own, those below, and one more where a piece must still be cut to size. */
export const NEED = 6;
/** No piece whose shorter side is longer than this can be added to the sheet. */
export const MOST_SHORT = 7;
/** 1 when the tree has changed since its rooms were worked out. */
export const STALE = 8;

export type Stack = typeof STACK_W | typeof STACK_H;

export function otherAxis(axis: number): number {
  return axis ^ 1;
}
