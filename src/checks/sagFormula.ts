/** Standard gravity, m/s²: what a kilogram presses with. */
const GRAVITY = 9.80665;

/** A strip of board under a load that is spread evenly over it; sizes in mm. */
export interface LoadedStrip {
  /** The whole load on it, its own weight included. */
  readonly loadKg: number;
  readonly spanMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** Modulus of elasticity in bending along the span, MPa. */
  readonly stiffnessMPa: number;
  /** Shear modulus, MPa; null leaves the sag by shear out, which for boards is some hundredths of it. */
  readonly shearMPa: number | null;
}

/** Factors of the sag by bending and by shear for a load spread evenly: Wood Handbook (FPL-GTR-282), table 9-1. */
const BENDING = 5 / 384;
const SHEAR = 1 / 8;

/**
 * How far a strip that lies on both ends sags in the middle of its span, in mm:
 *
 *     sag = k_b · W · L³ / (E · I) + k_s · W · L / (G · A′)
 *
 * with I = b · h³ / 12 and A′ = 5 · b · h / 6 (Wood Handbook, FPL-GTR-282, equations 9-2 and 9-3; A′ from memory). It is
 * the sag at first; over years it grows by about half again (common practice).
 */
export function sagMm(strip: LoadedStrip): number {
  const { spanMm: span, widthMm: width, thicknessMm: thick } = strip;
  const load = strip.loadKg * GRAVITY;
  const inertia = (width * thick * thick * thick) / 12;
  const byBending = (BENDING * load * span * span * span) / (strip.stiffnessMPa * inertia);
  if (strip.shearMPa === null) return byBending;
  return byBending + (SHEAR * load * span) / (strip.shearMPa * ((5 * width * thick) / 6));
}
