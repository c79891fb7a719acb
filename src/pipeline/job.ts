import type { LaterPlan } from '../cutPlans/index.ts';
import type { Finding } from '../model/finding.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import type { StockGroup } from '../model/stock.ts';

/** What an order was worked out to, beside its stock groups. */
export interface OrderedFurniture {
  readonly order: Order;
  readonly library: Library;
  readonly furniture: Furniture;
}

/** One job on the line, ready to be nested: an order, or a plain list. */
export interface Job {
  /** Name for the papers: the order's id, or the list's file name. */
  readonly name: string;
  /** As printed. */
  readonly title: string;
  /** ISO 4217; empty where prices have no currency. */
  readonly currency: string;
  readonly groups: readonly StockGroup[];
  /** Absent for a plain list, and where several orders are cut together. */
  readonly ordered?: OrderedFurniture;
  /** Of a job that goes on from an earlier plan. */
  readonly later?: LaterPlan;
  /** Of orders that are cut together. */
  readonly library?: Library;
}

/** The library that a job is made from; none for a plain list. */
export function libraryOf(job: Job): Library | undefined {
  return job.ordered?.library ?? job.library;
}

/** Findings that name no place are about the file as a whole. */
export function placedIn(file: string, findings: readonly Finding[]): Finding[] {
  return findings.map((finding) => (finding.place === undefined ? { ...finding, place: { file } } : finding));
}
