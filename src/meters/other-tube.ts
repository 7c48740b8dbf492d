/**
 * The same sensing element in another tube: it feels the flux at its place, so the flow scales with the area.
 *
 * Equation    m_new(signal) = m_old(signal) (A_new/A_old) (c_old/c_new)                                         (1)
 * Symbols     A m2 free area of the tube at the element | c flux at the element over the mean flux (1.0 flat profile to 1.25 for
 *             turbulent pipe flow at the axis, 2 laminar)
 * Validity    areas, c > 0 (asserted); the profile before the new tube is its own question: a bend or a filter seat changes c with flow
 * Source      definition of mass flux; profile factors [incropera2002] chapter 8
 */
import { requirePositive } from "../numerics/index.ts";

export function otherTubeFactor(tubes: {
  readonly oldBore: number;
  readonly newBore: number;
  readonly oldProfile?: number;
  readonly newProfile?: number;
}): number {
  const { oldBore, newBore, oldProfile = 1, newProfile = 1 } = tubes;
  requirePositive("old bore", oldBore);
  requirePositive("new bore", newBore);
  requirePositive("profile factors", oldProfile * newProfile);
  return ((newBore / oldBore) ** 2 * oldProfile) / newProfile;
}
